import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { TerrainChoice } from "@causey/engine/plan";
import { demoFolder, folderOf } from "./shell.ts";

type PointsChoice = Extract<TerrainChoice, { readonly kind: "points" }>;
type Columns = PointsChoice["columns"];

export const planFiles = [
  "plan.json",
  "terrain.asc",
  "zones.geojson",
  "places.geojson",
  "prices.csv",
  "tide-table.csv",
];

/** The demo's plan folder, with files in the place of its own. */
export const demoWith = (
  change: (text: (name: string) => string) => Readonly<Record<string, string | Uint8Array>>,
): string => {
  const own = (name: string): string => readFileSync(join(demoFolder, name), "utf8");
  const files = planFiles.map((name) => [name, own(name)] as const);
  return folderOf(new Map<string, string | Uint8Array>([...files, ...Object.entries(change(own))]));
};

/** One point of a survey of the demo's site, every 10 m; its height is the demo's ground to a decimetre or two. */
export interface Shot {
  readonly i: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

const [WEST, SOUTH, COLS, ROWS] = [1000, 2000, 260, 200];
const ground = readFileSync(join(demoFolder, "terrain.asc"), "utf8")
  .split("\n")
  .slice(6)
  .map((line) => line.trim().split(/\s+/).map(Number));

export const shots: readonly Shot[] = Array.from({ length: 27 * 21 }, (_, i) => {
  const [x, y] = [WEST + (i % 27) * 10, SOUTH + Math.floor(i / 27) * 10];
  const row = Math.min(ROWS - 1, ROWS - 1 - Math.floor((y - SOUTH) / 1));
  return { i, x, y, z: ground[Math.max(0, row)]![Math.min(COLS - 1, x - WEST)]! };
});

/** A CSV of the shots. */
export const surveyCsv = (
  head = "id,x,y,z",
  row: (s: Shot) => string = ({ i, x, y, z }) => `P${i},${x},${y},${z.toFixed(3)}`,
): string => [head, ...shots.map(row)].join("\n");

/** The demo's plan with its ground from survey points. */
export function surveyPlan(
  csv: string | Uint8Array,
  columns: Partial<Columns> = {},
  some: Partial<PointsChoice> = {},
): string {
  return demoWith((own) => {
    const plan = JSON.parse(own("plan.json")) as Record<string, unknown>;
    const terrain: PointsChoice = {
      kind: "points",
      file: "survey.csv",
      columns: { id: "id", x: "x", y: "y", z: "z", code: null, accuracy: null, date: null, ...columns },
      unit: "m",
      decimal: "point",
      date_order: "ymd",
      datum: plan["vertical_datum"] as string,
      cell_m: 2,
      longest_edge_m: 30,
      ...some,
    };
    return { "survey.csv": csv, "plan.json": JSON.stringify({ ...plan, terrain }) };
  });
}
