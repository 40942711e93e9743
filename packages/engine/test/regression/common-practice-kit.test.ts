/**
 * The kit that crews commonly build, common practice, no source: the counts were made by hand from its description.
 * Lengths in inches as the builder says them.
 */
import { describe, expect, test } from "vitest";
import {
  cartProblems,
  frameFromJoint,
  kitGeometry,
  modulePieces,
  moduleCounts,
  pieceCorners,
  platformPieces,
  sheetWidth,
  supportFrame,
  supportPieces,
  validateKit,
  type Kit,
  type PartFrame,
  type PlacedPiece,
} from "../../src/kit/index.ts";
import type { Joint } from "../../src/layout/types.ts";
import { takeOff } from "../../src/materials/index.ts";
import { layChain, type Chain } from "../support/chain.ts";
import { commonPracticeCart, commonPracticeKit as kit } from "../support/common-practice-kit.ts";
import { yardTables } from "../support/yard-tables.ts";

const { sizes } = yardTables;
const IN = 0.0254;
const inch = (mm: number): number => Math.round((mm / 25.4) * 1000) / 1000;
const FT = 304.8;

/** "2x4 19": count, of the pieces of a take-off. */
const counts = (pieces: readonly PlacedPiece[]): Record<string, number> => {
  const found: Record<string, number> = {};
  for (const p of pieces)
    if (p.size) {
      const key = `${p.size} ${inch(p.length_mm)}`;
      found[key] = (found[key] ?? 0) + 1;
    }
  return found;
};

describe("one module (common practice, no source; counted by hand)", () => {
  test("8 ft: timber by size and length", () => {
    expect(counts(modulePieces(kit, 8 * FT, sizes))).toEqual({
      "2x4 96": 2,
      "2x4 19": 3,
      "2x6 19": 1,
      "2x10 19": 1,
    });
  });

  test("8 ft: 5 cross pieces x 2 ends x 2 = 20 screws, 2 mesh panels, 8 clips", () => {
    const items = Object.fromEntries(moduleCounts(kit, 8 * FT, sizes).map((c) => [c.item, c.count]));
    expect(items).toEqual({ "screw-10x3": 20, "mesh 1219x762": 2, "mesh-clip": 8 });
  });

  test("8 ft: cross pieces at 0, 24, 48 and 72 in, the 2x6 under the panels' joint, the 2x10 past the end", () => {
    const pieces = modulePieces(kit, 8 * FT, sizes);
    const rows = pieces.filter((p) => p.role === "cross piece");
    const middles = rows.map((p) => [p.size, Math.round(((p.x0 + p.x1) / 2 / IN) * 100) / 100]);
    expect(rows[0]!.x0).toBeCloseTo(0, 9);
    expect(middles.slice(1)).toEqual([
      ["2x4", 24],
      ["2x6", 48],
      ["2x4", 72],
    ]);
    const board = pieces.find((p) => p.role === "catch board")!;
    expect(board.x1 / IN).toBeCloseTo(100, 6);
    expect((board.x1 - board.x0) / IN).toBeCloseTo(9.25, 6);
    expect((board.y1 - board.y0) / IN).toBeCloseTo(19, 6);
  });

  test("12 and 4 ft: a 2x6 wherever two panels meet, a catch board at each end", () => {
    expect(counts(modulePieces(kit, 12 * FT, sizes))).toEqual({
      "2x4 144": 2,
      "2x4 19": 4,
      "2x6 19": 2,
      "2x10 19": 1,
    });
    expect(counts(modulePieces(kit, 4 * FT, sizes))).toEqual({ "2x4 48": 2, "2x4 19": 2, "2x10 19": 1 });
    const items = (ft: number): number[] => moduleCounts(kit, ft * FT, sizes).map((c) => c.count);
    expect(items(12)).toEqual([28, 3, 12]);
    expect(items(4)).toEqual([12, 1, 4]);
  });

  test("deck 24 in wide from a flat sheet of 30 in, bent up 3 in at both edges", () => {
    if (kit.deck.kind !== "mesh") throw new Error("the kit's deck is mesh");
    expect(inch(sheetWidth(kit.deck))).toBe(30);
    const upturns = modulePieces(kit, 8 * FT, sizes).filter((p) => p.role === "mesh upturn");
    expect(upturns).toHaveLength(4);
    const panel = modulePieces(kit, 8 * FT, sizes).find((p) => p.role === "mesh panel")!;
    for (const u of upturns) expect((u.z1 - panel.z0) / IN).toBeCloseTo(3, 6);
    expect((panel.y1 - panel.y0) / IN).toBeCloseTo(24, 6);
  });

  test("a cart with wheels 21 in apart runs between the upturned edges, one of 24 in does not", () => {
    expect(cartProblems(kit, commonPracticeCart, sizes)).toEqual([]);
    expect(cartProblems(kit, { ...commonPracticeCart, track_mm: 24 * 25.4 }, sizes)).toHaveLength(1);
  });

  test("the recipe has no fault, and its lattice step is 1 ft", () => {
    expect(validateKit(kit, yardTables)).toEqual([]);
    expect(kitGeometry(kit, sizes).lattice_m).toBeCloseTo(0.3048, 9);
  });
});

