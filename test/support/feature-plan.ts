import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { readyKit } from "@causey/data/kits";
import { tables } from "@causey/data/tables";
import type { Problem } from "@causey/engine/formula";
import { derive, type Plan, type Results } from "@causey/engine/plan";
import { finish } from "@causey/engine/formula";
import type { Site, Zone } from "@causey/engine/site";
import { writePlan } from "@causey/io/plan";
import { withoutHidden } from "@causey/io/results";
import { sceneTexts } from "@causey/papers/scene";
import { paperSet, type PaperContext } from "@causey/papers/set";
import { readWholePlan } from "@causey/runtime/derive";
import { loadSolver } from "@causey/runtime/solver";
import { samplePlan } from "../../packages/engine/test/plan/sample-plan.ts";

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const demoPrices = resolve(import.meta.dirname, "../../examples/salt-meadow/prices.csv");

export const DATUM = "site benchmark";
type Ground = (x: number, y: number) => number;

/** An ASCII grid of one-metre cells with their middles at 0, 1, 2 ... metres. */
export function asciiGround(cols: number, rows: number, ground: Ground): Uint8Array {
  const line = (y: number): string =>
    Array.from({ length: cols }, (_, x) => ground(x, y).toFixed(3)).join(" ");
  const lines = Array.from({ length: rows }, (_, r) => line(rows - 1 - r));
  return utf8(
    `ncols ${cols}\nnrows ${rows}\nxllcorner -0.5\nyllcorner -0.5\ncellsize 1\n${lines.join("\n")}\n`,
  );
}

/** A walk of 30 m due east over flat ground at 1 m, without zones and water, with a ready kit and the demo's prices. */
export const flatPlan = (change: Partial<Plan> = {}): Plan => {
  const plan = samplePlan();
  return {
    ...plan,
    starts: [{ id: "gate", name: "Gate", x: 5, y: 20 }],
    plots: [{ id: "p1", name: "Plot 1", x: 38, y: 20, keep_off_m: 1, reach_m: 2 }],
    zones: [],
    visits: [{ ...plan.visits[0]!, plots: ["p1"] }],
    kit: readyKit("meadow-boards")!,
    money: { ...plan.money, currency: "USD" },
    ...change,
  };
};

/** The plan as the folder that a user keeps on disk. */
export function folderFiles(
  plan: Plan,
  more: Readonly<Record<string, Uint8Array | string>> = {},
  ground: Ground = () => 1,
): Map<string, Uint8Array> {
  return new Map<string, Uint8Array>([
    ...writePlan(plan),
    ["terrain.asc", asciiGround(60, 40, ground)],
    ["prices.csv", new Uint8Array(readFileSync(demoPrices))],
    ...Object.entries(more).map(([name, v]) => [name, typeof v === "string" ? utf8(v) : v] as const),
  ]);
}

export interface Planned {
  readonly plan: Plan;
  readonly site: Site;
  readonly warnings: readonly Problem[];
  readonly results: Results;
  /** What the papers are drawn from. */
  readonly papers: PaperContext;
}

/** Reads a folder and derives the whole plan, as the shells do. Throws with all problems where there are any. */
export async function planned(files: ReadonlyMap<string, Uint8Array>): Promise<Planned> {
  const read = await readWholePlan(files);
  if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));
  const results = finish(derive(read, { tables, solver: await loadSolver() }));
  const { plan, site, warnings } = read;
  const papers = { plan, site, tables, results: withoutHidden(results, plan.zones) };
  return { plan, site, warnings, results, papers };
}

/** Problems for which a folder is refused; none where it is taken. */
export async function problemsIn(files: ReadonlyMap<string, Uint8Array>): Promise<readonly Problem[]> {
  const read = await readWholePlan(files);
  return read.ok ? [] : read.problems;
}

/** The words of some sheets as one text; a line that was broken for want of room is one again. */
export const paperWords = (papers: PaperContext, ...sheets: readonly string[]): string =>
  paperSet(papers, sheets)
    .pages.flatMap((page) => sceneTexts(page.shapes))
    .join(" ");

/** A rectangle as a zone of the site. */
export const areaOf = (
  id: string,
  use: Zone["use"],
  [west, south, east, north]: readonly [number, number, number, number],
  more: Partial<Zone> = {},
): Zone => ({
  id,
  name: id,
  use,
  polygons: [
    [
      [
        [west, south],
        [east, south],
        [east, north],
        [west, north],
      ],
    ],
  ],
  hidden: false,
  source: "walked for the test",
  ...more,
});
