// Rows 16 to 18 of the feature list: closures and buffers, hidden areas, plots.
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import type { Results } from "@causey/engine/plan";
import type { Zone } from "@causey/engine/site";
import { allSheets } from "@causey/papers/set";
import { beforeAll, describe, expect, test } from "vitest";
import { hasPoppler, pdfPages } from "../../packages/papers/test/support/poppler.ts";
import { areaOf, flatPlan, folderFiles, paperWords, planned } from "../support/feature-plan.ts";
import { causey, folderOf, temporaryFolder } from "../support/shell.ts";

type XY = readonly [number, number];
const shapesOf = ({ layout }: Results): XY[][] =>
  [...layout.parts.map((p) => p.outline), ...layout.joints.map((j) => j.feet)].flatMap((polygons) =>
    polygons.map((rings) => [...rings[0]!]),
  );
/** Nearest point of a ring's sides to a place: kept apart from the product's own distances. */
function distanceTo(ring: readonly XY[], [x, y]: XY): number {
  const sides = ring.map((a, i) => [a, ring[(i + 1) % ring.length]!] as const);
  return Math.min(
    ...sides.map(([[ax, ay], [bx, by]]) => {
      const long = (bx - ax) ** 2 + (by - ay) ** 2;
      const t =
        long === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / long));
      return Math.hypot(ax + (bx - ax) * t - x, ay + (by - ay) * t - y);
    }),
  );
}

/** Nesting pelicans over the whole width of the site. */
const nests: Zone = areaOf("pelicans", "seasonal-closure", [14, 0, 24, 39], {
  name: "Pelican nests",
  from: "04-01",
  to: "09-15",
  buffer_m: 2.5,
  contact: "Warden, post box 4",
  source: "Letter of the wildlife office, 2027-01-12",
  hidden: false,
});
const laid = (from: string, to: string, zone: Zone = nests) =>
  planned(
    folderFiles(
      flatPlan({
        zones: [zone],
        laying: { from, to, carry_m: 60, carriers: 2 },
        removal: { by: "2028-11-30" },
      }),
    ),
  );

describe("16 store constraints with buffer, start/end dates, source, contact, hidden flag (brown pelican nests, Louisiana: April 1 to September 15)", () => {
  test("16 every field is kept on disk and read back", async () => {
    const secret = { ...nests, id: "secret", hidden: true, from: "11-01", to: "02-28" };
    const { plan } = await planned(
      folderFiles(flatPlan({ zones: [{ ...nests, polygons: secret.polygons }, secret] })),
    );
    expect(plan.zones).toEqual([nests, secret]);
  });

  test.each([
    ["2027-05-03", "2027-05-07", false],
    ["2027-09-15", "2027-09-20", false],
    ["2027-09-16", "2027-09-20", true],
    ["2027-03-26", "2027-03-31", true],
    ["2027-03-26", "2027-04-01", false],
  ])("16 laying from %s to %s: the way is clear %s", async (from, to, isClear) => {
    const { results } = await laid(from, to);
    expect(results.layout.reached.map((r) => r.plot)).toEqual(isClear ? ["p1"] : []);
    if (!isClear) expect(results.layout.unreached[0]!.because).toContain("Pelican nests");
  });

  test("16 where there is a way round, it keeps the buffer as well as the closure", async () => {
    const half = areaOf("pelicans", "seasonal-closure", [18, 0, 22, 24], {
      ...nests,
      polygons: [
        [
          [
            [18, 0],
            [22, 0],
            [22, 24],
            [18, 24],
          ],
        ],
      ],
    });
    const { results } = await laid("2027-05-03", "2027-05-07", half);
    expect(results.layout.reached).toHaveLength(1);
    const corners = shapesOf(results).flat();
    const ring = half.polygons[0]![0]!;
    for (const corner of corners) expect(distanceTo(ring, corner)).toBeGreaterThanOrEqual(2.5 - 1e-6);
    expect(Math.min(...corners.map((c) => distanceTo(ring, c)))).toBeLessThan(4.5);
    expect(Math.max(...corners.map(([, y]) => y))).toBeGreaterThan(26.5);
  });
});

