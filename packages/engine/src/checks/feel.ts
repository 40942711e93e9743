import { recordValue, type Source, type Trace } from "../formula/index.ts";
import { rectangleInertia, recordTrain, uniformDeflection } from "../structure/index.ts";
import { STANDARD_GRAVITY, metres, qty, showQuantity, type Qty } from "../units/index.ts";
import { areaSteps } from "./area-load.ts";
import { firstFrequency, lastingSag, leastFrequency } from "./feel-formulas.ts";
import { allowedDeflection, deadLoad } from "./formulas.ts";
import { deadShare } from "./frame.ts";
import { recordPeak } from "./frame-working.ts";
import type { CheckContext } from "./input.ts";
import type { ModuleGroup } from "./plan-frames.ts";
import { cannotCheck, missingOf, resultOf } from "./result.ts";
import type { Setting } from "./setting.ts";
import { deeperStringers } from "./stringer-backwards.ts";
import { governing } from "./stringer-demand.ts";
import { situationOf, stringerModel, type StringerModel } from "./stringer-model.ts";
import type { CheckBase, CheckResult } from "./types.ts";
import type { LoadCase } from "./walk-demand.ts";

const PREFERENCE =
  "A preference, not a matter of safety: strength is held by other checks, and the owner may accept a livelier walk.";

const baseOf = (
  what: "bounce" | "sag",
  title: string,
  { frame, length_mm, parts }: ModuleGroup,
  rule: Source,
): CheckBase => ({
  id: `feel.${what}.${Math.round(length_mm)}mm`,
  kind: "feel",
  title: `${title}, ${frame.name}`,
  parts: parts.map((p) => p.id),
  rule,
  caution:
    what === "bounce"
      ? `${PREFERENCE} Worked out for the bare module on stiff supports: people on it and soft ground make it slower, nearer to their own 1.6 to 2.4 steps a second.`
      : `${PREFERENCE} Own weight creeps for as long as the walkway lies wet; people and carts come and go.`,
});

/** How each length of module feels underfoot: how lively it is, and how far it hangs after years. */
export const feelChecks = (setting: Setting, groups: readonly ModuleGroup[]): CheckResult[] =>
  groups.flatMap((group) => {
    const model = setting.modelOf(group.frame);
    const bounce = baseOf("bounce", "Liveliness (preference)", group, leastFrequency.spec.source);
    const { limit } = finalLimit(setting.context);
    const sag = baseOf("sag", "Lasting deflection (preference)", group, limit.source);
    if (!model.ok) return [bounce, sag].map((base) => cannotCheck(base, missingOf(model.problems)));
    return [
      checkBounce(bounce, model.value, setting.context),
      checkSag(sag, model.value, setting.cases, setting.context),
    ];
  });

const loadOf = ({ frame }: StringerModel, trace?: Trace): Qty<"N/m"> =>
  deadLoad({ q: qty(frame.dead_kg_m, "kg/m"), k: qty(deadShare(frame), "1") }, trace, "soaked part");

function frequencyOf(model: StringerModel, trace?: Trace): Qty<"Hz"> {
  const I = rectangleInertia(model.section, trace);
  const w = loadOf(model, trace);
  return firstFrequency({ L: metres(model.frame.span_m), E: model.held[0]!.strengths.e, I, w }, trace);
}

function checkBounce(base: CheckBase, model: StringerModel, context: CheckContext): CheckResult {
  const working: Trace = [];
  const demand = leastFrequency({}, working);
  const first = model.held[0]!;
  context.code.strength(model.member, situationOf(model.frame, first.combination), working, ["e"]);
  const capacity = frequencyOf(model, working);
  const say = (v: number): string => showQuantity(v, "Hz", context.units);
  const governs = "the bare module, soaked";
  const verdict = { unit: "Hz", demand, capacity, governs, working } as const;
  return resultOf(base, verdict, {
    carries: `Beats ${say(capacity)} when struck; people walk at 1.6 to 2.4 Hz, and ${say(demand)} or more keeps clear of that.`,
    change: demand <= capacity ? null : changeOf(model, context, (other) => frequencyOf(other) >= demand),
  });
}

function changeOf(
  { frame }: StringerModel,
  context: CheckContext,
  works: (model: StringerModel) => boolean,
): string {
  const found = deeperStringers(frame, context).find((change) => {
    const model = stringerModel(change.frame, context);
    return model.ok && works(model.value);
  });
  return found
    ? `Would pass with ${found.words}.`
    : "No deeper stringer of the table passes: use shorter modules, or accept it.";
}

/** The laxest deflection after creep that the code names. */
function finalLimit({ code }: CheckContext) {
  const limit = code.deflection_limits.find((l) => l.of === "final")!;
  return { limit, n: limit.span_over[0] };
}

interface Sag {
  readonly load: LoadCase;
  readonly demand: Qty<"m">;
}

/** Deflection of own weight and of the worst case, each with its creep. */
function sagOf(model: StringerModel, cases: readonly LoadCase[], context: CheckContext, trace?: Trace): Sag {
  const worst = governing("deflection", model, cases);
  const I = rectangleInertia(model.section, trace);
  const L = metres(model.frame.span_m);
  const d_G = uniformDeflection({ w: loadOf(model, trace), L, E: model.held[0]!.strengths.e, I }, trace);
  const d_Q = qty(worst.live, "m");
  if (trace) {
    worst.load.explain(trace);
    const title = "Largest live deflection";
    if (worst.peak) recordPeak(trace, "d_Q", title, d_Q, "m", worst.peak);
    else if (worst.load.area_pa !== undefined) areaSteps("deflection", model, worst, trace);
    else recordTrain(trace, "d_Q", title, d_Q, "m", worst.load.name);
  }
  const { dead: psi_G, live: psi_Q } = context.code.creep(true, trace);
  return { load: worst.load, demand: lastingSag({ psi_G, d_G, psi_Q, d_Q }, trace) };
}

function checkSag(
  base: CheckBase,
  model: StringerModel,
  cases: readonly LoadCase[],
  context: CheckContext,
): CheckResult {
  const { limit, n } = finalLimit(context);
  const working: Trace = [];
  const { load, demand } = sagOf(model, cases, context, working);
  recordValue(working, {
    id: "feel.final-limit",
    title: `${limit.title}: span over this`,
    symbol: "n_d",
    value: n,
    unit: "1",
    source: limit.source,
    how: "the laxest that the code names, a preference",
  });
  const allowed = (m: StringerModel, trace?: Trace) =>
    allowedDeflection({ L: metres(m.frame.span_m), n: qty(n, "1") }, trace);
  const capacity = allowed(model, working);
  const own = model.frame.dead_kg_m * STANDARD_GRAVITY * model.frame.span_m;
  const say = (v: number): string => showQuantity(v, "m", context.units);
  const governs = `${load.name}, after creep`;
  return resultOf(
    base,
    { unit: "m", demand, capacity, governs, working },
    {
      carries: `Hangs ${say(demand)} at its middle in the end, under ${showQuantity(own, "N", context.units)} of its own and what is asked; L/${n} is ${say(capacity)}.`,
      change:
        demand <= capacity
          ? null
          : changeOf(model, context, (m) => sagOf(m, cases, context).demand <= allowed(m)),
    },
  );
}
