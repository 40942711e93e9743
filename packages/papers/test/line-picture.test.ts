import { M_PER_FT } from "@causey/engine/units";
import { describe, expect, test } from "vitest";
import { pictureScale } from "../src/frame/index.ts";
import {
  allShapes,
  sceneTexts,
  type Box,
  type PathShape,
  type Scene,
  type Shape,
} from "../src/scene/index.ts";
import { paperSet, type PaperContext } from "../src/set/index.ts";
import { extentOf } from "./support/extents.ts";
import { contextOf } from "./support/marsh.ts";

type Change = Partial<PaperContext["plan"]>;
const pageOf = (change: Change = {}, units: "us" | "metric" = "metric"): Scene => {
  const context = contextOf(units, "a4");
  return paperSet({ ...context, plan: { ...context.plan, ...change } }, ["summary"]).pages[0]!;
};
const { plan } = contextOf("metric", "a4");
const clipOf = (page: Scene) =>
  page.shapes.find((s): s is Extract<Shape, { kind: "clip" }> => s.kind === "clip")!;
const meet = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

describe("names of plots and starts", () => {
  const [start] = plan.starts;
  const [plot] = plan.plots;
  // Four plots 3 m apart in a square beside the start, their names longer than that on the sheet.
  const plots = [0, 1, 2, 3].map((i) => ({
    ...plot!,
    id: `Q${i}`,
    name: `Trap number ${i + 1}, by the long pool`,
    x: start!.x + 12 + 3 * (i % 2),
    y: start!.y + 3 * Math.floor(i / 2),
  }));
  const clip = clipOf(pageOf({ plots }));
  const texts = [...allShapes(clip.shapes)].filter((s) => s.kind === "text" && s.weight === "semibold");
  const names = texts.map((s) => ({ text: (s as { text: string }).text, box: extentOf(s)! }));
  const signs = [...allShapes(clip.shapes)]
    .filter((s) => s.kind === "path" && s.fill === "white" && s.stroke?.ink === "plants")
    .map((s) => extentOf(s)!);

  test("every one is drawn", () => {
    expect(names.map((n) => n.text).sort()).toEqual([...plots.map((p) => p.name), start!.name].sort());
    expect(signs).toHaveLength(4);
  });

  test("none lies over a sign of a plot or over another name", () => {
    for (const name of names) {
      for (const sign of signs) expect(meet(name.box, sign), name.text).toBe(false);
      for (const other of names) if (other !== name) expect(meet(name.box, other.box), name.text).toBe(false);
    }
  });
});

test("the key names each sign that occurs, and no other", () => {
  const key = (change: Change): string[] =>
    sceneTexts(pageOf(change).shapes).filter((t) =>
      /^(line of the walkway|start|plot; .*|habitat: .*|pool|channel|closed area|parcel line|soft ground)$/.test(
        t,
      ),
    );
  expect(key({}).toSorted()).toEqual(
    [
      "line of the walkway",
      "start",
      "plot; dashed circle: keep off",
      "habitat: Fen",
      "channel",
      "parcel line",
    ].sort(),
  );
  expect(key({ zones: [] })).toEqual(["line of the walkway", "start", "plot; dashed circle: keep off"]);
});

test("an area far from the line is not in the key", () => {
  const far = plan.zones.map((z) => ({
    ...z,
    polygons: z.polygons.map((polygon) =>
      polygon.map((ring) => ring.map(([x, y]) => [x + 9000, y] as const)),
    ),
  }));
  expect(sceneTexts(pageOf({ zones: far as Change["zones"] & object }).shapes)).not.toContain("channel");
});

test("channels are drawn in the picture, with their hatch", () => {
  const inWater = (change: Change): number =>
    [...allShapes(clipOf(pageOf(change)).shapes)].filter(
      (s) => s.kind === "path" && (s.fill === "pale-water" || s.stroke?.ink === "water"),
    ).length;
  expect(inWater({})).toBeGreaterThan(2);
  expect(inWater({ zones: plan.zones.filter((z) => z.use !== "channel" && z.use !== "pool") })).toBe(0);
});

test.each(["us", "metric"] as const)(
  "in %s the title block says the scale of the picture, and the bar agrees",
  (units) => {
    const page = pageOf({}, units);
    const texts = sceneTexts(page.shapes);
    const scale = texts[texts.indexOf("Scale") + 1]!;
    expect(texts).toContain(`Scale ${scale}`);
    const n = Number(/(\d+)(?: ft)?$/.exec(scale)![1]);
    const m_per_mm = units === "us" ? (n * M_PER_FT) / 25.4 : n / 1000;
    const words = [...allShapes(page.shapes)].find(
      (s) => s.kind === "text" && s.anchor === "middle" && s.size === 2.1 && /^[1-9]\d* (ft|m)$/.test(s.text),
    ) as { text: string; at: readonly [number, number] };
    const boxes = [...allShapes(page.shapes)].filter(
      (s): s is PathShape =>
        s.kind === "path" && s.closed && Math.abs(s.lines[0]![2]![1] - (words.at[1] - 2.8)) < 1e-6,
    );
    const xs = boxes.flatMap((b) => b.lines[0]!.map((p) => p[0]));
    const [value, unit] = words.text.split(" ");
    expect((Math.max(...xs) - Math.min(...xs)) * m_per_mm).toBeCloseTo(
      Number(value) * (unit === "ft" ? M_PER_FT : 1),
      6,
    );
  },
);

test("a picture's scale is the largest of its steps that fits", () => {
  expect(pictureScale(100, 50, "metric").words).toBe("1 : 2000");
  expect(pictureScale(100.1, 50, "metric").words).toBe("1 : 2500");
  expect(pictureScale(110 * M_PER_FT, 25.4, "us").words).toBe("1 in = 120 ft");
  // 1.2, 1.5 and 2.5 ft to the inch are no scales: whole feet alone.
  expect(pictureScale(1.1 * M_PER_FT, 25.4, "us").words).toBe("1 in = 2 ft");
});
