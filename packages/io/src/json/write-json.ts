import { DomainError } from "@causey/engine/units";

/**
 * JSON as UTF-8 bytes with two blanks of indent and a newline at the end. Keys stand in alphabetical order, so that
 * equal data gives equal bytes however it was put together, or as given where a person reads the file from the top.
 * Throws `DomainError` for a number that is not finite, which JSON would turn into null without a word.
 */
export const jsonBytes = (value: unknown, order: "alphabetical" | "as-given" = "alphabetical"): Uint8Array =>
  new TextEncoder().encode(`${JSON.stringify(checked(value, "$", order), null, 2)}\n`);

function checked(value: unknown, path: string, order: "alphabetical" | "as-given"): unknown {
  if (typeof value === "number") {
    if (!Number.isFinite(value)) throw new DomainError("not-a-finite-number", { path, value: String(value) });
    return value === 0 ? 0 : value;
  }
  if (Array.isArray(value)) return value.map((v, i) => checked(v, `${path}[${i}]`, order));
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value).filter(([, v]) => v !== undefined);
  if (order === "alphabetical") entries.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return Object.fromEntries(entries.map(([k, v]) => [k, checked(v, `${path}.${k}`, order)]));
}

/** Rounds for printing, half away from zero in the last place; never gives -0. */
export const roundTo = (value: number, digits: number): number => Number(value.toFixed(digits)) + 0;
