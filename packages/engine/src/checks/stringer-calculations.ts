import { clausesOf } from "../codes/index.ts";
import { defineMethod, unitSuffix, type Calculation } from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import type { Unit } from "../units/index.ts";
import { frameFields, frameFrom } from "./frame-input.ts";
import {
  answerFields,
  codeField,
  contextFrom,
  demandFields,
  demandFrom,
  lumberFields,
  unitsField,
} from "./method-fields.ts";
import { outputsOf } from "./result.ts";
import { checkConstants } from "./rules.ts";
import { checkStringer } from "./stringer-check.ts";
import type { StringerCheck } from "./stringer-model.ts";

const units: Readonly<Record<StringerCheck, Unit>> = { bending: "N*m", shear: "N", deflection: "m" };

const stringerCalculation = (check: StringerCheck): Calculation<CalcContext> =>
  defineMethod<CalcContext>(
    {
      id: `check.stringer-${check}`,
      title: `Check of stringer ${check} under people in file and a cart`,
      inputs: [codeField, ...lumberFields, ...frameFields, ...demandFields, unitsField],
      outputs: answerFields(unitSuffix(units[check])),
      validity:
        "One simple span, straight walkway, stringers on edge, wet service, cross pieces that span freely between stringers. One load of 300 lb is always among the cases.",
      sources: [
        ...clausesOf("bending", "shear", "deflection"),
        ...checkConstants.slice(0, 5).map((c) => c.spec.source),
      ],
    },
    (input, context, trace) => {
      const found = contextFrom(input, context);
      if (!found.ok) return { problems: found.problems };
      const frame = frameFrom(input, found.value);
      const member = found.value.code.member(
        context.tables,
        frame.lumber.species,
        frame.lumber.grade,
        frame.size,
      );
      if (!member.ok) return { problems: member.problems };
      const label = { kind: "module", suffix: "asked", parts: [] } as const;
      const result = checkStringer(check, frame, [demandFrom(input)], label, found.value);
      if ("working" in result) trace.push(...result.working);
      return outputsOf(result);
    },
  );

/** One registered calculation for each check of the stringers. */
export const stringerCalculations: readonly Calculation<CalcContext>[] = [
  stringerCalculation("bending"),
  stringerCalculation("shear"),
  stringerCalculation("deflection"),
];
