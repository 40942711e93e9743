import { readTerrain } from "@causey/io/terrain";
import { describe, expect, test } from "vitest";
import { hasOpenData, openData } from "../../packages/io/test/support/open-data.ts";
import { readGroundPlan, type Ground } from "./said-plan.ts";
import { refusal, said } from "./said.ts";

const set = "marsh-dem-sweney";
const source =
  "Sweney Creek marsh, as kept by landlab (33b6215) and MarshMorpho2D; figures as worked out beside the data";
const file = (name: string): Uint8Array => openData(`${set}/${name}`);
const METRES = { unit: "m" } as const;
const plan = (more: Partial<Ground> = {}): Ground => ({
  crs: { local: "Marsh grid" },
  datum: "NAVD88",
  terrain: { kind: "grid", file: "dem-2m.tif", unit: "m", datum: "NAVD88" },
  start: [100, 880],
  plot: [300, 500],
  files: { "dem-2m.tif": file("dem-2m.tif") },
  ...more,
});
const text = (): string => new TextDecoder().decode(file("dem-2m.asc"));
const bytes = (words: string): Uint8Array => new TextEncoder().encode(words);
const NODATA_LINE = /NODATA_VALUE 999\s*\r?\n/i;

function summary(values: Float32Array): readonly string[] {
  const known = [...values].filter((v) => !Number.isNaN(v)).sort((a, b) => a - b);
  const at = (q: number): number => known[Math.round(q * (known.length - 1))]!;
  return [known.length / values.length, at(0), at(0.05), at(0.25), at(0.5), at(0.75), at(0.95), at(1)].map(
    (v, i) => v.toFixed(i === 0 || i === 1 || i === 7 ? 3 : 2),
  );
}
const worked_out = ["0.741", "-2.609", "-0.39", "1.25", "1.39", "1.47", "2.27", "8.461"];

describe.skipIf(!hasOpenData(set))(source, () => {
  test("marsh-dem-sweney: no data written as 999, above all heights: undeclared it is named and refused, declared it is no hill (74.1 % valid, -2.609 to 8.461 m)", async () => {
    const undeclared = bytes(text().replace(NODATA_LINE, ""));
    expect(undeclared.length).toBeLessThan(file("dem-2m.asc").length);
    const problems = await refusal(() => readTerrain("dem-2m.asc", undeclared, METRES));
    said(problems, "undeclared-nodata", {
      severity: "error",
      place: /^35\d{3} of 135600 cells$/,
      value: "999",
      message: "does not declare",
      mend: 'write the line "NODATA_value 999" into its header',
    });
    const mended = bytes(text().replace(NODATA_LINE, "NODATA_value 999\n"));
    const { raster } = await readTerrain("dem-2m.asc", mended, METRES);
    expect(summary(raster.values)).toEqual(worked_out);
    const asGiven = await readTerrain("dem-2m.asc", file("dem-2m.asc"), METRES);
    expect(summary(asGiven.raster.values)).toEqual(worked_out);
  });

  test("marsh-dem-sweney: no coordinate system: refused for a plan in an EPSG system, read on a local grid", async () => {
    const { read, errors, problems } = await readGroundPlan(plan({ crs: { epsg: 26919 } }));
    expect(read.ok).toBe(false);
    expect(errors).toContain("crs-missing");
    said(problems, "crs-missing", { message: "EPSG:26919", mend: "state a local grid" });
    const mended = await readGroundPlan(plan());
    expect(mended.errors).toEqual([]);
    expect(mended.read.ok && summary(mended.read.site.terrain.values)).toEqual(worked_out);
  });

  test("marsh-dem-sweney: a local grid said to be EPSG:26919 and confirmed lies where that system has no ground: named", async () => {
    const { problems } = await readGroundPlan(
      plan({
        crs: { epsg: 26919 },
        terrain: { kind: "grid", file: "dem-2m.tif", unit: "m", datum: "NAVD88", crs_confirmed: true },
      }),
    );
    expect(problems.some((p) => p.code === "crs-stretch" || p.code === "crs-area")).toBe(true);
    const mended = await readGroundPlan(plan());
    expect(mended.problems.some((p) => p.code === "crs-stretch" || p.code === "crs-area")).toBe(false);
  });

  test("marsh-dem-sweney: parts of the margin hold no data: named with the share, and a plot there is refused until it is moved", async () => {
    const { warnings } = await readTerrain("dem-2m.tif", file("dem-2m.tif"), METRES);
    said(warnings, "terrain-gaps", {
      value: /^25\.9 %$/,
      place: "of 135600 cells",
      mend: /terrain that covers it/,
    });
    const { raster } = await readTerrain("dem-2m.tif", file("dem-2m.tif"), METRES);
    const gap = raster.values.findIndex((v) => Number.isNaN(v));
    const at = [raster.x0 + (gap % raster.cols) * 2, raster.y0 + Math.floor(gap / raster.cols) * 2] as const;
    const { problems } = await readGroundPlan(plan({ plot: at }));
    said(problems, "place-on-nodata", { place: 'plot "Plot 1"', mend: "Move it onto known ground" });
    expect((await readGroundPlan(plan())).errors).toEqual([]);
  });

  test("marsh-dem-sweney: the datum is but inferred (NAVD88): terrain and plan must name one, and a clash names both", async () => {
    const clash = await readGroundPlan(plan({ document: { vertical_datum: "mean sea level" } }));
    const [first] = clash.problems.filter((p) => p.code === "datum-clash" && p.place === "terrain.datum");
    expect(first!.message).toContain('"NAVD88", the plan on "mean sea level"');
    expect(first!.mend).toContain("difference between the two datums");
    expect((await readGroundPlan(plan())).errors).toEqual([]);
  });
});
