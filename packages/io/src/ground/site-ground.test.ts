import { describe, expect, test } from "vitest";
import { BLANK_SECTIONS, type TerrainChoice } from "@causey/engine/plan";
import { groundAt, type Zone } from "@causey/engine/site";
import type { CheckShot, Station } from "@causey/engine/survey";
import { hasOpenData, openData } from "../../test/support/open-data.ts";
import { sampleFiles, samplePlan, sampleTerrain } from "../../test/support/sample-plan.ts";
import { problemsOf, utf8 } from "../../test/support/problems.ts";
import { readPlan } from "../plan/index.ts";
import { groundInputs, siteGround, type GroundPlan } from "./index.ts";

const datum = "Gate bench mark";
const columns = { id: null, x: "x", y: "y", z: "z", code: null, accuracy: null, date: null };
const points: TerrainChoice = {
  kind: "points",
  file: "points.csv",
  columns,
  unit: "m",
  decimal: "point",
  date_order: "ymd",
  datum,
  cell_m: 1,
  longest_edge_m: 30,
};
const stations: TerrainChoice = { kind: "stations", datum, cell_m: 0.5, reach_m: 3 };
const plan = (terrain: TerrainChoice, more: Partial<GroundPlan> = {}): GroundPlan => ({
  terrain,
  survey: BLANK_SECTIONS.survey,
  zones: [],
  levels: [],
  vertical_datum: datum,
  ...more,
});
const station = (x: number, y: number, ground_m: number): Station => ({
  id: `S${x}-${y}`,
  x,
  y,
  ground_m,
  probe_m: null,
  water_m: null,
  date: null,
});
const codesOf = async (p: GroundPlan, bytes: Uint8Array | null): Promise<readonly string[]> =>
  (await problemsOf(() => siteGround(p, bytes, undefined))).map((x) => x.code);

describe("ground from points", () => {
  const plane = (x: number, y: number): number => 1 + 0.02 * x - 0.01 * y;
  const file = (list: readonly (readonly [number, number])[], z = plane): Uint8Array =>
    utf8(`x,y,z\n${list.map(([x, y]) => `${x},${y},${z(x, y).toFixed(4)}`).join("\n")}\n`);
  const corners = [
    [0, 0],
    [20, 0],
    [0, 20],
    [20, 20],
    [7, 9],
  ] as const;

  test("a plane comes back between the points; nothing is known outside them", async () => {
    const { raster, height_band_m } = await siteGround(plan(points), file(corners), undefined);
    for (const [x, y] of [
      [3, 4],
      [12.5, 7.5],
      [19, 19],
    ] as const)
      expect(groundAt(raster, x, y)).toBeCloseTo(plane(x, y), 4);
    expect(groundAt(raster, 25, 5)).toBeNaN();
    expect(height_band_m).toBeNull();
  });

  test("the evidence names the wild point by its name and line, and sums up accuracy, days and rows left out", async () => {
    const rows = Array.from({ length: 36 }, (_, i) => {
      const [x, y] = [(i % 6) * 4, Math.floor(i / 6) * 4];
      const z = plane(x, y) + (i === 14 ? 1.5 : 0) + (i % 2) * 0.004;
      return `P${i},${x},${y},${z.toFixed(3)},${i === 3 ? 0.04 : 0.01},2026-07-${i < 18 ? "20" : "22"}`;
    });
    const bytes = utf8(`id,x,y,z,acc,day\n${rows.join("\n")}\nP99,3,3,,0.01,2026-07-22\n`);
    const named = { ...columns, id: "id", accuracy: "acc", date: "day" };
    const ground = await siteGround(plan({ ...points, columns: named }), bytes, undefined);
    const { kind, points: audit } = ground.evidence();
    expect(kind).toBe("points");
    expect([audit!.n, audit!.left_out, audit!.outlier_count]).toEqual([36, 1, 1]);
    const [wild] = audit!.outliers;
    expect([wild!.id, wild!.line, wild!.x, wild!.y]).toEqual(["P14", 16, 8, 8]);
    expect(wild!.residual_m).toBeGreaterThan(1);
    expect(audit!.accuracy!.worst_m).toBeCloseTo(0.04, 6);
    expect(audit!.dates).toEqual({ stated: 36, first: "2026-07-20", last: "2026-07-22" });
  });

  test("points on a line, edges that are all too long and a far stray point are refused with a mend", async () => {
    expect(
      await codesOf(
        plan(points),
        file([
          [0, 0],
          [5, 5],
          [9, 9],
        ]),
      ),
    ).toEqual(["points-no-surface"]);
    expect(await codesOf(plan({ ...points, longest_edge_m: 4 }), file(corners))).toEqual([
      "points-too-far-apart",
    ]);
    expect(
      await codesOf(
        plan({ ...points, cell_m: 0.25 }),
        file([...corners, [90_000, 90_000]], () => 1),
      ),
    ).toEqual(["terrain-too-large"]);
  });

  test("heights far from the plan's water levels are refused", async () => {
    const level = { ...samplePlan.levels[0]!, datum };
    expect(
      await codesOf(
        plan(points, { levels: [level] }),
        file(corners, () => 48),
      ),
    ).toEqual(["ellipsoid-heights"]);
    expect(
      await codesOf(
        plan(points),
        file(corners, (x) => -26 - x / 100),
      ),
    ).toEqual(["ellipsoid-heights"]);
  });
});

