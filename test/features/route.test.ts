// Rows 19, 20 and 24 of the feature list: what the route crosses, and its figures.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { PERMIT_SET } from "@causey/papers/set";
import { beforeAll, describe, expect, test } from "vitest";
import { RouteReport } from "../../packages/web/src/layout-page/route-report.tsx";
import { areaOf, flatPlan, folderFiles, paperWords, planned, type Planned } from "../support/feature-plan.ts";
import { causey, folderOf, temporaryFolder } from "../support/shell.ts";

type XY = readonly [number, number];
/** Shoelace, kept apart from the product's own. */
const areaInside = (ring: readonly XY[]): number =>
  Math.abs(
    ring.reduce((sum, [x, y], i) => {
      const [u, v] = ring[(i + 1) % ring.length]!;
      return sum + x * v - u * y;
    }, 0),
  ) / 2;

/** One straight walk due east: the middle line runs from joint to joint. */
const zones = [
  areaOf("west", "parcel", [0, 0, 20, 39], { name: "West lot", owner: "Widow Reed, Dyke Road" }),
  areaOf("east", "parcel", [20, 0, 34, 39], { name: "East lot", owner: "Parish of Sedge" }),
  areaOf("north", "parcel", [0, 30, 59, 39], { name: "North lot", owner: "Nobody asked" }),
  areaOf("c", "channel", [8.2, 0, 9.4, 39], { name: "Old cut" }),
  areaOf("d", "channel", [13.5, 0, 14.3, 39], { name: "Tern creek", water: "creek" }),
  areaOf("e", "pool", [24.6, 10, 25.6, 29], { name: "Glasswort flat", water: "panne" }),
  areaOf("f", "pool", [29.1, 10, 29.9, 29], { name: "Round pool" }),
  areaOf("bed", "habitat", [15, 0, 23, 39], { name: "Cord grass", sensitivity: 3 }),
  areaOf("rare", "habitat", [21, 0, 27, 39], { name: "Sea lavender", sensitivity: 5 }),
];
let done: Planned;
let line: { from: number; to: number };
beforeAll(async () => {
  done = await planned(folderFiles(flatPlan({ zones })));
  const xs = done.results.layout.joints.map((j) => j.x);
  line = { from: Math.min(...xs), to: Math.max(...xs) };
  const [first] = done.results.layout.joints;
  for (const { y } of done.results.layout.joints) expect(y).toBeCloseTo(first!.y, 6);
  expect(done.results.layout.reached).toHaveLength(1);
  expect(done.results.layout.branches).toHaveLength(1);
});
/** Length of the walk between two eastings. */
const within = (west: number, east: number): number =>
  Math.max(0, Math.min(east, line.to) - Math.max(west, line.from));

describe("19 respect parcels; list owners crossed (adjoining owners of a Corps application)", () => {
  test("19 the table equals the fixture: two owners with their lengths, the third is not crossed", () => {
    const { parcels, no_parcel_m } = done.results.route;
    expect(parcels.map((p) => [p.name, p.owner])).toEqual([
      ["West lot", "Widow Reed, Dyke Road"],
      ["East lot", "Parish of Sedge"],
    ]);
    expect(parcels[0]!.length_m).toBeCloseTo(within(0, 20), 6);
    expect(parcels[1]!.length_m).toBeCloseTo(within(20, 34), 6);
    expect(no_parcel_m).toBeCloseTo(within(34, 59), 6);
    expect(no_parcel_m).toBeGreaterThan(0.5);
    const parts = new Set(parcels.flatMap((p) => p.parts));
    expect(parts.size).toBeGreaterThanOrEqual(done.results.layout.parts.length - 1);
  });

  test("19 owners stand on the permit paper, on the page and in results.json", () => {
    const words = paperWords(done.papers, ...PERMIT_SET);
    const html = renderToStaticMarkup(
      createElement(RouteReport, { route: done.results.route, plan: done.plan }),
    );
    const out = join(temporaryFolder(), "out");
    expect(causey(["plan", folderOf(folderFiles(flatPlan({ zones }))), "--out", out]).code).toBe(0);
    const json = readFileSync(join(out, "results.json"), "utf8");
    for (const owner of ["Widow Reed, Dyke Road", "Parish of Sedge"])
      for (const shown of [words, html, json]) expect(shown).toContain(owner);
    expect(paperWords(done.papers, "route")).not.toContain("Nobody asked");
    expect(html).not.toContain("Nobody asked");
  });

  test("19 respected: no part is laid on ground of an owner that is closed to it", async () => {
    const shut = [...zones.slice(0, 2), areaOf("no", "closed", [18, 0, 24, 30], { name: "Not allowed" })];
    const { results } = await planned(folderFiles(flatPlan({ zones: shut })));
    expect(results.layout.reached).toHaveLength(1);
    for (const [x, y] of results.layout.parts.flatMap((p) => p.outline.flat(2) as unknown as XY[]))
      expect(x > 18 && x < 24 && y < 30).toBe(false);
  });
});

