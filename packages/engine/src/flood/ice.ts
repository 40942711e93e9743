import { defineConstant, defineFormula, recordValue, type Trace } from "../formula/index.ts";
import type { Qty } from "../units/index.ts";
import { iceJacking, statics } from "./sources.ts";

/** Failure stress of the ice round a wooden pile by diameter over thickness: the two ends that are printed. */
const STRESS = { from: { ratio: 0.5, pa: 420_000 }, to: { ratio: 6.5, pa: 100_000 } } as const;

/** Failure stress of ice frozen to a wooden post. D diameter, h thickness of the ice [m], h > 0; sigma [Pa]. */
export const iceStress = defineFormula(
  {
    id: "flood.ice.stress",
    title: "Failure stress of the ice round the post",
    symbol: "sigma",
    unit: "Pa",
    text: "420000 - 320000 * (min(6.5, max(0.5, D / h)) - 0.5) / 6",
    inputs: { D: "m", h: "m" },
    validity:
      "Wooden piles in freshwater ice, D / h from 0.5 to 6.5; beyond, the nearest end is held, and ice thicker than two diameters may grip harder.",
    source: iceJacking("420 to 100 kPa for D/h 0.5 to 6.5; the straight line between is ours"),
  },
  ({ D, h }) => {
    const ratio = Math.min(STRESS.to.ratio, Math.max(STRESS.from.ratio, D / h));
    return STRESS.from.pa - ((STRESS.from.pa - STRESS.to.pa) * (ratio - STRESS.from.ratio)) / 6;
  },
);

/** Lift of ice frozen to a post when the water rises. sigma [Pa], D, h [m]; F_g [N]. */
export const iceGrip = defineFormula(
  {
    id: "flood.ice.grip",
    title: "Lift that the grip of the ice passes on",
    symbol: "F_g",
    unit: "N",
    text: "sigma * pi * D * h",
    inputs: { sigma: "Pa", D: "m", h: "m" },
    validity: "Round post, ice frozen all round it.",
    source: iceJacking("failure stress over the cylinder of contact"),
  },
  ({ sigma, D, h }) => sigma * Math.PI * D * h,
);

export const iceDensity = defineConstant("flood.ice.density", "Density of ice", "rho_i", 917, "kg/m3", {
  id: "ice-density",
  title: "Density of ice",
  status: "memory",
});
/** Most that floating ice can lift when wholly under. rho_w, rho_i [kg/m3], h [m], A of the ice that hangs on the post [m2]; F_b [N]. */
export const iceBuoyancy = defineFormula(
  {
    id: "flood.ice.buoyancy",
    title: "Most that the floating ice can lift",
    symbol: "F_b",
    unit: "N",
    text: "max(0, rho_w - rho_i) * 9.80665 * h * A",
    inputs: { rho_w: "kg/m3", rho_i: "kg/m3", h: "m", A: "m2" },
    validity: "Ice pushed wholly under; the area that hangs on one post is an estimate.",
    source: statics("buoyancy of ice less its weight"),
  },
  ({ rho_w, rho_i, h, A }) => Math.max(0, rho_w - rho_i) * 9.80665 * h * A,
);

export interface IceOnPost {
  readonly diameter: Qty<"m">;
  readonly thickness: Qty<"m">;
  /** Ice that hangs on the post [m2]; null = not known, the grip alone rules. */
  readonly area: Qty<"m2"> | null;
  readonly rho_w: Qty<"kg/m3">;
}

/** Lift of ice on one post [N]: the grip, or what the ice can lift at all when that is less. */
export function iceLift(ice: IceOnPost, trace?: Trace): Qty<"N"> {
  const { diameter: D, thickness: h, area: A, rho_w } = ice;
  const grip = iceGrip({ sigma: iceStress({ D, h }, trace), D, h }, trace);
  if (A === null) return grip;
  const most = iceBuoyancy({ rho_w, rho_i: iceDensity({}, trace), h, A }, trace);
  const lift = most < grip ? most : grip;
  recordValue(trace, {
    id: "flood.ice.lift",
    title: "Lift of the ice on one post",
    symbol: "F",
    value: lift,
    unit: "N",
    source: statics("the ice passes on no more than it can lift"),
    how: "smaller of grip and buoyancy",
  });
  return lift;
}

/** Adfreeze stress of fine ground: what the frozen ground grips a post with as it heaves. */
export const adfreezeWood = defineConstant(
  "flood.frost.wood",
  "Grip of frozen ground on wood",
  "tau",
  65_000,
  "Pa",
  {
    id: "cfem-adfreeze",
    title: "Canadian Foundation Engineering Manual, 4th edition, quoted at eng-tips.com 516931 (Penner 1974)",
    at: "65 kPa, fine-grained soil frozen to wood or concrete, average of field tests",
    status: "seen",
  },
);
export const adfreezeSteel = defineConstant(
  "flood.frost.steel",
  "Grip of frozen ground on steel",
  "tau",
  100_000,
  "Pa",
  {
    id: "cfem-adfreeze",
    title: "Canadian Foundation Engineering Manual, 4th edition, quoted at eng-tips.com 516931 (Penner 1974)",
    at: "100 kPa, fine-grained soil frozen to steel; model tests in silt reached 150 to 350 kPa (Domaschuk)",
    status: "seen",
  },
);
/** Heave of frozen ground on a post. tau [Pa], P girth, z_f frost depth, L embedment [m]; F_h [N]. */
export const frostHeave = defineFormula(
  {
    id: "flood.frost.heave",
    title: "Heave of the frozen ground on the post",
    symbol: "F_h",
    unit: "N",
    text: "tau * P * min(z_f, L)",
    inputs: { tau: "Pa", P: "m", z_f: "m", L: "m" },
    validity: "Fine wet ground that heaves; straight post.",
    source: adfreezeWood.spec.source,
  },
  ({ tau, P, z_f, L }) => tau * P * Math.min(z_f, L),
);
/** Length of a stake under the frost. L embedment, z_f frost depth [m]; L_f [m]. */
export const underFrost = defineFormula(
  {
    id: "flood.frost.under",
    title: "Length of the stake under the frost",
    symbol: "L_f",
    unit: "m",
    text: "max(0, L - z_f)",
    inputs: { L: "m", z_f: "m" },
    validity: "What is frozen lifts and does not hold.",
    source: statics("what is left under the frost"),
  },
  ({ L, z_f }) => Math.max(0, L - z_f),
);

export const iceFormulas = [
  iceStress,
  iceGrip,
  iceDensity,
  iceBuoyancy,
  adfreezeWood,
  adfreezeSteel,
  frostHeave,
  underFrost,
] as const;
