// Take-off against published dimensions of boardwalks, as collected in the open data set "boardwalk-spec":
// Pleasant Valley Conservancy, Wisconsin, 2009-2010: a built modular walk of 17 units, 10 ft long, deck boards 3 ft x 6 in,
// on 5 ft pieces of pole. Scottish Government, Forestry Grant Scheme, timber boardwalk, 30 March 2015: deck boards
// 1600 x 150 x 50 mm, beams 2200 mm of 100 x 100 mm, posts 100 x 100 mm, edge rails 75 x 75 mm.
import { describe, expect, test } from "vitest";
import { boardPattern, type Kit, type SupportKind } from "../../src/kit/index.ts";
import { takeOff, type LumberSize } from "../../src/materials/index.ts";
import { layChain } from "../support/chain.ts";
import { commonPracticeKit } from "../support/common-practice-kit.ts";
import { dataText, hasData } from "../support/open-data.ts";
import { yardTables } from "../support/yard-tables.ts";

const IN = 25.4;
const isThere = hasData("boardwalk-spec");

/** Rows of the data set: case, quantity, value. */
const published = (): { readonly name: string; readonly quantity: string; readonly value: number }[] =>
  dataText("boardwalk-spec", "takeoff-cases.csv")
    .split("\n")
    .slice(1)
    .flatMap((row) => {
      const m = /^([^,]+),(?:"([^"]*)"|([^,]*)),([\d.]+),/.exec(row);
      return m ? [{ name: m[1]!, quantity: m[2] ?? m[3]!, value: Number(m[4]) }] : [];
    });

const valueOf = (name: string, quantity: string): number => {
  const row = published().find((r) => r.name === name && r.quantity === quantity);
  if (!row) throw new Error(`no row "${quantity}" of ${name}`);
  return row.value;
};

const metric = (id: string, thickness_mm: number, width_mm: number): LumberSize => ({
  id,
  thickness_in: thickness_mm / IN,
  width_in: width_mm / IN,
  nominal_thickness_in: thickness_mm / IN,
  nominal_width_in: width_mm / IN,
  source: "boardwalk-spec",
  status: "seen",
});

/** One line of supports at each joint: a pole of 5 ft across, on the ground. */
const pole: SupportKind = {
  ...commonPracticeKit.supports[0]!,
  id: "pole",
  form: "sleeper",
  pieces: [],
  sill: { size: "pole", length_mm: 60 * IN, lay: "flat" },
  feet: [{ along_mm: 100, across_mm: 60 * IN, offset_across_mm: 0 }],
  anchor: null,
};

const walk = (length_mm: number, board: LumberSize, gap_mm: number, width_mm: number): Kit => ({
  ...commonPracticeKit,
  lengths_mm: [length_mm],
  joint_gap_mm: 0,
  stringers: { count: 2, size: "beam", overall_mm: width_mm - 50 },
  cross_pieces: { ...commonPracticeKit.cross_pieces, spacing_mm: 1e4, exceptions: [] },
  end: { kind: "plain" },
  deck: { kind: "boards", size: board.id, gap_mm, width_mm, screw: "screw-10x3", screws_per_bearing: 2 },
  supports: [pole],
});

const sizesWith = (board: LumberSize): LumberSize[] => [
  ...yardTables.sizes,
  metric("beam", 100, 100),
  metric("pole", 100, 100),
  board,
];

const counted = (kit: Kit, units: number, sizes: readonly LumberSize[], use: string): number =>
  takeOff(kit, layChain(kit, Array<number>(units).fill(kit.lengths_mm[0]!), "pole", 0.1, sizes), sizes)
    .timber.flatMap((t) => t.uses)
    .filter((u) => u.use === use)
    .reduce((n, u) => n + u.count, 0);

describe.skipIf(!isThere)(
  "built modular walk of 17 units of 10 ft (Pleasant Valley Conservancy, 2009-2010)",
  () => {
    for (const [width_in, gap_in] of [
      [6, 0],
      [5.5, 0.5],
      [5.5, 0.25],
    ] as const)
      test(`deck boards ${width_in} in wide at ${gap_in} in, 20 or 21 to a unit, and 18 lines of poles`, () => {
        const board = metric("board", 38, width_in * IN);
        const sizes = sizesWith(board);
        const kit = walk(120 * IN, board, gap_in * IN, 36 * IN);
        const quantity = `deck boards, ${width_in.toFixed(1)} in wide, gap ${gap_in.toFixed(2)} in`;
        const wholly = valueOf("modular-17-units", quantity);
        const fewer = Math.floor((120 + gap_in) / (width_in + gap_in)) * 17;
        expect(wholly).toBe(fewer);
        expect([fewer, fewer + 17]).toContain(counted(kit, 17, sizes, "deck board"));
        expect(counted(kit, 17, sizes, "sill")).toBe(
          valueOf("modular-17-units", "pole supports of 5 ft, one per joint and end"),
        );
      });
  },
);

describe.skipIf(!isThere)(
  "10 bays of 2.2 m (Scottish Government, Forestry Grant Scheme, timber boardwalk, 2015)",
  () => {
    for (const gap of [0, 10, 20])
      test(`deck boards 150 mm wide over 22 m at a nominal gap of ${gap} mm, to one board`, () => {
        const wholly = valueOf("scottish-22m", `deck boards 1600x150x50, gap ${gap} mm`);
        const { count, gap_mm } = boardPattern(22_000, 150, gap);
        expect(Math.abs(count - wholly)).toBeLessThanOrEqual(1);
        expect(Math.abs(gap_mm - gap)).toBeLessThan(1);
      });

    test("beams: two lines over 10 bays", () => {
      const board = metric("board", 50, 150);
      const sizes = sizesWith(board);
      const kit = walk(2200, board, 10, 1600);
      expect(counted(kit, 10, sizes, "stringer")).toBe(valueOf("scottish-22m", "beams 2200x100x100"));
    });

    test("volume of deck timber at a gap of 10 mm: 1.644 m3 for its 137 boards, the take-off's boards alike", () => {
      const boards = valueOf("scottish-22m", "deck boards 1600x150x50, gap 10 mm");
      const volume = valueOf("scottish-22m", "deck timber volume, gap 10 mm");
      expect(boards * 1.6 * 0.15 * 0.05).toBeCloseTo(volume, 3);
      const board = metric("board", 50, 150);
      const sizes = sizesWith(board);
      const kit = walk(22_000, board, 10, 1600);
      const off = takeOff(kit, layChain(kit, [22_000], "pole", 0.1, sizes), sizes);
      const deck = off.timber.find((t) => t.size === "board")!;
      const taken = (deck.count * deck.length_mm * 150 * 50) / 1e9;
      expect(Math.abs(taken - volume)).toBeLessThanOrEqual(1.6 * 0.15 * 0.05 + 1e-9);
    });
  },
);
