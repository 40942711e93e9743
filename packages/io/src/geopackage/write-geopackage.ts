import type { Database } from "sql.js";
import { DomainError } from "@causey/engine/units";
import { allPositions, type VectorFeature, type VectorLayer } from "../layer-form/index.ts";
import { srsRows, type SrsRow } from "./srs-rows.ts";
import { withDatabase, type SqliteHook } from "./sqlite.ts";
import { columnsFor, freeName, sqlValue } from "./table-columns.ts";
import { writeBlob } from "./write-wkb.ts";

/** What is written as one table. */
export type TableLayer = Pick<VectorLayer, "name" | "crs" | "features">;

/** "GPKG", and version 1.3 of the form. */
const APPLICATION_ID = 1_196_444_487;
const USER_VERSION = 10_300;
/** The clock plays no part, so that equal layers give equal bytes. */
const FIXED_DAY = "1980-01-01T00:00:00.000Z";

/** The tables that every GeoPackage with features has (OGC 12-128r17, annex C, tables 2 to 4). */
const SCHEMA = `
CREATE TABLE gpkg_spatial_ref_sys (
  srs_name TEXT NOT NULL, srs_id INTEGER NOT NULL PRIMARY KEY, organization TEXT NOT NULL,
  organization_coordsys_id INTEGER NOT NULL, definition TEXT NOT NULL, description TEXT);
CREATE TABLE gpkg_contents (
  table_name TEXT NOT NULL PRIMARY KEY, data_type TEXT NOT NULL, identifier TEXT UNIQUE, description TEXT DEFAULT '',
  last_change DATETIME NOT NULL DEFAULT (strftime('%Y-%m-%dT%H:%M:%fZ','now')),
  min_x DOUBLE, min_y DOUBLE, max_x DOUBLE, max_y DOUBLE, srs_id INTEGER,
  CONSTRAINT fk_gc_r_srs_id FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys(srs_id));
CREATE TABLE gpkg_geometry_columns (
  table_name TEXT NOT NULL, column_name TEXT NOT NULL, geometry_type_name TEXT NOT NULL, srs_id INTEGER NOT NULL,
  z TINYINT NOT NULL, m TINYINT NOT NULL,
  CONSTRAINT pk_geom_cols PRIMARY KEY (table_name, column_name),
  CONSTRAINT uk_gc_table_name UNIQUE (table_name),
  CONSTRAINT fk_gc_tn FOREIGN KEY (table_name) REFERENCES gpkg_contents(table_name),
  CONSTRAINT fk_gc_srs FOREIGN KEY (srs_id) REFERENCES gpkg_spatial_ref_sys (srs_id));`;

/**
 * A GeoPackage 1.3 with one feature table for each layer, coordinates as they are. A feature's id stands in the column
 * "id"; lists and objects are written as JSON text. Equal layers give equal bytes. Throws `DomainError` for names that
 * cannot be tables, twins, an EPSG code that is not registered, and numbers that are not finite.
 */
export async function writeGeoPackage(
  layers: readonly TableLayer[],
  hook: SqliteHook = {},
): Promise<Uint8Array> {
  checkNames(layers);
  const { rows, ids } = await srsRows(layers.map((l) => l.crs));
  return withDatabase(null, hook, (db) => {
    db.run(`PRAGMA application_id = ${APPLICATION_ID}; PRAGMA user_version = ${USER_VERSION}; BEGIN`);
    db.run(SCHEMA);
    for (const row of rows) insertSrs(db, row);
    layers.forEach((layer, i) => writeTable(db, layer, ids[i]!));
    db.run("COMMIT");
    return db.export();
  });
}

function checkNames(layers: readonly TableLayer[]): void {
  const names = layers.map((l) => l.name.toLowerCase());
  const bad = names.find(
    (name, i) => name === "" || /^(gpkg|sqlite|rtree)_|\p{Cc}/u.test(name) || names.indexOf(name) !== i,
  );
  if (bad !== undefined) throw new DomainError("table-name", { name: bad });
}

const insertSrs = (db: Database, r: SrsRow): unknown =>
  db.run("INSERT INTO gpkg_spatial_ref_sys VALUES (?,?,?,?,?,NULL)", [
    r.name,
    r.srs_id,
    r.organization,
    r.code,
    r.definition,
  ]);

function writeTable(db: Database, layer: TableLayer, srs: number): void {
  const features = layer.features.map(withId);
  const columns = columnsFor(features);
  const taken = new Set(columns.map((c) => c.name.toLowerCase()));
  const [key, shape] = [freeName("fid", taken), freeName("geom", taken)];
  const type = shapeType(features);
  const heads = columns.map((c) => `, ${identifier(c.name)} ${c.type}`).join("");
  db.run(
    `CREATE TABLE ${identifier(layer.name)} (${identifier(key)} INTEGER PRIMARY KEY AUTOINCREMENT NOT NULL, ` +
      `${identifier(shape)} ${type}${heads})`,
  );
  db.run("INSERT INTO gpkg_contents VALUES (?,'features',?,'',?,?,?,?,?,?)", [
    layer.name,
    layer.name,
    FIXED_DAY,
    ...boundsOf(features),
    srs,
  ]);
  db.run("INSERT INTO gpkg_geometry_columns VALUES (?,?,?,?,0,0)", [layer.name, shape, type, srs]);
  const names = [shape, ...columns.map((c) => c.name)].map(identifier).join(", ");
  const insert = db.prepare(
    `INSERT INTO ${identifier(layer.name)} (${names}) VALUES (?${", ?".repeat(columns.length)})`,
  );
  for (const f of features)
    insert.run([writeBlob(f.geometry, srs), ...columns.map((c) => sqlValue(f.properties[c.key], c.type))]);
  insert.free();
}

const withId = (f: VectorFeature): VectorFeature =>
  f.id === null || f.properties["id"] !== undefined ? f : { ...f, properties: { id: f.id, ...f.properties } };

/** One kind of shape names the column; single and multiple ones of a kind, or unlike ones, stand as GEOMETRY. */
function shapeType(features: readonly VectorFeature[]): string {
  const types = [...new Set(features.map((f) => f.geometry.type.toUpperCase()))];
  return types.length === 1 ? types[0]! : "GEOMETRY";
}

function boundsOf(features: readonly VectorFeature[]): (number | null)[] {
  const box = [Infinity, Infinity, -Infinity, -Infinity];
  for (const f of features)
    for (const [x, y] of allPositions(f.geometry)) {
      if (!Number.isFinite(x) || !Number.isFinite(y)) throw new DomainError("not-a-finite-number", { x, y });
      box[0] = Math.min(box[0]!, x);
      box[1] = Math.min(box[1]!, y);
      box[2] = Math.max(box[2]!, x);
      box[3] = Math.max(box[3]!, y);
    }
  return box.map((v) => (Number.isFinite(v) ? v : null));
}

const identifier = (name: string): string => `"${name.replaceAll('"', '""')}"`;
