const EMPTY = new Set([
  "",
  "na",
  "nan",
  "n/a",
  "null",
  "-",
  "--",
  "-9999",
  "-9999.0",
  "-99.9",
  "999",
  "9999",
]);

/** A level as a cell holds it: a number, nothing, or no number at all. A comma is a decimal point. */
export function readLevel(cell: string, decimalComma: boolean): number | null | "not a number" {
  const words = cell.trim().replace("−", "-");
  if (EMPTY.has(words.toLowerCase())) return null;
  const plain = decimalComma ? words.replace(",", ".") : words;
  if (!/^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(plain)) return "not a number";
  const value = Number(plain);
  return Number.isFinite(value) ? value : "not a number";
}

/** Flags that say a value is good: none, or a sign and number in <> as reserves write them (0 and above is good). */
export function isGoodFlag(cell: string): boolean {
  const words = cell.trim().toLowerCase();
  if (["", "0", "1", "good", "ok", "pass", "g", "v", "verified", "a", "approved"].includes(words))
    return true;
  const numbered = /^<(-?\d+)>/.exec(words);
  return numbered !== null && Number(numbered[1]) >= 0;
}
