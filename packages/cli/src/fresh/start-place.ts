import { crsOf, toGrid, type PlanCrs } from "@causey/io/crs";
import { UsageError, word, type Values } from "../shell/index.ts";

/**
 * Where the walkway begins, as told with --start or --start-lat-lon: east and north on the grid [m], null when nothing is
 * told. Degrees are turned into the grid of `crs`.
 *
 * Throws `UsageError` for what is no place, for both told at once, and for degrees on a grid without a known place.
 */
export async function startPlace(
  values: Values,
  crs: PlanCrs | null,
): Promise<readonly [number, number] | null> {
  const [grid, degrees] = [word(values, "start"), word(values, "start-lat-lon")];
  if (grid !== undefined && degrees !== undefined)
    throw new UsageError("Give either --start or --start-lat-lon, not both.");
  if (grid !== undefined)
    return (
      pair(grid) ??
      refuse(`--start ${grid}`, "give east and north in metres on the grid, such as 621950.5,233700")
    );
  if (degrees === undefined) return null;
  const told = `--start-lat-lon ${degrees}`;
  const [lat, lon] =
    pair(degrees) ?? refuse(told, "give latitude and longitude in degrees, such as 51.9569,1.2282");
  if (Math.abs(lat) > 90 || Math.abs(lon) > 180)
    return refuse(
      told,
      "a latitude lies between -90 and 90, a longitude between -180 and 180; latitude comes first",
    );
  if (crs === null || "local" in crs)
    return refuse(told, "degrees need a coordinate system with an EPSG code; on a local grid use --start");
  const at = toGrid(await crsOf(crs))(lon, lat);
  return at === null
    ? refuse(told, `EPSG:${crs.epsg} does not cover it`)
    : [Math.round(at[0] * 100) / 100, Math.round(at[1] * 100) / 100];
}

function pair(text: string): readonly [number, number] | null {
  const numbers = text.split(",").map((n) => (n.trim() === "" ? NaN : Number(n)));
  return numbers.length === 2 && numbers.every((n) => Number.isFinite(n)) ? [numbers[0]!, numbers[1]!] : null;
}

function refuse(told: string, mend: string): never {
  throw new UsageError(`${told}: ${mend}.`);
}
