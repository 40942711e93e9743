import type { Database, SqlValue } from "sql.js";
import { ProblemError, type Json } from "@causey/engine/formula";
import {
  LAYER_LIMITS,
  LayerBuilder,
  ShapeFault,
  type LayerBudget,
  type LayerCrs,
  type VectorLayer,
} from "../layer-form/index.ts";
import { quote, type Findings } from "../problem/index.ts";
import { checkFile } from "./check-file.ts";
import { readBlob } from "./read-wkb.ts";
import { withDatabase, type SqliteHook } from "./sqlite.ts";

/**
 * Reads the feature tables of a GeoPackage (OGC 12-128r17, GeoPackage 1.3; 1.0 to 1.4 are alike in what is read):
 * attributes, shapes, and the system that each table declares. Only true tables are read, never views or virtual
 * tables, which could run for ever; pictures (tiles) are left out. Throws `ProblemError`.
 */
export async function readGeoPackage(
  found: Findings,
  bytes: Uint8Array,
  budget: LayerBudget,
  hook: SqliteHook = {},
): Promise<readonly VectorLayer[]> {
  const sound = checkFile(found, bytes);
  try {
    return await withDatabase(sound, hook, (db) => readTables(found, db, budget));
  } catch (fault) {
    if (fault instanceof ProblemError || !isOfDatabase(fault)) throw fault;
    return found.stop({
      code: "gpkg-damaged",
      place: "database",
      value: fault.message,
      message: "The database is damaged and cannot be read.",
      mend: "Copy or export the GeoPackage again.",
    });
  }
}

/** SQLite reports as a plain Error; a machine that ran out of memory as a RuntimeError. Anything else is our fault. */
const isOfDatabase = (fault: unknown): fault is Error =>
  fault instanceof WebAssembly.RuntimeError || (fault instanceof Error && fault.constructor === Error);

function readTables(found: Findings, db: Database, budget: LayerBudget): VectorLayer[] {
  checkDatabase(found, db);
  const tables = rows(
    db,
    `SELECT c.table_name, g.column_name, g.srs_id, s.organization, s.organization_coordsys_id, s.definition
       FROM gpkg_contents c JOIN gpkg_geometry_columns g ON g.table_name = c.table_name
       LEFT JOIN gpkg_spatial_ref_sys s ON s.srs_id = g.srs_id
      WHERE c.data_type = 'features' ORDER BY c.rowid`,
    LAYER_LIMITS.layers + 1,
  );
  if (tables.length > LAYER_LIMITS.layers)
    found.stop({
      code: "gpkg-layers",
      place: "gpkg_contents",
      value: `more than ${LAYER_LIMITS.layers}`,
      message: `The GeoPackage holds more than the ${LAYER_LIMITS.layers} layers that are read.`,
      mend: "Keep those that touch the site.",
    });
  return tables.flatMap(([table, column, srs, organization, code, definition]) => {
    const crs = crsOf(Number(srs), organization, code, definition);
    return readTable(found, db, String(table), String(column), crs, budget) ?? [];
  });
}

const NEEDED = ["gpkg_contents", "gpkg_geometry_columns", "gpkg_spatial_ref_sys"];

function checkDatabase(found: Findings, db: Database): void {
  db.run("PRAGMA trusted_schema = OFF; PRAGMA ignore_check_constraints = ON; PRAGMA cell_size_check = ON");
  db.run("PRAGMA query_only = ON");
  const answer = String(rows(db, "PRAGMA quick_check(1)", 1)[0]?.[0]);
  if (answer !== "ok")
    found.stop({
      code: "gpkg-damaged",
      place: "database",
      value: answer,
      message: "The database is damaged.",
      mend: "Copy or export the GeoPackage again.",
    });
  const missing = NEEDED.filter((name) => !isTable(db, name));
  if (missing.length > 0)
    found.stop({
      code: "gpkg-tables",
      place: "database",
      value: missing.join(", "),
      message: "This is an SQLite database, but not a GeoPackage with features.",
      mend: "Export the layers as GeoPackage.",
    });
}

/** A true table: a virtual one runs code of its own, and a view may never end. */
const isTable = (db: Database, name: string): boolean =>
  rows(
    db,
    "SELECT 1 FROM sqlite_schema WHERE type = 'table' AND lower(name) = lower(?) AND sql LIKE 'CREATE TABLE%'",
    1,
    [name],
  ).length > 0;

