import { M_PER_FT, M_PER_IN } from "./convert.ts";
import type { UnitSystem } from "./display.ts";

const FRACTION = String.raw`\d+\s*\/\s*\d+`;
const INCHES = String.raw`(?:(?<inch>\d+(?:\.\d+)?)(?:[\s-]+(?<fraction>${FRACTION}))?|(?<only>${FRACTION}))`;
const FEET_MARK = String.raw`(?:'|′|ft\.?|feet|foot)`;
const INCH_MARK = String.raw`(?:"|″|in\.?|inch(?:es)?)`;
const feetAndInches = new RegExp(
  String.raw`^(?<feet>\d+(?:\.\d+)?)\s*${FEET_MARK}[\s,-]*(?:${INCHES}\s*${INCH_MARK}?)?$`,
  "i",
);
const dashed = new RegExp(String.raw`^(?<feet>\d+)-(?<inch>\d+)(?:-(?<fraction>${FRACTION}))?$`);
const inchesOnly = new RegExp(String.raw`^${INCHES}\s*${INCH_MARK}$`, "i");
const metric = /^(?<n>\d+(?:[.,]\d+)?)\s*(?<unit>mm|cm|m)?$/i;
const metresPer = { mm: 0.001, cm: 0.01, m: 1 } as const;

/**
 * Reads a length as a carpenter writes it: `8' 0 1/2"`, `8-0-1/2`, `8 ft 3 in`, `96 in`, `2.44 m`, `2440 mm`. A bare
 * number is in feet for US units and in `bare` for metric ones. A sign may stand in front.
 *
 * returns  metres, exact up to the last digit of a double; null when it is no length
 */
export function readLength(
  text: string,
  system: UnitSystem,
  bare: "m" | "mm" | "ft" | "in" = "m",
): number | null {
  const whole = text.trim().replaceAll(/\s+/g, " ");
  const sign = /^[-−]/.test(whole) ? -1 : 1;
  const words = whole.replace(/^[-−+]\s*/, "");
  if (!/\d/.test(words)) return null;
  const value = fromFeet(words) ?? fromMetric(words, system, bare);
  return value === null ? null : sign * value;
}

function fromFeet(words: string): number | null {
  const found = feetAndInches.exec(words) ?? dashed.exec(words) ?? inchesOnly.exec(words);
  if (!found) return null;
  const { feet, inch, fraction, only } = found.groups!;
  const share = fractionOf(fraction ?? only);
  return share === null ? null : Number(feet ?? 0) * M_PER_FT + (Number(inch ?? 0) + share) * M_PER_IN;
}

function fractionOf(text: string | undefined): number | null {
  if (text === undefined) return 0;
  const [top, bottom] = text.split("/").map(Number);
  return bottom === 0 ? null : top! / bottom!;
}

function fromMetric(words: string, system: UnitSystem, bare: "m" | "mm" | "ft" | "in"): number | null {
  const found = metric.exec(words);
  if (!found) return null;
  const n = Number(found.groups!["n"]!.replace(",", "."));
  const unit = found.groups!["unit"]?.toLowerCase() as keyof typeof metresPer | undefined;
  if (unit !== undefined) return n * metresPer[unit];
  if (bare === "in") return n * M_PER_IN;
  if (bare === "mm") return n / 1000;
  return system === "us" || bare === "ft" ? n * M_PER_FT : n;
}
