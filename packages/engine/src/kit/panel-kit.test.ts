import { describe, expect, test } from "vitest";
import { gratingKit, grating, halvesKit, plywoodKit } from "../../test/support/deck-kits.ts";
import { yardTables } from "../../test/support/yard-tables.ts";
import { moduleCounts, platformCounts, rampCounts } from "./counts.ts";
import { readKit } from "./kit-shape.ts";
import { modulePieces } from "./module-pieces.ts";
import { moduleOpenShare } from "./open-share.ts";
import { overlaps, type PlacedPiece } from "./piece.ts";
import { platformHalves, platformPieces } from "./platform-pieces.ts";
import { platformSheetPlan } from "./platform-sheets.ts";
import { platformStringers } from "./frame.ts";
import { rampPieces } from "./ramp-pieces.ts";
import { sheetRun } from "./panels.ts";
import type { Kit } from "./types.ts";
import { validateKit } from "./validate.ts";
import { PANEL_KINDS } from "./panels.ts";

const { sizes } = yardTables;
const IN = 25.4;
const FT = 304.8;
const tally = (pieces: readonly PlacedPiece[]): Record<string, number> => {
  const counts: Record<string, number> = {};
  for (const p of pieces) {
    const key = `${p.role} ${(p.length_mm / IN).toFixed(3)}`;
    counts[key] = (counts[key] ?? 0) + 1;
  }
  return counts;
};
const items = (counts: readonly { item: string; count: number }[]): Record<string, number> =>
  Object.fromEntries(counts.map((c) => [c.item, c.count]));

for (const kit of [gratingKit, plywoodKit, halvesKit])
  test(`${kit.id}: a kit to the reader, without a fault or a warning`, () => {
    expect(readKit(JSON.parse(JSON.stringify(kit)))).toMatchObject({ kit: { id: kit.id } });
    expect(validateKit(kit, yardTables)).toEqual([]);
  });

describe("grating module of 8 ft (by hand)", () => {
  const pieces = modulePieces(gratingKit, 8 * FT, sizes);

  test("2 stringers, 5 cross pieces of 19 in, 2 panels of (96 - 1/4) / 2 in", () => {
    expect(tally(pieces)).toEqual({ "stringer 96.000": 2, "cross piece 19.000": 5, "deck panel 47.875": 2 });
    expect(overlaps(pieces)).toEqual([]);
  });

  test("20 screws, 2 panels, 12 clips", () => {
    expect(items(moduleCounts(gratingKit, 8 * FT, sizes))).toEqual({
      "screw-10x3": 20,
      "moulded-grating 1219x610x38": 2,
      "mesh-clip": 12,
    });
  });

  test("panels: the gap lies between them, first and last end flush with the module", () => {
    const panels = pieces.filter((p) => p.role === "deck panel");
    expect(panels.map((p) => [p.x0 / 0.0254, p.x1 / 0.0254])).toEqual([
      [0, expect.closeTo(47.875, 6)],
      [expect.closeTo(48.125, 6), expect.closeTo(96, 6)],
    ]);
  });
});

test("plywood module of 8 ft on three stringers (by hand): cross pieces in two bays of 15 1/4 in, 40 + 20 screws", () => {
  const pieces = modulePieces(plywoodKit, 8 * FT, sizes);
  expect(tally(pieces)).toEqual({
    "stringer 96.000": 3,
    "cross piece 15.250": 10,
    "deck panel 47.875": 2,
  });
  expect(overlaps(pieces)).toEqual([]);
  expect(items(moduleCounts(plywoodKit, 8 * FT, sizes))).toEqual({
    "screw-10x3": 40,
    "plywood 1219x914x19": 2,
    "screw-8x2.5": 20,
  });
});

