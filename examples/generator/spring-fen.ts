import { fenPlaces, fenZones } from "./fen/draw.ts";
import { drawFen, FEN_GRID } from "./fen/lie.ts";
import { fenPlan } from "./fen/told.ts";
import { featureFile } from "./places.ts";
import { priceFile } from "./prices.ts";
import { seededRandom } from "./random.ts";
import { asciiGrid } from "./terrain-file.ts";

const SEED = 20273;

/** The plan folder of the second demo: a spring-fed fen on deep peat, no tide, four groundwater wells to reach. */
export function springFenFiles(): ReadonlyMap<string, string> {
  const fen = drawFen(seededRandom(SEED));
  return new Map([
    ["plan.json", fenPlan(fen, seededRandom(SEED + 1), seededRandom(SEED + 3))],
    ["terrain.asc", asciiGrid(FEN_GRID, fen.heightAt)],
    ["zones.geojson", featureFile(fenZones(fen))],
    ["places.geojson", featureFile(fenPlaces())],
    ["prices.csv", priceFile(seededRandom(SEED + 2), { currency: "EUR", yard: "Tallow Timber list, invented" })],
  ]);
}
