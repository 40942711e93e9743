import { clausesOf } from "../codes/index.ts";
import {
  inputProblem,
  type Calculation,
  type Json,
  type JsonObject,
  type Problem,
} from "../formula/index.ts";
import { ovenDryGravity, type CalcContext } from "../materials/index.ts";
import { checkCatchBoard, checkJointScrews } from "./catch-board.ts";
import { checkBoardHold } from "./deck-pull.ts";
import {
  demandFields,
  demandFrom,
  lumberFields,
  lumberFrom,
  number,
  optional,
  text,
} from "./method-fields.ts";
import { checkMethod } from "./method-results.ts";
import { pointLoad } from "./rules.ts";
import type { BeamPattern, Carrier } from "./support-beam.ts";
import { checkSupportBeam } from "./support-member.ts";
import type { CheckBase, CheckKind } from "./types.ts";

const value = (input: JsonObject, key: string): number => input[key] as number;
const metre = (input: JsonObject, key: string): number => value(input, key) / 1000;

const numbers = (v: Json | undefined): readonly number[] | null =>
  Array.isArray(v) && v.length > 0 && v.every((x) => typeof x === "number" && Number.isFinite(x))
    ? (v as readonly number[])
    : null;

const base = (kind: CheckKind, id: string, title: string, rule: CheckBase["rule"]): CheckBase => ({
  id,
  kind,
  title,
  parts: [],
  rule,
  caution: "One piece alone; wet service.",
});

/** Lists of one length, or what is wrong with them. */
function listsOf(
  input: JsonObject,
  keys: readonly string[],
): readonly (readonly number[])[] | { problems: Problem[] } {
  const lists = keys.map((key) => numbers(input[key]));
  const problems = keys.flatMap((key, i) =>
    lists[i]
      ? []
      : [
          inputProblem(
            key,
            input[key],
            "must be a list of one or more numbers",
            `Give "${key}" as [number, ...].`,
          ),
        ],
  );
  if (problems.length > 0) return { problems };
  const found = lists as readonly (readonly number[])[];
  const uneven = keys.filter((_, i) => found[i]!.length !== found[0]!.length);
  if (uneven.length === 0) return found;
  return {
    problems: uneven.map((key) =>
      inputProblem(
        key,
        input[key],
        `has not as many entries as ${keys[0]}`,
        `Give as many as in "${keys[0]}".`,
      ),
    ),
  };
}

function carriersFrom(input: JsonObject): readonly Carrier[] | { problems: Problem[] } {
  const lists = listsOf(input, ["carrier_from_mm", "carrier_to_mm"]);
  if ("problems" in lists) return lists;
  const [from, to] = lists as readonly [readonly number[], readonly number[]];
  const turned = from.findIndex((a, i) => a >= to[i]!);
  if (turned < 0) return from.map((a, i): Carrier => [a / 1000, to[i]! / 1000]);
  const problem = inputProblem(
    "carrier_to_mm",
    to[turned],
    "ends before it begins",
    "Give the larger place last.",
  );
  return { problems: [problem] };
}

function loadsFrom(input: JsonObject): BeamPattern | { problems: Problem[] } {
  const lists = listsOf(input, ["load_at_mm", "dead_n", "live_n"]);
  if ("problems" in lists) return lists;
  const [at, dead, live] = lists as readonly [readonly number[], readonly number[], readonly number[]];
  const problems = (["dead_n", "live_n"] as const)
    .filter((key) => (key === "dead_n" ? dead : live).some((N) => N < 0))
    .map((key) =>
      inputProblem(key, input[key], "holds a load that acts upward", "Give loads >= 0: they act down."),
    );
  if (problems.length > 0) return { problems };
  return {
    name: "loads as asked",
    explain: () => undefined,
    loads: at.map((x, i) => ({ at_m: x / 1000, dead_n: dead[i]!, live_n: live[i]! })),
  };
}

const beamCalculation = checkMethod(
  {
    id: "check.support-beam",
    title: "Check of a sill, rail or bearer on what carries it",
    inputs: [
      ...lumberFields,
      text("size", "Size of the piece"),
      text("lay", "How it lies", ["flat", "edge"]),
      { key: "carrier_from_mm", title: "Where each carrier begins along the piece", type: "array" },
      { key: "carrier_to_mm", title: "Where each carrier ends", type: "array" },
      { key: "load_at_mm", title: "Where each load stands along the piece", type: "array" },
      { key: "dead_n", title: "Own weight of each load", type: "array" },
      { key: "live_n", title: "People and carts of each load", type: "array" },
    ],
    validity:
      "Wet, one piece alone. Bays between carriers as simple spans, what hangs over as cantilevers; a carrier over 250 mm long holds the piece from end to end.",
    sources: clausesOf("bending", "shear"),
  },
  (input, context) => {
    const carriers = carriersFrom(input);
    const pattern = loadsFrom(input);
    const problems = [
      ...("problems" in carriers ? carriers.problems : []),
      ...("problems" in pattern ? pattern.problems : []),
    ];
    if ("problems" in carriers || "problems" in pattern) return { problems };
    const size = input["size"] as string;
    const lumber = lumberFrom(input);
    const member = context.code.member(context.tables, lumber.species, lumber.grade, size);
    if (!member.ok) return { problems: member.problems };
    const beam = { name: "piece", size, lay: input["lay"] as "flat" | "edge", lumber, carriers };
    return (["bending", "shear"] as const).map((part) =>
      checkSupportBeam(
        part,
        beam,
        [pattern],
        base("supports", part, `Piece in ${part}`, context.code.rule(part)),
        context,
      ),
    );
  },
);

