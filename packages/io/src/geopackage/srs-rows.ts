import { DomainError } from "@causey/engine/units";
import type { LayerCrs } from "../layer-form/index.ts";

/** One row of gpkg_spatial_ref_sys. */
export interface SrsRow {
  readonly srs_id: number;
  readonly name: string;
  readonly organization: string;
  readonly code: number;
  readonly definition: string;
}

const WGS_84 =
  'GEOGCS["WGS 84",DATUM["WGS_1984",SPHEROID["WGS 84",6378137,298.257223563,AUTHORITY["EPSG","7030"]],' +
  'AUTHORITY["EPSG","6326"]],PRIMEM["Greenwich",0,AUTHORITY["EPSG","8901"]],' +
  'UNIT["degree",0.0174532925199433,AUTHORITY["EPSG","9122"]],AUTHORITY["EPSG","4326"]]';

/** The three rows that every GeoPackage has (clause 1.1.2.1.2). */
const NEEDED: readonly SrsRow[] = [
  { srs_id: -1, name: "Undefined Cartesian", organization: "NONE", code: -1, definition: "undefined" },
  { srs_id: 0, name: "Undefined geographic", organization: "NONE", code: 0, definition: "undefined" },
  { srs_id: 4326, name: "WGS 84", organization: "EPSG", code: 4326, definition: WGS_84 },
];

/** Systems without a code are numbered from here, beyond all registered ones. */
const FIRST_OWN = 300_000;

type Register = Readonly<Record<string, { readonly name: string; readonly wkt: string | null }>>;

/**
 * The systems of some layers: all rows to write, and for each layer the number of its own. Local grids and layers
 * without a system are "undefined Cartesian". Throws `DomainError` for a code that is not in the register.
 */
export async function srsRows(
  systems: readonly LayerCrs[],
): Promise<{ readonly rows: readonly SrsRow[]; readonly ids: readonly number[] }> {
  const rows = [...NEEDED];
  const ids: number[] = [];
  for (const crs of systems) {
    const row = await rowOf(crs, rows);
    if (!rows.includes(row)) rows.push(row);
    ids.push(row.srs_id);
  }
  return { rows, ids };
}

async function rowOf(crs: LayerCrs, rows: readonly SrsRow[]): Promise<SrsRow> {
  if (crs === null || (typeof crs === "object" && "local" in crs)) return rows[0]!;
  if (crs === "lon-lat") return rows[2]!;
  if ("wkt" in crs) {
    const known = rows.find((r) => r.definition === crs.wkt);
    const id = FIRST_OWN + rows.length;
    return (
      known ?? { srs_id: id, name: "stated by the file", organization: "NONE", code: id, definition: crs.wkt }
    );
  }
  return rows.find((r) => r.srs_id === crs.epsg) ?? registered(crs.epsg);
}

async function registered(code: number): Promise<SrsRow> {
  const all = (await import("epsg-index/all.json", { with: { type: "json" } }))
    .default as unknown as Register;
  const entry = Object.hasOwn(all, String(code)) ? all[String(code)] : undefined;
  if (entry === undefined || entry.wkt === null) throw new DomainError("unknown-epsg", { code });
  return { srs_id: code, name: entry.name, organization: "EPSG", code, definition: entry.wkt };
}
