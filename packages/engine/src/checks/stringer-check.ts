import type { Found } from "../codes/index.ts";
import type { Source } from "../formula/index.ts";
import { showQuantity } from "../units/index.ts";
import { GRADE, STAFF_ACCESS } from "./cautions.ts";
import { reachOf, type Frame } from "./frame.ts";
import type { CheckContext } from "./input.ts";
import { cartsOf, ladderOf, type Rung } from "./ladder.ts";
import { cannotCheck, missingOf, resultOf } from "./result.ts";
import { deflectionLimit } from "./rules.ts";
import { stringerBackwards } from "./stringer-backwards.ts";
import { stringerVerdict } from "./stringer.ts";
import { stringerModel, type StringerCheck, type StringerModel } from "./stringer-model.ts";
import type { CheckBase, CheckKind, CheckResult } from "./types.ts";
import { casesOf, type LoadCase, type WalkDemand } from "./walk-demand.ts";

/** Id, kind and parts under which a frame's results appear. */
export interface FrameLabel {
  readonly kind: "module" | "platform";
  /** Tells frames apart in the id: the length in millimetres, or nothing. */
  readonly suffix: string;
  readonly parts: readonly string[];
}

const ruleOf = (check: StringerCheck, { code }: CheckContext): Source =>
  check === "deflection" ? deflectionLimit.spec.source : code.rule(check);

const kindOf = (check: StringerCheck, label: FrameLabel): CheckKind =>
  label.kind === "platform" ? "platform" : `stringer-${check}`;

const baseOf = (check: StringerCheck, frame: Frame, label: FrameLabel, context: CheckContext): CheckBase => ({
  id: label.kind === "platform" ? `platform.stringer-${check}` : `stringer-${check}.${label.suffix}`,
  kind: kindOf(check, label),
  title: `Stringer ${check}, ${frame.name}`,
  parts: label.parts,
  rule: ruleOf(check, context),
  caution: `${STAFF_ACCESS} ${GRADE}`,
});

/** What keeps a cart off the deck, in words; nothing when all fit. */
export function cartsThatDoNotFit(
  clear_width_m: number,
  demands: readonly WalkDemand[],
  { units }: CheckContext,
): string[] {
  return cartsOf(demands)
    .filter((cart) => reachOf(clear_width_m, cart) < -1e-9)
    .map((cart) => {
      const needed = (cart.track_mm + cart.wheel_width_mm) / 1000;
      return `a deck wide enough for ${cart.name}: its wheels need ${showQuantity(needed, "m", units)}, clear are ${showQuantity(clear_width_m, "m", units)}`;
    });
}

/** What all checks of one frame's stringers share: its model is worked out once. */
export interface StringerCases {
  readonly frame: Frame;
  readonly model: Found<StringerModel>;
  readonly cases: readonly LoadCase[];
  readonly rungs: readonly Rung[];
}

/**
 * Bending, shear or live deflection of the stringers of one part under every visit and one single load.
 *
 * Walkers keep 75 mm from the edge of the clear deck, wheels stand as far out as the deck allows; each stringer
 * takes its share by the lever rule, the train of loads stands at its worst place along the span; where the frame's
 * build is known its cross pieces are taken as stiff too, and the worse of both counts. Wet service, load duration
 * ten years, the pressed edge held at the cross pieces only.
 */
export function checkStringers(
  check: StringerCheck,
  { frame, model, cases, rungs }: StringerCases,
  demands: readonly WalkDemand[],
  label: FrameLabel,
  context: CheckContext,
): CheckResult {
  const base = baseOf(check, frame, label, context);
  const misfits = cartsThatDoNotFit(frame.clear_width_m, demands, context);
  if (misfits.length > 0) return cannotCheck(base, misfits);
  if (!model.ok) return cannotCheck(base, missingOf(model.problems));
  const verdict = stringerVerdict(check, model.value, cases, context);
  return resultOf(base, verdict, stringerBackwards(check, model.value, cases, rungs, context));
}

/** The same for a frame by itself, outside a plan. */
export const checkStringer = (
  check: StringerCheck,
  frame: Frame,
  demands: readonly WalkDemand[],
  label: FrameLabel,
  context: CheckContext,
): CheckResult =>
  checkStringers(
    check,
    {
      frame,
      model: stringerModel(frame, context),
      cases: casesOf(demands, context.units),
      rungs: ladderOf(demands, context.units),
    },
    demands,
    label,
    context,
  );