describe("platform in two pieces (by hand): 71 1/2 in, 4 stringers, 12 boards, 3 rows", () => {
  const pieces = platformPieces(halvesKit, sizes);
  const halves = platformHalves(halvesKit, sizes);

  test("boards of 35 3/4 in and cross pieces of 32 3/4 in, one bay in each half", () => {
    expect(tally(pieces)).toEqual({
      "stringer 71.500": 4,
      "cross piece 32.750": 6,
      "deck board 35.750": 24,
    });
    expect(overlaps(pieces)).toEqual([]);
  });

  test("the halves mirror each other, touch at the middle line, and make the whole", () => {
    expect(halves).toHaveLength(2);
    expect(halves.flat()).toHaveLength(pieces.length);
    const [right, left] = halves as [PlacedPiece[], PlacedPiece[]];
    expect(tally(right)).toEqual(tally(left));
    expect(Math.max(...right.map((p) => p.y1))).toBeCloseTo(0, 9);
    expect(Math.min(...left.map((p) => p.y0))).toBeCloseTo(0, 9);
  });

  test("24 frame screws and 6 to join the halves, 96 in the boards: as many as in a whole platform, and 6", () => {
    expect(items(platformCounts(halvesKit, sizes))).toEqual({ "screw-10x3": 30, "screw-8x2.5": 96 });
    const whole: Kit = { ...halvesKit, platform: { ...halvesKit.platform, pieces: 1 } };
    expect(items(platformCounts(whole, sizes))["screw-8x2.5"]).toBe(96);
  });

  test("curbs of closed edges are cut at the middle line", () => {
    const curbed: Kit = { ...halvesKit, curb: { size: "2x2", screw: "screw-10x3", screw_spacing_mm: 600 } };
    const closed = platformPieces(curbed, sizes, ["back", "ahead", "left", "right"]);
    for (const p of closed) expect(Math.min(p.y0, p.y1) < -1e-9 && Math.max(p.y0, p.y1) > 1e-9).toBe(false);
    expect(closed.filter((p) => p.role === "curb")).toHaveLength(6);
    expect(overlaps(closed)).toEqual([]);
  });

  test("refused: an odd count of stringers, a count under four, a catch board in the way", () => {
    const places = (change: Partial<Kit>): string[] =>
      validateKit({ ...halvesKit, ...change }, yardTables)
        .filter((p) => p.severity === "error")
        .map((p) => p.place);
    const withStringers = (count: number): Partial<Kit> => ({
      platform: { ...halvesKit.platform, stringers: { size: "2x4", count } },
    });
    expect(places(withStringers(5))).toContain("kit.platform.stringers.count");
    expect(places(withStringers(2))).toContain("kit.platform.stringers.count");
    expect(places({ end: { kind: "catch-board", size: "2x10", projection_mm: 100 } })).toContain(
      "kit.platform.pieces",
    );
  });
});

describe("grating platform of 72 in", () => {
  test("four strips of bays up to 24 in, two rows of panels with the gap between: 8 sheets", () => {
    const plan = platformSheetPlan(gratingKit, grating, platformStringers(gratingKit, sizes));
    expect([plan.seams.length - 1, plan.run.count, plan.sheets]).toEqual([4, 2, 8]);
    const panels = platformPieces(gratingKit, sizes).filter((p) => p.role === "deck panel");
    const area = panels.reduce((sum, p) => sum + (p.x1 - p.x0) * (p.y1 - p.y0), 0);
    expect(area / 0.0254 ** 2).toBeCloseTo((72 - 0.25) * (72 - 3 * 0.25), 6);
    expect(items(platformCounts(gratingKit, sizes))["mesh-clip"]).toBe(48);
  });

  test("in two pieces the middle line is a seam, and no panel crosses it", () => {
    const wide: Kit = {
      ...gratingKit,
      platform: { ...gratingKit.platform, pieces: 2, stringers: { size: "2x4", count: 6 } },
    };
    const plan = platformSheetPlan(wide, grating, platformStringers(wide, sizes));
    expect(plan.seams).toContain(0);
    const panels = platformPieces(wide, sizes).filter((p) => p.role === "deck panel");
    for (const p of panels) expect(Math.sign(p.y0 + 1e-9)).toBe(Math.sign(p.y1 - 1e-9));
    expect(panels).toHaveLength(8);
  });
});

