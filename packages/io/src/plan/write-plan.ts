import type { Plan } from "@causey/engine/plan";
import { jsonBytes } from "../json/index.ts";
import { writePlaces, writeZones } from "../vector/index.ts";
import { PLACES_FILE, PLAN_FILE, ZONES_FILE } from "./read-plan.ts";

/**
 * The plan as files: plan.json, places.geojson, zones.geojson. The kit is written as its full recipe and coordinates
 * in the site's grid, so that reading gives the same plan back, to the last digit. Terrain and price list are not part
 * of the plan: they stay beside it as they are.
 */
export function writePlan(plan: Plan): Map<string, Uint8Array> {
  const { starts, plots, zones, ...document } = plan;
  return new Map([
    [PLAN_FILE, jsonBytes(inOrder(document), "as-given")],
    [PLACES_FILE, writePlaces(starts, plots, plan.crs)],
    [ZONES_FILE, writeZones(zones, plan.crs)],
  ]);
}

type Document = Omit<Plan, "starts" | "plots" | "zones">;

/** The order in which a person reads a plan; the compiler sees to it that no entry is forgotten. */
const ORDER: Readonly<Record<keyof Document, true>> = {
  schema: true,
  id: true,
  name: true,
  site_name: true,
  units: true,
  crs: true,
  vertical_datum: true,
  request: true,
  terrain: true,
  survey: true,
  photo: true,
  prices: true,
  laying: true,
  removal: true,
  rules: true,
  water: true,
  levels: true,
  flood_level: true,
  water_kg_m3: true,
  ground: true,
  proof: true,
  visits: true,
  kit: true,
  layout: true,
  code: true,
  saw: true,
  money: true,
  papers: true,
};

const inOrder = (document: Document): object =>
  Object.fromEntries((Object.keys(ORDER) as (keyof Document)[]).map((key) => [key, document[key]]));
