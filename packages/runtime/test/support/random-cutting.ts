import type { CuttingProblem } from "@causey/engine/fabrication";

/** Seeded numbers from 0 to 1 (mulberry32). */
export function randomNumbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** 2,000 pieces of 15 lengths on four stock lengths of 8, 10, 12 and 16 ft at invented prices, 3 mm kerf. */
export function twoThousandPieces(seed: number): CuttingProblem {
  const random = randomNumbers(seed);
  const lengths = new Set<number>();
  while (lengths.size < 15) lengths.add(200 + Math.floor(random() * 2200));
  const shares = [...lengths].map(() => 0.3 + random());
  const sum = shares.reduce((a, b) => a + b, 0);
  const counts = shares.map((share) => Math.round((2000 * share) / sum));
  counts[0]! += 2000 - counts.reduce((a, b) => a + b, 0);
  const offers = [
    [2438, 5.98],
    [3048, 7.63],
    [3658, 9.48],
    [4877, 13.22],
  ] as const;
  return {
    kerf_mm: 3,
    stock: offers.map(([length_mm, price]) => ({
      length_mm,
      price: Math.round(100 * price * (0.95 + 0.1 * random())) / 100,
    })),
    pieces: [...lengths].map((length_mm, k) => ({ length_mm, count: counts[k]! })),
  };
}

/** A dozen pieces at most on up to four stocks, some limited, some free, in awkward lengths. */
export function handfulOfPieces(seed: number): CuttingProblem {
  const random = randomNumbers(seed);
  const whole = (from: number, to: number): number => from + Math.floor(random() * (to - from + 1));
  const scale = random() < 0.5 ? 1 : 37;
  const prices = [() => 1, () => whole(0, 20), () => whole(0, 2000) / 100, () => random() * 10][whole(0, 3)]!;
  return {
    kerf_mm: whole(0, 3),
    stock: Array.from({ length: whole(1, 4) }, () => ({
      length_mm: whole(20, 60) * scale,
      price: prices(),
      ...(random() < 0.4 ? { available: whole(0, 5) } : {}),
    })),
    pieces: Array.from({ length: whole(1, 5) }, () => ({
      length_mm: whole(3 * scale, 38 * scale),
      count: whole(1, 3),
    })),
  };
}
