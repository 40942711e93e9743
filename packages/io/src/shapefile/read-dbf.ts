import type { Json, JsonObject } from "@causey/engine/formula";
import { LAYER_LIMITS } from "../layer-form/index.ts";
import { quote, type Findings } from "../problem/index.ts";
import { fieldDecoder, type FieldDecoder } from "./dbf-text.ts";

interface Field {
  readonly name: string;
  readonly type: string;
  readonly at: number;
  readonly length: number;
}

/** Kinds of field that are read: text, numbers in digits, days, yes and no, whole numbers and doubles in binary. */
const READ = new Set(["C", "N", "F", "D", "L", "I", "O"]);
const MEND = "Export the shapefile again; a copy that was cut off on its way looks like this.";

/**
 * The rows of a dBASE table (.dbf), null for a row marked as deleted. Empty fields, the asterisks that stand for a
 * number too long for its field, and undecided yes-or-no fields become null; days become "2024-04-15". Every count of
 * the header is held against the bytes before memory is taken. Throws `ProblemError`.
 *
 * cpg  text of the .cpg file beside it, or null
 */
export function readDbf(
  found: Findings,
  file: string,
  bytes: Uint8Array,
  cpg: string | null,
): readonly (JsonObject | null)[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const stop = (at: number, value: string, message: string): never =>
    found.stop({ code: "dbf", place: `${file}, byte ${at}`, value, message: `${message}.`, mend: MEND });
  if (bytes.length < 33) stop(0, `${bytes.length} bytes`, "This is not a .dbf table, or it is cut off");
  const count = view.getUint32(4, true);
  const start = view.getUint16(8, true);
  const rowLength = view.getUint16(10, true);
  if (start < 33 || rowLength < 1 || start + count * rowLength > bytes.length)
    stop(4, `${count} rows of ${rowLength} bytes`, "The table claims more rows than it holds");
  if (count > LAYER_LIMITS.features)
    stop(4, `${count} rows`, `At most ${LAYER_LIMITS.features} rows are read`);
  const decode = fieldDecoder(found, cpg, bytes[29]!);
  const fields = readFields(bytes, start, decode, file);
  const width = fields.reduce((sum, f) => sum + f.length, 1);
  if (fields.length > LAYER_LIMITS.fields)
    stop(32, `${fields.length} fields`, "The table has too many fields");
  if (width > rowLength) stop(32, `${width} bytes`, `The fields are longer than a row of ${rowLength} bytes`);
  warnUnread(found, file, fields);
  return Array.from({ length: count }, (_, i) => {
    const row = bytes.subarray(start + i * rowLength, start + (i + 1) * rowLength);
    return row[0] === 0x2a ? null : readRow(found, `${file}, row ${i + 1}`, row, fields, decode);
  });
}

function readFields(bytes: Uint8Array, end: number, decode: FieldDecoder, file: string): Field[] {
  const fields: Field[] = [];
  const names = new Set<string>();
  let at = 1;
  for (let head = 32; head + 32 <= end && bytes[head] !== 0x0d; head += 32) {
    const given = decode(`${file}, field ${fields.length + 1}`, bytes.subarray(head, head + 11));
    const name = names.has(given) || given === "" ? `${given}_${fields.length + 1}` : given;
    names.add(name);
    const length = bytes[head + 16]!;
    fields.push({ name, type: String.fromCharCode(bytes[head + 11]!), at, length });
    at += length;
  }
  return fields;
}

function warnUnread(found: Findings, file: string, fields: readonly Field[]): void {
  const unread = fields.filter((f) => !READ.has(f.type));
  if (unread.length > 0)
    found.warn({
      code: "dbf-field",
      place: file,
      value: unread.map((f) => f.name).join(", "),
      message: `Fields of a kind that is not read were left out: ${unread.map((f) => quote(f.name)).join(", ")}.`,
      mend: "Change them to text or numbers if they are needed.",
    });
}

function readRow(
  found: Findings,
  place: string,
  row: Uint8Array,
  fields: readonly Field[],
  decode: FieldDecoder,
): JsonObject {
  return Object.fromEntries(
    fields
      .filter((f) => READ.has(f.type))
      .map((f) => [f.name, readValue(found, place, row.subarray(f.at, f.at + f.length), f, decode)]),
  );
}

function readValue(
  found: Findings,
  place: string,
  bytes: Uint8Array,
  field: Field,
  decode: FieldDecoder,
): Json {
  if (field.type === "I" || field.type === "O") return binary(bytes, field.type);
  const text = decode(`${place}, ${field.name}`, bytes);
  if (text === "") return null;
  if (field.type === "C") return text;
  if (field.type === "L") return /^[yt]$/i.test(text) ? true : /^[nf]$/i.test(text) ? false : null;
  if (field.type === "D") return day(text);
  const value = /^\*+$/.test(text) ? null : Number(text.replace(",", "."));
  if (value === null || Number.isFinite(value)) return value;
  found.error({
    code: "dbf-number",
    place: `${place}, ${field.name}`,
    value: text,
    message: `The field ${quote(field.name)} should hold a number.`,
    mend: "Mend it in the table, or export the shapefile again.",
  });
  return null;
}

function binary(bytes: Uint8Array, type: "I" | "O"): number | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (type === "I") return bytes.length === 4 ? view.getInt32(0, true) : null;
  const value = bytes.length === 8 ? view.getFloat64(0, true) : NaN;
  return Number.isFinite(value) ? value : null;
}

/** A day whose digits are no day stays as the text that it is; all noughts stand for none. */
const day = (text: string): string | null =>
  /^0+$/.test(text) ? null : text.replace(/^(\d{4})(\d\d)(\d\d)$/, "$1-$2-$3");
