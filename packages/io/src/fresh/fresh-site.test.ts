import { readyKits } from "@causey/data/kits";
import { ProblemError, type Problem } from "@causey/engine/formula";
import { groundAt } from "@causey/engine/site";
import { expect, test } from "vitest";
import { geoTags, writeTiff } from "../../test/support/tiff.ts";
import { hasOpenData, openData } from "../../test/support/open-data.ts";
import { readPlan } from "../plan/index.ts";
import { freshPlanFiles } from "./fresh-plan-files.ts";
import { siteOfStart, siteOfTerrain, type FreshSite } from "./fresh-site.ts";
import { freshSystem } from "./fresh-system.ts";
import { lookAtTerrain } from "./look-at-terrain.ts";

const told = { crs: null, datum: "", start: null };
const read = async (site: FreshSite) => {
  const answer = await readPlan(freshPlanFiles("Fen", { site }), { readyKits });
  if (!answer.ok) throw new Error(answer.problems.map((p) => `${p.code}: ${p.message}`).join("\n"));
  return answer;
};
const problemsOf = async (run: () => unknown): Promise<readonly Problem[]> => {
  try {
    await run();
  } catch (error) {
    if (error instanceof ProblemError) return error.problems;
    throw error;
  }
  return [];
};
/** 40 x 30 cells of 1 m; the middle of the east side is highest. */
const grid = (x0: number, y0: number): Uint8Array => {
  const rows = Array.from({ length: 30 }, () => Array.from({ length: 40 }, (_, i) => 1 + i / 100).join(" "));
  return new TextEncoder().encode(
    `ncols 40\nnrows 30\nxllcorner ${x0}\nyllcorner ${y0}\ncellsize 1\n${rows.join("\n")}\n`,
  );
};

test.skipIf(!hasOpenData("marsh-dem-stour"))(
  "a GeoTIFF gives the plan its system and a start on known ground; its gaps and high edge are named, and places still asked for",
  async () => {
    const look = await lookAtTerrain("dem-1m.tif", openData("marsh-dem-stour/dem-1m.tif"));
    const { plan, site, warnings } = await read(siteOfTerrain(look, { ...told, datum: "ODN" }));
    expect(plan).toMatchObject({
      crs: { epsg: 27700 },
      vertical_datum: "ODN",
      plots: [],
      zones: [],
      visits: [],
    });
    expect(plan.terrain).toEqual({ kind: "grid", file: "dem-1m.tif", unit: "m", datum: "ODN" });
    expect(groundAt(site.terrain, plan.starts[0]!.x, plan.starts[0]!.y)).toBeGreaterThan(0);
    expect(warnings.map((w) => w.code)).toEqual(["terrain-gaps", "terrain-edge-high", "no-places"]);
  },
);

test("the start stands at the highest of the four edges, far enough inside for a module, and says that it is to be moved", async () => {
  const look = await lookAtTerrain("fen.asc", grid(500_000, 200_000));
  const { plan } = await read(siteOfTerrain(look, { ...told, crs: { epsg: 27700 }, datum: "ODN" }));
  expect(plan.starts).toEqual([
    { id: "S1", name: "Start (to be moved to its place)", x: 500_037.5, y: 200_015.5 },
  ]);
});

test("a file that names no system takes the told one, which its owner has then checked; untold, it is asked for", async () => {
  const look = await lookAtTerrain("fen.asc", grid(500_000, 200_000));
  const { plan } = await read(siteOfTerrain(look, { ...told, crs: { epsg: 27700 }, datum: "ODN" }));
  expect(plan.terrain).toMatchObject({ file: "fen.asc", crs_confirmed: true });
  const local = await read(siteOfTerrain(look, { ...told, crs: { local: "Pegs" }, datum: "Peg 1" }));
  expect(local.plan.crs).toEqual({ local: "Pegs" });
  expect(await problemsOf(() => siteOfTerrain(look, told))).toMatchObject([
    { code: "crs-missing", file: "fen.asc" },
  ]);
});

test("a system that the file contradicts is refused with both names", async () => {
  const tags = geoTags(500_000, 200_030, 1, 1, 32_630);
  const look = await lookAtTerrain("fen.tif", writeTiff(40, 30, new Float32Array(1200).fill(2), { tags }));
  expect(look.crs?.code).toBe(32_630);
  const [problem] = await problemsOf(() => siteOfTerrain(look, { ...told, crs: { epsg: 27700 } }));
  expect(problem).toMatchObject({ code: "crs-mismatch" });
  expect(problem!.message).toContain("EPSG:32630");
  expect(problem!.message).toContain("EPSG:27700");
});

test("a datum whose name nobody told says so in the plan, and the plan can be read", async () => {
  const look = await lookAtTerrain("fen.asc", grid(0, 0));
  const { plan } = await read(siteOfTerrain(look, { ...told, crs: { local: "Pegs" } }));
  expect(plan.vertical_datum).toBe("Datum of fen.asc (its name is not told)");
});

test.each(["plan.json", "../fen.asc", "CON.asc", "Prices.csv"])(
  "a file cannot stand in the plan's own way: %s",
  async (name) => {
    const look = await lookAtTerrain(name, grid(0, 0));
    const site = siteOfTerrain(look, { ...told, crs: { local: "Pegs" } });
    expect([...site.files.keys()]).toEqual(["terrain.asc"]);
    await read(site);
  },
);

test("without terrain the start is the first station, and the ground round it is its height", async () => {
  const { plan, site } = await read(siteOfStart({ local: "Pegs" }, "Peg 1", [3, 4], 1.25));
  expect(plan.survey.stations).toMatchObject([{ x: 3, y: 4, ground_m: 1.25 }]);
  expect(groundAt(site.terrain, 5, 4)).toBeCloseTo(1.25, 6);
});

test("systems as people type them", async () => {
  expect(freshSystem(" EPSG:27700 ")).toEqual({ epsg: 27700 });
  expect(freshSystem("25832")).toEqual({ epsg: 25832 });
  expect(freshSystem("local")).toEqual({ local: "Site grid" });
  expect(freshSystem("local: Pegs of 2026")).toEqual({ local: "Pegs of 2026" });
  expect(freshSystem("")).toBeNull();
  expect(await problemsOf(() => freshSystem("British National Grid"))).toMatchObject([{ code: "crs" }]);
});
