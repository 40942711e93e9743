import { quote, Findings } from "../problem/index.ts";
import { CellNumber } from "./cell-number.ts";
import { cellText, isBlankCell } from "./cell-text.ts";
import {
  checkUnitOfHeads,
  headsOf,
  isNumbered,
  placeColumns,
  sniffDelimiter,
  type ColumnPlaces,
} from "./columns.ts";
import { DateColumn } from "./date-column.ts";
import { faultWords } from "./fault-words.ts";
import { finishPoints } from "./finish-points.ts";
import { LeftOutRows } from "./missing.ts";
import { PointRows } from "./point-rows.ts";
import { MOST_CELLS, RowCells } from "./row-cells.ts";
import type { PointOptions, PointsRead } from "./types.ts";

/** Most rows that are read. */
export const MAX_POINTS = 12_000_000;
/** A row longer than this is no row: a quote that does not close, or no text at all [bytes]. */
const LONGEST_ROW = 1_000_000;
/** A larger number is no position, height or accuracy. */
const LARGEST = 1e8;
/** After so many faults the rest is not read: all rows have the same one. */
const MOST_FAULTS = 100;

/**
 * Reads survey points from a file that comes in pieces: `push` every piece in turn, then `finish`. One pass over the
 * bytes; positions, heights and names go into typed arrays, 36 bytes a point and its name, never an object a row.
 * Both throw `ProblemError`.
 */
export class PointReader {
  readonly #found: Findings;
  readonly #options: PointOptions;
  readonly #left = new LeftOutRows();
  readonly #rows: PointRows;
  readonly #dates: DateColumn;
  readonly #number: CellNumber;
  #carry: Uint8Array = new Uint8Array(0);
  #isStarted = false;
  #row: RowCells | null = null;
  #places: ColumnPlaces | null = null;
  #heads = 0;
  #line = 1;
  #faults = 0;
  #total = 0;

