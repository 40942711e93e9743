import { KG_PER_LB, M_PER_FT, M_PER_IN, N_PER_LBF, PA_PER_PSF, PA_PER_PSI } from "./convert.ts";
import type { Unit } from "./quantity.ts";

export type UnitSystem = "us" | "metric";

const trim = (v: number, digits: number): string => {
  const s = v.toFixed(digits);
  return s === `-${(0).toFixed(digits)}` ? s.slice(1) : s;
};

/** Groups thousands with a comma; keeps the decimals as given. */
const grouped = (s: string): string =>
  s.replace(/^(-?)(\d+)/, (_, sign: string, n: string) => sign + n.replace(/\B(?=(\d{3})+$)/g, ","));

/**
 * Feet, inches and a fraction of an inch, as a carpenter reads a tape: `12 ft 3 1/2 in`.
 *
 * value        length                                  [m], any finite value
 * denominator  smallest fraction shown, a power of two  (default 1/16 in)
 */
export function feetInches(value: number, denominator = 16): string {
  const sign = value < 0 ? "-" : "";
  const ticks = Math.round((Math.abs(value) / M_PER_IN) * denominator);
  const feet = Math.floor(ticks / (12 * denominator));
  const rest = ticks - feet * 12 * denominator;
  const inch = Math.floor(rest / denominator);
  let top = rest - inch * denominator;
  let bottom = denominator;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const fraction = top > 0 ? `${inch > 0 ? " " : ""}${top}/${bottom}` : "";
  const inchText = inch > 0 || top > 0 ? `${inch > 0 ? inch : ""}${fraction} in` : "";
  if (feet > 0 && inchText) return `${sign}${grouped(String(feet))} ft ${inchText}`;
  if (feet > 0) return `${sign}${grouped(String(feet))} ft`;
  return inchText ? sign + inchText : "0 in";
}

/** The one place that turns an SI value into words on a screen or paper. Rounds to nearest; never changes the value. */
export function showQuantity(value: number, unit: Unit, system: UnitSystem): string {
  const us = system === "us";
  switch (unit) {
    case "1":
      return grouped(trim(value, 2));
    case "m":
      return us
        ? feetInches(value, Math.abs(value) > 3 ? 2 : 16)
        : Math.abs(value) < 1
          ? `${grouped(trim(value * 1000, 0))} mm`
          : `${grouped(trim(value, 2))} m`;
    case "m2":
      return us ? `${grouped(trim(value / M_PER_FT ** 2, 0))} sq ft` : `${grouped(trim(value, 1))} m²`;
    case "m3":
      // A section modulus is small: in the unit in which it is a number one can read.
      if (value !== 0 && Math.abs(value) < 1e-3)
        return us ? `${grouped(trim(value / M_PER_IN ** 3, 2))} in³` : `${grouped(trim(value * 1e9, 0))} mm³`;
      return us ? `${grouped(trim(value / M_PER_FT ** 3, 1))} cu ft` : `${grouped(trim(value, 3))} m³`;
    case "m4":
      return us ? `${grouped(trim(value / M_PER_IN ** 4, 1))} in⁴` : `${grouped(trim(value * 1e12, 0))} mm⁴`;
    case "kg":
      return us ? `${grouped(trim(value / KG_PER_LB, 0))} lb` : `${grouped(trim(value, 1))} kg`;
    case "kg/m":
      return us
        ? `${grouped(trim((value / KG_PER_LB) * M_PER_FT, 1))} lb/ft`
        : `${grouped(trim(value, 1))} kg/m`;
    case "kg/m2":
      return us
        ? `${grouped(trim((value / KG_PER_LB) * M_PER_FT ** 2, 1))} lb/sq ft`
        : `${grouped(trim(value, 1))} kg/m²`;
    case "kg/m3":
      return us
        ? `${grouped(trim((value / KG_PER_LB) * M_PER_FT ** 3, 1))} lb/cu ft`
        : `${grouped(trim(value, 0))} kg/m³`;
    case "N":
      return us
        ? `${grouped(trim(value / N_PER_LBF, 0))} lb`
        : Math.abs(value) >= 1000
          ? `${grouped(trim(value / 1000, 2))} kN`
          : `${grouped(trim(value, 0))} N`;
    case "N/m":
      return us
        ? `${grouped(trim((value / N_PER_LBF) * M_PER_FT, 1))} lb/ft`
        : `${grouped(trim(value / 1000, 3))} kN/m`;
    case "N*m":
      return us
        ? `${grouped(trim(value / N_PER_LBF / M_PER_FT, 0))} lb ft`
        : `${grouped(trim(value / 1000, 3))} kN m`;
    case "N*m2":
      return `${grouped(trim(value / 1000, 2))} kN m²`;
    case "N/m3":
      return us
        ? `${grouped(trim((value / N_PER_LBF) * M_PER_FT ** 3, 1))} lb/cu ft`
        : `${grouped(trim(value / 1000, 2))} kN/m³`;
    case "Pa":
      if (us)
        return value >= 50_000
          ? `${grouped(trim(value / PA_PER_PSI, 0))} psi`
          : `${grouped(trim(value / PA_PER_PSF, 0))} psf`;
      return value >= 1e9
        ? `${trim(value / 1e9, 2)} GPa`
        : value >= 1e5
          ? `${grouped(trim(value / 1e6, 2))} MPa`
          : `${grouped(trim(value / 1000, 1))} kPa`;
    case "m/s":
      return us ? `${trim(value / M_PER_FT, 1)} ft/s` : `${trim(value, 2)} m/s`;
    case "s":
      return `${trim(value, 1)} s`;
    case "Hz":
      return `${trim(value, 1)} Hz`;
    case "h":
      return `${grouped(trim(value, 1))} h`;
    case "rad":
      return `${trim((value * 180) / Math.PI, 1)}°`;
    case "money":
      return grouped(trim(value, 2));
  }
}

/**
 * A share of a limit to two decimals that never hides on which side of the limit it lies: what is over it rounds up,
 * what is under it never rounds up to it.
 */
export function showShareOfLimit(share: number): string {
  const nearest = share.toFixed(2);
  if (share > 1) return Number(nearest) > 1 ? nearest : "1.01";
  return share < 1 && nearest === "1.00" ? "0.99" : nearest;
}
