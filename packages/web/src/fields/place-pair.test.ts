import fc from "fast-check";
import { expect, test } from "vitest";
import { looksLikeDegrees, readPlace, splitPasted } from "./place-pair.ts";

const value = (a: string, b: string, form: "grid" | "degrees") => {
  const answer = readPlace([a, b], form, false);
  return answer.ok ? answer.value : answer.faults;
};

test("numbers of the grid, with a decimal comma or a true minus", () => {
  expect(value("621905,25", " −12.5", "grid")).toEqual([621905.25, -12.5]);
  expect(value("", "x", "grid")).toEqual(["Give both numbers.", '"x" is not a number.']);
});

test("both empty is no place where it may be left open, and a fault where it may not", () => {
  expect(readPlace(["", " "], "grid", true)).toEqual({ ok: true, value: null });
  expect(readPlace(["", ""], "degrees", false).ok).toBe(false);
});

test("degrees, minutes and seconds: 51 deg 28' 40.12\" N, 0 deg 0' 5.31\" W (Greenwich meridian mark, Ordnance Survey guide to coordinate systems; from memory)", () => {
  const [lat, lon] = value(`51° 28' 40.12" N`, `0° 0′ 5.31″ W`, "degrees") as [number, number];
  expect(lat).toBeCloseTo(51 + 28 / 60 + 40.12 / 3600, 12);
  expect(lon).toBeCloseTo(-5.31 / 3600, 12);
});

test("a letter on the wrong field, and what lies beyond the poles, is said", () => {
  expect(value("1.2 E", "52", "degrees")).toEqual(['"E" does not belong to a latitude.', null]);
  expect(value("97", "181", "degrees")).toEqual([
    "A latitude lies between -90 and 90.",
    "A longitude lies between -180 and 180.",
  ]);
});

test("two numbers pasted into one field are parted; one with a decimal comma is not", () => {
  expect(splitPasted("51.9569, 1.2282")).toEqual(["51.9569", "1.2282"]);
  expect(splitPasted("51.9569,1.2282")).toEqual(["51.9569", "1.2282"]);
  expect(splitPasted("51,9569; 1,2282")).toEqual(["51,9569", "1,2282"]);
  expect(splitPasted("621905\t233640")).toEqual(["621905", "233640"]);
  expect(splitPasted("51,9569")).toBeNull();
  expect(splitPasted("621905")).toBeNull();
});

test("property: any latitude and longitude are read back, whatever way they are written", () => {
  const lat = fc.double({ min: -90, max: 90, noNaN: true });
  const lon = fc.double({ min: -180, max: 180, noNaN: true });
  fc.assert(
    fc.property(lat, lon, fc.boolean(), (a, b, isComma) => {
      const write = (v: number): string => {
        const words = Math.abs(v).toFixed(7);
        return isComma ? words.replace(".", ",") : words;
      };
      const read = value(`${write(a)} ${a < 0 ? "S" : "N"}`, `${write(b)}°${b < 0 ? "W" : "E"}`, "degrees");
      expect(read![0]).toBeCloseTo(a, 6);
      expect(read![1]).toBeCloseTo(b, 6);
    }),
  );
});

test("what a phone shows looks like degrees; corners of a local grid do not", () => {
  expect(looksLikeDegrees([51.9569, 1.2282])).toBe(true);
  expect(looksLikeDegrees([20, 35])).toBe(false);
  expect(looksLikeDegrees([621905.5, 233640])).toBe(false);
});
