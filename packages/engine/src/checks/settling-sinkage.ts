import { recordValue, type Trace } from "../formula/index.ts";
import { footPressure, footTilt, rigidFootTilt } from "../ground/index.ts";
import { metres, qty, showQuantity } from "../units/index.ts";
import { edgeFeet, EMPTY, type EdgeFeet } from "./foot-loads.ts";
import { shared } from "./ground-bearing.ts";
import { cannotCheck, notApplicable, resultOf } from "./result.ts";
import { against, fine, ruleOn, ruleText, type RuleSetting } from "./rule-setting.ts";
import { groupBy } from "./setting.ts";
import { settlingBase } from "./settling-base.ts";
import { leewayOf } from "./settling-leeway.ts";
import { SINK_SOURCE, sinkLaw, type SinkLaw } from "./sink-law.ts";
import type { PlanSoil, SoilJoint } from "./soil.ts";
import type { CheckResult } from "./types.ts";

/** Sinkage under the joint's load and tilt under a load off the middle, once for all joints of one load. */
export function sinkageChecks(s: RuleSetting, { joints }: PlanSoil): CheckResult[] {
  const { plan, tables } = s.setting.input;
  if (joints.length === 0) return [];
  const all = joints.map((j) => j.met.joint.id);
  const base = settlingBase("sinkage", "Sinkage and tilt under a load", all, SINK_SOURCE);
  const found = sinkLaw(plan.proof.ground.sinkage, tables.ground);
  if (found.kind === "missing") return [cannotCheck(base, [found.missing])];
  if (found.kind === "unfit") return [notApplicable(base, found.because)];
  const groups = [...groupBy(joints, (j) => j.word).values()];
  return groups.flatMap((group) => [sinkage(s, group, found.law), tilt(s, group, found.law)]);
}

const GOES_IN = "a sinkage: the law gives over 10 m or no stiffness for so small a foot, it goes right in";

/** Movement of the worst foot between nobody and the governing load, against what the support's height can make good. */
function sinkage(s: RuleSetting, group: readonly SoilJoint[], law: SinkLaw): CheckResult {
  const { units } = s.setting.context;
  const { plain, joint } = group[0]!;
  const { id, name, parts } = shared(group.map((g) => g.met.joint.id));
  const base = settlingBase(`sinkage.${id}`, `Sinkage under a load, ${name}`, parts, SINK_SOURCE);
  const working: Trace = [];
  plain.load.explain(working);
  const full = edgeFeet(plain.stance, plain.live, working).pressed;
  const empty = edgeFeet(plain.stance, EMPTY).pressed;
  const [a, b] = [metres(full.along_m), metres(full.across_m)];
  footPressure({ F: qty(full.load_n, "N"), a, b }, working);
  const loaded = law.sink(full, full.pressure_pa, working);
  const resting = law.sink(empty, empty.pressure_pa);
  if (loaded === null || resting === null) return cannotCheck(base, [GOES_IN]);
  const moved = Math.max(0, loaded - resting);
  recordValue(working, {
    id: "check.sinkage.movement",
    title: "Movement between nobody and this load",
    symbol: "z_l - z_0",
    value: moved,
    unit: "m",
    source: SINK_SOURCE,
    how: `sinkage with the load less ${showQuantity(resting, "m", units)} without it`,
  });
  const leeway = leewayOf(s.setting, joint.support, working);
  const carries = `On "${law.name}" it stands ${showQuantity(resting, "m", units)} deep and goes to ${showQuantity(loaded, "m", units)} under the load; ${leeway.words}.`;
  return resultOf(
    base,
    { unit: "m", demand: metres(moved), capacity: leeway.most, governs: plain.load.name, working },
    {
      carries,
      change: moved <= leeway.most ? null : "Needs larger feet, shorter modules or a lighter load on it.",
    },
  );
}

/** Slope across of a stiff support [1]; null where a foot goes right in or the law does not say. */
function slopeOf(law: SinkLaw, feet: EdgeFeet, trace: Trace): number | null {
  const { pressed, other, off_m } = feet;
  if (pressed.offset_m > 0) {
    const [down, up] = [law.sink(pressed, pressed.pressure_pa, trace), law.sink(other, other.pressure_pa)];
    return down === null || up === null ? null : (down - up) / (2 * pressed.offset_m);
  }
  if (!law.bekker || off_m >= pressed.across_m / 2) return null;
  const foot = { side_m: pressed.across_m, other_m: pressed.along_m };
  const found = footTilt(law.bekker, foot, pressed.load_n, off_m, trace);
  return found ? Math.tan(found.rotation) : null;
}

/** Cross slope of the deck while the load stands off the middle, against the profile's rule. */
function tilt(s: RuleSetting, group: readonly SoilJoint[], law: SinkLaw): CheckResult {
  const { plain } = group[0]!;
  const { id, name, parts } = shared(group.map((g) => g.met.joint.id));
  const base = settlingBase(
    `tilt.${id}`,
    `Cross slope under a load off the middle, ${name}`,
    parts,
    rigidFootTilt,
  );
  const working: Trace = [];
  plain.load.explain(working);
  const slope = slopeOf(law, edgeFeet(plain.stance, plain.live, working), working);
  if (slope === null)
    return cannotCheck(base, [
      "a tilt: on this ground the support goes in or over, or its law of sinkage has none",
    ]);
  recordValue(working, {
    id: "check.sinkage.slope",
    title: "Slope across the deck",
    symbol: "i",
    value: slope,
    unit: "1",
    source: rigidFootTilt,
    how: "difference of sinkage over the distance between",
  });
  const words = slope < 1e-4 ? "stays level" : `leans 1:${Math.round(1 / slope)}`;
  const rule = ruleOn(s, "cross-slope");
  if (!rule)
    return notApplicable(
      base,
      `it ${words} under ${plain.load.name}; the chosen profile has no rule on cross slope`,
    );
  const limits = against(s, rule, fine(slope), working);
  return resultOf(
    base,
    { unit: "1", ...limits, governs: plain.load.name, working },
    {
      carries: `It ${words} under the load; the rule: ${ruleText(s, rule)}.`,
      change:
        limits.demand <= limits.capacity
          ? null
          : "Needs feet farther apart, larger feet or a lighter load at the edge.",
    },
  );
}
