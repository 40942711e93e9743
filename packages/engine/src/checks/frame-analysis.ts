import type { Found, Strengths } from "../codes/index.ts";
import {
  frameModel,
  moduleRests,
  peaksOf,
  platformRests,
  rectangleStiffness,
  runner,
  type AcrossPlace,
  type CrossRow,
  type FrameCase,
  type FrameRecipe,
  type FrameState,
  type LoadFactors,
  type MemberStiffness,
  type Peaked,
  type Peaks,
  type Placement,
  type Runner,
} from "../module-frame/index.ts";
import type { Cart } from "../plan/document.ts";
import { STANDARD_GRAVITY, inches, metres, type Qty } from "../units/index.ts";
import { tributaryWidths } from "./area-load.ts";
import { shareOn, type Frame, type FrameRow } from "./frame.ts";
import type { CheckContext } from "./input.ts";
import type { LoadCase } from "./walk-demand.ts";

/** A frame as a structure: its recipe, and where loads stand across it to load each stringer most. */
export interface FrameStructure {
  readonly recipe: FrameRecipe;
  readonly placements: readonly Placement[];
  /** Deck that a load over an area covers, across [m]. */
  readonly clear_width_m: number;
}

const FEET = "feet";
/** Fine enough for a stringer's moment within 0.2 % [m]; hinged, each is worked out without divisions. */
const DIVISION = 0.15;
const kindOf = (cart: Cart | null): string => (cart ? `cart ${cart.name}` : FEET);

/** Loads of the checks as the structure takes them; those over an area by the deck that each stringer carries. */
export const frameCases = (
  cases: readonly LoadCase[],
  stringers_y_m: readonly number[],
  clear_width_m: number,
): FrameCase[] =>
  cases.map((c) => ({
    name: c.name,
    loads: c.loads.map((l) => ({ at_m: l.at, weight_n: l.weight, kind: kindOf(l.cart) })),
    ...(c.area_pa === undefined
      ? {}
      : { area_n_m: tributaryWidths(stringers_y_m, clear_width_m).map((b) => b * c.area_pa!) }),
  }));

function acrossPlace(frame: Frame, stringer: number, cart: Cart | null): AcrossPlace {
  const { at } = shareOn(frame, stringer, cart);
  const parts = cart
    ? [
        { y_m: at - cart.track_mm / 2000, part: 0.5 },
        { y_m: at + cart.track_mm / 2000, part: 0.5 },
      ]
    : [{ y_m: at, part: 1 }];
  return { kind: kindOf(cart), off_m: at, parts };
}

const cartsIn = (cases: readonly LoadCase[]): (Cart | null)[] => {
  const byKind = new Map<string, Cart | null>([[FEET, null]]);
  for (const { loads } of cases) for (const { cart } of loads) byKind.set(kindOf(cart), cart);
  return [...byKind.values()];
};

/** Every stringer in turn: no symmetry is taken for granted, since a settled support breaks it. */
const placementsOf = (frame: Frame, cases: readonly LoadCase[]): Placement[] =>
  frame.positions_m.map((_, stringer) => ({
    stringer,
    places: cartsIn(cases).map((cart) => acrossPlace(frame, stringer, cart)),
  }));

/** Stiffness of the kit's timber in the wet, as a piece of this size lies. */
function stiffnessOf(
  frame: Frame,
  size: string,
  use: "edge" | "flat",
  { code, tables }: CheckContext,
): Found<Qty<"Pa">> {
  const { species, grade, incised } = frame.lumber;
  const member = code.member(tables, species, grade, size);
  if (!member.ok) return member;
  const strengths: Strengths = code.strength(member.value, {
    use,
    wet: true,
    incised,
    repetitive: false,
    duration: "ten-years",
  });
  return { ok: true, value: strengths.e };
}

/** Stringers that stand face to face count as one of as many pieces. */
function faceToFace(
  positions: readonly number[],
  stringer_m: number,
): { readonly y_m: number[]; readonly pieces: number[] } {
  const y_m: number[] = [];
  const pieces: number[] = [];
  for (const y of positions) {
    const n = pieces.at(-1) ?? 0;
    if (n > 0 && y - y_m.at(-1)! <= stringer_m + 1e-3) {
      y_m.push((y_m.pop()! * n + y) / (n + 1));
      pieces.push(pieces.pop()! + 1);
    } else {
      y_m.push(y);
      pieces.push(1);
    }
  }
  return { y_m, pieces };
}

