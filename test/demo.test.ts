import { readFileSync, readdirSync } from "node:fs";
import { resolve } from "node:path";
import { readPlan } from "@causey/io/plan";
import { readPrices } from "@causey/io/prices";
import { expect, test } from "vitest";
import { readyKits } from "@causey/data/kits";
import { tables } from "@causey/data/tables";
import {
  validateKit,
  modulePieces,
  moduleCounts,
  platformCounts,
  platformPieces,
  supportCounts,
  supportHeights,
  supportPieces,
} from "@causey/engine/kit";
import { surveyResults } from "@causey/engine/survey";
import { seededRandom } from "../examples/generator/random.ts";
import { saltMeadowFiles } from "../examples/generator/salt-meadow.ts";
import { springFenFiles } from "../examples/generator/spring-fen.ts";
import { highGround } from "./support/clear-widths.ts";

const files = saltMeadowFiles();
const parsed = (name: string) =>
  JSON.parse(files.get(name)!) as { features: { properties: Record<string, unknown>; geometry: Geometry }[] };
interface Geometry {
  type: string;
  coordinates: unknown;
}
const plan = JSON.parse(files.get("plan.json")!) as {
  laying: { from: string; to: string };
  ground: { readings: { su_kpa: number }[] };
  levels: { id: string; z_m: number; source: string; epoch: string }[];
  kit: { ready: string; supports: { id: string; ground_above_m?: number }[] };
};
const zones = parsed("zones.geojson").features;
const places = parsed("places.geojson").features;

function terrain() {
  const [head, rows] = [files.get("terrain.asc")!.trim().split("\n").slice(0, 6), 6];
  const value = (key: string): number => Number(head.find((l) => l.startsWith(key))!.split(" ")[1]);
  const lines = files.get("terrain.asc")!.trim().split("\n").slice(rows).reverse();
  return {
    cols: value("ncols"),
    rows: value("nrows"),
    west: value("xllcorner"),
    south: value("yllcorner"),
    cell: value("cellsize"),
    values: Float32Array.from(lines.flatMap((l) => l.split(" ").map(Number))),
  };
}

const demos = [
  ["salt-meadow", files],
  ["spring-fen", springFenFiles()],
] as const;

test.each(demos)("the committed demo %s equals a fresh run of its generator, byte for byte", (name, made) => {
  const folder = resolve(import.meta.dirname, "../examples", name);
  expect(readdirSync(folder).sort()).toEqual([...made.keys()].sort());
  for (const [file, text] of made)
    expect(readFileSync(resolve(folder, file)).equals(Buffer.from(text)), file).toBe(true);
});

test("one seed gives one sequence, another seed another", () => {
  const [a, b, c] = [7, 7, 8].map((seed) => {
    const random = seededRandom(seed);
    return Array.from({ length: 1000 }, random);
  }) as [number[], number[], number[]];
  expect(a).toEqual(b);
  expect(a).not.toEqual(c);
  const mean = a.reduce((sum, v) => sum + v, 0) / a.length;
  expect(Math.abs(mean - 0.5)).toBeLessThan(0.03);
  expect(Math.min(...a)).toBeGreaterThanOrEqual(0);
  expect(Math.max(...a)).toBeLessThan(1);
});

test("the terrain is small, whole and a salt meadow: upland, platform, creek beds", () => {
  expect(files.get("terrain.asc")!.length).toBeLessThan(400_000);
  const t = terrain();
  expect(t.values).toHaveLength(t.cols * t.rows);
  expect(t.values.every((z) => z > -0.5 && z < 5)).toBe(true);
  const platform = t.values.slice(30 * t.cols, 160 * t.cols);
  const share = platform.filter((z) => z >= 1.3 && z <= 1.75).length / platform.length;
  expect(share).toBeGreaterThan(0.85);
  expect(Math.min(...platform)).toBeLessThan(-0.1);
});

test("plot P2 lies beyond a creek too wide for any module under 12 ft and narrow enough for one of 12 ft", () => {
  const at = (id: string): [number, number] =>
    places.find((p) => p.properties["id"] === id)!.geometry.coordinates as [number, number];
  const ground = highGround(terrain(), plan.kit.supports[0]!.ground_above_m!);
  const partOf = (id: string): number => ground.partAt(...at(id));
  expect([partOf("P1"), partOf("P3")]).toEqual([partOf("gate"), partOf("gate")]);
  const gap = ground.hardest(partOf("gate"), partOf("P2"))!;
  expect(gap.width_m).toBeGreaterThan(2.44);
  expect(gap.width_m).toBeLessThan(3.05);
});

