import { leverShares } from "../structure/index.ts";
import type { Mesh } from "./mesh.ts";
import type { AcrossPlace, FrameRecipe } from "./recipe.ts";

/** Shares of a unit load on nodes; they sum to 1. */
export type NodeShares = readonly (readonly [node: number, share: number])[];

/** Hands a load at a station to the nodes that carry it. */
export type Spread = (station: number, y_m: number) => NodeShares;

function onStringers(recipe: FrameRecipe, mesh: Mesh, station: number, y: number): NodeShares {
  const shares = leverShares(recipe.stringers_y_m, y);
  return shares.flatMap((share, i) => (share === 0 ? [] : [[mesh.nodeOf(i, station), share] as const]));
}

function onRow(recipe: FrameRecipe, mesh: Mesh, r: number, y: number): NodeShares {
  const row = mesh.rows[r]!;
  const last = recipe.stringers_y_m.length - 1;
  if (y <= recipe.stringers_y_m[0]! || y >= recipe.stringers_y_m[last]!)
    return onStringers(recipe, mesh, row.station, y);
  const shares = leverShares(row.y_m, y);
  return shares.flatMap((share, i) => (share === 0 ? [] : [[row.nodes[i]!, share] as const]));
}

/** Panels lie over rows of cross pieces, or over the stringers' ends beyond the first and last row. */
function alongRows(recipe: FrameRecipe, mesh: Mesh, station: number, y: number): NodeShares {
  const { rows, stations_m } = mesh;
  const x = stations_m[station]!;
  const after = rows.findIndex((row) => row.station >= station);
  if (after >= 0 && rows[after]!.station === station) return onRow(recipe, mesh, after, y);
  const before = after < 0 ? rows.length - 1 : after - 1;
  const x0 = before >= 0 ? rows[before]!.x_m : stations_m[0]!;
  const x1 = after >= 0 ? rows[after]!.x_m : stations_m.at(-1)!;
  const t = (x - x0) / (x1 - x0);
  const first = before >= 0 ? onRow(recipe, mesh, before, y) : onStringers(recipe, mesh, 0, y);
  const second =
    after >= 0 ? onRow(recipe, mesh, after, y) : onStringers(recipe, mesh, stations_m.length - 1, y);
  return [
    ...first.map(([n, s]) => [n, s * (1 - t)] as const),
    ...second.map(([n, s]) => [n, s * t] as const),
  ].filter(([, s]) => s !== 0);
}

/** How the deck hands loads on: boards at once to the stringers, panels and mesh to rows of cross pieces. */
export const spreadOf = (recipe: FrameRecipe, mesh: Mesh): Spread =>
  recipe.deck === "stringers"
    ? (station, y) => onStringers(recipe, mesh, station, y)
    : (station, y) => alongRows(recipe, mesh, station, y);

/** Shares of a whole place across (both feet, both wheels) at a station. */
export function sharesOf(spread: Spread, station: number, place: AcrossPlace): NodeShares {
  const sum = new Map<number, number>();
  for (const { y_m, part } of place.parts)
    for (const [node, share] of spread(station, y_m)) sum.set(node, (sum.get(node) ?? 0) + share * part);
  return [...sum];
}

/** Even loads along the stringers as forces on their nodes, half of the spaces beside each. */
export const alongStringers = (
  { stations_m: x, nodeOf }: Mesh,
  n_m: readonly number[],
): { node: number; down: number }[] =>
  n_m.flatMap((w, i) =>
    x.map((_, s) => ({
      node: nodeOf(i, s),
      down: (w * ((x[s + 1] ?? x[s]!) - (x[s - 1] ?? x[s]!))) / 2,
    })),
  );

/** Own weight of the part as forces on its stringers' nodes: each stringer takes half of the spaces beside it. */
export function ownWeight(recipe: FrameRecipe, mesh: Mesh): { node: number; down: number }[] {
  const { stringers_y_m: y, own_n_m } = recipe;
  const width = y.at(-1)! - y[0]!;
  const share = (i: number): number => ((y[i + 1] ?? y[i]!) - (y[i - 1] ?? y[i]!)) / 2 / width;
  return alongStringers(
    mesh,
    y.map((_, i) => own_n_m * share(i)),
  );
}
