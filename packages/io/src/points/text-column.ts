import { undefuse } from "../csv/index.ts";
import type { Words } from "./types.ts";

const decoder = new TextDecoder("utf-8", { ignoreBOM: true });
/** Names longer than this are cut [bytes]. */
const LONGEST = 200;

/** Short texts behind each other in one array of bytes: ten million names without ten million strings. */
export class TextColumn implements Words {
  #bytes = new Uint8Array(1024);
  #ends = new Uint32Array(256);
  #used = 0;
  length = 0;

  /** Appends the bytes from `from` to before `to`. */
  push(bytes: Uint8Array, from: number, to: number): void {
    const size = Math.max(0, Math.min(to - from, LONGEST));
    if (this.#used + size > this.#bytes.length) this.#bytes = grown(this.#bytes, this.#used + size);
    if (this.length === this.#ends.length) this.#ends = grown(this.#ends, this.length + 1);
    for (let i = 0; i < size; i++) this.#bytes[this.#used + i] = bytes[from + i]!;
    this.#used += size;
    this.#ends[this.length] = this.#used;
    this.length += 1;
  }

  at = (row: number): string => {
    const text = decoder.decode(this.#bytes.subarray(this.#start(row), this.#ends[row]!)).trim();
    return undefuse(text);
  };

  #start(row: number): number {
    return row === 0 ? 0 : this.#ends[row - 1]!;
  }

  /** FNV-1a over the bytes, for telling equal texts. */
  hash(row: number): number {
    let h = 0x811c9dc5;
    for (let i = this.#start(row); i < this.#ends[row]!; i++) h = Math.imul(h ^ this.#bytes[i]!, 0x01000193);
    return h >>> 0;
  }

  isSame(a: number, b: number): boolean {
    const [i, j] = [this.#start(a), this.#start(b)];
    const size = this.#ends[a]! - i;
    if (size !== this.#ends[b]! - j) return false;
    for (let k = 0; k < size; k++) if (this.#bytes[i + k] !== this.#bytes[j + k]) return false;
    return true;
  }

  isEmpty(row: number): boolean {
    return this.#start(row) === this.#ends[row]!;
  }

  /** Keeps the rows marked 0, in place. */
  dropMarked(marks: Uint8Array): void {
    let [rows, used, from] = [0, 0, 0];
    for (let row = 0; row < this.length; row++) {
      const end = this.#ends[row]!;
      if (marks[row] === 0) {
        this.#bytes.copyWithin(used, from, end);
        used += end - from;
        this.#ends[rows] = used;
        rows += 1;
      }
      from = end;
    }
    [this.length, this.#used] = [rows, used];
  }
}

/** A copy half as large again, or as large as is needed. */
export function grown<T extends Uint8Array | Uint32Array | Float32Array | Float64Array>(
  array: T,
  needed: number,
): T {
  const size = Math.max(needed, Math.ceil(array.length * 1.5));
  const larger = new (array.constructor as new (n: number) => T)(size);
  larger.set(array);
  return larger;
}