describe("a run of 12 + 8 + 4 ft (common practice, no source; counted by hand)", () => {
  const run = layChain(kit, [12 * FT, 8 * FT, 4 * FT], "open-crate", 10 * IN, sizes);
  const off = takeOff(kit, run, sizes);
  const line = (size: string, inches: number) =>
    off.timber.find((t) => t.size === size && inch(t.length_mm) === inches);
  const item = (id: string): number | undefined => off.counted.find((c) => c.item === id)?.count;

  test("4 joints carry 4 sills of 24 in and 4 stakes, one each", () => {
    expect(run.joints).toHaveLength(4);
    expect(line("2x2", 48)?.count).toBe(4);
    expect(line("2x4", 24)?.uses).toEqual([
      { use: "rail", count: 8 },
      { use: "sill", count: 4 },
    ]);
  });

  test("modules add up: 2x4 of 19 in 4 + 3 + 2, 2x6 2 + 1, 2x10 three; panels 6, clips 24", () => {
    expect(line("2x4", 19)?.count).toBe(9);
    expect(line("2x6", 19)?.count).toBe(3);
    expect(line("2x10", 19)?.count).toBe(3);
    expect(item("mesh 1219x762")).toBe(6);
    expect(item("mesh-clip")).toBe(24);
    expect(item("screw-10x3")).toBe(28 + 20 + 12 + 4 * 24);
  });

  test("with a corner: platform and 8 ft to the left add 4 joints, a platform and a module", () => {
    const corner = cornerChain();
    const more = takeOff(kit, corner, sizes);
    const count = (size: string, inches: number): number =>
      more.timber.find((t) => t.size === size && inch(t.length_mm) === inches)?.count ?? 0;
    expect(corner.joints).toHaveLength(4 + 3 + 1);
    expect(count("2x2", 48)).toBe(8);
    expect(count("2x4", 72)).toBe(4);
    expect(count("2x4", 22)).toBe(9);
    expect(count("2x4", 96)).toBe(4);
    expect(count("2x4", 19)).toBe(9 + 3);
    expect(more.counted.find((c) => c.item === "screw-10x3")?.count).toBe(60 + 20 + 9 * 4 + 8 * 24);
    expect(more.counted.find((c) => c.item === "mesh 1219x762")?.count).toBe(6 + 2 + 6);
  });
});

const cornerChain = (): Chain =>
  layChain(kit, [12 * FT, 8 * FT, 4 * FT, "platform-left", 8 * FT], "open-crate", 10 * IN, sizes);

/** All boxes of a chain on the site; headings are multiples of 90 degrees, so boxes stay upright boxes. */
function boxesOf(chain: Chain, of: Kit): { readonly part: string; readonly box: PlacedPiece }[] {
  const g = kitGeometry(of, sizes);
  const joint = (id: string): Joint => chain.joints.find((j) => j.id === id)!;
  const onSite = (frame: PartFrame, part: string) => (p: PlacedPiece) => {
    const corners = pieceCorners(frame, p);
    const [xs, ys, zs] = [0, 1, 2].map((i) => corners.map((c) => c[i]!)) as [number[], number[], number[]];
    const span = { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) };
    return { part, box: { ...p, ...span, z0: Math.min(...zs), z1: Math.max(...zs) } };
  };
  const walkway = chain.parts.flatMap((part) => {
    const frame = frameFromJoint(joint(part.from), part.heading_deg, g.joint_gap_m, g.module_depth_m);
    const pieces =
      part.kind === "module" ? modulePieces(of, part.length_m * 1000, sizes) : platformPieces(of, sizes);
    return pieces.map(onSite(frame, part.id));
  });
  const supports = chain.joints.flatMap((j) =>
    supportPieces(of, j.support, j.support_height_m, sizes).map(onSite(supportFrame(j, j.heading_deg), j.id)),
  );
  return [...walkway, ...supports];
}

const shared = (a: PlacedPiece, b: PlacedPiece): number =>
  Math.min(
    Math.min(a.x1, b.x1) - Math.max(a.x0, b.x0),
    Math.min(a.y1, b.y1) - Math.max(a.y0, b.y0),
    Math.min(a.z1, b.z1) - Math.max(a.z0, b.z0),
  );

/** The same kit sawn half an inch short, with joints half an inch wide: pitches stay whole feet. */
const gapped: Kit = {
  ...kit,
  id: "common-practice-gapped",
  lengths_mm: kit.lengths_mm.map((l) => l - 12.7),
  joint_gap_mm: 12.7,
  cross_pieces: {
    ...kit.cross_pieces,
    exceptions: [
      { length_mm: 8 * FT - 12.7, at_mm: (8 * FT - 12.7) / 2, size: "2x6" },
      { length_mm: 12 * FT - 12.7, at_mm: (12 * FT - 12.7) / 3, size: "2x6" },
      { length_mm: 12 * FT - 12.7, at_mm: (2 * (12 * FT - 12.7)) / 3, size: "2x6" },
    ],
  },
  platform: { ...kit.platform, side_mm: 6 * FT - 12.7 },
};

