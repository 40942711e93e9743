import type { TerrainChoice } from "@causey/engine/plan";

/** Where the ground's heights come from, while they are to be added, and once they are there. */
const groundText = (terrain: TerrainChoice | undefined): string => {
  if (terrain === undefined)
    return `terrain.tif    Put the ground heights here, as GeoTIFF (.tif) or ESRI ASCII grid (.asc; then
                  change "terrain": {"file": ...} in plan.json). North up, cells in metres.
                  "unit" is the unit of the heights: "m" or "ft".`;
  if (terrain.kind === "stations")
    return `the ground      comes from the stations of the survey in plan.json, as there is no terrain: add
                  one for each place where its height was read.`;
  return `${terrain.file}
                  holds the ground heights. Another file can be named in plan.json, "terrain".`;
};

/**
 * What a person needs to know who opens a fresh plan folder; one thing after the other.
 *
 * terrain  what is there already; undefined while it is to be added
 */
export const readmeText = (title: string, terrain?: TerrainChoice): string =>
  `${title}
${"=".repeat(title.length)}

This folder is a plan of one walkway. All values in it are examples: change them.

1. ${groundText(terrain)}

2. plan.json      "crs" is the coordinate system: {"epsg": number} for a projected system in
                  metres, or {"local": "name"} for a grid of your own.
                  "vertical_datum" is the level from which all heights are counted; terrain and
                  water levels must be on the same one, written the same way.
                  "laying" and "removal" are days; closures are held against the days of laying.
                  "visits" says who and what goes to which plots, how often, from when to when.
                  "kit" names a ready kit or holds a whole recipe. Supports can be left out or
                  kept to higher ground:
                  {"ready": "meadow-boards", "supports": [{"id": "sleeper", "use": false}]}

3. places.geojson Where the walkway starts and which plots it must reach: points with
                  "kind": "start" or "plot", "id", "name"; for plots also "keep_off_m" (no part
                  nearer than this) and "reach_m" (near enough, beyond the keep-off line).

4. zones.geojson  Areas with a rule: polygons with "id", "name", "use", "source". Uses: habitat
                  (give "sensitivity", plain upland grass is 1), closed, seasonal-closure (give
                  its first and last day, from and to, as month-day), buffer, soft-ground,
                  channel, pool, parcel.
                  "hidden": true keeps a zone out of everything that is shared.

5. prices.csv     Your yard's prices, each with its date and source, all in one currency.

Then run:  causey check FOLDER     lists everything that is wrong or missing
           causey plan FOLDER --out RESULTS

Coordinates in the GeoJSON files are in the plan's own system, as their member "crs" says; without
it they are longitude and latitude.
`;
