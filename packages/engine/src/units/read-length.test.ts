import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { feetInches } from "./display.ts";
import { readLength } from "./read-length.ts";

describe("lengths as a carpenter writes them", () => {
  test.each([
    [`8' 0 1/2"`, 96.5 * 0.0254],
    ["8-0-1/2", 96.5 * 0.0254],
    ["8 ft 3 in", 99 * 0.0254],
    ["8 ft", 96 * 0.0254],
    ["12 ft 3 1/2 in", 147.5 * 0.0254],
    ["96 in", 96 * 0.0254],
    ["3/4 in", 0.75 * 0.0254],
    ["-3 1/2 in", -3.5 * 0.0254],
    ["2.44 m", 2.44],
    ["2440 mm", 2.44],
    ["12,5 cm", 0.125],
    ["10", 3.048],
  ])("%s", (text, metres) => {
    expect(readLength(text, "us")).toBeCloseTo(metres, 12);
  });

  test("a bare number follows the units switch", () => {
    expect(readLength("10", "metric")).toBe(10);
    expect(readLength("140", "metric", "mm")).toBe(0.14);
    expect(readLength("5.5", "us", "in")).toBeCloseTo(0.1397, 12);
  });

  test.each(["", "ft", "8 ft 3 1/0 in", "eight", "8 ' 3 ' 2", "1e999x", "--3", "3 lb"])(
    "%s is no length",
    (t) => {
      expect(readLength(t, "us")).toBeNull();
    },
  );
});

test("what the page shows is read back to the sixteenth of an inch", () => {
  fc.assert(
    fc.property(fc.integer({ min: -20_000, max: 20_000 }), (sixteenths) => {
      const metres = (sixteenths / 16) * 0.0254;
      expect(readLength(feetInches(metres), "us")).toBeCloseTo(metres, 9);
    }),
  );
});