describe("20 mark creeks, ditches, pools, pannes as crossings with width (site layers; ditch under 3 m: common practice, no source)", () => {
  test("20 each crossing has its type, its width and the part that bridges it", () => {
    const { crossings } = done.results.route;
    expect(crossings.map((c) => [c.name, c.type])).toEqual([
      ["Old cut", "ditch"],
      ["Tern creek", "creek"],
      ["Glasswort flat", "panne"],
      ["Round pool", "pool"],
    ]);
    for (const [i, width] of [1.2, 0.8, 1, 0.8].entries()) {
      expect(crossings[i]!.width_m).toBeCloseTo(width, 6);
      const part = done.results.layout.parts.find((p) => p.id === crossings[i]!.part)!;
      const xs = part.outline.flat(2).map((p) => (p as unknown as XY)[0]);
      expect(Math.min(...xs)).toBeLessThan(crossings[i]!.at[0]);
      expect(Math.max(...xs)).toBeGreaterThan(crossings[i]!.at[0]);
    }
    expect(crossings[0]!.at[0]).toBeCloseTo(8.8, 6);
  });

  test("20 no leg stands in one of them, and paper and page list them with their widths", () => {
    const feet = done.results.layout.joints.flatMap((j) => j.feet.flatMap((rings) => [...rings[0]!]));
    for (const [x] of feet)
      for (const [west, east] of [
        [8.2, 9.4],
        [13.5, 14.3],
        [24.6, 25.6],
        [29.1, 29.9],
      ] as const)
        expect(x > west && x < east).toBe(false);
    const html = renderToStaticMarkup(
      createElement(RouteReport, { route: done.results.route, plan: done.plan }),
    );
    for (const shown of [paperWords(done.papers, "route"), html])
      for (const word of [
        "Old cut",
        "ditch",
        "1.20 m",
        "Tern creek",
        "creek",
        "800 mm",
        "Glasswort flat",
        "panne",
      ])
        expect(shown).toContain(word);
  });
});

describe("24 give length, area shaded, area of contact, sensitive length, crossings per route (permit facts)", () => {
  test("24 hand sums equal: parts and gaps, outlines, feet, the walk through the two beds", () => {
    const { layout, evaluation, route } = done.results;
    const gap = done.plan.kit.joint_gap_mm / 1000;
    const lengths = layout.parts.map((p) => (p.kind === "module" ? p.length_m : p.side_m) + gap);
    expect(evaluation.length_m).toBeCloseTo(
      lengths.reduce((a, b) => a + b, 0),
      9,
    );
    expect(route.length_m).toBeCloseTo(line.to - line.from, 6);
    expect(evaluation.length_m).toBeCloseTo(route.length_m, 6);
    const shade = layout.parts.map((p) => areaInside(p.outline[0]![0]!));
    expect(evaluation.shaded_m2).toBeCloseTo(
      shade.reduce((a, b) => a + b, 0),
      6,
    );
    const feet = layout.joints.map((j) => {
      const kind = done.plan.kit.supports.find((s) => s.id === j.support)!;
      return kind.feet.reduce((sum, f) => sum + (f.along_mm * f.across_mm) / 1e6, 0);
    });
    expect(evaluation.contact_m2).toBeCloseTo(
      feet.reduce((a, b) => a + b, 0),
      6,
    );
    expect(route.sensitive.map((s) => s.name)).toEqual(["Sea lavender", "Cord grass"]);
    expect(route.sensitive[0]!.length_m).toBeCloseTo(within(21, 27), 6);
    expect(route.sensitive[1]!.length_m).toBeCloseTo(within(15, 21), 6);
    expect(route.sensitive_m).toBeCloseTo(12, 6);
    expect(route.crossings).toHaveLength(4);
    expect(evaluation.crossings).toHaveLength(4);
  });

  test("24 one value each on paper, page and summary: the printed figures are the hand sums", () => {
    const { evaluation: e } = done.results;
    const words = paperWords(done.papers, "route");
    const html = renderToStaticMarkup(
      createElement(RouteReport, { route: done.results.route, plan: done.plan }),
    );
    for (const value of [
      `${e.length_m.toFixed(2)} m`,
      `${e.shaded_m2.toFixed(1)} m²`,
      `${e.contact_m2.toFixed(1)} m²`,
      "12.00 m",
    ])
      expect(words).toContain(value);
    expect(html).toContain("12.00 m");
    const summary = paperWords(done.papers, "summary");
    expect(summary).toContain(`${e.length_m.toFixed(2)} m`);
    expect(summary).toContain(`${e.shaded_m2.toFixed(1)} m²`);
  });

  test("24 of two routes each has its own figures: the longer way round shades more and crosses nothing sensitive", async () => {
    const beds = [areaOf("bed", "habitat", [15, 0, 23, 26], { name: "Cord grass", sensitivity: 30 })];
    const { weights } = flatPlan().layout;
    const [straight, round] = await Promise.all(
      [0, 400].map((shade_per_m2) =>
        planned(
          folderFiles(
            flatPlan({
              zones: beds,
              layout: { ...flatPlan().layout, weights: { ...weights, shade_per_m2 } },
            }),
          ),
        ),
      ),
    );
    expect(straight!.results.route.sensitive_m).toBeCloseTo(8, 6);
    expect(round!.results.route.sensitive_m).toBeLessThan(straight!.results.route.sensitive_m);
    expect(round!.results.evaluation.length_m).toBeGreaterThan(straight!.results.evaluation.length_m);
    expect(round!.results.evaluation.shaded_m2).toBeGreaterThan(straight!.results.evaluation.shaded_m2);
  });
});
