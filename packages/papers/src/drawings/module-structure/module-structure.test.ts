import type { DrawnPeak, FrameDrawing } from "@causey/engine/checks";
import { kitGeometry } from "@causey/engine/kit";
import { expect, test } from "vitest";
import { contextOf } from "../../../test/support/marsh.ts";
import { sceneTexts, type PathShape } from "../../scene/index.ts";
import {
  governingEffect,
  moduleStructure,
  peakWords,
  showSmall,
  stringerName,
  structureView,
  type StructureView,
} from "./index.ts";

const peak = (value: number, at_m: number, more: Partial<DrawnPeak> = {}): DrawnPeak => ({
  value,
  at_m,
  stringer: 0,
  load: "two feet",
  ends: "stiff",
  loads: [
    { x_m: 1, y_m: -0.2, weight_n: 800, is_wheel: false },
    { x_m: 2, y_m: 0.2, weight_n: 450, is_wheel: true },
  ],
  ...more,
});
const two = (line: readonly number[]) => [line, line.map((v) => v / 2)];
/** 3 m, two stringers; the largest shear is a negative one at the far end. */
const frame: FrameDrawing = {
  id: "module.3000mm",
  name: "3.00 m module",
  length_m: 3,
  parts: ["A1"],
  stringers_y_m: [-0.3, 0.3],
  clear_width_m: 0.6,
  rows_x_m: [0, 1.5, 3],
  stations_m: [0, 1.5, 3],
  moment: { most: two([0, 900, 0]), least: two([0, 0, 0]) },
  shear: { most: two([700, 300, 0]), least: two([0, -300, -800]) },
  sag: { most: two([0, 0.004, 0]), least: two([0, 0, 0]) },
  peaks: { moment: peak(900, 1.5), shear: peak(800, 3), sag: peak(0.005, 1.5, { ends: "hinged" }) },
};
const view: StructureView = {
  frame,
  units: "metric",
  deck_width_m: 0.7,
  widest_m: 3,
  limits: {
    moment: { check: "stringer-bending.3000mm", value: 1000, utilisation: 0.9 },
    shear: { check: "stringer-shear.3000mm", value: 4000, utilisation: 0.2 },
    sag: null,
  },
};
const box = { x: 10, y: 20, width: 160 };

test("peaks stand along the module in proportion; a negative shear stands at the other side of its zero", () => {
  const { peaks } = moduleStructure(view, "moment", box);
  const scale = (peaks.shear[0] - peaks.moment[0]) / 1.5;
  expect(peaks.moment[0] - 1.5 * scale).toBeCloseTo(10 + 2.5 * 5.2, 6);
  expect(peaks.sag[0]).toBe(peaks.moment[0]);
  const positive = { ...frame, peaks: { ...frame.peaks, shear: peak(700, 0) } };
  const other = moduleStructure({ ...view, frame: positive }, "moment", box);
  expect(peaks.shear[1]).toBeGreaterThan(other.peaks.shear[1]);
});

test("weights stand beside their loads: a foot as an oval, a wheel as a bar, in both units", () => {
  const { shapes } = moduleStructure(view, "moment", box);
  expect(sceneTexts(shapes)).toEqual(expect.arrayContaining(["800 N", "450 N"]));
  const outlines = shapes.filter(
    (s): s is PathShape => s.kind === "path" && s.fill === "white" && s.stroke?.ink === "closed",
  );
  expect(outlines.map((o) => o.lines[0]!.length)).toEqual([28, 4]);
  const pounds = sceneTexts(moduleStructure({ ...view, units: "us" }, "moment", box).shapes);
  expect(pounds).toEqual(expect.arrayContaining(["180 lb", "101 lb", "664 lb ft", "0.20 in"]));
});

test("a limit near the peak is drawn, one far off is told, one that no check gives is said to be unknown", () => {
  const { shapes } = moduleStructure(view, "moment", box);
  const words = sceneTexts(shapes).join("\n");
  expect(words).toContain("limit 1.000 kN m (dash and dot)");
  expect(words).toContain("limit 4.00 kN, beyond this strip");
  expect(words).toContain("no limit known for this length");
  const limits = shapes.filter((s) => s.kind === "path" && s.stroke?.dash?.join() === "3,0.8,0.5,0.8");
  expect(limits).toHaveLength(1);
});

test("the words name the load case and how the cross pieces are taken", () => {
  expect(sceneTexts(moduleStructure(view, "sag", box).shapes)[0]).toBe(
    "Loads where they make the largest sag, 5.0 mm: two feet; cross pieces taken as hinged.",
  );
  expect(peakWords(view, "shear")).toMatchObject({
    value: "800 N",
    place: "3.00 m from the start, right stringer",
    limit: "Limit 4.00 kN",
  });
  expect([0, 1, 2].map((i) => stringerName(i, 3))).toEqual([
    "right stringer",
    "middle stringer",
    "left stringer",
  ]);
});

test("the loads shown first are those of the effect nearest to its limit", () => {
  expect(governingEffect(view)).toBe("moment");
  const sheared = { ...view.limits, shear: { check: "s", value: 700, utilisation: 1.14 } };
  expect(governingEffect({ limits: sheared })).toBe("shear");
  expect(governingEffect({ limits: { moment: null, shear: null, sag: null } })).toBe("moment");
});

test("a sag that rounds to nothing has no sign", () => {
  expect(showSmall(-1e-9, "m", "metric")).toBe("0.0 mm");
  expect(showSmall(-1e-9, "m", "us")).toBe("0.00 in");
});

test("the deck is as wide as the kit's geometry says, and a shorter module is drawn to the same scale", () => {
  const context = contextOf("metric", "a4");
  const results = {
    ...context.results,
    proof: { frames: [frame, { ...frame, length_m: 1.5 }], soil: null, flood: null },
  };
  const views = results.proof.frames.map((f) => structureView({ ...context, results }, f));
  expect(views[0]!.deck_width_m).toBeCloseTo(
    kitGeometry(context.plan.kit, context.tables.sizes).deck_width_m,
    9,
  );
  expect(views.map((v) => v.widest_m)).toEqual([3, 3]);
});
