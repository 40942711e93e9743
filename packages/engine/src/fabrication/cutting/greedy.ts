import { solveKnapsack } from "./knapsack.ts";
import { costOf, isDone, take, type Column, type CuttingModel, type Rest, type WholePlan } from "./model.ts";
import { moveToCheaper, widthOf } from "./tidy.ts";

/** Fillings from the rest, one per kind of stick. */
type Filler = (rest: Rest) => (capacity: number) => number[];

/** Longest piece first, whatever still fits: stick after stick this is first-fit decreasing. */
const longestFirst =
  (model: CuttingModel): Filler =>
  (rest) =>
  (capacity) => {
    let room = capacity;
    return model.widths.map((width, k) => {
      const count = Math.min(rest.demand[k]!, Math.floor(room / width));
      room -= count * width;
      return count;
    });
  };

/** The filling that leaves the least of the stick: best fit, by an exact knapsack. */
const fullest =
  (model: CuttingModel): Filler =>
  (rest) =>
    solveKnapsack(model.widths, model.widths, rest.demand, Math.max(...model.sticks.map((s) => s.capacity)))
      .filling;

/**
 * Fills sticks one after another and repeats each filling while the rest holds it, then gives every stick's
 * content the cheapest stick that holds it. `only` keeps to one kind of stick while it lasts and fits.
 * Null when the sticks run out, or a piece fits none that is left.
 */
function fillSticks(model: CuttingModel, rest: Rest, fill: Filler, only: number | null): WholePlan | null {
  const uses: { column: Column; times: number }[] = [];
  let left = rest;
  while (!isDone(left)) {
    const column = bestStick(model, left, fill(left), only);
    if (!column) return null;
    const times = repeats(left, column);
    uses.push({ column, times });
    left = take(left, column, times);
  }
  const moved = moveToCheaper(model, uses, [...left.limits]);
  return { uses: moved, cost: costOf(model, moved) };
}

/** The stick with the lowest price per step of pieces put on it. */
function bestStick(
  model: CuttingModel,
  rest: Rest,
  fill: (capacity: number) => number[],
  only: number | null,
): Column | null {
  const candidates = model.sticks.flatMap((stick, s) => {
    if (rest.limits[s]! <= 0) return [];
    const counts = fill(stick.capacity);
    const filled = widthOf(model, counts);
    return filled > 0 ? [{ stick: s, counts, score: stick.cost / filled }] : [];
  });
  const best =
    candidates.find((c) => c.stick === only) ?? candidates.toSorted((a, b) => a.score - b.score)[0];
  return best ? { stick: best.stick, counts: best.counts } : null;
}

function repeats(rest: Rest, column: Column): number {
  const wanted = column.counts.map((n, k) => (n > 0 ? Math.floor(rest.demand[k]! / n) : Infinity));
  return Math.min(rest.limits[column.stick]!, ...wanted);
}

/** Kinds of stick that a quick plan keeps to in turn: the cheapest for their length. */
const MOST_ONLY = 6;

/** The best of a handful of quick plans; null when none of them gets by with the sticks to be had. */
export function quickPlan(model: CuttingModel, rest: Rest, effort: "light" | "full"): WholePlan | null {
  const onlys = effort === "light" || model.sticks.length === 1 ? [null] : [null, ...cheapKinds(model)];
  const plans = [longestFirst(model), fullest(model)]
    .flatMap((fill) => onlys.map((only) => fillSticks(model, rest, fill, only)))
    .filter((plan) => plan !== null);
  return plans.toSorted((a, b) => a.cost - b.cost)[0] ?? null;
}

function cheapKinds({ sticks }: CuttingModel): number[] {
  const rate = (s: number): number => sticks[s]!.cost / sticks[s]!.capacity;
  return [...sticks.keys()].sort((a, b) => rate(a) - rate(b)).slice(0, MOST_ONLY);
}