function rowStiffness(rows: readonly FrameRow[], frame: Frame, context: CheckContext): Found<CrossRow[]> {
  const known = new Map<string, Found<MemberStiffness>>();
  const value: CrossRow[] = [];
  for (const { x_m, size, lay } of rows) {
    let found = known.get(`${size}|${lay}`);
    if (!found) known.set(`${size}|${lay}`, (found = pieceStiffness(size, lay, frame, context)));
    if (!found.ok) return found;
    value.push({ x_m, ...found.value });
  }
  return { ok: true, value };
}

function pieceStiffness(
  size: string,
  lay: "edge" | "flat",
  frame: Frame,
  context: CheckContext,
): Found<MemberStiffness> {
  const E = stiffnessOf(frame, size, lay, context);
  if (!E.ok) return E;
  const member = context.code.member(context.tables, frame.lumber.species, frame.lumber.grade, size);
  if (!member.ok) return member;
  const { thickness_in: t, width_in: w } = member.value.size;
  const [wide, high] = lay === "flat" ? [w, t] : [t, w];
  return { ok: true, value: rectangleStiffness(E.value, inches(wide), inches(high)) };
}

/** The structure of a frame under these cases; null when the frame says nothing of how it hangs together. */
export function frameStructure(
  frame: Frame,
  cases: readonly LoadCase[],
  context: CheckContext,
): Found<FrameStructure> | null {
  const { build } = frame;
  if (!build) return null;
  const stringer = pieceStiffness(frame.size, "edge", frame, context);
  if (!stringer.ok) return stringer;
  const rows = rowStiffness(build.rows, frame, context);
  if (!rows.ok) return rows;
  const boards = rowStiffness(build.boards, frame, context);
  if (!boards.ok) return boards;
  const { y_m, pieces } = faceToFace(frame.positions_m, build.stringer_m);
  const recipe: FrameRecipe = {
    length_m: frame.span_m,
    stringers_y_m: y_m,
    pieces,
    stringer: stringer.value,
    rows: rows.value.filter((row) => row.x_m <= frame.span_m),
    boards: boards.value.filter((row) => row.x_m <= frame.span_m),
    rests:
      build.platform_sill_m === null
        ? moduleRests(y_m.length, frame.span_m)
        : platformRests(
            y_m,
            metres(frame.span_m),
            metres(build.platform_sill_m),
            metres(build.platform_end_sill_m ?? build.platform_sill_m),
          ),
    deck: frame.has_boards ? "stringers" : "rows",
    own_n_m: frame.dead_kg_m * STANDARD_GRAVITY,
    division_m: DIVISION,
  };
  const placements = placementsOf({ ...frame, positions_m: y_m }, cases);
  return { ok: true, value: { recipe, placements, clear_width_m: frame.clear_width_m } };
}

/** One state of a structure, ready for any loads of the kinds that its placements know. */
export function stateRunners(
  { recipe, placements }: FrameStructure,
  state: FrameState,
  factors: LoadFactors = { own: 1, live: 1 },
): Runner[] {
  const model = frameModel(recipe, state, placements);
  return placements.map((p) => runner(model, p, factors));
}

/** Whether every kind of load of these cases has its place across in the runners. */
export const knowsKinds = (runners: readonly Runner[], cases: readonly LoadCase[]): boolean =>
  cases.every(({ loads }) =>
    loads.every(({ cart }) => runners[0]!.placement.places.some((p) => p.kind === kindOf(cart))),
  );

/** Cases of the checks as they stand on a structure. */
export const casesOn = ({ recipe, clear_width_m }: FrameStructure, cases: readonly LoadCase[]): FrameCase[] =>
  frameCases(cases, recipe.stringers_y_m, clear_width_m);

/** Peaks of one state of a structure. */
export const statePeaks = (
  structure: FrameStructure,
  state: FrameState,
  cases: readonly LoadCase[],
  wanted?: readonly Peaked[],
): Peaks => peaksOf(stateRunners(structure, state), casesOn(structure, cases), wanted);
