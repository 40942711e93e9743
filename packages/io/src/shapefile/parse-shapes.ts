// @ts-expect-error the package brings no types of its own
import { parseShp } from "shpjs";

/** The shapes of a .shp file as GeoJSON geometries, null for a null shape; coordinates stay as they are. */
export const parseShapes: (shp: Uint8Array) => readonly (object | null)[] = parseShp;
