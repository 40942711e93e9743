import { columnsOf, readCsv, undefuse, type CsvRow } from "../csv/index.ts";
import { quote, type Findings } from "../problem/index.ts";
import { CellNumber } from "./cell-number.ts";
import { faultWords } from "./fault-words.ts";
import type { DecimalSign } from "./types.ts";

const BYTE_LIMIT = 50_000_000;
const ROW_LIMIT = 200_000;
const encoder = new TextEncoder();

/** A small table of readings: cells by the name that the user gave their column. */
export class NamedTable<K extends string> {
  readonly rows: readonly CsvRow[];
  readonly #found: Findings;
  readonly #places = new Map<K, number>();
  readonly #names: Readonly<Record<K, string | null>>;
  readonly #number: CellNumber;
  readonly #isPoint: boolean;

  /** Reads the file; a column that is named and not there ends the reading. Null = not wanted. */
  constructor(
    found: Findings,
    bytes: Uint8Array,
    columns: Readonly<Record<K, string | null>>,
    decimal: DecimalSign,
  ) {
    const table = readCsv(found, bytes, BYTE_LIMIT, ROW_LIMIT);
    const places = columnsOf(found, table.heads);
    this.#found = found;
    this.#names = columns;
    this.#number = new CellNumber(decimal);
    this.#isPoint = decimal === "point";
    for (const key of Object.keys(columns) as K[]) {
      const name = columns[key];
      if (name === null) continue;
      const at = places.get(name.trim().toLowerCase());
      if (at === undefined)
        found.error({
          code: "table-column",
          place: "line 1",
          value: table.heads.join(", "),
          message: `The file has no column ${quote(name)}.`,
          mend: `Name one of its columns: ${table.heads.slice(0, 30).map(quote).join(", ")}.`,
        });
      else this.#places.set(key, at);
    }
    found.throwIfErrors();
    this.rows = table.rows.filter((row) => this.#fits(row, table.heads.length));
  }

  /** A row longer than the heads has its values in the wrong columns. */
  #fits(row: CsvRow, heads: number): boolean {
    if (row.cells.slice(heads).every((c) => c === "")) return true;
    this.fault(
      row,
      "csv-cells",
      row.cells.length,
      `The row has ${row.cells.length} cells, the heads are ${heads}.`,
      "Check for decimal commas in a file that is parted by commas, and put such cells in quotes.",
    );
    return false;
  }

  /** Text of a cell; empty for a column that is not wanted. */
  text(row: CsvRow, key: K): string {
    const at = this.#places.get(key);
    return at === undefined ? "" : undefuse(row.cells[at] ?? "");
  }

  /** Number of a cell; null for an empty one and for a fault, which is reported. */
  number(row: CsvRow, key: K): number | null {
    const at = this.#places.get(key);
    const text = at === undefined ? "" : (row.cells[at] ?? "");
    const bytes = encoder.encode(text);
    if (this.#number.read(bytes, 0, bytes.length)) return this.#number.value;
    if (this.#number.fault === "blank") return null;
    const [code, message, mend] = faultWords(this.#number.fault!, this.#isPoint);
    this.fault(row, code, text, `Column ${quote(this.#names[key]!)}: ${quote(text)} ${message}`, mend);
    return null;
  }

  fault(row: CsvRow, code: string, value: unknown, message: string, mend: string): void {
    this.#found.error({ code, place: `line ${row.line}`, value, message, mend });
  }
}
