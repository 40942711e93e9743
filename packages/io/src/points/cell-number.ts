import type { DecimalSign } from "./types.ts";

const [MINUS, PLUS, ZERO, NINE] = [45, 43, 48, 57];
/** Powers of ten that a double holds exactly: dividing a whole number below 2^53 by one rounds correctly. */
const EXACT_TENS = Array.from({ length: 23 }, (_, i) => Number(`1e${i}`));
const EXACT_WHOLE = 2 ** 53 / 10 - 1;
const LONGEST = 80;

/** Words that programs write where there is nothing. */
const NOTHING = /^(-+|\*+|n\/?a|#n\/a|nan|null|none|nil|no ?data|missing)$/i;
/** What a spreadsheet computes: the value itself is not in the file. */
const FORMULA = /^'?(=|@|[+-]\s*[a-z(]|#(ref|value|name|div\/0|num|null|spill|calc)!?\??)/i;

const decoder = new TextDecoder();

export type CellFault = "blank" | "formula" | "other-decimal" | "not-a-number";

/** The number in a stretch of bytes, or why there is none. */
export class CellNumber {
  readonly #sign: "." | ",";
  readonly #signByte: number;
  value = NaN;
  fault: CellFault | null = null;

  constructor(decimal: DecimalSign) {
    this.#sign = decimal === "point" ? "." : ",";
    this.#signByte = this.#sign.charCodeAt(0);
  }

  /** Reads the bytes from `from` to before `to`; true when they are a number, which then stands in `value`. */
  read(bytes: Uint8Array, from: number, to: number): boolean {
    let [first, end] = [from, to];
    while (first < end && bytes[first]! <= 32) first += 1;
    while (end > first && bytes[end - 1]! <= 32) end -= 1;
    return this.#simple(bytes, first, end) || this.#slow(bytes, first, end);
  }

  /** Sign, digits, decimal sign, digits: nearly every value. Zeros at the end of the decimals cost no digits. */
  #simple(bytes: Uint8Array, from: number, to: number): boolean {
    let i = from;
    const sign = bytes[i] === MINUS ? -1 : 1;
    if (i < to && (sign < 0 || bytes[i] === PLUS)) i += 1;
    let [whole, digits, decimals, zeros] = [0, 0, -1, 0];
    for (; i < to; i++) {
      const b = bytes[i]!;
      if (b === this.#signByte && decimals < 0) decimals = 0;
      else if (b < ZERO || b > NINE) return false;
      else if (b === ZERO && decimals >= 0) [zeros, digits] = [zeros + 1, digits + 1];
      else {
        for (; zeros > 0; zeros--) [whole, decimals] = [whole * 10, decimals + 1];
        if (whole >= EXACT_WHOLE) return false;
        whole = whole * 10 + (b - ZERO);
        digits += 1;
        if (decimals >= 0) decimals += 1;
      }
    }
    if (digits === 0 || decimals >= EXACT_TENS.length || whole >= EXACT_WHOLE) return false;
    this.value = (sign * whole) / EXACT_TENS[Math.max(0, decimals)]!;
    this.fault = null;
    return true;
  }

  #slow(bytes: Uint8Array, from: number, to: number): boolean {
    this.value = NaN;
    const isLong = to - from > LONGEST;
    const text = isLong ? "" : decoder.decode(bytes.subarray(from, to)).trim();
    this.fault = isLong ? "not-a-number" : this.#faultOf(text);
    if (this.fault !== null) return false;
    this.value = Number(text.replace(/^'/, "").replace(this.#sign, "."));
    if (!Number.isFinite(this.value)) this.fault = "not-a-number";
    return this.fault === null;
  }

  #faultOf(text: string): CellFault | null {
    if (text === "" || NOTHING.test(text)) return "blank";
    if (FORMULA.test(text)) return "formula";
    const [own, other] = this.#sign === "." ? ["\\.", ","] : [",", "\\."];
    const number = (sign: string): RegExp =>
      new RegExp(`^'?[-+]?(\\d+${sign}?\\d*|${sign}\\d+)(e[-+]?\\d+)?$`, "i");
    if (number(own!).test(text)) return null;
    return number(other!).test(text) ? "other-decimal" : "not-a-number";
  }
}
