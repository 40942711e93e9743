import { qty, type Qty } from "./quantity.ts";

/** Definitions, exact. International yard and pound agreement of 1959; standard gravity of the 3rd CGPM, 1901. */
export const M_PER_IN = 0.0254;
export const M_PER_FT = 12 * M_PER_IN;
export const M_PER_YD = 3 * M_PER_FT;
export const M_PER_MI = 1760 * M_PER_YD;
export const KG_PER_LB = 0.45359237;
export const STANDARD_GRAVITY = 9.80665;
export const N_PER_LBF = KG_PER_LB * STANDARD_GRAVITY;
export const PA_PER_PSI = N_PER_LBF / M_PER_IN ** 2;
export const PA_PER_PSF = N_PER_LBF / M_PER_FT ** 2;

export const metres = (v: number): Qty<"m"> => qty(v, "m");
export const millimetres = (v: number): Qty<"m"> => qty(v / 1000, "m");
export const inches = (v: number): Qty<"m"> => qty(v * M_PER_IN, "m");
export const feet = (v: number): Qty<"m"> => qty(v * M_PER_FT, "m");
export const psi = (v: number): Qty<"Pa"> => qty(v * PA_PER_PSI, "Pa");
export const psf = (v: number): Qty<"Pa"> => qty(v * PA_PER_PSF, "Pa");
export const pascals = (v: number): Qty<"Pa"> => qty(v, "Pa");
export const newtons = (v: number): Qty<"N"> => qty(v, "N");
export const poundsForce = (v: number): Qty<"N"> => qty(v * N_PER_LBF, "N");
export const kilograms = (v: number): Qty<"kg"> => qty(v, "kg");
export const pounds = (v: number): Qty<"kg"> => qty(v * KG_PER_LB, "kg");
