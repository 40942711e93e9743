import { DomainError } from "../units/index.ts";
import { cholesky, dot, solve, square, studentQuantile, type Square } from "../statistics/index.ts";

/** One point of a plate test: the plate's smaller side, sinkage and pressure, all over 0. */
export interface PlatePoint {
  readonly b_m: number;
  readonly z_m: number;
  readonly p_pa: number;
}

/** A fitted value with its 95 % band; the band is null where the points leave no degree of freedom, or none that ends. */
export interface Fitted {
  readonly value: number;
  readonly low: number | null;
  readonly high: number | null;
}

export interface PlateFit {
  readonly n: Fitted;
  /** Stiffness of each plate, the pressure at one metre [Pa], the smallest plate first. */
  readonly plates: readonly { readonly b_m: number; readonly points: number; readonly k_pa: Fitted }[];
  /** [N/m] and [Pa]; null for plates of one size: the two cannot be told apart. */
  readonly kc_n_per_m: Fitted | null;
  readonly kphi_pa: Fitted | null;
  /** Root of the mean weighted square of what the fit leaves of ln p. */
  readonly residual_ln: number;
  /** Root of the mean square of what it leaves of p, as a share of the mean pressure. */
  readonly residual_share: number;
  readonly words: readonly string[];
}

/** What keeps points from being fitted, in words; null when they can be. */
export function plateFault(points: readonly PlatePoint[]): string | null {
  const bySize = [...groupBySize(points).values()];
  if (points.length < 3) return "at least three points are needed";
  if (bySize.some((g) => g.length < 2)) return "each plate needs at least two points";
  if (bySize.some((g) => Math.max(...g.map((p) => p.z_m)) < 1.05 * Math.min(...g.map((p) => p.z_m))))
    return "the sinkages of each plate must differ by 5 % at least";
  return null;
}

function groupBySize(points: readonly PlatePoint[]): Map<number, PlatePoint[]> {
  const groups = new Map<number, PlatePoint[]>();
  for (const p of points) groups.set(p.b_m, [...(groups.get(p.b_m) ?? []), p]);
  return new Map([...groups].sort((a, b) => a[0] - b[0]));
}

/**
 * Fits p = (kc / b + kphi) z^n to plate tests: one slope n for all plates, one stiffness for each.
 *
 * Weighted least squares of ln p on ln z, weights p^2, so that large pressures count as they would in p itself. Bands
 * at 95 % by Student's t with as many degrees of freedom as points less fitted values; those of kc and kphi carry the
 * stiffnesses' errors on. Throws `DomainError` where `plateFault` finds a fault.
 */
export function fitPlates(points: readonly PlatePoint[]): PlateFit {
  const fault = plateFault(points);
  if (fault !== null) throw new DomainError("plate-points", { fault });
  const sizes = [...groupBySize(points).keys()];
  const most = Math.max(...points.map((p) => p.p_pa));
  const rows = points.map((p) => ({
    x: [Math.log(p.z_m), ...sizes.map((b) => (b === p.b_m ? 1 : 0))],
    y: Math.log(p.p_pa),
    w: (p.p_pa / most) ** 2,
  }));
  const count = sizes.length + 1;
  const lower = cholesky(square(count, (i, j) => rows.reduce((s, r) => s + r.w * r.x[i]! * r.x[j]!, 0)));
  const right = Array.from({ length: count }, (_, i) => rows.reduce((s, r) => s + r.w * r.x[i]! * r.y, 0));
  const found = solve(lower, right);
  const residuals = rows.map((r) => r.y - dot(r.x, found));
  const free = points.length - count;
  const squares = rows.reduce((s, r, i) => s + r.w * residuals[i]! ** 2, 0);
  const spread = { lower, scale: free > 0 ? Math.sqrt(squares / free) : null, free };
  const n = band(found[0]!, unit(count, 0, 1), spread);
  const plates = sizes.map((b_m, i) => {
    const k = Math.exp(found[i + 1]!);
    const of = points.filter((p) => p.b_m === b_m).length;
    return { b_m, points: of, k_pa: band(k, unit(count, i + 1, k), spread) };
  });
  const apart =
    sizes.length > 1
      ? kcAndKphi(
          plates.map((p) => p.k_pa.value),
          sizes,
          spread,
        )
      : null;
  const errors = points.map((p, i) => p.p_pa * (1 - Math.exp(-residuals[i]!)));
  const mean = points.reduce((s, p) => s + p.p_pa, 0) / points.length;
  return {
    n,
    plates,
    kc_n_per_m: apart?.kc ?? null,
    kphi_pa: apart?.kphi ?? null,
    residual_ln: Math.sqrt(squares / rows.reduce((s, r) => s + r.w, 0)),
    residual_share: Math.sqrt(dot(errors, errors) / points.length) / mean,
    words: wordsOf(n.value, apart, spread.free),
  };
}

interface Spread {
  readonly lower: Square;
  readonly scale: number | null;
  readonly free: number;
}

const unit = (count: number, at: number, value: number): number[] =>
  Array.from({ length: count }, (_, i) => (i === at ? value : 0));

/** Value and band of a quantity whose slope by the fitted parameters is `slope`. */
function band(value: number, slope: readonly number[], { lower, scale, free }: Spread): Fitted {
  if (scale === null) return { value, low: null, high: null };
  const half = studentQuantile(0.975, free) * scale * Math.sqrt(Math.max(0, dot(slope, solve(lower, slope))));
  return Number.isFinite(half)
    ? { value, low: value - half, high: value + half }
    : { value, low: null, high: null };
}

/** kc and kphi from k = kc / b + kphi by least squares over the plates; for two plates the line through both. */
function kcAndKphi(
  k: readonly number[],
  sizes: readonly number[],
  spread: Spread,
): { readonly kc: Fitted; readonly kphi: Fitted } {
  const u = sizes.map((b) => 1 / b);
  const middle = u.reduce((s, v) => s + v, 0) / u.length;
  const squares = u.reduce((s, v) => s + (v - middle) ** 2, 0);
  const toKc = u.map((v) => (v - middle) / squares);
  const toKphi = toKc.map((c) => 1 / u.length - middle * c);
  const fitted = (by: readonly number[]): Fitted =>
    band(dot(by, k), [0, ...by.map((c, i) => c * k[i]!)], spread);
  return { kc: fitted(toKc), kphi: fitted(toKphi) };
}

function wordsOf(n: number, apart: ReturnType<typeof kcAndKphi> | null, free: number): string[] {
  const words: string[] = [];
  if (apart === null)
    words.push(
      "One size of plate: kc and kphi cannot be told apart. Use its stiffness for feet of about that size, or test a second plate.",
    );
  if (apart && apart.kc.value < 0)
    words.push(
      "kc comes out below zero: a smaller foot would be the stiffer one. Do not use it for feet smaller than the plates.",
    );
  if (apart && apart.kphi.value < 0)
    words.push("kphi comes out below zero: do not use it for feet larger than the plates.");
  if (n <= 0)
    words.push(
      "n comes out at or below zero: the pressure fell while the plate sank. The ground gave way: use the bearing capacity.",
    );
  else if (n < 0.25)
    words.push(
      "n is under 0.25: the ground is almost rigid-plastic. Use the bearing capacity, not the sinkage.",
    );
  if (free === 0) words.push("No more points than fitted values: no band can be given.");
  return words;
}
