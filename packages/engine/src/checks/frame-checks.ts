import { recordValue, type Trace } from "../formula/index.ts";
import { rectangleArea, rectangleSectionModulus } from "../structure/index.ts";
import { STANDARD_GRAVITY, metres, newtons, showQuantity } from "../units/index.ts";
import { GRADE, STAFF_ACCESS } from "./cautions.ts";
import { forceDemand, momentDemand } from "./combination.ts";
import { momentCapacity, shearCapacity } from "./formulas.ts";
import { reachOf, type Frame } from "./frame.ts";
import { overhangTipping, ownRestoring } from "./frame-formulas.ts";
import { frameStructure } from "./frame-analysis.ts";
import { MOST_CORNER, cornerShare, damagedStates, type DamagedState } from "./frame-states.ts";
import { FRAME, recordPeak } from "./frame-working.ts";
import type { CheckContext } from "./input.ts";
import { cannotCheck, missingOf, notApplicable, resultOf, type Verdict } from "./result.ts";
import { pointLoad, settledBy } from "./rules.ts";
import { deeperStringers } from "./stringer-backwards.ts";
import type { FrameLabel } from "./stringer-check.ts";
import { situationOf } from "./stringer-model.ts";
import type { CheckBase, CheckResult } from "./types.ts";
import type { LoadCase } from "./walk-demand.ts";

const RULE = {
  id: "causey-robustness",
  title: "Project rule on a damaged walkway",
  at: "one corner of the supports settled, or one cross piece gone, carries what is asked of it until the next round",
  status: "project",
} as const;

const baseOf = (frame: Frame, label: FrameLabel): CheckBase => ({
  id: label.kind === "platform" ? "platform.damage" : `damage.${label.suffix}`,
  kind: label.kind === "platform" ? "platform" : "damage",
  title: `A support settled or a cross piece lost, ${frame.name}`,
  parts: label.parts,
  rule: RULE,
  caution: `Look for settled supports and loose cross pieces on every round; close a part that has either. ${STAFF_ACCESS} ${GRADE}`,
});

const worstOf = (states: readonly DamagedState[]): DamagedState =>
  states.reduce((a, b) => ((b.worst?.utilisation ?? Infinity) > (a.worst?.utilisation ?? Infinity) ? b : a));

/** Stringers of a part with one corner settled, and with one row of cross pieces gone: bending and shear. */
export function checkDamage(
  frame: Frame,
  cases: readonly LoadCase[],
  label: FrameLabel,
  context: CheckContext,
): CheckResult {
  const base = baseOf(frame, label);
  const states = damagedStates(frame, cases, context);
  if (!states.ok) return cannotCheck(base, missingOf(states.problems));
  const worst = worstOf(states.value);
  const names = states.value.map((s) => s.words).join(" or with ");
  const by = showQuantity(settledBy({}), "m", context.units);
  if (!worst.worst)
    return cannotCheck(base, [`a hold against tipping under "${worst.tips}" with ${worst.words}`]);
  const passes = worst.worst.utilisation <= 1;
  return resultOf(base, damageVerdict(worst, context), {
    carries: passes
      ? `Carries what is asked with ${names} (by ${by}).`
      : `Does not carry what is asked with ${worst.words}: close it until it is mended.`,
    change: passes ? null : changeOf(frame, cases, context),
  });
}

function damageVerdict({ worst, words }: DamagedState, context: CheckContext): Verdict {
  const { check, peak, model, held } = worst!;
  const { combination: c } = held;
  const working: Trace = [];
  settledBy({}, working);
  const live = peak.value - peak.own;
  const governs = `${peak.load.name}; ${words}`;
  const wanted = check === "bending" ? "fb" : "fv";
  const { fb, fv } = context.code.strength(model.member, situationOf(model.frame, c), working, [wanted]);
  if (check === "bending") {
    const M_d = recordPeak(working, "M_d", "Moment of own weight there", peak.own, "N*m", peak);
    const M_l = recordPeak(working, "M_l", "Largest live moment", live, "N*m", peak);
    const demand = momentDemand(c, M_d, M_l, working);
    const S = rectangleSectionModulus(model.section, working);
    return { unit: "N*m", demand, capacity: momentCapacity({ F: fb, S }, working), governs, working };
  }
  const V_d = recordPeak(working, "V_d", "Shear of own weight there", peak.own, "N", peak);
  const V_l = recordPeak(working, "V_l", "Largest live shear", live, "N", peak);
  const demand = forceDemand(c, V_d, V_l, working);
  const A = rectangleArea(model.section, working);
  return { unit: "N", demand, capacity: shearCapacity({ F: fv, A }, working), governs, working };
}

/** The next deeper stringer that passes with the same damage. */
function changeOf(frame: Frame, cases: readonly LoadCase[], context: CheckContext): string {
  const works = deeperStringers(frame, context).find((change) => {
    const states = damagedStates(change.frame, cases, context);
    return states.ok && states.value.every((s) => s.worst !== null && s.worst.utilisation <= 1);
  });
  if (works) return `Would pass with ${works.words}.`;
  return "No deeper stringer of the table passes: use shorter modules, or close a damaged part at once.";
}

