import { defineMethod, type Calculation } from "../formula/index.ts";
import { kilograms, metres, qty } from "../units/index.ts";
import { dragForce } from "./drag.ts";
import {
  any,
  figure,
  given,
  list,
  metresOf,
  number,
  optional,
  readList,
  refuse,
  text,
  yes,
} from "../formula/fields.ts";
import { speedField, waterField } from "./fields.ts";
import {
  breaksFirst,
  impactEnergy,
  impactForce,
  impactTime,
  leastRope,
  leastScope,
  ropePull,
  ropeStrength,
  tether,
  type Link,
} from "./impact.ts";

const MM = 1000;
const linkFields = [
  text("name", "What may break: anchors, stakes in bending, screws"),
  number("capacity_n", "Horizontal force at the place of the hit that breaks it", 0, 1e9),
];

const impactMethod = defineMethod<unknown>(
  {
    id: "flood.log-impact",
    title: "Force of a drifting log or board, and what breaks first",
    inputs: [
      number("mass_kg", "Mass of the log or board", 0.1, 5000),
      speedField,
      optional(number("stop_s", "Time in which it is stopped, 0.03 s by the rule", 0.001, 1)),
      list("links", "What may break: name, capacity_n"),
    ],
    outputs: [
      figure("force_n", "Force of the hit"),
      figure("energy_n_m", "Energy of the log"),
      text("weakest", "What goes first, whatever the force"),
      figure("weakest_n", "Its capacity"),
      yes("breaks", "Whether this hit breaks it"),
      any("utilisation", "Force over the weakest capacity; null when that is nothing"),
      list("over", "All that this force is over, weakest first"),
    ],
    validity: `${impactForce.spec.validity} The force runs through every link; capacities as given, at the place of the hit.`,
    sources: [impactForce.spec.source, impactEnergy.spec.source],
  },
  (input, _context, trace) => {
    const read = readList<Link>(input, "links", linkFields, (entry) => ({
      name: entry["name"] as string,
      capacity_n: given(entry, "capacity_n"),
    }));
    if (!read.ok) return { problems: read.problems };
    const [m, V] = [kilograms(given(input, "mass_kg")), qty(given(input, "speed_m_s"), "m/s")];
    const own = input["stop_s"] as number | undefined;
    const t_i = own === undefined ? impactTime({}, trace) : qty(own, "s");
    const F = impactForce({ m, V, t_i }, trace);
    const first = breaksFirst(F, read.value)!;
    return {
      force_n: F,
      energy_n_m: impactEnergy({ m, V }, trace),
      weakest: first.weakest.name,
      weakest_n: first.weakest.capacity_n,
      breaks: first.breaks,
      utilisation: first.utilisation,
      over: first.over.map((l) => l.name),
    };
  },
);

const tetherMethod = defineMethod<unknown>(
  {
    id: "flood.tether",
    title: "Rope that keeps a broken-off module from drifting away",
    inputs: [
      number("rise_mm", "Rise from the rope's fixing to the module afloat at the highest water", 1, 20_000),
      optional(number("rope_mm", "Length of the rope; the least one when left out", 1, 1e6)),
      number("area_m2", "Area of the drifting module under water that the flow sees", 1e-4, 1000),
      number("cd", "Drag coefficient of the drifting module", 0.01, 10),
      speedField,
      waterField,
      number("factor", "Factor on the steady pull for jerks and knots", 1, 20),
    ],
    outputs: [
      figure("rope_mm", "Length of the rope"),
      figure("least_rope_mm", "Least length of the rope"),
      figure("drag_n", "Drag on the drifting module"),
      figure("pull_n", "Pull on the rope"),
      figure("strength_n", "Strength asked of rope, knots and fixings"),
      figure("radius_mm", "How far from its fixing the module drifts"),
    ],
    validity: "The module held still by one taut rope in steady flow.",
    sources: [dragForce.spec.source, ropePull.spec.source, leastScope.spec.source, ropeStrength.spec.source],
  },
  (input, _context, trace) => {
    const z = metres(metresOf(input, "rise_mm"));
    const least = leastRope(z);
    const l_r = input["rope_mm"] === undefined ? least : metres(metresOf(input, "rope_mm"));
    if (l_r < least)
      return {
        problems: [
          refuse(
            "rope_mm",
            l_r * MM,
            "is too short: at the highest water the rope would stand steep and pull the module under",
            `Give "rope_mm" of ${Math.ceil(least * MM)} or more.`,
          ),
        ],
      };
    const [A, C_d] = [qty(given(input, "area_m2"), "m2"), qty(given(input, "cd"), "1")];
    const flow = {
      rho_w: qty(given(input, "water_kg_m3"), "kg/m3"),
      V: qty(given(input, "speed_m_s"), "m/s"),
    };
    const D = dragForce({ ...flow, C_d, A }, trace, "drifting module");
    const found = tether({ rise: z, rope: l_r, drag: D, factor: qty(given(input, "factor"), "1") }, trace);
    return {
      rope_mm: found.rope_m * MM,
      least_rope_mm: least * MM,
      drag_n: D,
      pull_n: found.pull_n,
      strength_n: found.strength_n,
      radius_mm: found.radius_m * MM,
    };
  },
);

/** Registered calculations of drifting logs and of tethers. */
export const impactCalculations: readonly Calculation[] = [impactMethod, tetherMethod];
