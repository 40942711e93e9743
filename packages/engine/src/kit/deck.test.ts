import { expect, test } from "vitest";
import { boardPattern, panelRun, sheetWidth, type MeshDeck } from "./deck.ts";

test("24 boards of 5 1/2 in at 1/2 in fill 11 ft 11 1/2 in exactly (sum by hand: 24 x 5.5 + 23 x 0.5 = 143.5)", () => {
  const { count, gap_mm } = boardPattern(143.5 * 25.4, 5.5 * 25.4, 12.7);
  expect(count).toBe(24);
  expect(gap_mm).toBeCloseTo(12.7, 9);
});

test("the count with the nearest gap is taken, and the gap closes the length", () => {
  const few = boardPattern(1000, 140, 10);
  expect(few.count).toBe(7);
  expect(few.gap_mm).toBeCloseTo(20 / 6, 9);
  expect(boardPattern(140, 140, 10)).toEqual({ count: 1, gap_mm: 0 });
});

const mesh: MeshDeck = {
  kind: "mesh",
  name: "mesh",
  wire_mm: 3,
  pitch_mm: 50,
  panel_length_mm: 1200,
  width_mm: 600,
  upturn_mm: 75,
  clip: "mesh-clip",
  clips_per_panel: 4,
  mass_kg_m2: 3,
  open_share: 0.88,
  yield_mpa: 400,
};

test("panels are trimmed alike and never stretched", () => {
  expect(panelRun(mesh, 2400)).toEqual({ count: 2, length_mm: 1200 });
  expect(panelRun(mesh, 2390)).toEqual({ count: 2, length_mm: 1195 });
  expect(panelRun(mesh, 2410).count).toBe(3);
  expect(sheetWidth(mesh)).toBe(750);
});
