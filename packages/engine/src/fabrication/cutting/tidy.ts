import { columnKey, costOf, type Column, type CuttingModel, type WholePlan } from "./model.ts";

type Uses = WholePlan["uses"];

/**
 * A plan that cuts exactly the demand: surplus pieces are left out, every content gets the cheapest stick that
 * holds it, equal sticks are counted together. Never dearer than `uses`. Null when a piece is missing or a
 * limit is passed.
 */
export function tidyPlan(model: CuttingModel, uses: Uses): WholePlan | null {
  const trimmed = model.widths.reduce<Uses | null>(
    (left, _, kind) => left && trimKind(model, left, kind),
    uses,
  );
  if (!trimmed) return null;
  const limits = model.sticks.map((s) => s.limit);
  for (const u of trimmed) limits[u.column.stick]! -= u.times;
  if (limits.some((l) => l < 0)) return null;
  const merged = merge(moveToCheaper(model, trimmed, limits));
  return { uses: merged, cost: costOf(model, merged) };
}

/** Leaves surplus pieces of one kind out, from the patterns cut least often first. */
function trimKind(model: CuttingModel, uses: Uses, kind: number): Uses | null {
  let surplus = uses.reduce((sum, u) => sum + u.times * u.column.counts[kind]!, 0) - model.demand[kind]!;
  if (surplus < 0) return null;
  if (surplus === 0) return uses;
  return uses
    .toSorted((a, b) => a.times - b.times)
    .flatMap((use) => {
      const perStick = use.column.counts[kind]!;
      if (surplus === 0 || perStick === 0) return [use];
      const emptied = Math.min(use.times, Math.floor(surplus / perStick));
      const some = emptied < use.times ? surplus - emptied * perStick : 0;
      surplus -= emptied * perStick + some;
      return [
        { column: less(use.column, kind, perStick), times: emptied },
        { column: less(use.column, kind, some), times: some > 0 ? 1 : 0 },
        { column: use.column, times: use.times - emptied - (some > 0 ? 1 : 0) },
      ].filter((u) => u.times > 0);
    });
}

const less = (column: Column, kind: number, by: number): Column => ({
  stick: column.stick,
  counts: column.counts.map((n, k) => (k === kind ? n - by : n)),
});

export const widthOf = (model: CuttingModel, counts: readonly number[]): number =>
  counts.reduce((sum, n, k) => sum + n * model.widths[k]!, 0);

/** Gives the fullest contents first choice of the cheapest stick that holds them, as far as `free` sticks last. */
export function moveToCheaper(model: CuttingModel, uses: Uses, free: number[]): Uses {
  const byWidth = uses
    .map((u) => ({ ...u, width: widthOf(model, u.column.counts) }))
    .filter((u) => u.width > 0);
  byWidth.sort((a, b) => b.width - a.width);
  const byCost = model.sticks.map((stick, s) => ({ ...stick, s })).sort((a, b) => a.cost - b.cost);
  return byWidth.flatMap(({ column, times, width }) => {
    let left = times;
    const { cost } = model.sticks[column.stick]!;
    const moved = byCost.flatMap((stick) => {
      const n = stick.cost < cost && stick.capacity >= width ? Math.min(left, free[stick.s]!) : 0;
      left -= n;
      free[stick.s]! -= n;
      free[column.stick]! += n;
      return n > 0 ? [{ column: { stick: stick.s, counts: column.counts }, times: n }] : [];
    });
    return left > 0 ? [...moved, { column, times: left }] : moved;
  });
}

function merge(uses: Uses): Uses {
  const merged = new Map<string, { column: Column; times: number }>();
  for (const { column, times } of uses) {
    const key = columnKey(column);
    merged.set(key, { column, times: times + (merged.get(key)?.times ?? 0) });
  }
  return [...merged.values()];
}
