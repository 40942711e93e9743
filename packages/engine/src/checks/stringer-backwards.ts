import { inches, showQuantity } from "../units/index.ts";
import { deeperSizes, type Frame } from "./frame.ts";
import type { CheckContext } from "./input.ts";
import { carriesText, type Rung } from "./ladder.ts";
import { governing, liveLeft, passAlone, passes } from "./stringer-demand.ts";
import { stringerModel, type StringerCheck, type StringerModel } from "./stringer-model.ts";
import type { Backwards } from "./types.ts";
import type { LoadCase } from "./walk-demand.ts";

/** A change of the recipe with the frame it would give. */
export interface Change {
  readonly words: string;
  readonly frame: Frame;
}

const PROBE = 1000;

/** The largest single load that passes anywhere on the frame [N]; 0 when the own weight already fails. */
export function largestSingleLoad(check: StringerCheck, model: StringerModel): number {
  const probe: LoadCase = {
    name: "probe",
    loads: [{ at: 0, weight: PROBE, cart: null }],
    cart: null,
    explain: () => undefined,
  };
  return (liveLeft(check, model) / governing(check, model, [probe]).live) * PROBE;
}

/** What the stringers do carry, and the smallest changes that would pass. */
export function stringerBackwards(
  check: StringerCheck,
  model: StringerModel,
  cases: readonly LoadCase[],
  rungs: readonly Rung[],
  context: CheckContext,
): Backwards {
  const single = largestSingleLoad(check, model);
  const less = `less than one person: one load of at most ${showQuantity(single, "N", context.units)}`;
  const { utilisation, peak } = governing(check, model, cases);
  const carries = carriesText(rungs, (load) => passes(check, model, load, peak !== null), less);
  return { carries, change: utilisation <= 1 ? null : smallestChange(check, model, cases, context) };
}

function smallestChange(
  check: StringerCheck,
  model: StringerModel,
  cases: readonly LoadCase[],
  context: CheckContext,
): string {
  const works = ({ frame }: Change): boolean => {
    const found = stringerModel(frame, context);
    if (!found.ok || !passAlone(check, found.value, cases)) return false;
    return governing(check, found.value, cases).utilisation <= 1;
  };
  const half = halfSpan(model.frame, context);
  const third = thirdStringer(model.frame, context);
  const deeper = deeperStringers(model.frame, context);
  const single = [
    deeper.find(works),
    third && works(third) ? third : undefined,
    works(half) ? half : undefined,
  ];
  const words = single.filter((c) => c !== undefined).map((c) => c.words);
  if (words.length > 0) return `Would pass with ${words.join(", or ")}.`;
  const both = deeperStringers(half.frame, context).find(works);
  if (both) return `Would pass only with ${half.words} and ${both.words} together.`;
  return "No ordinary change of this recipe passes: use shorter modules or lighter visits, or ask an engineer.";
}

/** A support at the middle: each half is taken as a simple span, which a stringer running through does not exceed. */
function halfSpan(frame: Frame, { units }: CheckContext): Change {
  const span_m = frame.span_m / 2;
  return {
    words: `a support at the middle (span ${showQuantity(span_m, "m", units)})`,
    frame: { ...frame, span_m, brace_m: Math.min(frame.brace_m, span_m) },
  };
}

function thirdStringer(frame: Frame, context: CheckContext): Change | null {
  const [a, b] = frame.positions_m;
  if (frame.positions_m.length !== 2 || a === undefined || b === undefined) return null;
  const dead_kg_m = frame.dead_kg_m + stringerMass(frame.size, context);
  return { words: "a third stringer", frame: { ...frame, positions_m: [a, (a + b) / 2, b], dead_kg_m } };
}

export function deeperStringers(frame: Frame, context: CheckContext): Change[] {
  const own = stringerMass(frame.size, context);
  return deeperSizes(context.tables.sizes, frame.size).map(({ id }) => ({
    words: `${id} stringers`,
    frame: {
      ...frame,
      size: id,
      dead_kg_m: frame.dead_kg_m + frame.positions_m.length * (stringerMass(id, context) - own),
    },
  }));
}

/** Mass of one stringer along its length, at the density of water: a round figure on the heavy side [kg/m]. */
function stringerMass(id: string, { tables }: CheckContext): number {
  const size = tables.sizes.find((s) => s.id === id);
  return size ? inches(size.thickness_in) * inches(size.width_in) * 1000 : 0;
}
