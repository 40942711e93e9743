import { defineFormula, type Trace } from "../formula/index.ts";
import { DomainError, metres, qty, type Qty } from "../units/index.ts";
import { bekker, muskegSource } from "./sources.ts";
import type { TerrainSinkage } from "./types.ts";

/** Ground that answers by p = (kc / b + kphi) z^n. kc and kphi as the pressure at one metre: kc [N/m], kphi [Pa]. */
export interface BekkerGround {
  readonly kc: Qty<"N/m">;
  readonly kphi: Qty<"Pa">;
  readonly n: number;
}

/** Ground with a living mat. kp and mm [N/m3]. */
export interface MuskegGround {
  readonly kp: Qty<"N/m3">;
  readonly mm: Qty<"N/m3">;
}

/** Exponents under this are almost rigid-plastic ground: a sinkage means little, the bearing capacity counts. */
export const RIGID_PLASTIC_N = 0.25;
export const USE_BEARING_CAPACITY =
  "This ground gives way almost at once (n under 0.25): use the bearing capacity, not the sinkage.";

/** Turns the units of the print (kN, m, kPa) into N and Pa. */
export const bekkerGround = (t: Pick<TerrainSinkage, "kc_kn" | "kphi_kn" | "n">): BekkerGround => ({
  kc: qty(t.kc_kn * 1000, "N/m"),
  kphi: qty(t.kphi_kn * 1000, "Pa"),
  n: t.n,
});

/** Stiffness for one size of foot: the pressure at one metre of sinkage. kc [N/m], kphi [Pa], b smaller side [m] > 0; k [Pa]. */
export const sinkageModulus = defineFormula(
  {
    id: "ground.sinkage.modulus",
    title: "Stiffness of the ground for this foot",
    symbol: "k",
    unit: "Pa",
    text: "kc / b + kphi",
    inputs: { kc: "N/m", b: "m", kphi: "Pa" },
    validity: "b > 0, the smaller side of the foot; sinkage in metres.",
    source: bekker,
  },
  ({ kc, b, kphi }) => kc / b + kphi,
);

/** Pressure at a sinkage. k [Pa], z [m] >= 0, n [1] > 0; p [Pa]. */
export const pressureAtSinkage = defineFormula(
  {
    id: "ground.sinkage.pressure",
    title: "Pressure at this sinkage (Bekker)",
    symbol: "p",
    unit: "Pa",
    text: "k * z^n",
    inputs: { k: "Pa", z: "m", n: "1" },
    validity: "z >= 0 in metres, n > 0, first loading, the size of foot near that of the test plates.",
    source: bekker,
  },
  ({ k, z, n }) => k * z ** n,
);

/** Sinkage under a pressure. k [Pa] > 0, p [Pa] >= 0, n [1] > 0; z [m]. */
export const sinkageUnderPressure = defineFormula(
  {
    id: "ground.sinkage.depth",
    title: "Sinkage under this pressure (Bekker)",
    symbol: "z",
    unit: "m",
    text: "(p / k)^(1 / n)",
    inputs: { p: "Pa", k: "Pa", n: "1" },
    validity: "k > 0, n > 0, p >= 0, first loading, the size of foot near that of the test plates.",
    source: bekker,
  },
  ({ p, k, n }) => (p / k) ** (1 / n),
);

/** Pressure of a foot on muskeg. kp, mm [N/m3], z [m] >= 0, Dh = 4 A / perimeter [m] > 0; p [Pa]. */
export const muskegPressure = defineFormula(
  {
    id: "ground.muskeg.pressure",
    title: "Pressure at this sinkage on muskeg with a living mat",
    symbol: "p",
    unit: "Pa",
    text: "kp * z + 4 * mm * z^2 / Dh",
    inputs: { kp: "N/m3", z: "m", mm: "N/m3", Dh: "m" },
    validity: "Before the mat tears; values from memory.",
    source: muskegSource,
  },
  ({ kp, z, mm, Dh }) => kp * z + (4 * mm * z ** 2) / Dh,
);

/** Sinkage of a foot on muskeg: the positive root of the law above. p [Pa] >= 0, kp > 0, mm >= 0; z [m]. */
export const muskegSinkage = defineFormula(
  {
    id: "ground.muskeg.sinkage",
    title: "Sinkage on muskeg with a living mat",
    symbol: "z",
    unit: "m",
    text: "2 * p / (kp + sqrt(kp^2 + 16 * mm * p / Dh))",
    inputs: { p: "Pa", kp: "N/m3", mm: "N/m3", Dh: "m" },
    validity: "Before the mat tears; values from memory.",
    source: muskegSource,
  },
  ({ p, kp, mm, Dh }) => (2 * p) / (kp + Math.sqrt(kp ** 2 + (16 * mm * p) / Dh)),
);

/** Four times the area over the perimeter of a rectangle. a, b [m] > 0; Dh [m]. */
export const hydraulicDiameter = defineFormula(
  {
    id: "ground.muskeg.hydraulic-diameter",
    title: "Four areas over the perimeter of the foot",
    symbol: "Dh",
    unit: "m",
    text: "2 * a * b / (a + b)",
    inputs: { a: "m", b: "m" },
    validity: "Rectangle; a circle has its diameter.",
    source: { id: "geometry", title: "Geometry", at: "4 a b / (2 a + 2 b)", status: "computed" },
  },
  ({ a, b }) => (2 * a * b) / (a + b),
);

/**
 * Stiffness for a foot whose smaller side is `b_m` [m] > 0; null where the values give none above zero for so small a
 * foot (a negative kc from a fit).
 */
export function modulusFor(ground: BekkerGround, b_m: number, trace?: Trace): Qty<"Pa"> | null {
  if (!(b_m > 0 && ground.n > 0)) throw new DomainError("sinkage-without-size", { b_m, n: ground.n });
  const k = sinkageModulus({ kc: ground.kc, b: metres(b_m), kphi: ground.kphi }, trace);
  return k > 0 ? k : null;
}

/** No law of sinkage says anything of a foot that is gone this deep [m]. */
const GONE_M = 10;

/** Sinkage [m] of a foot under a pressure [Pa] >= 0; null as above, and where the law gives more than 10 m. */
export function sinkageOf(ground: BekkerGround, b_m: number, p: Qty<"Pa">, trace?: Trace): Qty<"m"> | null {
  const k = modulusFor(ground, b_m, trace);
  if (k === null || p > k * GONE_M ** ground.n) return null;
  return sinkageUnderPressure({ p, k, n: qty(ground.n, "1") }, trace);
}

/** Pressure [Pa] of a foot at a sinkage [m] >= 0; null as above. */
export function pressureOf(ground: BekkerGround, b_m: number, z: Qty<"m">, trace?: Trace): Qty<"Pa"> | null {
  const k = modulusFor(ground, b_m, trace);
  return k === null ? null : pressureAtSinkage({ k, z, n: qty(ground.n, "1") }, trace);
}
