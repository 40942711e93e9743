import type { Calculation, JsonObject } from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { frameFields, frameFrom } from "./frame-input.ts";
import { demandFields, demandFrom, lumberFields, number, optional } from "./method-fields.ts";
import { checkMethod } from "./method-results.ts";
import { layingTolerance, leastSeat, pointLoad } from "./rules.ts";
import { checkSeatBearing, checkSeatLength, type SeatKind } from "./seat.ts";
import { checkStringer } from "./stringer-check.ts";
import { stringerModel } from "./stringer-model.ts";
import { casesOf } from "./walk-demand.ts";

const platformCalculation = checkMethod(
  {
    id: "check.platform",
    title: "Check of the stringers of a platform",
    inputs: [...lumberFields, ...frameFields, ...demandFields],
    validity:
      "Platform carried at two opposite edges, everyone of the visit on it, wet service; tipping at a corner is not checked.",
    sources: [pointLoad.spec.source],
  },
  (input, context) => {
    const frame = { ...frameFrom(input, context), name: "platform" };
    const { species, grade } = frame.lumber;
    const member = context.code.member(context.tables, species, grade, frame.size);
    if (!member.ok) return { problems: member.problems };
    const label = { kind: "platform", suffix: "", parts: [] } as const;
    return (["bending", "shear", "deflection"] as const).map((check) =>
      checkStringer(check, frame, [demandFrom(input)], label, context),
    );
  },
);

const seatFrom = (input: JsonObject): SeatKind => {
  const gap_m = (input["joint_gap_mm"] as number) / 1000;
  const projection = input["projection_mm"] as number | undefined;
  const ends = {
    length_m: (input["span_mm"] as number) / 1000,
    grade: (input["slope"] as number | undefined) ?? 0,
  };
  return projection === undefined
    ? { on: "sill", width_m: (input["sill_width_mm"] as number) / 1000, gap_m, ...ends }
    : { on: "catch-board", projection_m: projection / 1000, gap_m, ...ends };
};

const seatCalculation = checkMethod(
  {
    id: "check.seat",
    title: "Check of the seat of a module end and its bearing on the sill",
    inputs: [
      ...lumberFields,
      ...frameFields,
      number("sill_width_mm", "Width of the sill along the walkway", 1, 2000),
      number("joint_gap_mm", "Joint gap", 0, 500),
      optional(number("projection_mm", "Projection of a catch board, when it carries the end", 1, 2000)),
      optional(number("slope", "Rise over run of the module, level when left out", 0, 1)),
      ...demandFields,
    ],
    validity: "Two ends share one sill; stringer and sill of one species; laying slop of 1/2 in on one side.",
    sources: [leastSeat.spec.source, layingTolerance.spec.source],
  },
  (input, context) => {
    const frame = frameFrom(input, context);
    const model = stringerModel(frame, context);
    if (!model.ok) return { problems: model.problems };
    const seat = seatFrom(input);
    const label = { id: "asked", where: "as asked", parts: [] };
    const sill: SeatKind = {
      ...seat,
      on: "sill",
      width_m: (input["sill_width_mm"] as number) / 1000,
      gap_m: seat.gap_m,
    };
    const cases = casesOf([demandFrom(input)], context.units);
    return [
      checkSeatLength(seat, label, context),
      checkSeatBearing(sill, model.value, cases, label, context),
    ];
  },
);

export const frameCalculations: readonly Calculation<CalcContext>[] = [seatCalculation, platformCalculation];
