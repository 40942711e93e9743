const QUOTE = 34;
const LF = 10;
const CR = 13;
/** More cells than this in a row is no table of points. */
export const MOST_CELLS = 2000;

/** The cells of one row of a CSV file (RFC 4180), as places in its bytes: no text is made of cells that nobody reads. */
export class RowCells {
  readonly delimiter: number;
  readonly starts = new Float64Array(MOST_CELLS);
  readonly ends = new Float64Array(MOST_CELLS);
  /** 1 where a cell holds doubled quotes. */
  readonly doubled = new Uint8Array(MOST_CELLS);
  /** Cells of the row; those past `MOST_CELLS` are counted, not kept. */
  count = 0;
  /** Line ends that the row took up. */
  lines = 0;
  /** A quote that does not close, or text after a closing quote. */
  isBroken = false;

  constructor(delimiter: number) {
    this.delimiter = delimiter;
  }

  /** Reads the row that begins at `at`; where the next one begins, or -1 when the bytes end first and more may come. */
  read(bytes: Uint8Array, at: number, isLast: boolean): number {
    [this.count, this.lines, this.isBroken] = [0, 0, false];
    for (let i = at; ; i++) {
      i = bytes[i] === QUOTE ? this.#quoted(bytes, i + 1) : this.#plain(bytes, i);
      if (i < 0) return this.#ended(bytes, isLast);
      if (i >= bytes.length) return isLast ? bytes.length : -1;
      if (bytes[i] === this.delimiter) continue;
      if (bytes[i] === CR && i + 1 >= bytes.length && !isLast) return -1;
      this.lines += 1;
      return bytes[i] === CR && bytes[i + 1] === LF ? i + 2 : i + 1;
    }
  }

  #ended(bytes: Uint8Array, isLast: boolean): number {
    this.isBroken = true;
    return isLast ? bytes.length : -1;
  }

  #plain(bytes: Uint8Array, from: number): number {
    let i = from;
    const { delimiter } = this;
    for (; i < bytes.length; i++) {
      const b = bytes[i];
      if (b === delimiter || b === LF || b === CR) break;
    }
    this.#keep(from, i, 0);
    return i;
  }

  #quoted(bytes: Uint8Array, from: number): number {
    let isDoubled = 0;
    let i = from;
    for (; ; i++) {
      if (i >= bytes.length) return -1;
      const b = bytes[i];
      if (b === LF || (b === CR && bytes[i + 1] !== LF)) this.lines += 1;
      if (b !== QUOTE) continue;
      if (bytes[i + 1] !== QUOTE) break;
      [i, isDoubled] = [i + 1, 1];
    }
    this.#keep(from, i, isDoubled);
    for (i += 1; i < bytes.length; i++) {
      const b = bytes[i]!;
      if (b === this.delimiter || b === LF || b === CR) break;
      if (b > 32) this.isBroken = true;
    }
    return i;
  }

  #keep(from: number, to: number, isDoubled: number): void {
    if (this.count < MOST_CELLS) {
      this.starts[this.count] = from;
      this.ends[this.count] = to;
      this.doubled[this.count] = isDoubled;
    }
    this.count += 1;
  }
}
