/**
 * The cutting problem as the search sees it: whole numbers only.
 *
 * A piece of length l takes `width` = l + kerf of a stick that offers `capacity` = stick length + kerf: between
 * n pieces there are n - 1 saw cuts, so the sum of (l + kerf) must not pass stick + kerf.
 */
export interface CuttingModel {
  /** Per kind of piece, longest first, in steps. */
  readonly widths: readonly number[];
  /** Per kind: how many are wanted, 1 or more. */
  readonly demand: readonly number[];
  readonly sticks: readonly Stick[];
  /** Every cost of a whole plan is a multiple of this many price units. */
  readonly tick: number;
}

export interface Stick {
  /** Steps. */
  readonly capacity: number;
  /** Price units, a whole number, 0 or more. */
  readonly cost: number;
  /** How many can be had; Infinity when there is no limit. */
  readonly limit: number;
}

/** One way to saw one stick. Counts per kind; never more than the demand. */
export interface Column {
  readonly stick: number;
  readonly counts: readonly number[];
}

/** What is still to be cut, and the sticks still to be had. */
export interface Rest {
  readonly demand: readonly number[];
  readonly limits: readonly number[];
}

/** A whole plan: it may cut more pieces than wanted (the surplus is trimmed later), never fewer. */
export interface WholePlan {
  readonly cost: number;
  readonly uses: readonly { readonly column: Column; readonly times: number }[];
}

export const wholeRest = (model: CuttingModel): Rest => ({
  demand: model.demand,
  limits: model.sticks.map((s) => s.limit),
});

export const isDone = (rest: Rest): boolean => rest.demand.every((d) => d <= 0);

/** What is left after a column is cut `times` times. */
export function take(rest: Rest, column: Column, times: number): Rest {
  return {
    demand: rest.demand.map((d, k) => Math.max(0, d - times * column.counts[k]!)),
    limits: rest.limits.map((l, s) => (s === column.stick ? l - times : l)),
  };
}

/** The column with no more pieces than the rest wants; null when nothing remains of it. */
export function trim(column: Column, rest: Rest): Column | null {
  const counts = column.counts.map((c, k) => Math.min(c, rest.demand[k]!));
  return counts.some((c) => c > 0) ? { stick: column.stick, counts } : null;
}

export const columnKey = (column: Column): string => `${column.stick}:${column.counts.join(",")}`;

/** Adds the columns not yet in the list; answers how many were new. */
export function addColumns(pool: Map<string, Column>, columns: Iterable<Column>): number {
  const before = pool.size;
  for (const column of columns) {
    const key = columnKey(column);
    if (!pool.has(key)) pool.set(key, column);
  }
  return pool.size - before;
}

export const costOf = (model: CuttingModel, uses: WholePlan["uses"]): number =>
  uses.reduce((sum, u) => sum + u.times * model.sticks[u.column.stick]!.cost, 0);
