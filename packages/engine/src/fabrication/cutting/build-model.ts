import { inputProblem, type Problem } from "../../formula/index.ts";
import type { CuttingProblem } from "../types.ts";
import type { CuttingModel, Stick } from "./model.ts";
import { greatestCommonDivisor, priceGrid, type PriceGrid } from "./price-grid.ts";

/** The search's model of a problem, and the way back from it. Lengths in steps: `perMm` steps are one millimetre. */
export interface BuiltModel {
  readonly model: CuttingModel;
  readonly perMm: number;
  readonly kerf: number;
  /** Steps, per kind of piece. */
  readonly pieceLengths: readonly number[];
  /** Steps, per kind of stick. */
  readonly stickLengths: readonly number[];
  /** Money, per kind of stick. */
  readonly prices: readonly number[];
  readonly grid: PriceGrid;
  /** Steps of the problem in one step of the model. */
  readonly coarsening: number;
}

const MOST_DECIMALS = 6;
/** Kinds times capacity: 8 bytes each in the knapsack's table. */
const MOST_CELLS = 20_000_000;

/** Steps in a millimetre: the coarsest decimal step that all lengths are multiples of, at finest a millionth. */
export function stepsPerMillimetre(lengths: readonly number[]): number {
  for (let decimals = 0; decimals < MOST_DECIMALS; decimals++) {
    const perMm = 10 ** decimals;
    if (lengths.every((l) => Math.abs(l * perMm - Math.round(l * perMm)) < 1e-7)) return perMm;
  }
  return 10 ** MOST_DECIMALS;
}

/**
 * Builds the model of a problem that has passed its checks and has pieces. The order of rows does not matter:
 * kinds and sticks are merged and sorted. Answers a problem where the lengths have so fine a common step that
 * the exact tables would not fit in memory.
 */
export function buildModel(problem: CuttingProblem): BuiltModel | readonly Problem[] {
  const all = [
    problem.kerf_mm,
    ...problem.stock.map((s) => s.length_mm),
    ...problem.pieces.map((p) => p.length_mm),
  ];
  const perMm = stepsPerMillimetre(all);
  const steps = (mm: number): number => Math.floor(mm * perMm + 1e-6);
  const kerf = steps(problem.kerf_mm);
  const kinds = mergeKinds(problem.pieces.map((p) => ({ length: steps(p.length_mm), count: p.count })));
  const total = kinds.reduce((sum, k) => sum + k.count, 0);
  const offers = mergeOffers(
    problem.stock.map((s) => ({ ...s, length: steps(s.length_mm) })),
    total,
  );
  const coarsening = greatestCommonDivisor(kinds.map((k) => k.length + kerf));
  const grid = priceGrid(
    offers.map((o) => o.price),
    total,
  );
  const sticks: Stick[] = offers.map((o, s) => ({
    capacity: Math.floor((o.length + kerf) / coarsening),
    cost: grid.units[s]!,
    limit: o.limit,
  }));
  if (kinds.length * sticks[0]!.capacity > MOST_CELLS) return [tooFine(coarsening / perMm)];
  return {
    model: {
      widths: kinds.map((k) => (k.length + kerf) / coarsening),
      demand: kinds.map((k) => k.count),
      sticks,
      tick: greatestCommonDivisor(grid.units) || 1,
    },
    perMm,
    kerf,
    pieceLengths: kinds.map((k) => k.length),
    stickLengths: offers.map((o) => o.length),
    prices: offers.map((o) => o.price),
    grid,
    coarsening,
  };
}

const tooFine = (step_mm: number): Problem =>
  inputProblem(
    "pieces",
    `common step ${step_mm} mm`,
    "these lengths have no common step that is coarse enough to plan them exactly",
    "Round the lengths and the saw cut to whole millimetres, or all to sixteenths of an inch.",
  );

function mergeKinds(
  pieces: readonly { length: number; count: number }[],
): { length: number; count: number }[] {
  const counts = new Map<number, number>();
  for (const { length, count } of pieces) counts.set(length, (counts.get(length) ?? 0) + count);
  return [...counts].map(([length, count]) => ({ length, count })).sort((a, b) => b.length - a.length);
}

interface Offer {
  readonly length: number;
  readonly price: number;
  readonly limit: number;
}

/** Longest first, then cheapest; equal offers together; a limit that cannot bind is none. */
function mergeOffers(
  stock: readonly { length: number; price: number; available?: number }[],
  pieces: number,
): Offer[] {
  const merged = new Map<string, Offer>();
  for (const { length, price, available } of stock) {
    const key = `${length}:${price}`;
    const sum = (merged.get(key)?.limit ?? 0) + (available ?? Infinity);
    merged.set(key, { length, price, limit: sum >= pieces ? Infinity : sum });
  }
  const offers = [...merged.values()].filter((o) => o.limit > 0);
  return offers.sort((a, b) => b.length - a.length || a.price - b.price);
}