for (const of of [kit, gapped])
  describe(`${of.id}: the chain 12 + 8 + 4 ft, platform, left, 8 ft closes in three dimensions`, () => {
    const [twelve, eight, four] = of.lengths_mm as [number, number, number];
    const links = [twelve, eight, four, "platform-left", eight] as const;
    const chain = layChain(of, links, "open-crate", 10 * IN, sizes);
    const boxes = boxesOf(chain, of);
    const bodyOf = (part: string, role: string) =>
      boxes.filter((b) => b.part === part && b.box.role === role).map((b) => b.box);
    const gap = of.joint_gap_mm / 1000;

    test("the recipe has no error", () => {
      expect(validateKit(of, yardTables).filter((p) => p.severity === "error")).toEqual([]);
    });

    test("joint to joint is the pitch, to 1 mm", () => {
      const at = chain.joints.map((j) => [j.x, j.y]);
      const feet = [
        [0, 0],
        [0, 12],
        [0, 20],
        [0, 24],
        [0, 30],
        [-3, 27],
        [3, 27],
        [-11, 27],
      ];
      feet.forEach(([x, y], i) => {
        expect(Math.abs(at[i]![0]! - x! * 0.3048)).toBeLessThan(0.001);
        expect(Math.abs(at[i]![1]! - y! * 0.3048)).toBeLessThan(0.001);
      });
    });

    test("neighbouring bodies stand exactly one joint gap apart, also around the corner", () => {
      const top = (part: string): number => Math.max(...bodyOf(part, "stringer").map((b) => b.y1));
      const foot = (part: string): number => Math.min(...bodyOf(part, "stringer").map((b) => b.y0));
      expect(Math.abs(foot("m2") - top("m1") - gap)).toBeLessThan(0.001);
      expect(Math.abs(foot("m3") - top("m2") - gap)).toBeLessThan(0.001);
      expect(Math.abs(foot("p4") - top("m3") - gap)).toBeLessThan(0.001);
      const left = Math.min(...bodyOf("p4", "stringer").map((b) => b.x0));
      const right = Math.max(...bodyOf("m5", "stringer").map((b) => b.x1));
      expect(Math.abs(left - right - gap)).toBeLessThan(0.001);
    });

    test("no two pieces of the whole chain, supports and stakes among them, stand in one place (0.1 mm)", () => {
      const clashes = boxes.flatMap((a, i) =>
        boxes
          .slice(i + 1)
          .filter((b) => shared(a.box, b.box) > 0.0001)
          .map((b) => `${a.part} ${a.box.role} / ${b.part} ${b.box.role}`),
      );
      expect(clashes).toEqual([]);
    });

    test("each catch board lies under the first cross piece of the next part, and their heights coincide", () => {
      for (const [part, next] of [
        ["m1", "m2"],
        ["m2", "m3"],
        ["m3", "p4"],
      ] as const) {
        const [board] = bodyOf(part, "catch board");
        const first = bodyOf(next, "cross piece").filter((b) => b.x0 < 0 && b.x1 > 0);
        const piece = first.reduce((a, b) => (b.y0 < a.y0 ? b : a));
        expect(Math.abs(board!.z1 - piece.z0)).toBeLessThan(0.001);
        expect(board!.y1 - piece.y0).toBeGreaterThan(0.05);
      }
    });

    test("the deck's top is one level over modules and platform, and every stringer end rests on a sill", () => {
      const tops = boxes.filter((b) => b.box.role === "mesh panel").map((b) => b.box.z1);
      const g = kitGeometry(of, sizes);
      for (const z of tops) expect(z).toBeCloseTo(10 * IN + g.module_depth_m, 6);
      const sills = boxes.filter((b) => b.box.role === "sill").map((b) => b.box);
      for (const part of ["m1", "m2", "m3", "m5"])
        for (const s of bodyOf(part, "stringer")) {
          const under = sills.filter((b) => Math.abs(b.z1 - s.z0) < 0.001 && seat(s, b) > 0);
          expect(under).toHaveLength(2);
          for (const b of under) expect(seat(s, b)).toBeCloseTo(g.seat_m("open-crate"), 4);
        }
    });
  });

/** Length of a stringer on a sill, along the stringer; 0 when it misses the sill. */
function seat(s: PlacedPiece, sill: PlacedPiece): number {
  const x = Math.min(s.x1, sill.x1) - Math.max(s.x0, sill.x0);
  const y = Math.min(s.y1, sill.y1) - Math.max(s.y0, sill.y0);
  if (x <= 0 || y <= 0) return 0;
  return s.x1 - s.x0 > s.y1 - s.y0 ? x : y;
}
