import { expect, test } from "vitest";
import { commonPracticeKit } from "../../test/support/common-practice-kit.ts";
import { yardTables } from "../../test/support/yard-tables.ts";
import { platformCounts } from "./counts.ts";
import { platformStringers } from "./frame.ts";
import { overlaps } from "./piece.ts";
import { platformPieces, type PlatformEdge } from "./platform-pieces.ts";
import { platformSheetPlan } from "./platform-sheets.ts";
import type { Kit } from "./types.ts";

const { sizes } = yardTables;
const IN = 25.4;
const edges: readonly PlatformEdge[] = ["back", "ahead", "left", "right"];

const boards: Kit = {
  ...commonPracticeKit,
  deck: {
    kind: "boards",
    size: "5/4x6",
    gap_mm: 12.7,
    width_mm: 24 * IN,
    screw: "screw-8x2.5",
    screws_per_bearing: 2,
  },
  curb: { size: "2x2", screw: "screw-10x3", screw_spacing_mm: 24 * IN },
  platform: { ...commonPracticeKit.platform, side_mm: 71.5 * IN },
};

test("mesh: strips end on stringers, pieces meet over a row of cross pieces, and cover the whole platform", () => {
  const pieces = platformPieces(commonPracticeKit, sizes).filter((p) => p.role === "mesh panel");
  const area = pieces.reduce((sum, p) => sum + (p.x1 - p.x0) * (p.y1 - p.y0), 0);
  expect(area).toBeCloseTo(1.8288 ** 2, 9);
  if (commonPracticeKit.deck.kind !== "mesh") throw new Error("the deck is mesh");
  const lines = platformStringers(commonPracticeKit, sizes);
  const plan = platformSheetPlan(commonPracticeKit, commonPracticeKit.deck, lines);
  expect(plan.seams.map((y) => y / IN)).toEqual([-36, -11.75, 11.75, 36].map((v) => expect.closeTo(v, 6)));
  expect([plan.run.count, plan.sheets]).toEqual([2, 6]);
});

test("boards: 12 of 71 1/2 in with gaps of 1/2 in, screwed to every stringer", () => {
  const pieces = platformPieces(boards, sizes).filter((p) => p.role === "deck board");
  expect(pieces).toHaveLength(12);
  expect(pieces[0]!.length_mm).toBeCloseTo(71.5 * IN, 2);
  expect(pieces.at(-1)!.x1).toBeCloseTo(71.5 * 0.0254, 9);
  const screws = platformCounts(boards, sizes).find((c) => c.item === "screw-8x2.5")!;
  expect(screws.count).toBe(12 * 4 * 2);
});

test("curbs leave the walkway's opening free at open edges and run through at closed ones", () => {
  const open = platformPieces(boards, sizes).filter((p) => p.role === "curb");
  expect(open).toHaveLength(8);
  for (const p of open) {
    const inOpening = (a: number, b: number): boolean => Math.min(b, 0.3048) - Math.max(a, -0.3048) > 1e-9;
    const half = (71.5 * 0.0254) / 2;
    const isAtSide = p.y1 > half - 0.04 || p.y0 < -half + 0.04;
    expect(isAtSide ? inOpening(p.x0 - half, p.x1 - half) : inOpening(p.y0, p.y1)).toBe(false);
  }
  const closed = platformPieces(boards, sizes, edges).filter((p) => p.role === "curb");
  expect(closed.map((p) => Math.round(p.length_mm / IN))).toEqual([72, 72, 69, 69]);
  expect(overlaps(platformPieces(boards, sizes, edges))).toEqual([]);
  expect(overlaps(platformPieces(boards, sizes))).toEqual([]);
});
