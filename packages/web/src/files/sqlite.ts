import type { SqliteHook } from "@causey/io/geopackage";
import address from "sql.js/dist/sql-wasm-browser.wasm?url";

/** Where this page finds SQLite, which is fetched when the first GeoPackage is met. */
export const sqlite: SqliteHook = { locateFile: () => address };
