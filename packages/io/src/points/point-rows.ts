import { grown, TextColumn } from "./text-column.ts";
import type { PointTable } from "./types.ts";

const FIRST_ROWS = 1024;

/** Points as they come in, in the file's own unit; grows by half when full. */
export class PointRows {
  x = new Float64Array(FIRST_ROWS);
  y = new Float64Array(FIRST_ROWS);
  z = new Float64Array(FIRST_ROWS);
  lines = new Uint32Array(FIRST_ROWS);
  accuracy: Float32Array | null;
  days: Float32Array | null;
  readonly ids: TextColumn | null;
  readonly codes: TextColumn | null;
  length = 0;

  constructor(has: {
    readonly accuracy: boolean;
    readonly date: boolean;
    readonly id: boolean;
    readonly code: boolean;
  }) {
    this.accuracy = has.accuracy ? new Float32Array(FIRST_ROWS) : null;
    this.days = has.date ? new Float32Array(FIRST_ROWS) : null;
    this.ids = has.id ? new TextColumn() : null;
    this.codes = has.code ? new TextColumn() : null;
  }

  /** Makes room for so many rows in all. */
  reserve(rows: number): void {
    if (rows <= this.x.length) return;
    this.x = grown(this.x, rows);
    this.y = grown(this.y, rows);
    this.z = grown(this.z, rows);
    this.lines = grown(this.lines, rows);
    if (this.accuracy) this.accuracy = grown(this.accuracy, rows);
    if (this.days) this.days = grown(this.days, rows);
  }

  push(x: number, y: number, z: number, accuracy: number, day: number, line: number): void {
    const i = this.length;
    if (i === this.x.length) this.reserve(i + 1);
    this.x[i] = x;
    this.y[i] = y;
    this.z[i] = z;
    this.lines[i] = line;
    if (this.accuracy) this.accuracy[i] = accuracy;
    if (this.days) this.days[i] = day;
    this.length = i + 1;
  }

  /** Keeps the rows marked 0, in place. */
  dropMarked(marks: Uint8Array): void {
    const arrays = [this.x, this.y, this.z, this.lines, this.accuracy, this.days].filter((a) => a !== null);
    for (const array of arrays) {
      let kept = 0;
      for (let i = 0; i < this.length; i++) if (marks[i] === 0) array[kept++] = array[i]!;
    }
    this.ids?.dropMarked(marks);
    this.codes?.dropMarked(marks);
    let kept = 0;
    for (let i = 0; i < this.length; i++) kept += marks[i] === 0 ? 1 : 0;
    this.length = kept;
  }

  /** The rows in metres; the arrays are views, not copies. */
  table(metres_per_unit: number): PointTable {
    const { length, ids, codes } = this;
    const metres = <T extends Float32Array | Float64Array>(values: T): T => {
      if (metres_per_unit !== 1) for (let i = 0; i < length; i++) values[i] = values[i]! * metres_per_unit;
      return values.subarray(0, length) as T;
    };
    return {
      x: metres(this.x),
      y: metres(this.y),
      z: metres(this.z),
      accuracy: this.accuracy && metres(this.accuracy),
      days: this.days && this.days.subarray(0, length),
      ids,
      codes,
      lines: this.lines.subarray(0, length),
    };
  }
}
