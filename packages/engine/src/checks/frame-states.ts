import { frameModel, runner, standAt, type FrameState, type Peak } from "../module-frame/index.ts";
import type { Found } from "../codes/index.ts";
import { DomainError } from "../units/index.ts";
import type { Frame } from "./frame.ts";
import { frameStructure, statePeaks, type FrameStructure } from "./frame-analysis.ts";
import type { CheckContext } from "./input.ts";
import { settledBy } from "./rules.ts";
import { stringerModel, type Held, type StringerModel } from "./stringer-model.ts";
import { utilisationOf } from "./stringer-demand.ts";
import type { LoadCase } from "./walk-demand.ts";

/** One way in which a part may be damaged in use, with what it then asks of its stringers. */
export interface DamagedState {
  readonly state: FrameState;
  readonly words: string;
  /** The worse of bending and shear; null when the part tips. */
  readonly worst: {
    readonly check: "bending" | "shear";
    readonly peak: Peak;
    readonly model: StringerModel;
    readonly utilisation: number;
    readonly held: Held;
  } | null;
  /** The load that it tips under. */
  readonly tips: string | null;
}

/** Free length of a stringer once a row of cross pieces is gone [m]: boards screwed down hold its edge as before. */
function braceWithout(frame: Frame, lost: number): number {
  if (frame.has_boards) return frame.brace_m;
  const places = frame.build!.rows.map((r) => r.x_m).filter((_, i) => i !== lost);
  const all = [0, ...places, frame.span_m].sort((a, b) => a - b);
  return Math.max(frame.brace_m, ...all.slice(1).map((x, i) => x - all[i]!));
}

/**
 * A part with one corner of its supports settled, and with its middle row of cross pieces gone, under the loads it
 * is meant for: its joints stiff, since hinged ones leave every stringer to itself as in the sound part.
 */
export function damagedStates(
  frame: Frame,
  cases: readonly LoadCase[],
  context: CheckContext,
): Found<DamagedState[]> {
  const structure = frameStructure(frame, cases, context);
  if (!structure) throw new DomainError("frame-without-build", { frame: frame.name });
  if (!structure.ok) return structure;
  const rows = structure.value.recipe.rows.length;
  const by_m = settledBy({});
  const middle = Math.floor(rows / 2);
  const states: (readonly [FrameState, string, Frame])[] = [
    [{ name: "one corner settled", ends: "stiff", settled: { rest: 0, by_m } }, "one corner settled", frame],
  ];
  if (rows > 2)
    states.push([
      { name: "middle cross piece lost", ends: "stiff", lost_row: middle },
      "its middle cross piece lost",
      { ...frame, brace_m: braceWithout(frame, middle) },
    ]);
  const value: DamagedState[] = [];
  for (const [state, words, as] of states) {
    const model = stringerModel(as, context);
    if (!model.ok) return { ok: false, problems: model.problems };
    value.push(damaged(structure.value, state, words, cases, model.value));
  }
  return { ok: true, value };
}

function damaged(
  structure: FrameStructure,
  state: FrameState,
  words: string,
  cases: readonly LoadCase[],
  model: StringerModel,
): DamagedState {
  const { largest, tipped } = statePeaks(structure, state, cases, ["moment", "shear"]);
  if (tipped) return { state, words, worst: null, tips: tipped.load.name };
  const found = (["bending", "shear"] as const).map((check) => {
    const peak = largest[check === "bending" ? "moment" : "shear"]!;
    return { check, peak, model, ...utilisationOf(check, model, peak.own, peak.value - peak.own) };
  });
  const worst = found.reduce((a, b) => (b.utilisation > a.utilisation ? b : a));
  return { state, words, worst, tips: null };
}

/** Times the asked load that is tried at most: a corner that holds so much needs no nearer figure. */
export const MOST_CORNER = 8;
const HALVINGS = 10;

/**
 * The heaviest single load that a part holds at its corners without tipping, cross pieces hinged, as a share of the
 * load given; `MOST_CORNER` at most. By symmetry across, the two ends of the outermost stringer are tried.
 */
export function cornerShare(structure: FrameStructure, weight_n: number): number {
  const { recipe, placements } = structure;
  const placement = placements[0]!;
  const model = frameModel(recipe, { name: "hinged", ends: "hinged" }, [placement]);
  const placed = runner(model, placement, { own: 1, live: 1 });
  const holds = (share: number): boolean =>
    [0, recipe.length_m].every((x_m) => {
      const load = { name: "corner", loads: [{ at_m: 0, weight_n: weight_n * share, kind: "feet" }] };
      return placed.stand(standAt(load, x_m, 1, recipe.length_m)) !== null;
    });
  if (holds(MOST_CORNER)) return MOST_CORNER;
  let [low, high] = [0, MOST_CORNER];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}
