import type { Crs } from "@causey/engine/site";
import proj4 from "proj4";

/** What a .prj file beside an ASCII grid says about the plan's system. */
export type PrjAnswer = "agrees" | "differs" | "unreadable";

/** Longest .prj that is read: real ones hold a few hundred characters. */
const PRJ_CHARACTERS = 20_000;

/** Numbers that fix a projection, with the difference that still counts as equal (degrees in radians, metres). */
const NUMBERS = [
  ["lat0", 1e-9],
  ["long0", 1e-9],
  ["lat1", 1e-9],
  ["lat2", 1e-9],
  ["k0", 1e-9],
  ["x0", 0.01],
  ["y0", 0.01],
  ["a", 0.01],
  ["b", 0.01],
  ["to_meter", 1e-9],
] as const;

/**
 * Whether a well-known text (.prj) describes the projection of an EPSG system. Names are not compared, for every
 * program writes its own; projection, origin, scale, false origin, ellipsoid and unit are.
 */
export function comparePrj(text: string, crs: Crs & { kind: "epsg" }): PrjAnswer {
  if (text.length > PRJ_CHARACTERS) return "unreadable";
  try {
    const given = definition(text.trim());
    const wanted = definition(crs.proj);
    return sameMethod(given, wanted) &&
      NUMBERS.every(([key, slack]) => near(given[key], wanted[key], key, slack))
      ? "agrees"
      : "differs";
  } catch {
    return "unreadable";
  }
}

type Definition = Readonly<Record<string, unknown>>;

const definition = (text: string): Definition => new proj4.Proj(text) as unknown as Definition;

/** UTM is a transverse Mercator with its numbers filled in; proj4 keeps the formulas as functions of one family. */
const sameMethod = (a: Definition, b: Definition): boolean => family(a) === family(b);

const family = (d: Definition): string => {
  const name = String(d["projName"]).toLowerCase().replaceAll(/[\s_]/g, "");
  const known = FAMILIES.find(([pattern]) => pattern.test(name));
  return known ? known[1] : name;
};

const FAMILIES: readonly (readonly [RegExp, string])[] = [
  [/^(utm|tmerc|etmerc|transversemercator|fasttmerc|fasttransversemercator|gausskruger)/, "tmerc"],
  [/^(lcc|lambert.*conformal)/, "lcc"],
  [/^(aea|albers)/, "aea"],
  [/^(laea|lambertazimuthal)/, "laea"],
  [/^(sterea|doublestereographic|obliquestereographic)/, "sterea"],
  [/^(stere|polarstereographic|stereographic)/, "stere"],
  [/^(omerc|hotine|rectifiedskew)/, "omerc"],
  [/^(cass|cassini)/, "cass"],
];

function near(a: unknown, b: unknown, key: string, slack: number): boolean {
  const rest = key === "k0" || key === "to_meter" ? 1 : 0;
  const [x, y] = [a, b].map((v) => (typeof v === "number" ? v : rest));
  return Math.abs(x! - y!) <= slack;
}