const catchBoardCalculation = checkMethod(
  {
    id: "check.catch-board",
    title: "Check of a catch board and the screws at its ends",
    inputs: [
      ...lumberFields,
      text("size", "Size of the board"),
      number("bay_mm", "Clear distance between the stringers", 10, 10_000),
      number("stringer_thickness_mm", "Thickness of the stringer", 5, 200),
      text("screw", "Screw of the fastener table"),
      { key: "screws_per_end", title: "Screws at each end", type: "integer", min: 1, max: 20 },
      number("dead_n", "Own weight that one stringer of the next module brings", 0, 1e6),
      number("live_n", "People and carts that it brings", 0, 1e6),
    ],
    validity: "Two stringers alike bring their ends; twisting is left out; screws in end grain, wet.",
    sources: clausesOf("bending", "shear", "screws"),
  },
  (input, context) => {
    const lumber = lumberFrom(input);
    const size = input["size"] as string;
    const member = context.code.member(context.tables, lumber.species, lumber.grade, size);
    if (!member.ok) return { problems: member.problems };
    const board = {
      name: "catch board",
      size,
      lumber,
      bay_m: metre(input, "bay_mm"),
      screw: input["screw"] as string,
      screws_per_end: value(input, "screws_per_end"),
      side_m: metre(input, "stringer_thickness_mm"),
    };
    const load = { dead_n: value(input, "dead_n"), live_n: value(input, "live_n") };
    const at = board.bay_m / 2;
    const pattern: BeamPattern = {
      name: "ends as asked",
      explain: () => undefined,
      loads: [-at, at].map((at_m) => ({ at_m, ...load })),
    };
    return [
      ...checkCatchBoard(
        board,
        [pattern],
        (part) => base("fastening", part, `Catch board in ${part}`, context.code.rule(part)),
        context,
      ),
      checkJointScrews(
        board,
        [pattern],
        base("fastening", "screws", "Screws at its ends", context.code.rule("screws")),
        context,
      ),
    ];
  },
);

const boardHoldCalculation = checkMethod(
  {
    id: "check.board-hold",
    title: "Check of what holds deck boards down",
    inputs: [
      ...lumberFields,
      text("size", "Size of the boards"),
      text("stringer", "Size of the stringers"),
      number("length_mm", "Length of a board", 50, 10_000),
      { key: "bearings", title: "Stringers under a board", type: "integer", min: 2, max: 20 },
      text("screw", "Screw or nail of the fastener table"),
      { key: "screws_per_bearing", title: "Of them at each stringer", type: "integer", min: 1, max: 20 },
      number("beyond_mm", "How far a foot can stand beyond the outer stringer", 0, 5000),
      number("next_mm", "From the outer stringer to the next, middle to middle", 10, 10_000),
      optional(
        number("flood_over_mm", "Water over the underside of the boards, none when left out", 0, 100_000),
      ),
      number("water_kg_m3", "Density of the water", 900, 1100),
      ...demandFields,
    ],
    validity: "Fasteners in side grain, wetted and dried by turns; wind, current and waves are left out.",
    sources: [...clausesOf("screws"), pointLoad.spec.source],
  },
  (input, context) => {
    const lumber = lumberFrom(input);
    const member = context.code.member(context.tables, lumber.species, lumber.grade, input["size"] as string);
    if (!member.ok) return { problems: member.problems };
    const hold = {
      size: input["size"] as string,
      stringer: input["stringer"] as string,
      lumber,
      length_m: metre(input, "length_mm"),
      bearings: value(input, "bearings"),
      screw: input["screw"] as string,
      screws_per_bearing: value(input, "screws_per_bearing"),
      beyond_m: metre(input, "beyond_mm"),
      next_m: metre(input, "next_mm"),
      flood_m: ((input["flood_over_mm"] as number | undefined) ?? 0) / 1000,
      water_kg_m3: value(input, "water_kg_m3"),
      gravity: ovenDryGravity(member.value.density, context.tables.sources),
    };
    const own = base("fastening", "board-hold", "Deck boards held down", context.code.rule("screws"));
    return [checkBoardHold(hold, [demandFrom(input)], own, context)];
  },
);

export const supportCalculations: readonly Calculation<CalcContext>[] = [
  beamCalculation,
  catchBoardCalculation,
  boardHoldCalculation,
];
