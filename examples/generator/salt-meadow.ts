import { drawMeadow } from "./meadow.ts";
import { drawPlaces, featureFile } from "./places.ts";
import { planFile } from "./plan-document.ts";
import { priceFile } from "./prices.ts";
import { seededRandom } from "./random.ts";
import { drawReadings } from "./readings.ts";
import { terrainFile } from "./terrain-file.ts";
import { tideTable } from "./tide-table.ts";
import { drawSurvey } from "./told.ts";
import { drawZones } from "./zones.ts";

const SEED = 20261;

/**
 * The plan folder of the invented demo site, file by file: a salt meadow at the head of a bay, cut by three creeks.
 * The same seed gives the same text. Each part draws from its own sequence, so that changing one leaves the others.
 */
export function saltMeadowFiles(): ReadonlyMap<string, string> {
  const meadow = drawMeadow(seededRandom(SEED));
  return new Map([
    [
      "plan.json",
      planFile(
        drawReadings(meadow, seededRandom(SEED + 1)),
        drawSurvey(meadow, seededRandom(SEED + 4)),
      ),
    ],
    ["terrain.asc", terrainFile(meadow)],
    ["zones.geojson", featureFile(drawZones(meadow, seededRandom(SEED + 2)))],
    ["places.geojson", featureFile(drawPlaces())],
    ["prices.csv", priceFile(seededRandom(SEED + 3))],
    ["tide-table.csv", tideTable()],
  ]);
}
