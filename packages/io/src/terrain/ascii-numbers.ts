const LF = 10;
const CR = 13;
const MINUS = 45;
const PLUS = 43;
const POINT = 46;
const ZERO = 48;
const NINE = 57;
const LONGEST_TOKEN = 60;

/** Powers of ten that a double holds exactly: dividing a whole number below 2^53 by one rounds correctly. */
const EXACT_TENS = Array.from({ length: 23 }, (_, i) => Number(`1e${i}`));
const EXACT_WHOLE = 2 ** 53 / 10 - 1;

/** Numbers parted by blanks and line ends, read straight from bytes: a 200 MB grid never becomes one string. */
export class AsciiNumbers {
  readonly #bytes: Uint8Array;
  #at: number;
  /** Line of the reading position, and line and first byte of the last number, counted from 1 and 0. */
  line: number;
  tokenLine = 0;
  tokenStart = 0;

  constructor(bytes: Uint8Array, at: number, line: number) {
    this.#bytes = bytes;
    this.#at = at;
    this.line = line;
  }

  get end(): number {
    return this.#bytes.length;
  }

  /** The next number; "bad" for a word that is none; null at the end. "nan" is a number: NaN. */
  next(): number | "bad" | null {
    this.#skipBlanks();
    const bytes = this.#bytes;
    if (this.#at >= bytes.length) return null;
    this.tokenLine = this.line;
    this.tokenStart = this.#at;
    const simple = this.#simple();
    if (simple !== null) return simple;
    while (this.#at < bytes.length && bytes[this.#at]! > 32) this.#at += 1;
    return this.#slow();
  }

  tokenText(): string {
    let end = this.tokenStart;
    while (end < this.#bytes.length && this.#bytes[end]! > 32 && end - this.tokenStart < LONGEST_TOKEN)
      end += 1;
    return String.fromCharCode(...this.#bytes.subarray(this.tokenStart, end));
  }

  #skipBlanks(): void {
    const bytes = this.#bytes;
    for (; this.#at < bytes.length && bytes[this.#at]! <= 32; this.#at++) {
      const b = bytes[this.#at];
      if (b === LF || (b === CR && bytes[this.#at + 1] !== LF)) this.line += 1;
    }
  }

  /** Sign, digits, point, digits: nearly every value. Null, with the position moved on, for anything else. */
  #simple(): number | null {
    const bytes = this.#bytes;
    const sign = bytes[this.#at] === MINUS ? -1 : 1;
    if (sign < 0 || bytes[this.#at] === PLUS) this.#at += 1;
    let whole = 0;
    let digits = 0;
    let decimals = -1;
    for (; this.#at < bytes.length; this.#at++) {
      const b = bytes[this.#at]!;
      if (b >= ZERO && b <= NINE && whole < EXACT_WHOLE) {
        whole = whole * 10 + (b - ZERO);
        digits += 1;
        if (decimals >= 0) decimals += 1;
      } else if (b === POINT && decimals < 0) decimals = 0;
      else if (b <= 32) break;
      else return null;
    }
    return digits > 0 && decimals < EXACT_TENS.length
      ? (sign * whole) / EXACT_TENS[Math.max(0, decimals)]!
      : null;
  }

  #slow(): number | "bad" {
    if (this.#at - this.tokenStart >= LONGEST_TOKEN) return "bad";
    const text = this.tokenText();
    if (/^[-+]?nan$/i.test(text)) return NaN;
    return /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(text) ? Number(text) : "bad";
  }
}
