import { M_PER_FT } from "@causey/engine/units";
import { describe, expect, test } from "vitest";
import { roundScale, scaleBar } from "../src/frame/index.ts";
import { allShapes, type PathShape, type Scene } from "../src/scene/index.ts";
import { paperSet } from "../src/set/index.ts";
import { contextOf, plan, results } from "./support/marsh.ts";

/** Metres on the ground for one millimetre, read off the words of the title block. */
function metresPerMm(page: Scene): number {
  const texts = [...allShapes(page.shapes)].flatMap((s) => (s.kind === "text" ? [s.text] : []));
  for (const text of texts) {
    const metric = /^1 : (\d+)/.exec(text);
    if (metric) return Number(metric[1]) / 1000;
    const us = /^1 in = (\d+) ft/.exec(text);
    if (us) return (Number(us[1]) * M_PER_FT) / 25.4;
  }
  throw new Error("no scale on the page");
}

/** The scale bar: neighbouring boxes of one height, and the length that its words state [m]. */
function barOf(page: Scene): { readonly mm: number; readonly m: number } {
  const shapes = [...allShapes(page.shapes)];
  const words = shapes.find(
    (s) => s.kind === "text" && s.size === 2.1 && /^[\d.]+ (ft|m)$/.test(s.text) && s.anchor === "middle",
  );
  const [, value, unit] = /^([\d.]+) (ft|m)$/.exec((words as { text: string }).text)!;
  const end = (words as { at: readonly [number, number] }).at;
  const boxes = shapes.filter(
    (s): s is PathShape =>
      s.kind === "path" && s.closed && Math.abs(s.lines[0]![2]![1] - (end[1] - 2.8)) < 1e-6,
  );
  const xs = boxes.flatMap((b) => b.lines[0]!.map((p) => p[0]));
  expect(Math.max(...xs)).toBeCloseTo(end[0], 6);
  return { mm: Math.max(...xs) - Math.min(...xs), m: Number(value) * (unit === "ft" ? M_PER_FT : 1) };
}

describe.each([
  ["metric", "a4"],
  ["us", "letter"],
] as const)("in %s on %s", (units, paper) => {
  const { pages, sheets } = paperSet(contextOf(units, paper), ["site-plan", "cross-section", "parts"]);

  test("the bar is as long as its words and the title block's scale say", () => {
    for (const page of pages) {
      const bar = barOf(page);
      expect(bar.mm * metresPerMm(page)).toBeCloseTo(bar.m, 6);
    }
  });

  test("joints lie as far apart on the plan as on the ground", () => {
    const number = sheets.find((s) => s.id === "site-plan")!.pages.at(-1)!;
    const page = pages[number]!;
    const dots = [...allShapes(page.shapes)].flatMap((s) =>
      s.kind === "circle" && s.fill === "ink" && s.radius < 0.5 ? [s.at] : [],
    );
    const joints = results.layout.joints;
    const placed = dots.slice(0, joints.length);
    expect(placed.length).toBe(joints.length);
    const per = metresPerMm(page);
    joints.forEach((joint, i) => {
      expect((placed[i]![0] - placed[0]![0]) * per).toBeCloseTo(joint.x - joints[0]!.x, 6);
      expect((placed[0]![1] - placed[i]![1]) * per).toBeCloseTo(joint.y - joints[0]!.y, 6);
    });
  });

  test("the print check bar is 100 mm long on every page", () => {
    for (const page of pages) {
      const label = [...allShapes(page.shapes)].find(
        (s) => s.kind === "text" && s.text.startsWith("100 mm: "),
      );
      const [x, y] = (label as { at: readonly [number, number] }).at;
      const bar = [...allShapes(page.shapes)].find(
        (s): s is PathShape =>
          s.kind === "path" &&
          !s.closed &&
          s.lines[0]!.length === 2 &&
          s.lines[0]!.every((p) => p[1] === y) &&
          s.lines[0]![1]![0] < x &&
          s.lines[0]![1]![0] - s.lines[0]![0]![0] > 50,
      );
      expect(bar!.lines[0]![1]![0] - bar!.lines[0]![0]![0]).toBeCloseTo(100, 9);
    }
  });

  test("the deck of the cross-section is as wide as the kit's", () => {
    const page = pages[sheets.find((s) => s.id === "cross-section")!.pages[0]!]!;
    const per = metresPerMm(page);
    const widths = [...allShapes(page.shapes)].flatMap((s) =>
      s.kind === "path" && s.closed && s.fill === "white"
        ? [Math.max(...s.lines[0]!.map((p) => p[0])) - Math.min(...s.lines[0]!.map((p) => p[0]))]
        : [],
    );
    const boards = widths.filter((mm) => Math.abs(mm * per - plan.kit.deck.width_mm / 1000) < 1e-9);
    expect(boards.length).toBeGreaterThan(0);
  });
});

test("a scale is the largest round one that fits", () => {
  expect(roundScale(100, 210, "metric").words).toBe("1 : 500");
  expect(roundScale(105, 210, "metric").words).toBe("1 : 500");
  expect(roundScale(105.1, 210, "metric").words).toBe("1 : 1000");
  expect(roundScale(40 * M_PER_FT, 25.4, "us").words).toBe("1 in = 40 ft");
});

test("the bar of 1 : 200 shows 5 m as 25 mm", () => {
  const scale = { m_per_mm: 0.2, words: "1 : 200" };
  const [first, , , last] = scaleBar(scale, [10, 10], "metric") as PathShape[];
  expect(last!.lines[0]![1]![0] - first!.lines[0]![0]![0]).toBeCloseTo(25, 9);
});
