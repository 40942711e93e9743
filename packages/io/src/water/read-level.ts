const EMPTY = new Set(["", "na", "nan", "n/a", "null", "none", "-", "--"]);
/** Numbers that stand for "nothing" in gauges' files: no water stands at any of them. */
const NO_VALUE = new Set([99.9, 99.99, 999, 999.9, 999.99, 999.999, 9999, 9999.9, 9999.99, 99_999, 999_999]);
/** Beyond this no unit makes it a water level. */
const FARTHEST = 20_000;

/** A level as a cell holds it: a number, nothing, or why it is none. A comma is a decimal point where the file has such. */
export function readLevel(
  cell: string,
  decimalComma: boolean,
): number | null | { readonly why: "formula" | "not a number" } {
  const words = cell.trim().replace("−", "-");
  if (EMPTY.has(words.toLowerCase())) return null;
  const plain = decimalComma ? words.replace(",", ".") : words;
  if (!/^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(plain))
    return { why: /^([=@]|[-+][a-z(])/i.test(words) ? "formula" : "not a number" };
  const value = Number(plain);
  const size = Math.abs(value);
  if (NO_VALUE.has(size) && (value < 0 || size >= 999)) return null;
  return size <= FARTHEST ? value : { why: "not a number" };
}

const GOOD = new Set(["", "0", "1", "good", "ok", "pass", "g", "v", "verified", "a", "approved"]);

/**
 * Flags that say a value is good: none, a word or number for it, or "<0>" as estuary reserves write it. Of their
 * numbers only 0 is good: below it lie missing and rejected values, and 1 is "suspect"
 * (search.r-project.org/CRAN/refmans/SWMPr/html/qaqc.html: "only data with the '0' flag should be used").
 */
export function isGoodFlag(cell: string): boolean {
  const words = cell.trim().toLowerCase();
  const numbered = /^<(-?\d+)>/.exec(words);
  return numbered ? Number(numbered[1]) === 0 : GOOD.has(words);
}