function readTable(
  found: Findings,
  db: Database,
  table: string,
  column: string,
  crs: LayerCrs,
  budget: LayerBudget,
): VectorLayer | null {
  const columns = isTable(db, table) ? columnsOf(db, table) : [];
  const shape = columns.find((c) => c.name.toLowerCase() === column.toLowerCase());
  if (shape === undefined) return notATable(found, table, column);
  const key = columns.find((c) => c.isKey);
  const fields = columns.filter((c) => c !== shape && c !== key);
  const list = [shape, key, ...fields].flatMap((c) => (c === undefined ? [] : [identifier(c.name)]));
  const builder = new LayerBuilder(found, table, budget);
  const skip = key === undefined ? 1 : 2;
  each(db, `SELECT ${list.join(", ")} FROM ${identifier(table)}`, (row) => {
    const properties = fields.map((f, i) => [f.name, valueOf(row[i + skip]!, f.type)] as const);
    const blob = row[0];
    const place = builder.placeOf(null);
    builder.add(
      key === undefined ? null : row[1],
      Object.fromEntries(properties),
      blob instanceof Uint8Array ? shapeOf(found, place, blob) : null,
    );
  });
  return builder.layer(found.file, crs);
}

function shapeOf(found: Findings, place: string, blob: Uint8Array): object | null {
  try {
    return readBlob(blob);
  } catch (fault) {
    if (!(fault instanceof ShapeFault)) throw fault;
    found.error({
      code: "gpkg-shape",
      place,
      value: `${blob.length} bytes`,
      message: `The shape ${fault.message}.`,
      mend: "Redraw it or convert it to straight lines, and export the layer again.",
    });
    return null;
  }
}

function notATable(found: Findings, table: string, column: string): null {
  found.warn({
    code: "gpkg-view",
    place: table,
    value: column,
    message: `The layer ${quote(table)} is a view, a virtual table, or lacks its column of shapes; it is not read.`,
    mend: "Save it as a layer of its own in your mapping program.",
  });
  return null;
}

interface Column {
  readonly name: string;
  readonly type: string;
  readonly isKey: boolean;
}

/** Ordinary columns; computed ones are left out, for they run code that came with the file. */
const columnsOf = (db: Database, table: string): readonly Column[] =>
  rows(db, "SELECT name, type, pk, hidden FROM pragma_table_xinfo(?)", 2000, [table])
    .filter(([, , , hidden]) => hidden === 0)
    .map(([name, type, pk]) => ({
      name: String(name),
      type: String(type).toUpperCase(),
      isKey: pk === 1 && /INT/i.test(String(type)),
    }));

const valueOf = (value: SqlValue, type: string): Json => {
  if (value instanceof Uint8Array) return null;
  if (typeof value === "number" && !Number.isFinite(value)) return null;
  return type === "BOOLEAN" && typeof value === "number" ? value !== 0 : value;
};

/** Codes -1 and 0 say that nothing is known; positions always stand longitude or east first (clause 1.1.1.1.1). */
function crsOf(
  srs: number,
  organization: SqlValue = null,
  code: SqlValue = null,
  definition: SqlValue = null,
): LayerCrs {
  if (srs === 0 || srs === -1) return null;
  if (String(organization).toUpperCase() === "EPSG" && typeof code === "number")
    return code === 4326 ? "lon-lat" : { epsg: code };
  return typeof definition === "string" && /\[/.test(definition) ? { wkt: definition } : null;
}

const identifier = (name: string): string => `"${name.replaceAll('"', '""')}"`;

function each(db: Database, sql: string, take: (row: readonly SqlValue[]) => void): void {
  const statement = db.prepare(sql);
  try {
    while (statement.step()) take(statement.get());
  } finally {
    statement.free();
  }
}

function rows(db: Database, sql: string, most: number, values: SqlValue[] = []): (readonly SqlValue[])[] {
  const statement = db.prepare(sql, values);
  const read: (readonly SqlValue[])[] = [];
  try {
    while (read.length < most && statement.step()) read.push(statement.get());
  } finally {
    statement.free();
  }
  return read;
}
