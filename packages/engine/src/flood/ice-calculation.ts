import {
  defineMethod,
  type Calculation,
  type Json,
  type JsonObject,
  type Problem,
} from "../formula/index.ts";
import { metres, qty } from "../units/index.ts";
import {
  any,
  figure,
  given,
  list,
  metresOf,
  number,
  optional,
  refuse,
  text,
  yes,
} from "../formula/fields.ts";
import { waterField } from "./fields.ts";
import { iceBuoyancy, iceGrip, iceLift, iceStress } from "./ice.ts";
import { iceVerdict, isDay } from "./ice-season.ts";

const isMonth = (v: Json): boolean => typeof v === "number" && Number.isInteger(v) && v >= 1 && v <= 12;

function faultsOf(input: JsonObject): Problem[] {
  const days = ["stands_from", "stands_to"].filter((key) => input[key] !== undefined);
  const wrong = days.filter((key) => !isDay(input[key] as string));
  const months = input["ice_months"] as readonly Json[] | undefined;
  const [from, to] = [input["stands_from"] as string | undefined, input["stands_to"] as string | undefined];
  const turned = wrong.length === 0 && from !== undefined && to !== undefined && to < from;
  return [
    ...wrong.map((key) => refuse(key, input[key], "is no day", `Give "${key}" as 2027-05-31.`)),
    ...(turned
      ? [refuse("stands_to", to, "lies before the first day", 'Give "stands_to" after "stands_from".')]
      : []),
    ...(months && !months.every(isMonth)
      ? [
          refuse(
            "ice_months",
            months,
            "must be months",
            "Give whole numbers from 1 to 12, or an empty list for no ice.",
          ),
        ]
      : []),
  ];
}

const iceMethod = defineMethod<unknown>(
  {
    id: "flood.ice",
    title: "Lift of ice frozen to a post, and whether the walkway stands in the ice",
    inputs: [
      number("diameter_mm", "Diameter of the post; the wider side of a square one", 1, 2000),
      number("ice_mm", "Thickness of the ice", 1, 3000),
      waterField,
      optional(
        number("ice_area_m2", "Ice that hangs on the post; without it the grip alone rules", 0.001, 1e5),
      ),
      optional(number("holds_n", "What holds the post down", 0, 1e9)),
      optional(text("stands_from", "First day it stands, ISO")),
      optional(text("stands_to", "Last day it stands, ISO")),
      optional(list("ice_months", "Months with ice at this site, 1 to 12; an empty list = none")),
      optional(yes("lifts_out", "Whether it is taken up before the ice")),
    ],
    outputs: [
      figure("lift_n", "Lift on one post when the water rises under the ice"),
      any("lifts_post", "Whether that is more than what holds the post; null when this is not given"),
      text("verdict", "clear, lift-out, frozen-in or cannot-check"),
      any("by", "Day by which it must be out, or from which it is frozen in; null otherwise"),
      text("words", "The verdict in words"),
    ],
    validity: `${iceStress.spec.validity} Level ice frozen all round; drifting floes push sideways and are not covered.`,
    sources: [iceStress.spec.source, iceGrip.spec.source, iceBuoyancy.spec.source],
  },
  (input, _context, trace) => {
    const problems = faultsOf(input);
    if (problems.length > 0) return { problems };
    const area = input["ice_area_m2"] as number | undefined;
    const lift = iceLift(
      {
        diameter: metres(metresOf(input, "diameter_mm")),
        thickness: metres(metresOf(input, "ice_mm")),
        area: area === undefined ? null : qty(area, "m2"),
        rho_w: qty(given(input, "water_kg_m3"), "kg/m3"),
      },
      trace,
    );
    const holds = input["holds_n"] as number | undefined;
    const [from, to] = [input["stands_from"] as string | undefined, input["stands_to"] as string | undefined];
    const verdict = iceVerdict(
      from === undefined || to === undefined ? null : { from, to },
      (input["ice_months"] as readonly number[] | undefined) ?? null,
      (input["lifts_out"] as boolean | undefined) ?? null,
    );
    return {
      lift_n: lift,
      lifts_post: holds === undefined ? null : lift > holds,
      verdict: verdict.status,
      by: verdict.status === "lift-out" ? verdict.by : verdict.status === "frozen-in" ? verdict.from : null,
      words: verdict.words,
    };
  },
);

/** Registered calculation of ice. */
export const iceCalculations: readonly Calculation[] = [iceMethod];