describe("ramp of boards, 95 1/2 in (by hand)", () => {
  test("a plain module with 7 cleats at about a foot; screws and one for each cleat over each stringer", () => {
    const pieces = rampPieces(halvesKit, 95.5 * IN, sizes);
    expect(pieces.filter((p) => p.role === "cleat")).toHaveLength(7);
    expect(tally(pieces.filter((p) => p.role !== "cleat"))).toEqual(
      tally(modulePieces(halvesKit, 95.5 * IN, sizes)),
    );
    expect(overlaps(pieces)).toEqual([]);
    const module = items(moduleCounts(halvesKit, 95.5 * IN, sizes));
    expect(items(rampCounts(halvesKit, 95.5 * IN, sizes))).toEqual({
      ...module,
      "screw-10x3": module["screw-10x3"]! + 14,
    });
  });

  test("a ramp of grating has no cleats, and a row under every joint of two panels", () => {
    const kit: Kit = { ...gratingKit, ramp: { lengths_mm: [10 * FT], max_grade: 0.1 } };
    const pieces = rampPieces(kit, 10 * FT, sizes);
    expect(pieces.some((p) => p.role === "cleat")).toBe(false);
    const joints = pieces.filter((p) => p.role === "deck panel").map((p) => p.x1);
    const rows = pieces.filter((p) => p.role === "cross piece");
    expect(joints).toHaveLength(3);
    for (const x of joints) expect(rows.some((r) => r.x0 < x - 0.012 + 1e-4 && r.x1 > x - 1e-4)).toBe(true);
  });

  test("a kit without a ramp, or another length, is a broken promise", () => {
    expect(() => rampPieces(gratingKit, 1000, sizes)).toThrow("kit-without-ramp");
    expect(() => rampPieces(halvesKit, 1000, sizes)).toThrow("not-a-ramp-length");
  });
});

describe("faults of a panel deck", () => {
  const found = (change: Partial<typeof grating>, kit: Partial<Kit> = {}): string[] =>
    validateKit({ ...gratingKit, ...kit, deck: { ...grating, ...change } as Kit["deck"] }, yardTables).map(
      (p) => `${p.severity} ${p.place} ${p.message}`,
    );
  const cross = gratingKit.cross_pieces;
  test.each([
    [
      "a joint in the air",
      {},
      { cross_pieces: { ...cross, spacing_mm: 500 } },
      /error kit.cross_pieces .*without/,
    ],
    [
      "an end in the air",
      {},
      { cross_pieces: { ...cross, exceptions: [{ at_mm: 8 * FT, omit: true }] } },
      /error kit.cross_pieces .*ends at 2438.4/,
    ],
    [
      "no strength",
      { strength: { ...grating.strength, moment_n: 0 } },
      {},
      /error kit.deck.strength.moment_n/,
    ],
    ["creep under 1", { strength: { ...grating.strength, creep: 0.5 } }, {}, /error kit.deck.strength.creep/],
    ["an open share without openings", { opening_along_mm: 0 }, {}, /error kit.deck.open_share/],
    ["a share of 1", { open_share: 1 }, {}, /error kit.deck.open_share/],
    [
      "openings for a ball",
      { opening_along_mm: 60, opening_across_mm: 50 },
      {},
      /warning kit.deck.opening_along_mm .*ball/,
    ],
    ["a far overhang", { width_mm: 30 * IN }, {}, /warning kit.deck.width_mm .*across/],
    ["an unknown fastener", { fastener: "glue" }, {}, /error kit.deck.fastener/],
    [
      "a strip wider than a panel",
      {},
      { platform: { ...gratingKit.platform, stringers: { size: "2x4", count: 3 } } },
      /error kit.platform.stringers.count .*panel/,
    ],
    [
      "platform panels that meet in the air",
      {},
      { platform: { ...gratingKit.platform, cross_pieces: { size: "2x4", count: 4 } } },
      /error kit.platform.cross_pieces.count .*no row/,
    ],
    ["a ramp too steep", {}, { ramp: { lengths_mm: [1000], max_grade: 2 } }, /error kit.ramp.max_grade/],
    [
      "ramps out of order",
      {},
      { ramp: { lengths_mm: [2000, 1000], max_grade: 0.1 } },
      /error kit.ramp.lengths_mm\[1\]/,
    ],
    ["spares of 2", {}, { spares_share: 2 }, /error kit.spares_share/],
  ] as const)("%s", (_title, change, kit, says) => {
    expect(found(change as Partial<typeof grating>, kit as Partial<Kit>).join("\n")).toMatch(says);
  });

  test("every kind of panel is read, and no other", () => {
    for (const kind of PANEL_KINDS)
      expect(
        readKit(JSON.parse(JSON.stringify({ ...gratingKit, deck: { ...grating, kind } }))),
      ).toHaveProperty("kit");
    const odd = readKit(JSON.parse(JSON.stringify({ ...gratingKit, deck: { ...grating, kind: "glass" } })));
    expect("problems" in odd && odd.problems[0]!.place).toBe("kit.deck.kind");
  });
});