describe("ground from stations", () => {
  test("known along the line of stations and no further than the reach", async () => {
    const survey = { ...BLANK_SECTIONS.survey, stations: [station(0, 0, 1), station(20, 0, 2)] };
    const { raster } = await siteGround(plan(stations, { survey }), null, undefined);
    expect(groundAt(raster, 10, 2)).toBeCloseTo(1.5, 5);
    expect(groundAt(raster, 10, 5)).toBeNaN();
  });

  test("no station, and a reach that no cell lies in", async () => {
    expect(await codesOf(plan(stations), null)).toEqual(["stations-none"]);
    const survey = { ...BLANK_SECTIONS.survey, stations: [station(0.24, 0.26, 1)] };
    expect(await codesOf(plan({ ...stations, cell_m: 50, reach_m: 0.1 }, { survey }), null)).toEqual([
      "stations-reach",
    ]);
  });

  test("a plan folder without a terrain file is read whole", async () => {
    const places = [
      [5, 5],
      [12, 25],
      [30, 20],
    ] as const;
    const survey = { ...samplePlan.survey, stations: places.map(([x, y], i) => station(x, y, 1 + i / 10)) };
    const document = JSON.parse(new TextDecoder().decode(sampleFiles().get("plan.json"))) as object;
    const files = new Map(
      sampleFiles({
        "plan.json": utf8(JSON.stringify({ ...document, terrain: stations, survey })),
        "terrain.asc": null,
      }),
    );
    const read = await readPlan(files, { readyKits: [] });
    expect(read.ok ? [] : read.problems).toEqual([]);
    if (read.ok) expect(groundAt(read.site.terrain, 12, 25)).toBeCloseTo(1.1, 2);
  });
});

