/** How a price list writes decimals: point or comma; a list keeps to one of them. */
export type DecimalSign = "." | ",";

/**
 * The sign that a list uses, seen in all its numbers together: "12,50" or "1.234,50" anywhere means comma.
 * A comma before exactly three digits could part thousands, so it proves nothing.
 */
export const decimalSign = (numbers: readonly string[]): DecimalSign =>
  numbers.some((n) => /,\d{1,2}$|,\d{4,}$|\.\d{3},\d*$/.test(n)) ? "," : ".";

/**
 * A number as a price list writes it, or null when it is none or could be read in two ways: in a list with decimal
 * points "1,234" is a thousand and "1.234" a little more than one; in a list with decimal commas the other way round.
 */
export function parseDecimal(text: string, sign: DecimalSign): number | null {
  const plain = text.replaceAll(/[\s\u00a0\u202f']/g, "");
  const group = sign === "," ? "." : ",";
  const pattern =
    sign === "," ? /^[-+]?(\d+|\d{1,3}(\.\d{3})+)(,\d+)?$/ : /^[-+]?(\d+|\d{1,3}(,\d{3})+)(\.\d+)?$/;
  if (!pattern.test(plain)) return null;
  return Number(plain.replaceAll(group, "").replace(",", "."));
}

/** In a list that may be either ("1,234" is its only kind of comma), such a number cannot be told. */
export const readsTwoWays = (text: string, all: readonly string[], delimiter: string): boolean =>
  delimiter !== "," &&
  /^[-+]?\d{1,3},\d{3}$/.test(text.trim()) &&
  decimalSign(all) === "." &&
  !all.some((n) => /\.\d/.test(n));
