export { isSqlite } from "./check-file.ts";
export { readGeoPackage } from "./read-geopackage.ts";
export { writeGeoPackage, type TableLayer } from "./write-geopackage.ts";
export type { SqliteHook } from "./sqlite.ts";
