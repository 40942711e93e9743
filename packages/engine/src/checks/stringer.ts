import type { Found, Member, Situation, Strengths } from "../codes/index.ts";
import { recordValue, type Trace } from "../formula/index.ts";
import {
  largestDeflection,
  largestMoment,
  largestReaction,
  recordTrain,
  rectangleArea,
  rectangleInertia,
  rectangleSectionModulus,
  uniformMoment,
  uniformShear,
  type Train,
} from "../structure/index.ts";
import { inches, metres, qty, type Qty } from "../units/index.ts";
import {
  allowedDeflection,
  deadLoad,
  momentCapacity,
  shearCapacity,
  totalForce,
  totalMoment,
} from "./formulas.ts";
import { deadShare, distinctStringers, isRepetitive, shareOn, shareTable, type Frame } from "./frame.ts";
import type { CheckContext } from "./input.ts";
import type { Verdict } from "./result.ts";
import { deflectionLimit } from "./rules.ts";
import type { LoadCase } from "./walk-demand.ts";

export type StringerCheck = "bending" | "shear" | "deflection";

/** A frame with its strengths and section worked out once. */
export interface StringerModel {
  readonly frame: Frame;
  readonly member: Member;
  readonly strengths: Strengths;
  readonly section: { readonly b: Qty<"m">; readonly d: Qty<"m"> };
  readonly share: ReturnType<typeof shareTable>;
  /** Dead demand and capacity of each check. */
  readonly dead: Readonly<Record<StringerCheck, number>>;
  readonly capacity: Readonly<Record<StringerCheck, number>>;
  readonly stiffness: number;
}

export const situationOf = (frame: Frame): Situation => ({
  use: "edge",
  wet: true,
  incised: frame.lumber.incised,
  repetitive: isRepetitive(frame),
  duration: "ten-years",
  unbraced_m: frame.brace_m,
});

/** Looks up the timber and works out what does not depend on the load. */
export function stringerModel(frame: Frame, { tables, code }: CheckContext): Found<StringerModel> {
  const { species, grade } = frame.lumber;
  const found = code.member(tables, species, grade, frame.size);
  if (!found.ok) return found;
  const strengths = code.strength(found.value, situationOf(frame));
  const { size } = found.value;
  const section = { b: inches(size.thickness_in), d: inches(size.width_in) };
  const L = metres(frame.span_m);
  const w = deadLoad({ q: qty(frame.dead_kg_m, "kg/m"), k: qty(deadShare(frame), "1") });
  return {
    ok: true,
    value: {
      frame,
      member: found.value,
      strengths,
      section,
      share: shareTable(frame),
      dead: { bending: uniformMoment({ w, L }), shear: uniformShear({ w, L }), deflection: 0 },
      capacity: {
        bending: momentCapacity({ F: strengths.fb, S: rectangleSectionModulus(section) }),
        shear: shearCapacity({ F: strengths.fv, A: rectangleArea(section) }),
        deflection: allowedDeflection({ L, n: deflectionLimit({}) }),
      },
      stiffness: strengths.e * rectangleInertia(section),
    },
  };
}

const trainOn = ({ share }: StringerModel, stringer: number, { loads }: LoadCase): Train =>
  loads.map((load) => ({ at: load.at, weight: load.weight * share(stringer, load) }));

/** Live demand on one stringer [N*m, N or m]. */
export function liveDemand(
  check: StringerCheck,
  model: StringerModel,
  stringer: number,
  load: LoadCase,
): number {
  const train = trainOn(model, stringer, load);
  const span = model.frame.span_m;
  if (check === "bending") return largestMoment(train, span).value;
  if (check === "shear") return largestReaction(train, span).value;
  return largestDeflection(train, span).value / model.stiffness;
}

export interface Governing {
  readonly load: LoadCase;
  readonly stringer: number;
  readonly demand: number;
  readonly utilisation: number;
}

/** The case and the stringer with the largest utilisation. */
export function governing(check: StringerCheck, model: StringerModel, cases: readonly LoadCase[]): Governing {
  let worst: Governing | undefined;
  const capacity = model.capacity[check];
  for (const load of cases)
    for (const stringer of distinctStringers(model.frame)) {
      const demand = model.dead[check] + liveDemand(check, model, stringer, load);
      const utilisation = capacity > 0 ? demand / capacity : Infinity;
      if (!worst || demand > worst.demand) worst = { load, stringer, demand, utilisation };
    }
  return worst!;
}

/** Whether one load passes on every stringer. */
export const passes = (check: StringerCheck, model: StringerModel, load: LoadCase): boolean =>
  governing(check, model, [load]).utilisation <= 1;

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
  const wanted = { bending: "fb", shear: "fv", deflection: "e" } as const;
  const strengths = context.code.strength(model.member, situationOf(model.frame), working, [wanted[check]]);
  const governs = worst.load.name;
  const steps = { bending: bendingSteps, shear: shearSteps, deflection: deflectionSteps }[check];
  return { ...steps(model, strengths, worst, working), governs, working };
}

type Steps = Omit<Verdict, "governs" | "working">;

function recordSpan(model: StringerModel, { load, stringer }: Governing, trace: Trace): void {
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

function deadSteps(model: StringerModel, trace: Trace): { w: Qty<"N/m">; L: Qty<"m"> } {
  const k = qty(deadShare(model.frame), "1");
  const w = deadLoad({ q: qty(model.frame.dead_kg_m, "kg/m"), k }, trace, "soaked part");
  return { w, L: metres(model.frame.span_m) };
}

function bendingSteps(model: StringerModel, { fb }: Strengths, worst: Governing, trace: Trace): Steps {
  const M_d = uniformMoment(deadSteps(model, trace), trace);
  const M_l = qty(worst.demand - model.dead.bending, "N*m");
  recordTrain(trace, "M_l", "Largest live moment", M_l, "N*m", worst.load.name);
  const demand = totalMoment({ M_d, M_l }, trace);
  const S = rectangleSectionModulus(model.section, trace);
  return { unit: "N*m", demand, capacity: momentCapacity({ F: fb, S }, trace) };
}

function shearSteps(model: StringerModel, { fv }: Strengths, worst: Governing, trace: Trace): Steps {
  const V_d = uniformShear(deadSteps(model, trace), trace);
  const V_l = qty(worst.demand - model.dead.shear, "N");
  recordTrain(trace, "V_l", "Largest live end shear", V_l, "N", worst.load.name);
  const demand = totalForce({ V_d, V_l }, trace);
  const A = rectangleArea(model.section, trace);
  return { unit: "N", demand, capacity: shearCapacity({ F: fv, A }, trace) };
}

function deflectionSteps(model: StringerModel, _s: Strengths, worst: Governing, trace: Trace): Steps {
  rectangleInertia(model.section, trace);
  const demand = qty(worst.demand, "m");
  recordTrain(trace, "d", "Largest live deflection", demand, "m", worst.load.name);
  const limit = { L: metres(model.frame.span_m), n: deflectionLimit({}, trace) };
  return { unit: "m", demand, capacity: allowedDeflection(limit, trace) };
}
