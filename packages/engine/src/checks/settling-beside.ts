import { footBeside, walkingHigh, walkingLow, walkingPressure } from "../ground/index.ts";
import { pascals, showQuantity } from "../units/index.ts";
import { MISSING_STRENGTH } from "./ground-strength.ts";
import { cannotCheck, notApplicable } from "./result.ts";
import type { Setting } from "./setting.ts";
import { settlingBase } from "./settling-base.ts";
import { sinkLaw } from "./sink-law.ts";
import { isBanded, type PlanSoil } from "./soil.ts";
import type { CheckResult } from "./types.ts";

/** What the walkway spares: a walking foot on the weakest ground beside it. Words to compare, never a verdict. */
export function besideCheck({ input, context }: Setting, { joints }: PlanSoil): CheckResult[] {
  const parts = joints.map((j) => j.met.joint.id);
  if (parts.length === 0) return [];
  const base = settlingBase("beside", "A foot beside the walkway, to compare", parts, walkingPressure);
  const banded = joints.filter(isBanded);
  if (banded.length === 0) return [cannotCheck(base, [MISSING_STRENGTH])];
  const weakest = banded.reduce((a, b) => (b.band.su_pa.median < a.band.su_pa.median ? b : a));
  const found = sinkLaw(input.plan.proof.ground.sinkage, input.tables.ground);
  const law = found.kind === "law" ? found.law.bekker : null;
  const foot = footBeside(pascals(weakest.band.su_pa.median), law);
  const show = (pa: number): string => showQuantity(pa, "Pa", context.units);
  const most = Math.max(...joints.map((j) => j.plain.pressure_pa));
  const words = [
    `at ${weakest.met.joint.id}, where the ground is weakest, a walking foot presses with ${show(walkingLow({}))} to ${show(walkingHigh({}))} and the ground carries ${show(foot.capacity_pa)} under it`,
    `the walkway presses with at most ${show(most)}`,
  ];
  const depth =
    foot.depth_m === null && law === null
      ? " How deep is not known: no row of pressure and sinkage is chosen that would say."
      : "";
  return [notApplicable(base, `${words.join("; ")}. ${foot.words}${depth}`)];
}
