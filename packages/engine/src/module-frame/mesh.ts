import type { Beam, Grillage, GrillageNode } from "../grillage/index.ts";
import type { CrossRow, FrameRecipe, FrameState, Placement } from "./recipe.ts";

/** Equal divisions of a part between which effects are read: at least these. */
const LEAST_DIVISIONS = 12;
/** Two places closer than this are one [m]. */
const SAME = 1e-3;

/** A row of cross pieces with its nodes across the part. */
export interface MeshedRow {
  readonly x_m: number;
  readonly station: number;
  /** Across, rising [m], with the node of each. */
  readonly y_m: readonly number[];
  readonly nodes: readonly number[];
}

/** The part as a grillage, with the numbers of its nodes. */
export interface Mesh {
  readonly grillage: Grillage;
  /** Along the part, rising [m]. */
  readonly stations_m: readonly number[];
  /** Node of a stringer at a station. */
  readonly nodeOf: (stringer: number, station: number) => number;
  readonly rows: readonly MeshedRow[];
  /** Beam of a stringer from a station to the next. */
  readonly beamOf: (stringer: number, station: number) => number;
  /** Beams of each row, from right to left, by bay. */
  readonly rowBeams: readonly (readonly number[])[];
}

function distinct(values: readonly number[]): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.filter((v, i) => i === 0 || v - sorted[i - 1]! > SAME);
}

/** What lies across the stringers in a state: boards that run through between hinges, else cross pieces. */
const crossRows = (
  { rows, boards, deck }: FrameRecipe,
  { ends, lost_row }: FrameState,
): readonly CrossRow[] =>
  ends === "hinged" && deck === "stringers" && boards.length > 0
    ? boards
    : rows.filter((_, i) => i !== lost_row);

/** Places along the part where something begins, ends, rests or stands, filled up with equal divisions. */
function stationsOf(recipe: FrameRecipe, state: FrameState): number[] {
  const { length_m, rests } = recipe;
  const rows = crossRows(recipe, state);
  const fixed = distinct([0, length_m, ...rows.map((r) => r.x_m), ...rests.map((r) => r.x_m)]);
  const count = 2 * Math.max(LEAST_DIVISIONS / 2, Math.ceil(length_m / recipe.division_m / 2));
  const even = Array.from({ length: count + 1 }, (_, i) => (i * length_m) / count);
  const free = even.filter((x) => fixed.every((f) => Math.abs(f - x) > length_m / count / 4));
  return distinct([...fixed, ...free]);
}

const stationAt = (stations: readonly number[], x: number): number =>
  stations.reduce((best, s, i) => (Math.abs(s - x) < Math.abs(stations[best]! - x) ? i : best), 0);

/** Where loads press a row between its stringers: those places become nodes, so that no load is smeared. */
function placesBetween(y: readonly number[], placements: readonly Placement[]): number[] {
  const pressed = placements.flatMap((p) => p.places.flatMap((q) => q.parts.map((r) => r.y_m)));
  return pressed.filter((v) => v > y[0]! && v < y.at(-1)! && y.every((s) => Math.abs(s - v) > 5 * SAME));
}

/**
 * Builds the grillage of a part in one state. Nodes are numbered station by station from right to left.
 *
 * Stringers get a node at every station, cross pieces one at every stringer and under every load that the deck
 * hands to them.
 */
export function meshOf(recipe: FrameRecipe, state: FrameState, placements: readonly Placement[]): Mesh {
  const stations = stationsOf(recipe, state);
  const { stringers_y_m: y } = recipe;
  const across = recipe.deck === "rows" ? distinct([...y, ...placesBetween(y, placements)]) : [...y];
  const kept = crossRows(recipe, state);
  const rowAt = new Map(kept.map((row) => [stationAt(stations, row.x_m), row] as const));
  const nodes: GrillageNode[] = [];
  const stringerNodes: number[][] = stations.map(() => []);
  const rows: (MeshedRow & { readonly row: CrossRow })[] = [];
  for (const [s, x] of stations.entries()) {
    const row = rowAt.get(s);
    const here = row ? across : y;
    const first = nodes.length;
    for (const v of here) nodes.push({ x, y: v });
    stringerNodes[s] = y.map((v) => first + here.indexOf(v));
    if (row) rows.push({ x_m: x, station: s, y_m: here, nodes: here.map((_, i) => first + i), row });
  }
  const nodeOf = (stringer: number, station: number): number => stringerNodes[station]![stringer]!;
  const along = stringerBeams(recipe, state, stations, nodeOf);
  const { beams, rowBeams } = crossBeams(recipe, state, rows, along.length);
  const bearings = recipe.rests.map((rest, i) => ({
    node: nodeOf(rest.stringer, stationAt(stations, rest.x_m)),
    settled_m: state.settled?.rest === i ? state.settled.by_m : 0,
  }));
  return {
    grillage: { nodes, beams: [...along, ...beams], bearings },
    stations_m: stations,
    nodeOf,
    rows,
    beamOf: (stringer, station) => stringer * (stations.length - 1) + station,
    rowBeams,
  };
}

/** Boards that run through stand in for hinged cross pieces: screwed down, they hand on moment and twist. */
const boardsTie = ({ boards, deck }: FrameRecipe, { ends }: FrameState): boolean =>
  ends === "hinged" && deck === "stringers" && boards.length > 0;

/** Between hinges nothing twists a stringer: its torsion plays no part. */
const stringerBeams = (
  recipe: FrameRecipe,
  state: FrameState,
  stations: readonly number[],
  nodeOf: (stringer: number, station: number) => number,
): Beam[] =>
  recipe.stringers_y_m.flatMap((_, i) => {
    const n = recipe.pieces[i]!;
    const { ei, ga, gj } = recipe.stringer;
    const isFree = state.ends === "hinged" && !boardsTie(recipe, state);
    const beam = { ei: n * ei, ga: n * ga, gj: isFree ? 0 : n * gj };
    return stations.slice(1).map((__, s): Beam => ({ from: nodeOf(i, s), to: nodeOf(i, s + 1), ...beam }));
  });

/** Cross pieces from stringer to stringer; a hinged end hands on neither moment nor twist, a board runs through. */
function crossBeams(
  recipe: FrameRecipe,
  state: FrameState,
  rows: readonly (MeshedRow & { readonly row: CrossRow })[],
  first: number,
): { beams: Beam[]; rowBeams: number[][] } {
  const beams: Beam[] = [];
  const isStringer = (v: number): boolean => recipe.stringers_y_m.includes(v);
  const free = state.ends === "hinged" && !boardsTie(recipe, state);
  const rowBeams = rows.map(({ y_m, nodes, row }) => {
    const own: number[] = [];
    for (const [i, from] of y_m.slice(0, -1).entries()) {
      const to = y_m[i + 1]!;
      own.push(first + beams.length);
      const { ei, ga } = row;
      const gj = free ? 0 : row.gj;
      beams.push({
        from: nodes[i]!,
        to: nodes[i + 1]!,
        ei,
        ga,
        gj,
        ...(free && isStringer(from) ? { free_from: true } : {}),
        ...(free && isStringer(to) ? { free_to: true } : {}),
      });
    }
    return own;
  });
  return { beams, rowBeams };
}