test("laying begins inside the tern colony's closure, and the straight way to P1 leads through it", () => {
  const terns = zones.find((z) => z.properties["use"] === "seasonal-closure")!;
  const { from, to } = terns.properties as { from: string; to: string };
  expect([from, to]).toEqual(["04-15", "08-31"]);
  expect(plan.laying.from.slice(5) >= from && plan.laying.from.slice(5) <= to).toBe(true);
  const [ring] = terns.geometry.coordinates as [[number, number][]];
  const xs = ring.map((p) => p[0]);
  expect(Math.min(...xs)).toBeLessThan(1128 - 10);
  expect(Math.max(...xs)).toBeGreaterThan(1130 + 10);
});

test("the site has every kind of zone the job meets, one of them hidden and closed", () => {
  const uses = new Set(zones.map((z) => z.properties["use"]));
  expect(uses).toEqual(new Set(["channel", "closed", "habitat", "parcel", "pool", "seasonal-closure"]));
  const hidden = zones.filter((z) => z.properties["hidden"] === true);
  expect(hidden.map((z) => z.properties["use"])).toEqual(["closed"]);
  const sensitivities = zones.flatMap((z) => z.properties["sensitivity"] ?? []);
  expect(sensitivities).toEqual([1, 2, 4]);
  expect(places.map((p) => p.properties["kind"])).toEqual(["start", "plot", "plot", "plot"]);
});

test("water levels rise in order and name their source and years; strengths are soft ground", () => {
  const heights = plan.levels.map((l) => l.z_m);
  expect(heights).toEqual([...heights].sort((a, b) => a - b));
  expect(plan.levels.every((l) => l.source !== "" && l.epoch !== "")).toBe(true);
  const su = plan.ground.readings.map((r) => r.su_kpa);
  expect(su).toHaveLength(12);
  expect(su.every((v) => v >= 5 && v <= 14)).toBe(true);
  expect(Math.max(...su) - Math.min(...su)).toBeGreaterThan(2);
});

for (const kit of readyKits)
  test(`the price list sells every lumber size and counted item of the ready kit ${kit.id}`, () => {
    const { sizes } = tables;
    const pieces = [
      ...kit.lengths_mm.flatMap((l) => modulePieces(kit, l, sizes)),
      ...platformPieces(kit, sizes),
      ...kit.supports.flatMap((s) =>
        supportHeights(s).flatMap((h) => supportPieces(kit, s, h / 1000, sizes)),
      ),
    ];
    const lumber = new Map<string, number>();
    for (const { size, length_mm } of pieces)
      if (size !== null) lumber.set(size, Math.max(lumber.get(size) ?? 0, length_mm));
    const counted = [
      ...kit.lengths_mm.flatMap((l) => moduleCounts(kit, l, sizes)),
      ...platformCounts(kit, sizes),
      ...kit.supports.flatMap((s) => supportCounts(s)),
    ].map((c) => c.item);
    const { prices } = readPrices("prices.csv", Buffer.from(files.get("prices.csv")!));
    const longest = (item: string): number =>
      Math.max(-1, ...prices.filter((p) => p.item === item).map((p) => p.length_mm ?? 0));
    expect(lumber.size).toBeGreaterThan(3);
    expect([...lumber].filter(([size, length]) => longest(size) < length)).toEqual([]);
    expect(counted.filter((item) => longest(item) !== 0)).toEqual([]);
  });

const read = async (texts: ReadonlyMap<string, string>) => {
  const bytes = new Map([...texts].map(([name, text]) => [name, new TextEncoder().encode(text)]));
  const answer = await readPlan(bytes, { readyKits, validateKit: (kit) => validateKit(kit, tables) });
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems, null, 1));
  return answer;
};

test("the plan reader takes the salt meadow without a fault or a warning", async () => {
  const { plan: taken, warnings } = await read(files);
  expect(warnings).toEqual([]);
  expect(taken.zones).toHaveLength(zones.length);
  expect(taken.kit.supports.every((s) => s.stands.ground_above_m === 1.2)).toBe(true);
});

test.each(demos)(
  "%s: the reader has no warning; every habitat has a check shot and the mark closes",
  async (_, made) => {
    const { plan: taken, site, warnings } = await read(made);
    expect(warnings).toEqual([]);
    const survey = surveyResults({
      survey: taken.survey,
      zones: site.zones,
      datum: site.datum,
      readings: site.readings,
      ground: site.ground,
      band_m: site.height_band_m,
    });
    expect(survey.unchecked_habitats).toEqual([]);
    expect(survey.terrain!.n).toBeGreaterThanOrEqual(4);
    expect(survey.terrain!.off_terrain).toEqual([]);
    expect(survey.closure.closures.map((c) => c.closes)).toEqual([true]);
    expect(survey.band_m!).toBeGreaterThan(0.02);
    expect(survey.band_m!).toBeLessThan(0.15);
  },
);
