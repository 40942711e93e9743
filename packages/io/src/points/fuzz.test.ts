import * as fc from "fast-check";
import { expect, test } from "vitest";
import { isHelpful, utf8, valueOrRefusal } from "../../test/support/problems.ts";
import {
  PointReader,
  readPenetrometer,
  readPoints,
  readProbeStations,
  readShearReadings,
  type PointOptions,
  type PointsRead,
} from "./index.ts";
import { ProblemError } from "@causey/engine/formula";

const numRuns = Number(process.env["CAUSEY_FUZZ"] ?? 300);

const cell = fc.oneof(
  { weight: 6, arbitrary: fc.double({ noNaN: true, min: -1e6, max: 1e6 }).map((v) => v.toFixed(3)) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      "",
      "0",
      "0.00",
      "-9999",
      "NaN",
      "=1+1",
      "#REF!",
      '"a""b"',
      '"',
      "1,5",
      "1e999",
      "25/10/2026",
      "2026-10-05",
      "\u0000",
      "é",
      "'-5",
    ),
  },
  { weight: 1, arbitrary: fc.string({ maxLength: 12 }) },
);
const table = fc
  .tuple(
    fc.constantFrom(",", ";", "\t"),
    fc.constantFrom("\n", "\r\n", "\r"),
    fc.array(fc.array(cell, { minLength: 1, maxLength: 9 }), { maxLength: 25 }),
  )
  .map(([delimiter, end, rows]) =>
    [["id", "x", "y", "z", "a", "d", "c"], ...rows].map((r) => r.join(delimiter)).join(end),
  );
const file = fc.oneof(
  { weight: 4, arbitrary: table.map(utf8) },
  { weight: 1, arbitrary: fc.uint8Array({ maxLength: 300 }) },
  {
    weight: 1,
    arbitrary: fc.tuple(table, fc.uint8Array({ maxLength: 40 }), fc.nat(200)).map(([t, junk, at]) => {
      const bytes = utf8(t);
      bytes.set(junk.subarray(0, Math.max(0, bytes.length - at)), Math.min(at, bytes.length));
      return bytes;
    }),
  },
);
const options: fc.Arbitrary<PointOptions> = fc.record({
  columns: fc.constantFrom(
    { id: "id", x: "x", y: "y", z: "z", code: "c", accuracy: "a", date: "d" },
    { id: null, x: "x", y: "y", z: "z", code: null, accuracy: null, date: null },
    { id: "#1", x: "#2", y: "#3", z: "#4", code: null, accuracy: null, date: "#6" },
  ),
  unit: fc.constantFrom("m", "ft", "us-ft"),
  decimal: fc.constantFrom("point", "comma"),
  date_order: fc.constantFrom("ymd", "dmy", "mdy"),
  known_heights_m: fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { maxLength: 2 }),
  heights: fc.constantFrom("ground", "as-read"),
});

const plainly = (r: PointsRead): object => ({
  x: [...r.points.x],
  y: [...r.points.y],
  z: [...r.points.z],
  names: [...r.points.lines].map((_, i) => r.points.ids?.at(i) ?? null),
  lines: [...r.points.lines],
  left_out: r.left_out,
  warnings: r.warnings,
});
const outcome = (read: () => PointsRead): object => {
  try {
    return plainly(read());
  } catch (error) {
    if (error instanceof ProblemError) return error.problems;
    throw error;
  }
};

test("property: any bytes give points that are all finite, or problems that help; nothing else", async () => {
  await fc.assert(
    fc.asyncProperty(file, options, async (bytes, o) => {
      const read = await valueOrRefusal(() => readPoints("p.csv", bytes, o));
      if (read === null) return;
      const { points } = read;
      for (const values of [points.x, points.y, points.z])
        expect(values.every((v) => Number.isFinite(v))).toBe(true);
      expect(new Set([points.x.length, points.y.length, points.z.length, points.lines.length]).size).toBe(1);
      if (points.ids) expect(points.ids.length).toBe(points.z.length);
      expect(read.warnings.every(isHelpful)).toBe(true);
      expect(read.left_out).toHaveLength(read.left_out_count);
    }),
    { numRuns },
  );
});

test("property: in pieces or whole, the same points and the same problems", () => {
  fc.assert(
    fc.property(table, options, fc.integer({ min: 1, max: 64 }), (text, o, size) => {
      const bytes = utf8(text);
      const inPieces = (): PointsRead => {
        const reader = new PointReader("p.csv", o);
        for (let at = 0; at < bytes.length; at += size) reader.push(bytes.subarray(at, at + size));
        return reader.finish();
      };
      expect(outcome(inPieces)).toEqual(outcome(() => readPoints("p.csv", bytes, o)));
    }),
    { numRuns },
  );
});

test("property: any bytes as vane readings, stations or cone readings: a value or problems that help", async () => {
  const decimal = "point" as const;
  const readers = [
    (b: Uint8Array) =>
      readShearReadings("s.csv", b, {
        columns: { id: "id", x: "x", y: "y", depth: "z", peak: "a", remoulded: "d", vane: "c" },
        unit: "m",
        strength_unit: "kpa",
        decimal,
        correction: 1,
        source: "s",
      }),
    (b: Uint8Array) =>
      readProbeStations("s.csv", b, {
        columns: { id: "id", x: "x", y: "y", ground: "z", probe: "a", water: null, date: "d" },
        unit: "m",
        decimal,
        date_order: "dmy",
      }),
    (b: Uint8Array) =>
      readPenetrometer("s.csv", b, {
        columns: { id: "id", x: "x", y: "y", index: ["z", "a"], group: "c" },
        decimal,
      }),
  ];
  await fc.assert(
    fc.asyncProperty(file, fc.constantFrom(...readers), async (bytes, read) => {
      const value = await valueOrRefusal(() => read(bytes));
      if (value !== null) expect(value.warnings.every(isHelpful)).toBe(true);
    }),
    { numRuns },
  );
});
