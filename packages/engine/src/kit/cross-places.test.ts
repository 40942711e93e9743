import { expect, test } from "vitest";
import { commonPracticeKit } from "../../test/support/common-practice-kit.ts";
import { yardTables } from "../../test/support/yard-tables.ts";
import { crossPlaces } from "./cross-places.ts";
import type { CrossPieceException, Kit } from "./types.ts";

const IN = 25.4;
const { sizes } = yardTables;
const withRows = (exceptions: readonly CrossPieceException[], end: Kit["end"] = { kind: "plain" }): Kit => ({
  ...commonPracticeKit,
  end,
  cross_pieces: { ...commonPracticeKit.cross_pieces, exceptions },
});
const rows = (kit: Kit, inches: number): string[] =>
  crossPlaces(kit, inches * IN, sizes).map(
    ({ x, size }) => `${size} ${+(x[0] / IN).toFixed(3)}-${+(x[1] / IN).toFixed(3)}`,
  );

test("a plain end: flush at both ends, regular rows centred between", () => {
  expect(rows(withRows([]), 96)).toEqual([
    "2x4 0-3.5",
    "2x4 22.25-25.75",
    "2x4 46.25-49.75",
    "2x4 70.25-73.75",
    "2x4 92.5-96",
  ]);
});

test("a regular row that would run into the end piece is left out", () => {
  expect(rows(withRows([]), 50)).toEqual(["2x4 0-3.5", "2x4 22.25-25.75", "2x4 46.5-50"]);
});

test("an exception resizes, leaves out, moves or adds a row; flush rows stay flush", () => {
  expect(rows(withRows([{ at_mm: 48 * IN, size: "2x6" }]), 96)).toContain("2x6 45.25-50.75");
  expect(rows(withRows([{ at_mm: 48 * IN, omit: true }]), 96)).toHaveLength(4);
  expect(rows(withRows([{ at_mm: 47 * IN }]), 96)).toContain("2x4 45.25-48.75");
  expect(rows(withRows([{ at_mm: 12 * IN }]), 96)).toContain("2x4 10.25-13.75");
  expect(rows(withRows([{ at_mm: 96 * IN, size: "2x6" }]), 96)).toContain("2x6 90.5-96");
  expect(rows(withRows([{ at_mm: 0, size: "2x6" }]), 96)).toContain("2x6 0-5.5");
});

test("an exception for one length leaves the others alone, and one off the module adds nothing", () => {
  const kit = withRows([{ length_mm: 96 * IN, at_mm: 48 * IN, omit: true }]);
  expect(rows(kit, 96)).toHaveLength(4);
  expect(rows(kit, 144)).toHaveLength(7);
  expect(rows(withRows([{ at_mm: 120 * IN }]), 96)).toHaveLength(5);
});