/** Whether a load at the deck's edge can lift the far side of a module off its bearings. */
export function checkStands(
  frame: Frame,
  cases: readonly LoadCase[],
  label: FrameLabel,
  context: CheckContext,
): CheckResult {
  const base: CheckBase = {
    id: `stands.${label.suffix}`,
    kind: "damage",
    title: `Stays on its bearings under a load at the edge, ${frame.name}`,
    parts: label.parts,
    rule: { id: "statics", title: "Statics", at: "moments about the outer stringer", status: "computed" },
    caution: `Boards and mesh tread as a lever once they reach past the stringers. ${STAFF_ACCESS}`,
  };
  const outer = Math.max(...frame.positions_m.map(Math.abs));
  const reach = reachOf(frame.clear_width_m, null);
  if (reach <= outer)
    return notApplicable(base, "feet and wheels always stand between the outer stringers: nothing lifts");
  const out = frame.clear_width_m / 2 - outer;
  const feet = cases.map((c) =>
    c.area_pa === undefined
      ? { c, W: sumOfFeet(c, frame.span_m), e: reach - outer }
      : { c, W: c.area_pa * out * frame.span_m, e: out / 2 },
  );
  const worst = feet.reduce((a, b) => (b.W * b.e > a.W * a.e ? b : a));
  const working: Trace = [];
  worst.c.explain(working);
  const W = newtons(worst.W);
  const demand = overhangTipping({ W, e: metres(worst.e) }, working, worst.c.name);
  const G = newtons(frame.dead_kg_m * frame.span_m * STANDARD_GRAVITY);
  const capacity = ownRestoring({ G, y: metres(outer) }, working);
  const say = (v: number): string => showQuantity(v, "N", context.units);
  return resultOf(
    base,
    { unit: "N*m", demand, capacity, governs: worst.c.name, working },
    {
      carries: `Holds ${say(capacity / (reach - outer))} at the edge before its far side lifts.`,
      change:
        demand <= capacity
          ? null
          : `Would pass with stringers set ${showQuantity(reach, "m", context.units)} off the middle, or feet kept as near the middle as they stand now.`,
    },
  );
}

/** Feet of a case that fit on a length at once [N]. */
function sumOfFeet({ loads }: LoadCase, length_m: number): number {
  const feet = loads.filter((l) => l.cart === null);
  return Math.max(
    0,
    ...feet.map((first) =>
      feet.reduce((sum, l) => (l.at >= first.at && l.at - first.at <= length_m ? sum + l.weight : sum), 0),
    ),
  );
}

/** A single load at a corner of a platform, outside the sills under its edges, cross pieces hinged. */
export function checkCorner(
  frame: Frame,
  cases: readonly LoadCase[],
  label: FrameLabel,
  context: CheckContext,
): CheckResult {
  const base: CheckBase = {
    id: "platform.corner",
    kind: "platform",
    title: "Platform: a load at its corner",
    parts: label.parts,
    rule: RULE,
    caution: `Cross pieces are held by screws in end grain: what they hand on in bending is not counted. ${STAFF_ACCESS}`,
  };
  const structure = frameStructure(frame, cases, context);
  if (!structure || !frame.build?.platform_sill_m) return cannotCheck(base, ["the sills under its edges"]);
  if (!structure.ok) return cannotCheck(base, missingOf(structure.problems));
  const working: Trace = [];
  const demand = pointLoad({}, working);
  const share = cornerShare(structure.value, demand);
  const capacity = newtons(share * demand);
  recordValue(working, {
    id: "module.envelope",
    title: "Heaviest single load that the corner holds",
    symbol: "P_c",
    value: capacity,
    unit: "N",
    source: FRAME,
    how: share >= MOST_CORNER ? `at least ${MOST_CORNER} times what is asked` : "halving the range ten times",
    note: "cross pieces hinged, boards that run through tie the stringers",
  });
  const say = (v: number): string => showQuantity(v, "N", context.units);
  const full = { ...frame, build: { ...frame.build, platform_end_sill_m: frame.span_m } };
  const mended = frameStructure(full, cases, context);
  const sill = showQuantity(frame.span_m, "m", context.units);
  const isMended = mended?.ok === true && cornerShare(mended.value, demand) >= 1;
  const mend = isMended
    ? `Would pass with sills ${sill} long under the two edges that the platform's stringers end at, so that every stringer ends over one (edge_sill_mm of the kit's platform).`
    : "Needs a support under each corner.";
  return resultOf(
    base,
    { unit: "N", demand, capacity, governs: "one load at a corner", working },
    {
      carries: `Holds ${say(capacity)} at a corner before the far side lifts.`,
      change: demand <= capacity ? null : mend,
    },
  );
}
