import type { Strengths } from "../codes/index.ts";
import { recordValue, type Trace } from "../formula/index.ts";
import {
  recordTrain,
  rectangleArea,
  rectangleInertia,
  rectangleSectionModulus,
  uniformMoment,
  uniformShear,
} from "../structure/index.ts";
import { metres, qty, type Qty } from "../units/index.ts";
import { forceDemand, momentDemand } from "./combination.ts";
import { allowedDeflection, deadLoad, momentCapacity, shearCapacity } from "./formulas.ts";
import { deadShare, shareOn } from "./frame.ts";
import { recordPeak } from "./frame-working.ts";
import type { CheckContext } from "./input.ts";
import type { Verdict } from "./result.ts";
import { areaSteps, recordLimit } from "./area-load.ts";
import { governing, type Governing } from "./stringer-demand.ts";
import { situationOf, type StringerCheck, type StringerModel } from "./stringer-model.ts";
import type { LoadCase } from "./walk-demand.ts";

/** The verdict under the governing case, with its whole working. */
export function stringerVerdict(
  check: StringerCheck,
  model: StringerModel,
  cases: readonly LoadCase[],
  context: CheckContext,
): Verdict {
  const worst = governing(check, model, cases);
  const working: Trace = [];
  recordSpan(model, worst, working);
  worst.load.explain(working);
  if (check === "bending") recordBrace(model, working);
  const wanted = { bending: "fb", shear: "fv", deflection: "e" } as const;
  const situation = situationOf(model.frame, worst.held.combination);
  const strengths = context.code.strength(model.member, situation, working, [wanted[check]]);
  const governs = worst.peak ? `${worst.load.name}; cross pieces taken as stiff` : worst.load.name;
  const steps = { bending: bendingSteps, shear: shearSteps, deflection: deflectionSteps }[check];
  return { ...steps(model, strengths, worst, working), governs, working };
}

type Steps = Omit<Verdict, "governs" | "working">;

function recordSpan(model: StringerModel, { load, stringer, peak }: Governing, trace: Trace): void {
  const source = { id: "causey-checks", title: "Project decision on checks", status: "project" } as const;
  const { frame } = model;
  recordValue(trace, {
    id: "check.span",
    title: "Span of the stringer",
    symbol: "L",
    value: frame.span_m,
    unit: "m",
    source: { ...source, at: "the whole body length, nothing taken off for the seats" },
    how: "as laid",
  });
  if (peak || load.area_pa !== undefined) return;
  for (const cart of new Set(load.loads.map((l) => l.cart))) {
    const { share, at } = shareOn(frame, stringer, cart);
    recordValue(trace, {
      id: "structure.stringer-shares",
      title: cart ? `Share of the ${cart.name} on the stringer` : "Share of a walker on the stringer",
      symbol: cart ? "k_c" : "k_w",
      value: share,
      unit: "1",
      source: { id: "lever-rule", title: "Lever rule: statics of a simple cross piece", status: "computed" },
      how: `lever rule, standing ${Math.abs(at * 1000).toFixed(0)} mm off the middle`,
    });
  }
}

/** What keeps the pressed edge from bending out sideways; the factor for it follows in the strength's own lines. */
function recordBrace({ frame }: StringerModel, trace: Trace): void {
  recordValue(trace, {
    id: "check.brace",
    title: "Free length of the stringer's upper edge against bending out sideways",
    symbol: "lu",
    value: frame.brace_m,
    unit: "m",
    source: {
      id: "causey-checks",
      title: "Project decision on checks",
      at: "longest way between two rows of cross pieces; the deck is not counted on",
      status: "project",
    },
    how: "from the places of the cross pieces",
  });
}

function deadSteps(model: StringerModel, trace: Trace): { w: Qty<"N/m">; L: Qty<"m"> } {
  const k = qty(deadShare(model.frame), "1");
  const w = deadLoad({ q: qty(model.frame.dead_kg_m, "kg/m"), k }, trace, "soaked part");
  return { w, L: metres(model.frame.span_m) };
}

function bendingSteps(model: StringerModel, { fb }: Strengths, worst: Governing, trace: Trace): Steps {
  const M_d = worst.peak
    ? recordPeak(trace, "M_d", "Moment of own weight there", worst.dead, "N*m", worst.peak)
    : uniformMoment(deadSteps(model, trace), trace);
  const M_l = qty(worst.live, "N*m");
  if (worst.peak) recordPeak(trace, "M_l", "Largest live moment in the frame", M_l, "N*m", worst.peak);
  else if (worst.load.area_pa !== undefined) areaSteps("bending", model, worst, trace);
  else recordTrain(trace, "M_l", "Largest live moment", M_l, "N*m", worst.load.name);
  const demand = momentDemand(worst.held.combination, M_d, M_l, trace);
  const S = rectangleSectionModulus(model.section, trace);
  return { unit: "N*m", demand, capacity: momentCapacity({ F: fb, S }, trace) };
}

function shearSteps(model: StringerModel, { fv }: Strengths, worst: Governing, trace: Trace): Steps {
  const V_d = worst.peak
    ? recordPeak(trace, "V_d", "Shear of own weight there", worst.dead, "N", worst.peak)
    : uniformShear(deadSteps(model, trace), trace);
  const V_l = qty(worst.live, "N");
  if (worst.peak) recordPeak(trace, "V_l", "Largest live shear in the frame", V_l, "N", worst.peak);
  else if (worst.load.area_pa !== undefined) areaSteps("shear", model, worst, trace);
  else recordTrain(trace, "V_l", "Largest live end shear", V_l, "N", worst.load.name);
  const demand = forceDemand(worst.held.combination, V_d, V_l, trace);
  const A = rectangleArea(model.section, trace);
  return { unit: "N", demand, capacity: shearCapacity({ F: fv, A }, trace) };
}

function deflectionSteps(model: StringerModel, _s: Strengths, worst: Governing, trace: Trace): Steps {
  rectangleInertia(model.section, trace);
  const demand = qty(worst.live, "m");
  if (worst.peak) recordPeak(trace, "d", "Largest live deflection in the frame", demand, "m", worst.peak);
  else if (worst.load.area_pa !== undefined) areaSteps("deflection", model, worst, trace);
  else recordTrain(trace, "d", "Largest live deflection", demand, "m", worst.load.name);
  const limit = { L: metres(model.frame.span_m), n: recordLimit(worst.load, trace) };
  return { unit: "m", demand, capacity: allowedDeflection(limit, trace) };
}
