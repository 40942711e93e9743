import { defineConstant, defineFormula, type Trace } from "../formula/index.ts";
import { DomainError, type Qty } from "../units/index.ts";
import { geometry, impactRule, project, statics } from "./sources.ts";

export const impactTime = defineConstant(
  "flood.impact.time",
  "Time in which a drifting log is stopped",
  "t_i",
  0.03,
  "s",
  impactRule("0.03 s"),
);

/** Force of a drifting log or board, half a sine in time. m [kg], V [m/s], t_i [s] > 0; F [N]. */
export const impactForce = defineFormula(
  {
    id: "flood.impact.force",
    title: "Force of a drifting log",
    symbol: "F",
    unit: "N",
    text: "pi * m * V / (2 * t_i)",
    inputs: { m: "kg", V: "m/s", t_i: "s" },
    validity: "One hit, end on, what it meets does not give way.",
    source: impactRule("F = pi m V / (2 dt)"),
  },
  ({ m, V, t_i }) => (Math.PI * m * V) / (2 * t_i),
);

/** Energy of a drifting log. m [kg], V [m/s]; E [N*m]. */
export const impactEnergy = defineFormula(
  {
    id: "flood.impact.energy",
    title: "Energy of a drifting log",
    symbol: "E",
    unit: "N*m",
    text: "0.5 * m * V^2",
    inputs: { m: "kg", V: "m/s" },
    validity: "The water that drifts with it is left out.",
    source: statics("half the mass times the speed squared"),
  },
  ({ m, V }) => 0.5 * m * V ** 2,
);

/** Something that may break, with the horizontal force at the place of the hit that breaks it [N] >= 0. */
export interface Link {
  readonly name: string;
  readonly capacity_n: number;
}
export interface FirstBreak {
  /** The weakest link: it goes first, whatever the force. */
  readonly weakest: Link;
  /** Whether this force breaks it. */
  readonly breaks: boolean;
  /** Force over the weakest link's capacity [1]; null for a link that holds nothing. */
  readonly utilisation: number | null;
  /** All links that this force is over, weakest first. */
  readonly over: readonly Link[];
}

/** What a force breaks first. Links at one force, in series: the force runs through each. Null without links. */
export function breaksFirst(force_n: number, links: readonly Link[]): FirstBreak | null {
  const order = [...links].sort((a, b) => a.capacity_n - b.capacity_n);
  const weakest = order[0];
  if (!weakest) return null;
  const over = order.filter((l) => l.capacity_n < force_n);
  const share = force_n / weakest.capacity_n;
  return { weakest, breaks: over.length > 0, utilisation: Number.isFinite(share) ? share : null, over };
}

export const leastScope = defineConstant(
  "flood.tether.scope",
  "Least length of a rope over the rise from its fixing to the floating module",
  "k_r",
  2,
  "1",
  project("rope no steeper than 30 degrees, so that it pulls little downwards"),
);
/** Least length of the rope. k_r [1], z rise from the fixing to the module afloat at the highest water [m]; l_r [m]. */
export const ropeLength = defineFormula(
  {
    id: "flood.tether.length",
    title: "Least length of the rope",
    symbol: "l_r",
    unit: "m",
    text: "k_r * z",
    inputs: { k_r: "1", z: "m" },
    validity: "Highest water; knots and turns come on top.",
    source: leastScope.spec.source,
  },
  ({ k_r, z }) => k_r * z,
);
/** Pull on a straight rope that holds a drifting module. D drag [N], z rise, l_r rope [m], l_r > z; T_r [N]. */
export const ropePull = defineFormula(
  {
    id: "flood.tether.pull",
    title: "Pull on the rope",
    symbol: "T_r",
    unit: "N",
    text: "D / sqrt(1 - (z / l_r)^2)",
    inputs: { D: "N", z: "m", l_r: "m" },
    validity: "Taut straight rope, l_r > z >= 0.",
    source: statics("rope at a slope"),
  },
  ({ D, z, l_r }) => D / Math.sqrt(1 - (z / l_r) ** 2),
);
/** Strength asked of rope and fixings. n_r [1] >= 1, T_r [N]; R_r [N]. */
export const ropeStrength = defineFormula(
  {
    id: "flood.tether.strength",
    title: "Strength asked of the rope and its fixings",
    symbol: "R_r",
    unit: "N",
    text: "n_r * T_r",
    inputs: { n_r: "1", T_r: "N" },
    validity: "Breaking strength with knots; a factor of 3 and more covers jerks, by common practice.",
    source: {
      id: "rope-practice",
      title: "Common practice of rope",
      at: "factor on the steady pull",
      status: "practice",
    },
  },
  ({ n_r, T_r }) => n_r * T_r,
);
/** How far from its fixing a module swings. l_r, z [m]; r [m]. */
export const driftRadius = defineFormula(
  {
    id: "flood.tether.radius",
    title: "How far from its fixing the module drifts",
    symbol: "r",
    unit: "m",
    text: "sqrt(max(0, l_r^2 - z^2))",
    inputs: { l_r: "m", z: "m" },
    validity: "Straight rope; at falling water z is less and it drifts farther, up to l_r.",
    source: geometry("straight rope"),
  },
  ({ l_r, z }) => Math.sqrt(Math.max(0, l_r ** 2 - z ** 2)),
);

/** A module that has broken off and hangs on a rope. */
export interface Tethered {
  /** Rise from the rope's fixing to the module afloat at the highest water [m] > 0. */
  readonly rise: Qty<"m">;
  /** Length of the rope, at least that of `leastRope`; null = the least one. */
  readonly rope: Qty<"m"> | null;
  /** Drag on the drifting module [N]. */
  readonly drag: Qty<"N">;
  /** Factor on the steady pull for jerks and knots [1] >= 1. */
  readonly factor: Qty<"1">;
}
export interface Tether {
  readonly rope_m: number;
  readonly pull_n: number;
  /** Strength asked of rope, knots and fixings [N]. */
  readonly strength_n: number;
  readonly radius_m: number;
}
/** Shortest rope that does not stand steep at the highest water [m]. */
export const leastRope = (rise: Qty<"m">, trace?: Trace): Qty<"m"> =>
  ropeLength({ k_r: leastScope({}, trace), z: rise }, trace);

/** Rope that keeps a broken-off module. Throws `DomainError` when the rope is shorter than `leastRope`. */
export function tether({ rise: z, rope, drag: D, factor: n_r }: Tethered, trace?: Trace): Tether {
  const least = leastRope(z, trace);
  const l_r = rope ?? least;
  if (!(z > 0) || l_r < least) throw new DomainError("rope-too-short", { z, l_r, least });
  const T_r = ropePull({ D, z, l_r }, trace);
  return {
    rope_m: l_r,
    pull_n: T_r,
    strength_n: ropeStrength({ n_r, T_r }, trace),
    radius_m: driftRadius({ l_r, z }, trace),
  };
}

export const impactFormulas = [
  impactTime,
  impactForce,
  impactEnergy,
  leastScope,
  ropeLength,
  ropePull,
  ropeStrength,
  driftRadius,
] as const;
