import { BLANK_LAYOUT, BLANK_MONEY, BLANK_SECTIONS } from "@causey/engine/plan";
import { readFile } from "node:fs/promises";
import { resolve } from "node:path";
import { readyKit } from "@causey/data/kits";
import { STOUR_PLACES } from "./stour-places.ts";
import { stourHeights } from "./stour-terrain.ts";
import { LOW_GROUND_M, stourWaterZones } from "./stour-zones.ts";

/** low: crates and sleepers on the platform only. post-pairs: also posts up to 2 m tall, down in the creeks and pits. */
export type StourVariant = "low" | "post-pairs";

const CRS = { type: "name", properties: { name: "urn:ogc:def:crs:EPSG::27700" } };
const DATUM = "Ordnance Datum Newlyn";
const demo = resolve(import.meta.dirname, "../../examples/salt-meadow/prices.csv");

/**
 * A plan folder on the lidar terrain of Goodwin, Mudd and Clubb (2018): one start on the landward edge, three plots.
 * Water levels, strength and demand are typed in for the test and describe no real place or project; prices are the
 * demo's. Crates and sleepers may stand above 1.5 m, post pairs above 0.2 m; plots keep 1 m off and reach 1.5 m.
 *
 * dataFolder  folder of the open data, which holds marsh-dem-stour
 * returns     the files of the folder by name
 */
export async function stourPlanFiles(
  dataFolder: string,
  variant: StourVariant,
): Promise<Map<string, Uint8Array>> {
  const terrain = new Uint8Array(await readFile(resolve(dataFolder, "marsh-dem-stour/dem-1m.tif")));
  const zones = stourWaterZones(await stourHeights(terrain));
  const text = (value: unknown): Uint8Array =>
    new TextEncoder().encode(`${JSON.stringify(value, null, 1)}\n`);
  const collection = (features: readonly object[]): Uint8Array =>
    text({ type: "FeatureCollection", crs: CRS, features });
  return new Map([
    ["plan.json", text(plan(variant))],
    ["terrain.tif", terrain],
    ["zones.geojson", collection(zones)],
    ["places.geojson", collection(places())],
    ["prices.csv", new Uint8Array(await readFile(demo))],
  ]);
}

const places = (): object[] =>
  Object.entries(STOUR_PLACES).map(([id, coordinates]) => ({
    type: "Feature",
    properties:
      id === "start"
        ? { kind: "start", id, name: "Landward edge" }
        : { kind: "plot", id, name: `Plot ${id}`, keep_off_m: 1, reach_m: 1.5 },
    geometry: { type: "Point", coordinates },
  }));

const level = (id: string, name: string, role: string, z_m: number): object => ({
  id,
  name,
  role,
  basis: "assumed",
  z_m,
  datum: DATUM,
  source: "Typed in for the test; not a published level",
  epoch: "none",
});

/** Platform ground, and the bed of the creeks, on which supports of the test may stand [m ODN]. */
const PLATFORM_M = LOW_GROUND_M;
const CREEK_BED_M = 0.2;
const TALLEST_POST_MM = 2000;

/** The ready mesh kit by name: its small sleepers and crates find level ground at the rim of the gully. */
const lowKit = {
  ready: "light-mesh",
  supports: [
    { id: "sleeper", ground_above_m: PLATFORM_M },
    { id: "open-crate", ground_above_m: PLATFORM_M },
  ],
};

/** The board kit by its recipe, with taller posts that may stand in the water of channels and pools. */
function kitWithPosts(): object {
  const kit = readyKit("meadow-boards")!;
  const supports = kit.supports.map((support) =>
    support.form === "post-pair"
      ? {
          ...support,
          height_max_mm: TALLEST_POST_MM,
          stands: { ground_above_m: CREEK_BED_M, not_in: [] },
        }
      : { ...support, stands: { ...support.stands, ground_above_m: PLATFORM_M } },
  );
  return { ...kit, id: "meadow-boards-in-creeks", name: "Meadow boards with posts in creeks", supports };
}

const plan = (variant: StourVariant): object => ({
  schema: 3,
  id: `stour-${variant}`,
  name: `Three plots, ${variant}`,
  site_name: "Estuary marsh, lidar 1 m",
  units: "metric",
  crs: { epsg: 27700 },
  vertical_datum: DATUM,
  ...BLANK_SECTIONS,
  terrain: { kind: "grid", file: "terrain.tif", unit: "m", datum: DATUM },
  prices: { file: "prices.csv" },
  laying: { from: "2027-09-06", to: "2027-09-17", carry_m: 120, carriers: 4 },
  removal: { by: "2029-11-30" },
  levels: [
    level("mean-high", "Mean high water", "mhw", 1.6),
    level("flood", "Flood of the test", "flood", 2.6),
  ],
  flood_level: "flood",
  water_kg_m3: 1025,
  ground: { su_kpa: 8, source: "Assumed for the test", readings: [], safety: 2 },
  visits: [
    {
      id: "walk",
      name: "Two people on foot",
      plots: ["P1", "P2", "P3"],
      people: 2,
      person_kg: 95,
      spacing_mm: 1500,
      cart: null,
      per_year: 26,
      from: "2027-10-01",
      to: "2029-09-30",
    },
  ],
  kit: variant === "low" ? lowKit : kitWithPosts(),
  layout: {
    weights: { money: 1, shade_per_m2: 6, contact_per_m2: 30, crossing: 100 },
    heading_step_deg: 15,
    first_heading_deg: 0,
    max_grade: 0.1,
    min_clear_mm: 100,
    ...BLANK_LAYOUT,
  },
  code: "us-asd-2018",
  saw: { kerf_mm: 3 },
  money: {
    currency: "USD",
    labour_per_hour: 30,
    contingency_share: 0.1,
    tax_share: 0,
    delivery: 0,
    removal_share: 0.6,
    disposal: 0,
    ...BLANK_MONEY,
  },
});
