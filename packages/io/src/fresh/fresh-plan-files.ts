import { BLANK_LAYOUT, BLANK_MONEY, BLANK_SECTIONS } from "@causey/engine/plan";
import type { UnitSystem } from "@causey/engine/units";
import type { PlanFiles } from "../files/index.ts";
import { jsonBytes } from "../json/index.ts";
import { PLACES_FILE, PLAN_FILE, ZONES_FILE, type PlanFile } from "../plan/index.ts";
import { writePlaces, writeZones } from "../vector/index.ts";
import { freshPrices } from "./fresh-prices.ts";
import type { FreshSite } from "./fresh-site.ts";
import { readmeText } from "./readme-text.ts";

const GRID = { local: "Site grid" } as const;
const DATUM = "Site bench mark";

/** What is known of a plan before it is begun; what is left out stands as an example. */
export interface FreshWishes {
  readonly site_name?: string;
  readonly units?: UnitSystem;
  /** Id of the ready kit that the plan names. */
  readonly ready_kit?: string;
  /** System, datum and ground, with the terrain's own files; left out, the plan waits for a terrain on a local grid. */
  readonly site?: FreshSite;
}

/**
 * The files of a plan folder to start from: plan.json with example values that can be read and changed, a price list
 * of examples, and a README.txt that says what to do in which order.
 *
 * name  of the plan; letters and digits of it make the id
 * With a site the plan lies in its system and holds its start; nothing of the site is made up: no plot, visit, area or
 * water level. Without one there are an example start, plot, visit and level on a local grid, and the terrain is
 * missing on purpose: reading the folder names it as the next thing to add.
 */
export function freshPlanFiles(name: string, wishes: FreshWishes = {}): PlanFiles {
  const title = oneLine(name) || "New plan";
  const { site } = wishes;
  const crs = site?.crs ?? GRID;
  return new Map([
    ...(site?.files ?? []),
    [PLAN_FILE, jsonBytes(freshPlan(title, wishes), "as-given")],
    [PLACES_FILE, site ? writePlaces(site.starts, [], crs) : writePlaces([start], [plot], crs)],
    [ZONES_FILE, writeZones([], crs)],
    ["prices.csv", freshPrices()],
    ["README.txt", new TextEncoder().encode(readmeText(title, isThere(site) ? site.terrain : undefined))],
  ]);
}

const isThere = (site: FreshSite | undefined): site is FreshSite =>
  site !== undefined && (site.terrain.kind === "stations" || site.files.has(site.terrain.file));

const oneLine = (text: string): string =>
  text
    .replaceAll(/\p{Cc}/gu, " ")
    .trim()
    .slice(0, 200);

const start = { id: "S1", name: "Gate", x: 10, y: 10 };
const plot = { id: "P1", name: "Plot 1", x: 60, y: 40, keep_off_m: 1.5, reach_m: 2 };

const idOf = (title: string): string =>
  title
    .normalize("NFKD")
    .replaceAll(/\p{M}/gu, "")
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "-")
    .replaceAll(/^-|-$/g, "")
    .slice(0, 60) || "plan";

const EXAMPLE_WATER: Pick<PlanFile, "levels" | "flood_level"> = {
  levels: [
    {
      id: "flood",
      name: "Flood to be held",
      role: "flood",
      basis: "assumed",
      z_m: 1.5,
      datum: DATUM,
      source: "Example: give the gauge or flood mark it comes from",
      epoch: "Example: the years it holds for",
    },
  ],
  flood_level: "flood",
};

const EXAMPLE_VISIT: PlanFile["visits"][number] = {
  id: "weekly",
  name: "Weekly reading, two people with a cart",
  plots: [plot.id],
  people: 2,
  person_kg: 90,
  spacing_mm: 1500,
  cart: {
    name: "Hand cart",
    empty_kg: 25,
    load_kg: 50,
    wet_kg: 5,
    width_mm: 600,
    length_mm: 1500,
    track_mm: 500,
    axle_distance_mm: 0,
    axles: 1,
    wheel_width_mm: 50,
    wheel_contact_mm: 80,
  },
  per_year: 40,
  from: "2027-04-19",
  to: "2029-10-15",
};

const freshPlan = (title: string, { site_name = "", units, ready_kit, site }: FreshWishes): PlanFile => ({
  schema: 3,
  id: idOf(title),
  name: title,
  site_name: oneLine(site_name) || "Name of the site",
  units: units ?? "us",
  crs: site?.crs ?? GRID,
  vertical_datum: site?.terrain.datum ?? DATUM,
  ...BLANK_SECTIONS,
  survey: { ...BLANK_SECTIONS.survey, stations: site?.stations ?? [] },
  terrain: site?.terrain ?? { kind: "grid", file: "terrain.tif", unit: "m", datum: DATUM },
  prices: { file: "prices.csv" },
  laying: { from: "2027-04-05", to: "2027-04-16", carry_m: 100, carriers: 8 },
  removal: { by: "2029-10-31" },
  plot_defaults: { keep_off_m: 1.5, reach_m: 2 },
  ...(site ? { levels: [], flood_level: null } : EXAMPLE_WATER),
  water_kg_m3: 1000,
  ground: {
    su_kpa: null,
    source: "Not measured yet: the checks on the ground will say so",
    readings: [],
    safety: 3,
  },
  visits: site ? [] : [EXAMPLE_VISIT],
  kit: { ready: ready_kit ?? "meadow-boards" },
  layout: {
    weights: { money: 1, shade_per_m2: 5, contact_per_m2: 25, crossing: 100 },
    heading_step_deg: 15,
    first_heading_deg: 0,
    max_grade: 0.08,
    min_clear_mm: 150,
    ...BLANK_LAYOUT,
  },
  code: "us-asd-2018",
  saw: { kerf_mm: 3 },
  money: {
    currency: "USD",
    labour_per_hour: 30,
    contingency_share: 0.1,
    tax_share: 0.06,
    delivery: 150,
    removal_share: 0.6,
    disposal: 200,
    ...BLANK_MONEY,
  },
});
