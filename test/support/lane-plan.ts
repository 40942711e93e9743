import { readyKit } from "@causey/data/kits";
import { tables } from "@causey/data/tables";
import type { Kit } from "@causey/engine/kit";
import {
  BLANK_LAYOUT,
  BLANK_MONEY,
  BLANK_SECTIONS,
  derive,
  type Plan,
  type Results,
} from "@causey/engine/plan";
import type { Site } from "@causey/engine/site";
import { paperSet } from "@causey/papers/set";
import { sceneTexts } from "@causey/papers/scene";
import { readWholePlan } from "@causey/runtime/derive";
import { drive } from "@causey/runtime/jobs";
import { loadSolver } from "@causey/runtime/solver";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";

const DATUM = "Gate bolt";
const CELL_M = 0.5;
const prices = resolve(import.meta.dirname, "../../examples/salt-meadow/prices.csv");

/** What a test says about its plan; the rest is a lane of flat meadow, walked by two people without a cart. */
export interface LanePlan {
  /** Size of the site [m]. */
  readonly wide?: number;
  readonly long?: number;
  readonly ground?: (x: number, y: number) => number;
  readonly start?: readonly [number, number];
  readonly plots?: Readonly<Record<string, readonly [number, number]>>;
  readonly zones?: readonly object[];
  readonly kit?: Kit;
  readonly layout?: Partial<Plan["layout"]>;
  readonly money?: Partial<Plan["money"]>;
  readonly rules?: Plan["rules"];
  readonly water?: Partial<Plan["water"]>;
  readonly visits?: readonly Plan["visits"][number][];
  readonly laying?: Partial<Plan["laying"]>;
  readonly papers?: Partial<Plan["papers"]>;
  readonly units?: Plan["units"];
  readonly prices?: string;
}

export interface Derived {
  readonly plan: Plan;
  readonly site: Site;
  readonly results: Results;
  readonly warnings: readonly { readonly message: string; readonly code: string }[];
}

/** The ready board kit, 30 in wide, with what a test changes in it. */
export const boardKit = (change: Partial<Kit> = {}): Kit => ({ ...readyKit("meadow-boards")!, ...change });

/** Deck heights are sought 10 mm apart on the datum: a support that reaches half of that either way has one height. */
const ONE_HEIGHT_MM = 4.9;

/**
 * A kit whose one support has one height: the deck lies so high over level ground, exactly where ground and fall add
 * up to whole centimetres.
 */
export function kitAtHeight(fall_m: number, change: Partial<Kit> = {}): Kit {
  const kit = boardKit(change);
  const depth_mm = 184.15 + 38.1;
  const height_mm = fall_m * 1000 - depth_mm;
  const form = height_mm < 200 ? "sleeper" : "post-pair";
  const kind = kit.supports.find((s) => s.form === form)!;
  return {
    ...kit,
    supports: [
      {
        ...kind,
        height_min_mm: form === "sleeper" ? kind.height_min_mm : height_mm - ONE_HEIGHT_MM,
        height_max_mm: height_mm + ONE_HEIGHT_MM,
      },
    ],
  };
}

/** Two people on foot, once a week for two years. */
export const onFoot: Plan["visits"][number] = {
  id: "walk",
  name: "Two people on foot",
  plots: ["P1"],
  people: 2,
  person_kg: 95,
  spacing_mm: 1500,
  cart: null,
  per_year: 52,
  from: "2027-05-24",
  to: "2029-05-23",
};

/** The files of a plan folder as a user would hand them over. */
export function laneFiles(p: LanePlan): Map<string, Uint8Array> {
  const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
  const json = (value: unknown): Uint8Array => bytes(JSON.stringify(value, null, 1));
  const collection = (features: readonly object[]): Uint8Array =>
    json({ type: "FeatureCollection", crs: { type: "name", properties: { name: "local" } }, features });
  return new Map([
    ["plan.json", json(document(p))],
    ["terrain.asc", bytes(terrain(p))],
    ["zones.geojson", collection(p.zones ?? [])],
    ["places.geojson", collection(places(p))],
    ["prices.csv", p.prices === undefined ? new Uint8Array(readFileSync(prices)) : bytes(p.prices)],
  ]);
}

