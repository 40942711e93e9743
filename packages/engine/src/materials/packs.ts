import { DomainError } from "../units/index.ts";

/** A selling unit: how many it holds and what it costs. */
export interface Pack {
  readonly pack: number;
  readonly price: number;
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/**
 * The cheapest way to cover a need from selling units of several sizes.
 *
 * needed   pieces, a whole number >= 0
 * packs    at least one, each a whole number of pieces >= 1 at a price >= 0
 * returns  how many of each pack, in the order given; covers the need at the least sum of prices (exact, by dynamic
 *          programming over the need in steps of the packs' greatest common divisor)
 *
 * Throws `DomainError` for a pack that is no whole number of pieces: `priceProblems` reports those.
 */
export function cheapestPacks(needed: number, packs: readonly Pack[]): number[] {
  const odd = packs.find((p) => !Number.isInteger(p.pack) || p.pack < 1);
  if (odd || packs.length === 0) throw new DomainError("not-a-pack", { pack: odd?.pack ?? "none" });
  const unit = packs.map((p) => p.pack).reduce(gcd, 0);
  const steps = Math.ceil(needed / unit);
  const least = new Float64Array(steps + 1);
  const last = new Int32Array(steps + 1);
  for (let s = 1; s <= steps; s++) {
    least[s] = Infinity;
    packs.forEach((p, i) => {
      const cost = p.price + least[Math.max(0, s - p.pack / unit)]!;
      if (cost < least[s]! - 1e-9) {
        least[s] = cost;
        last[s] = i;
      }
    });
  }
  const counts = packs.map(() => 0);
  for (let s = steps; s > 0; s -= packs[last[s]!]!.pack / unit) counts[last[s]!]!++;
  return counts;
}