const orchid = areaOf("rare-7", "closed", [16, 17, 26, 39], {
  name: "Slender orchid",
  hidden: true,
  source: "Botanist, 2026",
});
const options = [
  { kind: "no-structure", status: "rejected", reason: "Feet would reach the Slender orchids." },
] as const;
const traces = /orchid|rare-7|Botanist, 2026/i;

describe("17 keep rare-plant/archaeology layers out of public exports (agency practice)", () => {
  const folderWith = (zone: Zone): string =>
    folderOf(folderFiles(flatPlan({ zones: [zone], request: { ...flatPlan().request, options } })));
  /** All that the shell writes for others, as text: SQLite keeps its words in the open, the PDF is read back. */
  function exported(folder: string): ReadonlyMap<string, string> {
    const out = join(temporaryFolder(), "out");
    const papers = join(temporaryFolder(), "papers");
    expect(causey(["plan", folder, "--out", out]).code).toBe(0);
    expect(causey(["papers", folder, "--out", papers, "--sheets", "all"]).code).toBe(0);
    const texts = readdirSync(out).map((name) => [name, readFileSync(join(out, name), "latin1")] as const);
    const pdf = new Uint8Array(readFileSync(join(papers, "papers.pdf")));
    return new Map([...texts, ["papers.pdf", hasPoppler() ? pdfPages(pdf).join("\n") : ""]]);
  }

  test("17 an export scan finds no name, id or source of it in any file, and no corner of it", () => {
    const files = exported(folderWith(orchid));
    expect(files.size).toBeGreaterThanOrEqual(9);
    for (const [name, text] of files) expect(traces.exec(text)?.[0], name).toBeUndefined();
    expect(files.get("results.json")).toContain("a withheld area");
    expect(files.get("layout.geojson")).not.toMatch(/\[\s*16,\s*17\s*\]/);
  });

  test("17 the search goes round it all the same, and the scan does find the same area once it is open", async () => {
    const { results, papers } = await planned(folderFiles(flatPlan({ zones: [orchid] })));
    for (const [x, y] of shapesOf(results).flat()) expect(x > 16 && x < 26 && y > 17).toBe(false);
    expect(paperWords(papers, ...allSheets.map((s) => s.id))).not.toMatch(traces);
    const open = exported(folderWith({ ...orchid, hidden: false }));
    expect([...open].filter(([, text]) => traces.test(text)).map(([name]) => name)).toContain("results.json");
    if (hasPoppler()) expect(open.get("papers.pdf")).toMatch(traces);
  });
});

describe("18 subtract buffers from plots so no leg enters a plot (surface elevation table practice of keeping off plots)", () => {
  const plots = [
    { id: "p1", name: "Plot 1", x: 22, y: 20, keep_off_m: 3, reach_m: 2 },
    { id: "p2", name: "Plot 2", x: 40, y: 28, keep_off_m: 1.5, reach_m: 2 },
    { id: "p3", name: "Plot 3", x: 40, y: 10, keep_off_m: 0.6, reach_m: 2 },
  ];
  let results: Results;
  beforeAll(async () => {
    const { visits } = flatPlan();
    const visited = [{ ...visits[0]!, plots: plots.map((p) => p.id) }];
    ({ results } = await planned(folderFiles(flatPlan({ plots, visits: visited }))));
  });

  test("18 geometric test: every part and leg lies wholly outside every keep-off circle, 0 overlap", () => {
    expect(results.layout.reached).toHaveLength(3);
    for (const { id, x, y, keep_off_m } of plots)
      for (const shape of shapesOf(results))
        expect(distanceTo(shape, [x, y]), id).toBeGreaterThanOrEqual(keep_off_m - 1e-6);
  });

  test("18 the plan says so itself, plot by plot, with the nearest distance", () => {
    for (const { plot, nearest_m, overlap_m2 } of results.route.plots) {
      const { x, y } = plots.find((p) => p.id === plot)!;
      expect(overlap_m2).toBe(0);
      expect(nearest_m).toBeCloseTo(Math.min(...shapesOf(results).map((s) => distanceTo(s, [x, y]))), 6);
    }
  });
});