  constructor(file: string, options: PointOptions) {
    const { columns } = options;
    this.#found = new Findings(file);
    this.#options = options;
    this.#rows = new PointRows({
      accuracy: columns.accuracy !== null,
      date: columns.date !== null,
      id: columns.id !== null,
      code: columns.code !== null,
    });
    this.#dates = new DateColumn(this.#found, options.date_order);
    this.#number = new CellNumber(options.decimal);
  }

  /** How many bytes will come in all, when it is known: rows are then given room once. */
  expect(bytes: number): void {
    this.#total = bytes;
  }

  push(piece: Uint8Array): void {
    this.#take(this.#carry.length === 0 ? piece : joined(this.#carry, piece), false);
    if (this.#carry.length > LONGEST_ROW) this.#tooLong();
  }

  finish(): PointsRead {
    this.#take(this.#carry, true);
    if (this.#places === null)
      this.#found.stop({
        code: "points-empty",
        place: "file",
        message: "The file holds no row of heads.",
        mend: "Export it again, with a first row that names the columns.",
      });
    this.#dates.finish();
    return finishPoints(this.#found, this.#rows, this.#left, this.#options);
  }

  #take(bytes: Uint8Array, isLast: boolean): void {
    let at = this.#isStarted ? 0 : this.#start(bytes, isLast);
    if (at < 0) return void (this.#carry = bytes.slice());
    const row = this.#row!;
    while (at < bytes.length) {
      const next = row.read(bytes, at, isLast);
      if (next < 0) break;
      this.#oneRow(bytes, row);
      if (this.#total > 0 && this.#rows.length === 1000) this.#makeRoom(next);
      this.#line += row.lines;
      at = next;
    }
    this.#carry = bytes.slice(at);
  }

  /** Skips the byte order mark and reads the delimiter off the first line that is not blank; -1 to wait for more. */
  #start(bytes: Uint8Array, isLast: boolean): number {
    if (!isLast && bytes.length < 3) return -1;
    const [a, b, c] = bytes;
    if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff))
      this.#found.stop({
        code: "not-text",
        place: "byte 0",
        value: "UTF-16",
        message: "The file is in UTF-16.",
        mend: "Save it again with the encoding UTF-8.",
      });
    const at = a === 0xef && b === 0xbb && c === 0xbf ? 3 : 0;
    const text = new TextDecoder().decode(bytes.subarray(at, at + 65_536));
    const line = text.split(/[\r\n]/).find((l) => l.trim() !== "");
    const isWhole = line !== undefined && /[^\s][^\r\n]*[\r\n]/.test(text);
    if (!isLast && !isWhole && bytes.length < LONGEST_ROW) return -1;
    this.#row = new RowCells(sniffDelimiter(line ?? ""));
    this.#isStarted = true;
    return at;
  }

  #makeRoom(bytesSoFar: number): void {
    const rows = Math.ceil((this.#total / bytesSoFar) * 1000 * 1.05) + 1000;
    this.#rows.reserve(Math.min(rows, MAX_POINTS));
  }

  #oneRow(bytes: Uint8Array, row: RowCells): void {
    if (row.isBroken)
      this.#fault(
        "csv-quotes",
        "A cell in quotes is not closed, or text follows its closing quote.",
        "Close the quote, and write a quote inside a cell twice.",
        cellText(bytes, row, 0),
      );
    else if (row.count > MOST_CELLS)
      this.#fault(
        "csv-cells",
        `The row has ${row.count} cells; ${MOST_CELLS} are read.`,
        "Check the delimiter, and that this is a table of points.",
        row.count,
      );
    else if (row.count === 1 && isBlankCell(bytes, row, 0)) return;
    else if (this.#places === null) this.#head(bytes, row);
    else this.#point(bytes, row, this.#places);
  }

  #head(bytes: Uint8Array, row: RowCells): void {
    const heads = headsOf(bytes, row);
    this.#heads = heads.length;
    this.#places = placeColumns(this.#found, heads, this.#options.columns, this.#line);
    checkUnitOfHeads(this.#found, heads, this.#places, this.#options.unit, this.#line);
    const { x, y } = this.#places;
    const isData = [x, y].every((c) => this.#number.read(bytes, row.starts[c]!, row.ends[c]!));
    if (isNumbered(this.#options.columns) && isData) this.#point(bytes, row, this.#places);
  }

  #point(bytes: Uint8Array, row: RowCells, places: ColumnPlaces): void {
    for (let i = this.#heads; i < row.count; i++)
      if (!isBlankCell(bytes, row, i))
        return this.#fault(
          "csv-cells",
          `The row has ${row.count} cells, the heads are ${this.#heads}: its values may stand in the wrong columns.`,
          "Check for decimal commas in a file that is parted by commas, and for a delimiter inside a name: put such cells in quotes, or export with semicolons.",
          cellText(bytes, row, i),
        );
    if (isBlankRow(bytes, row)) return;
    const before = this.#faults;
    const [x, y, z] = [
      this.#cell(bytes, row, places.x),
      this.#cell(bytes, row, places.y),
      this.#cell(bytes, row, places.z),
    ];
    const accuracy = this.#cell(bytes, row, places.accuracy);
    if (accuracy < 0)
      this.#fault(
        "points-accuracy",
        "The accuracy is below zero.",
        "Give a standard deviation, 0 or more; leave the cell empty if it is not known.",
        accuracy,
      );
    const day = places.date < 0 ? NaN : this.#dates.day(cellText(bytes, row, places.date), this.#line);
    if (this.#found.all.length > MOST_FAULTS) this.#found.throwIfErrors();
    if (this.#faults > before) return;
    if (Number.isNaN(x) || Number.isNaN(y)) this.#leave(bytes, row, places, "no-position", places.x);
    else if (Number.isNaN(z)) this.#leave(bytes, row, places, "no-height", places.z);
    else this.#keep(bytes, row, places, [x, y, z, accuracy, day]);
  }

  #keep(
    bytes: Uint8Array,
    row: RowCells,
    places: ColumnPlaces,
    [x, y, z, accuracy, day]: readonly [number, number, number, number, number],
  ): void {
    if (this.#rows.length >= MAX_POINTS)
      this.#found.stop({
        code: "too-many-rows",
        place: `line ${this.#line}`,
        value: `more than ${MAX_POINTS} rows`,
        message: `The file holds more than the ${MAX_POINTS} points that are read.`,
        mend: "Cut the points to the site, or thin them out.",
      });
    this.#rows.push(x, y, z, accuracy, day, this.#line);
    for (const [column, place] of [
      [this.#rows.ids, places.id],
      [this.#rows.codes, places.code],
    ] as const)
      if (column && place < row.count && row.doubled[place] === 0)
        column.push(bytes, row.starts[place]!, row.ends[place]!);
      else if (column) {
        const text = new TextEncoder().encode(cellText(bytes, row, place));
        column.push(text, 0, text.length);
      }
  }

  #leave(
    bytes: Uint8Array,
    row: RowCells,
    places: ColumnPlaces,
    reason: "no-position" | "no-height",
    place: number,
  ): void {
    const id = places.id < 0 ? null : cellText(bytes, row, places.id);
    this.#left.add(this.#line, id, reason, cellText(bytes, row, place));
  }

  /** Number of a cell; NaN for an empty one, for a column that is not wanted and for a fault, which is reported. */
  #cell(bytes: Uint8Array, row: RowCells, place: number): number {
    if (place < 0 || place >= row.count) return NaN;
    const number = this.#number;
    if (number.read(bytes, row.starts[place]!, row.ends[place]!)) {
      if (Math.abs(number.value) <= LARGEST) return number.value;
      number.fault = "not-a-number";
    }
    if (number.fault === "blank") return NaN;
    const [code, message, mend] = faultWords(number.fault!, this.#options.decimal === "point");
    this.#fault(
      code,
      `Column ${place + 1}: ${quote(cellText(bytes, row, place))} ${message}`,
      mend,
      cellText(bytes, row, place),
    );
    return NaN;
  }

  #fault(code: string, message: string, mend: string, value: unknown): void {
    this.#faults += 1;
    this.#found.error({ code, place: `line ${this.#line}`, value, message, mend });
    if (this.#faults >= MOST_FAULTS) this.#found.throwIfErrors();
  }

  #tooLong(): never {
    return this.#found.stop({
      code: "csv-quotes",
      place: `line ${this.#line}`,
      value: `${this.#carry.length} bytes`,
      message: "The row has no end: a cell in quotes is not closed, or this is not a text file.",
      mend: "Close the quote, or export the points as CSV.",
    });
  }
}

function isBlankRow(bytes: Uint8Array, row: RowCells): boolean {
  for (let i = 0; i < row.count; i++) if (!isBlankCell(bytes, row, i)) return false;
  return true;
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  const all = new Uint8Array(a.length + b.length);
  all.set(a);
  all.set(b, a.length);
  return all;
}
