/** How a place is typed: numbers of the plan's grid, or degrees as a phone shows them. */
export type PlaceForm = "grid" | "degrees";
/** What stands in the two fields: east and north, or latitude and longitude. */
export type PlaceTexts = readonly [string, string];

export type PlaceAnswer =
  | { readonly ok: true; readonly value: readonly [number, number] | null }
  | { readonly ok: false; readonly faults: readonly [string | null, string | null] };

const LIMITS = [
  { most: 90, letters: "NS", name: "latitude" },
  { most: 180, letters: "EW", name: "longitude" },
] as const;

/**
 * East and north [m], or latitude and longitude [degrees], in the order of the fields; null when both are empty.
 * A comma is read as a decimal point. Degrees may be written with minutes and seconds, and with a letter for the side.
 */
export function readPlace(texts: PlaceTexts, form: PlaceForm, isOptional: boolean): PlaceAnswer {
  const words = texts.map((t) => t.trim().replace("−", "-")) as [string, string];
  if (words.every((w) => w === "") && isOptional) return { ok: true, value: null };
  const read = words.map((word, i) => (form === "grid" ? metres(word) : degrees(word, LIMITS[i]!)));
  const [a, b] = read as [number | string, number | string];
  if (typeof a === "number" && typeof b === "number") return { ok: true, value: [a, b] };
  return { ok: false, faults: [faultOf(a), faultOf(b)] };
}

const faultOf = (read: number | string): string | null => (typeof read === "string" ? read : null);

/** The number, or what is wrong with the words. */
function metres(word: string): number | string {
  if (word === "") return "Give both numbers.";
  const value = Number(word.replace(/^(-?\d*),(\d+)$/, "$1.$2"));
  return Number.isFinite(value) ? value : `"${word}" is not a number.`;
}

const NUMBER = String.raw`\d+(?:[.,]\d+)?`;
const DEGREES = new RegExp(
  String.raw`^([NSEW])?\s*(-?${NUMBER})\s*°?(?:\s*(${NUMBER})\s*['′’])?(?:\s*(${NUMBER})\s*["″”])?\s*([NSEW])?$`,
  "i",
);

function degrees(word: string, { most, letters, name }: (typeof LIMITS)[number]): number | string {
  if (word === "") return "Give both numbers.";
  const [, before, whole, minutes, seconds, after] = DEGREES.exec(word) ?? [];
  if (whole === undefined) return `"${word}" is no ${name} in degrees, such as 51.9569.`;
  const letter = (before ?? after ?? "").toUpperCase();
  if (letter !== "" && !letters.includes(letter)) return `"${letter}" does not belong to a ${name}.`;
  const part = (text: string | undefined): number => Number((text ?? "0").replace(",", "."));
  const size = Math.abs(part(whole)) + part(minutes) / 60 + part(seconds) / 3600;
  const value = whole.startsWith("-") || letter === "S" || letter === "W" ? -size : size;
  return Math.abs(value) > most ? `A ${name} lies between -${most} and ${most}.` : value;
}

/** Two numbers that were pasted into one field: parted by a comma with a space or after a decimal point, or by space. */
export function splitPasted(text: string): PlaceTexts | null {
  const one = String.raw`-?\d+(?:[.,]\d+)?`;
  const pointed = String.raw`-?\d+(?:\.\d+)?`;
  const match =
    new RegExp(`^\\s*(${one})\\s*(?:;|,\\s|\\s)\\s*(${one})\\s*$`).exec(text) ??
    new RegExp(`^\\s*(-?\\d+\\.\\d+),(${pointed})\\s*$`).exec(text);
  return match ? [match[1]!, match[2]!] : null;
}

/** Numbers of the grid so small that they are more likely degrees: no projected system reaches them on its own land. */
export const looksLikeDegrees = ([a, b]: readonly [number, number]): boolean =>
  Math.abs(a) <= 180 && Math.abs(b) <= 180 && !(Number.isInteger(a) && Number.isInteger(b));