/** Reads the folder through the plan's readers and derives it, as every shell does. */
export async function deriveLane(p: LanePlan): Promise<Derived> {
  const read = await readWholePlan(laneFiles(p));
  if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));
  const job = derive(read, { tables, solver: await loadSolver() });
  const done = await drive(job, { aborted: false }, () => {});
  if (!done.ok) throw new Error("cancelled");
  return { plan: read.plan, site: read.site, results: done.value, warnings: read.warnings };
}

/** Every text on the pages of one kind of sheet, page after page. */
export const sheetTexts = ({ plan, site, results }: Derived, id: string): string[] =>
  paperSet({ plan, site, results, tables }, [id]).pages.flatMap((page) => sceneTexts(page.shapes));

const point = (properties: object, coordinates: readonly number[]): object => ({
  type: "Feature",
  properties,
  geometry: { type: "Point", coordinates },
});

const places = ({ start = [4, 2], plots = { P1: [4, 22] } }: LanePlan): object[] => [
  point({ kind: "start", id: "gate", name: "Gate" }, start),
  ...Object.entries(plots).map(([id, at]) =>
    point({ kind: "plot", id, name: `Plot ${id}`, keep_off_m: 1, reach_m: 1.5 }, at),
  ),
];

function terrain({ wide = 8, long = 28, ground = () => 1 }: LanePlan): string {
  const [cols, rows] = [Math.round(wide / CELL_M), Math.round(long / CELL_M)];
  const line = (j: number): string =>
    Array.from({ length: cols }, (_, i) =>
      ground((i + 0.5) * CELL_M, (rows - 1 - j + 0.5) * CELL_M).toFixed(5),
    ).join(" ");
  const head = `ncols ${cols}\nnrows ${rows}\nxllcorner 0\nyllcorner 0\ncellsize ${CELL_M}\nNODATA_value -9999`;
  return `${head}\n${Array.from({ length: rows }, (_, j) => line(j)).join("\n")}\n`;
}

const document = (p: LanePlan): object => ({
  schema: 3,
  id: "lane",
  name: "Plots on the lane",
  site_name: "Flat meadow of the test",
  units: p.units ?? "us",
  crs: { local: "Meadow grid" },
  vertical_datum: DATUM,
  ...BLANK_SECTIONS,
  rules: p.rules ?? BLANK_SECTIONS.rules,
  water: { ...BLANK_SECTIONS.water, ...p.water },
  papers: { ...BLANK_SECTIONS.papers, date: "2027-02-15", ...p.papers },
  terrain: { kind: "grid", file: "terrain.asc", unit: "m", datum: DATUM },
  prices: { file: "prices.csv" },
  laying: { from: "2027-05-10", to: "2027-05-21", carry_m: 140, carriers: 4, ...p.laying },
  removal: { by: "2029-05-31" },
  levels: [],
  flood_level: null,
  water_kg_m3: 1000,
  ground: { su_kpa: 20, source: "Assumed for the test", readings: [], safety: 2 },
  visits: p.visits ?? [onFoot],
  kit: p.kit ?? boardKit(),
  layout: {
    weights: { money: 1, shade_per_m2: 8, contact_per_m2: 40, crossing: 120 },
    heading_step_deg: 90,
    first_heading_deg: 0,
    max_grade: 0.1,
    min_clear_mm: 50,
    ...BLANK_LAYOUT,
    ...p.layout,
  },
  code: "us-asd-2018",
  saw: { kerf_mm: 3 },
  money: {
    currency: "USD",
    labour_per_hour: 30,
    contingency_share: 0.1,
    tax_share: 0.05,
    delivery: 100,
    removal_share: 0.6,
    disposal: 80,
    ...BLANK_MONEY,
    donated_share: 0.5,
    donated_per_hour: 32,
    jig_hours_per_module: 1.5,
    inspections_per_year: 12,
    hours_per_inspection: 2,
    repair_share_per_year: 0.05,
    ...p.money,
  },
});