test("preservatives: unknown, barred, on untreated lumber, and copper against plain zinc", () => {
  const found = (
    lumber: Partial<Kit["lumber"]>,
    coating: "plain-zinc" | "hot-dip-zinc" = "hot-dip-zinc",
  ): string =>
    validateKit(
      { ...gratingKit, lumber: { ...gratingKit.lumber, ...lumber } },
      {
        ...yardTables,
        fasteners: yardTables.fasteners.map((f) => ({ ...f, coating })),
      },
    )
      .filter((p) => p.code === "kit-preservative")
      .map((p) => `${p.severity} ${p.message}`)
      .join("; ");
  expect(found({ preservative: null })).toBe("");
  expect(found({ preservative: "ca-c" })).toBe("");
  expect(found({ preservative: "tar" })).toMatch(/error .*not in the tables/);
  expect(found({ preservative: "creosote" })).toMatch(/warning .*barred/);
  expect(found({ preservative: "ca-c", treatment: "none" })).toMatch(/error .*untreated/);
  expect(found({ preservative: "ca-c" }, "plain-zinc")).toMatch(/warning the copper.*eats/);
});

test("sheets: the fewest that reach, gaps between them", () => {
  expect(sheetRun({ length_mm: 1000, gap_mm: 10 }, 2010)).toEqual({ count: 2, length_mm: 1000 });
  expect(sheetRun({ length_mm: 1000, gap_mm: 10 }, 2011)).toEqual({ count: 3, length_mm: 1991 / 3 });
});

describe("open share of a whole module (by hand)", () => {
  test("grating 8 ft: the gap is open, panels 70 %; stringers and cross pieces take light away", () => {
    const share = moduleOpenShare(gratingKit, 8 * FT, sizes);
    expect(share.outline_m2 / 0.0254 ** 2).toBeCloseTo(96 * 24, 6);
    expect(share.deck).toBeCloseTo((0.25 + 95.75 * 0.7) / 96, 9);
    const past = (24 - 3) * 96 - 19 * 3.5 * 5;
    const gap = 0.25 * 2;
    expect(share.whole).toBeCloseTo((0.7 * (past - gap) + gap) / (96 * 24), 9);
  });

  test("a closed panel lets light through its joint only, and that lies over a cross piece", () => {
    const share = moduleOpenShare(plywoodKit, 8 * FT, sizes);
    expect(share.deck).toBeCloseTo(0.25 / 96, 9);
    expect(share.whole).toBeCloseTo((0.25 * 1) / (96 * 36), 9);
  });
});