describe("terrain from a file, held against check shots", () => {
  const grid = samplePlan.terrain;
  const fen = samplePlan.zones[0]!;
  const places = [
    [4, 12],
    [9, 20],
    [16, 14],
    [30, 18],
    [34, 12],
    [27, 24],
  ] as const;
  const ground = (bytes: Uint8Array, more: Partial<GroundPlan>) =>
    siteGround(plan(grid, more), bytes, undefined);

  async function shots(by: number): Promise<readonly CheckShot[]> {
    const { raster } = await ground(sampleTerrain(), {});
    return places.map(([x, y], i) => ({
      id: `C${i}`,
      x,
      y,
      z_m: groundAt(raster, x, y) - by,
      accuracy_m: 0.02,
      date: null,
    }));
  }

  test("0.12 m too high in the fen: lowered there and nowhere else, with the band that remains", async () => {
    const survey = { ...BLANK_SECTIONS.survey, check_shots: await shots(0.12), correct_terrain: true };
    const before = await ground(sampleTerrain(), {});
    const after = await ground(sampleTerrain(), { survey, zones: [fen] });
    expect(groundAt(before.raster, 8, 20) - groundAt(after.raster, 8, 20)).toBeCloseTo(0.12, 5);
    expect(groundAt(after.raster, 8, 5)).toBe(groundAt(before.raster, 8, 5));
    expect(after.height_band_m!).toBeGreaterThan(0.02);
    expect(after.height_band_m!).toBeLessThan(0.08);
    expect(after.warnings).toEqual([]);
  });

  test("left in, it is told, and the band holds it", async () => {
    const survey = { ...BLANK_SECTIONS.survey, check_shots: await shots(0.12) };
    const { warnings, height_band_m } = await ground(sampleTerrain(), { survey, zones: [fen] });
    expect(warnings.map((w) => w.code)).toEqual(["terrain-bias"]);
    expect(height_band_m!).toBeGreaterThan(0.12);
  });

  test("the lidar warning stands for habitats without a shot alone, and not for surveyed ground", async () => {
    const bare: Zone = {
      ...fen,
      id: "bare",
      name: "Bare",
      polygons: [
        [
          [
            [0, 0],
            [3, 0],
            [3, 3],
            [0, 3],
          ],
        ],
      ],
    };
    const survey = { ...BLANK_SECTIONS.survey, check_shots: await shots(0) };
    const { warnings } = await ground(sampleTerrain(), { survey, zones: [fen, bare] });
    expect(warnings.map((w) => [w.code, w.place])).toEqual([
      ["terrain-unchecked-habitat", 'zone "Bare" (bare)'],
    ]);
    const typed = { ...survey, check_shots: [], stations: [station(0, 0, 1)] };
    expect(
      (await siteGround(plan(stations, { survey: typed, zones: [bare] }), null, undefined)).warnings,
    ).toEqual([]);
  });

  test("a plan folder: the site has the corrected ground and its band; a mark on another datum names both", async () => {
    const check_shots = await shots(0.12);
    const document = JSON.parse(new TextDecoder().decode(sampleFiles().get("plan.json"))) as object;
    const read = (survey: object) =>
      readPlan(sampleFiles({ "plan.json": utf8(JSON.stringify({ ...document, survey })) }), {
        readyKits: [],
      });
    const sound = await read({ ...BLANK_SECTIONS.survey, check_shots, correct_terrain: true });
    expect(sound.ok && sound.site.height_band_m).toBeGreaterThan(0.02);
    const evidence = sound.ok ? sound.site.ground : null;
    expect([evidence!.kind, evidence!.points]).toEqual(["grid", null]);
    expect(evidence!.lowered_m).toBeCloseTo(0.12, 5);
    expect(evidence!.bias.residuals).toHaveLength(check_shots.length);
    expect(evidence!.working.at(-1)!.value).toBe(sound.ok && sound.site.height_band_m);
    const mark = { id: "B", name: "Bolt", x: 1, y: 1, z_m: 2, datum: "NGVD29", source: "county" };
    const clash = await read({ ...BLANK_SECTIONS.survey, check_shots, benchmarks: [mark] });
    const problem = !clash.ok && clash.problems.find((p) => p.code === "datum-clash");
    expect(problem && problem.message).toMatch(/NGVD29.*Gate bench mark/);
  });

  test("what the ground depends on: habitats count only when the terrain is corrected", async () => {
    const check_shots = await shots(0.12);
    const moved = {
      ...fen,
      polygons: [
        [
          [
            [1, 10],
            [40, 10],
            [40, 30],
          ],
        ],
      ],
    } as Zone;
    const key = (zone: Zone, correct_terrain: boolean): string =>
      JSON.stringify(
        groundInputs(
          plan(grid, { zones: [zone], survey: { ...BLANK_SECTIONS.survey, check_shots, correct_terrain } }),
        ),
      );
    expect(key(fen, false)).toBe(key(moved, false));
    expect(key(fen, true)).not.toBe(key(moved, true));
  });
});

test.skipIf(!hasOpenData("marsh-survey-points"))(
  "Grants Beach (van Ardenne and others 2018): surveyed points become ground at each of them, Wells is refused",
  async () => {
    const choice = {
      ...points,
      columns: { ...columns, x: "x", y: "y", z: "z" },
      cell_m: 2,
      longest_edge_m: 300,
    };
    const { raster } = await siteGround(
      plan(choice),
      openData("marsh-survey-points/grants_beach-points.csv"),
      { epsg: 2953 },
    );
    const known = [...raster.values].filter((v) => !Number.isNaN(v));
    expect(known.length).toBeGreaterThan(10_000);
    expect(Math.min(...known)).toBeGreaterThanOrEqual(0.42);
    expect(Math.max(...known)).toBeLessThanOrEqual(0.9514);
    expect(await codesOf(plan(choice), openData("marsh-survey-points/wells_int-points.csv"))).toContain(
      "ellipsoid-heights",
    );
  },
);
