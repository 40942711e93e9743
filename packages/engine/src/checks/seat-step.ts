import { recordValue, type Trace } from "../formula/index.ts";
import { hasBase, type SupportKind } from "../kit/index.ts";
import { metres, qty, showQuantity, type Qty } from "../units/index.ts";
import { seatAt } from "./joint-checks.ts";
import { cartsOf } from "./ladder.ts";
import type { MetJoint } from "./plan-joints.ts";
import { notApplicable, resultOf } from "./result.ts";
import { ruleOn, ruleSettingOf, sourceOf } from "./rule-setting.ts";
import { settledBy } from "./rules.ts";
import { nominalSeat } from "./seat.ts";
import { seatsApart, tiltStep, tripLimitAda, tripLimitIso } from "./seat-formulas.ts";
import type { Setting } from "./setting.ts";
import type { CheckBase, CheckResult } from "./types.ts";

interface Limit {
  readonly value: Qty<"m">;
  readonly words: string;
  readonly rule: CheckBase["rule"];
  readonly record: (trace: Trace) => void;
}

/** The step that the plan's rules allow; without such a rule the common one of the plan's units. */
function limitOf(setting: Setting): Limit {
  const s = ruleSettingOf(setting);
  const rule = ruleOn(s, "step");
  if (!rule) {
    const common = setting.context.units === "us" ? tripLimitAda : tripLimitIso;
    const words =
      setting.context.units === "us" ? "the common limit for bevelled edges" : "the common limit for feet";
    return { value: common({}), words, rule: common.spec.source, record: (trace) => void common({}, trace) };
  }
  const source = sourceOf(s, rule);
  return {
    value: metres(rule.value),
    words: "the step of the plan's rules",
    rule: source,
    record: (trace) =>
      recordValue(trace, {
        id: `rule.${rule.id}`,
        title: rule.title,
        symbol: "h_t",
        value: rule.value,
        unit: "m",
        source,
        how: "as the rule gives it",
      }),
  };
}

/** Length of the longest foot along the walk: the shorter it is, the more a support tilts [m]. */
const footAlong = ({ feet }: SupportKind): number => Math.max(0, ...feet.map((f) => f.along_mm)) / 1000;

const CAUTION =
  "One end of the feet settles along the walk, the other stays. A support that sinks evenly takes both modules down with it and makes no step. Look at every joint on every round, and bevel what stands up.";

/** Step between two modules where a support has tilted along the walk, at the shortest foot in use. */
export function seatStepChecks(setting: Setting, joints: readonly MetJoint[]): CheckResult[] {
  const met = joints.filter(({ parts }) => parts.length > 1);
  const limit = limitOf(setting);
  const base: CheckBase = {
    id: "seat.step",
    kind: "seat",
    title: "Step at a joint whose support has settled at one end",
    parts: met.map((m) => m.joint.id),
    rule: limit.rule,
    caution: CAUTION,
  };
  if (met.length === 0) return [];
  const steps = met.flatMap((m) => {
    const seat = seatAt(setting, m);
    const a = footAlong(m.support);
    return seat.on === "sill" && !hasBase(m.support) && a > 0 ? [{ m, seat, a }] : [];
  });
  if (steps.length === 0)
    return [
      notApplicable(
        base,
        "where two parts meet, one lies on the catch board of the other, or on piles or floats that sink as one: both go down together",
      ),
    ];
  const found = steps.map((step) => ({ ...step, h: stepOf(step.seat, step.a) }));
  const worst = found.reduce((x, y) => (y.h > x.h ? y : x));
  const working: Trace = [];
  const demand = stepOf(worst.seat, worst.a, working);
  limit.record(working);
  const say = (v: number): string => showQuantity(v, "m", setting.context.units);
  const longer = (worst.a * demand) / limit.value;
  const governs = `"${worst.m.support.name}", feet ${say(worst.a)} along, one end ${say(settledBy({}))} lower`;
  const verdict = { unit: "m", demand, capacity: limit.value, governs, working } as const;
  return [
    resultOf(base, verdict, {
      carries: `Makes a step of ${say(demand)} (${limit.words}: ${say(limit.value)}).${wheelWords(setting, demand)}`,
      change:
        demand <= limit.value
          ? null
          : `Would pass with feet ${say(longer)} along the walk, or levelled again before one end is ${say((settledBy({}) * limit.value) / demand)} lower.`,
    }),
  ];
}

const stepOf = (seat: Parameters<typeof nominalSeat>[0], a: number, trace?: Trace): Qty<"m"> => {
  const d = seatsApart({ g: metres(seat.gap_m), s: nominalSeat(seat, trace) }, trace);
  return tiltStep({ s_c: settledBy({}, trace), d, a: metres(a) }, trace);
};

/** What the step is to a wheel: the slope over the length that it touches the deck by. */
function wheelWords(setting: Setting, step: number): string {
  const contact = Math.min(...cartsOf(setting.input.plan.visits).map((cart) => cart.wheel_contact_mm / 1000));
  if (!Number.isFinite(contact) || contact <= 0) return "";
  const say = (v: number): string => showQuantity(v, "m", setting.context.units);
  const share = qty(step / contact, "1");
  return share >= 1
    ? ` A wheel that touches the deck by ${say(contact)} must be lifted over it.`
    : ` A wheel that touches the deck by ${say(contact)} meets it as a slope of 1 in ${(1 / share).toFixed(1)}.`;
}
