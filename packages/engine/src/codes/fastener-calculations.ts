import { defineMethod, type Calculation, type Field, type JsonObject, type Trace } from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { newtons } from "../units/index.ts";
import type { Found } from "./contract.ts";
import type { FastenerCapacity, FastenerJoint, FastenerRules } from "./fastener-contract.ts";
import { jointFields } from "./fastener-fields.ts";
import { readJoint } from "./fastener-input.ts";
import { fastenerRules } from "./fastener-registry.ts";

const text = (key: string, title: string): Field => ({ key, title, type: "string" });
const force = (key: string, title: string): Field => ({ key, title, type: "number" });
const sources = fastenerRules.flatMap((r) => r.sources);
const validity =
  "Nails, wood screws and lag screws in sawn softwood, spaced so that the wood does not split. Where nothing may be counted on the capacity is 0 and the reason says why. us-asd-2018 gives allowable values, ec5-2004 design values: never hold one against the other's loads.";

const capacityFields: readonly Field[] = [
  force("capacity_n", "What all fasteners may carry"),
  force("one_n", "One fastener before any factor"),
  text("governs", "How it fails"),
  { key: "reason", title: "Why nothing may be counted on, null when something may", type: "any" },
  { key: "not_checked", title: "What this does not cover", type: "array" },
  text("compare_with", "Load to hold it against"),
];

type Way = (rules: FastenerRules, joint: FastenerJoint, trace: Trace) => Found<FastenerCapacity>;

const capacityMethod = (id: string, title: string, way: Way): Calculation<CalcContext> =>
  defineMethod<CalcContext>(
    { id, title, inputs: jointFields, outputs: capacityFields, validity, sources },
    (input, { tables }, trace) => {
      const read = readJoint(input, tables);
      if (!read.ok) return { problems: read.problems };
      const { rules, joint } = read.value;
      const found = way(rules, joint, trace);
      if (!found.ok) return { problems: found.problems };
      const { value, one, governs, reason, not_checked } = found.value;
      return {
        capacity_n: value,
        one_n: one,
        governs,
        reason,
        not_checked: [...not_checked],
        compare_with: rules.compare_with,
      };
    },
  );

/** Load across nails and screws that a joint may carry. */
export const fastenerLateral = capacityMethod(
  "fastener.lateral",
  "Lateral capacity of nails, wood screws and lag screws",
  (rules, joint, trace) => rules.lateral(joint, trace),
);

/** Load along nails and screws, out of the wood or through the side piece. */
export const fastenerWithdrawal = capacityMethod(
  "fastener.withdrawal",
  "Withdrawal capacity of nails, wood screws and lag screws",
  (rules, joint, trace) => rules.withdrawal(joint, trace),
);

/** Share used by a load across and along the same fasteners. */
export const fastenerCombined: Calculation<CalcContext> = defineMethod<CalcContext>(
  {
    id: "fastener.combined",
    title: "Nails and screws loaded across and along at once",
    inputs: [
      ...jointFields,
      { key: "lateral_load_n", title: "Load across all fasteners", type: "number", min: 0, max: 1e9 },
      { key: "withdrawal_load_n", title: "Load along all fasteners", type: "number", min: 0, max: 1e9 },
    ],
    outputs: [
      {
        key: "use",
        title: "Share used, at most 1 passes; null where a loaded direction may carry nothing",
        type: "any",
      },
      text("governs", "What uses it up"),
      { key: "reason", title: "Why there is no share, null when there is one", type: "any" },
      force("lateral_capacity_n", "What all fasteners may carry across"),
      force("withdrawal_capacity_n", "What all fasteners may carry along"),
      text("compare_with", "What the loads must be"),
    ],
    validity,
    sources,
  },
  (input, { tables }, trace) => {
    const read = readJoint(input, tables);
    if (!read.ok) return { problems: read.problems };
    const { rules, joint } = read.value;
    const lateral = newtons(input["lateral_load_n"] as number);
    const withdrawal = newtons(input["withdrawal_load_n"] as number);
    const found = rules.combined(joint, { lateral, withdrawal }, trace);
    if (!found.ok) return { problems: found.problems };
    const { use, governs, reason } = found.value;
    return {
      use,
      governs,
      reason,
      lateral_capacity_n: found.value.lateral.value,
      withdrawal_capacity_n: found.value.withdrawal.value,
      compare_with: rules.compare_with,
    };
  },
);

/** Distances, lead holes and metals, for the one who builds the joint. */
export const fastenerGuidance: Calculation<CalcContext> = defineMethod<CalcContext>(
  {
    id: "fastener.guidance",
    title: "Distances, lead holes and metals for nails and screws",
    inputs: jointFields,
    outputs: [
      { key: "rows", title: "What, how large [mm] or null, how, and where it comes from", type: "array" },
    ],
    validity:
      "From memory: confirm against the standard or the maker. Wood that splits easily asks for more.",
    sources,
  },
  (input, { tables }, trace) => {
    const read = readJoint(input, tables);
    if (!read.ok) return { problems: read.problems };
    const { rules, joint } = read.value;
    return {
      rows: rules.guidance(joint, trace).map(({ what, size_m, how, source }): JsonObject => ({
        what,
        size_mm: size_m === null ? null : size_m * 1000,
        how,
        source: `${source.title}${source.at === undefined ? "" : `, ${source.at}`}`,
        status: source.status,
      })),
    };
  },
);

export const fastenerCalculations: readonly Calculation<CalcContext>[] = [
  fastenerLateral,
  fastenerWithdrawal,
  fastenerCombined,
  fastenerGuidance,
];
