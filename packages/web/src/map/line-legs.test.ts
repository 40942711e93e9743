import { expect, test } from "vitest";
import { degrees, legsOf, offSquare, squareHeadings } from "./line-legs.ts";

test("a leg's heading is read from grid north clockwise", () => {
  const legs = legsOf([
    [0, 0],
    [0, 10],
    [10, 10],
    [10, 0],
    [7, 0],
  ]);
  expect(legs.map((l) => l.heading_deg)).toEqual([0, 90, 180, 270]);
  expect(legs.map((l) => l.length_m)).toEqual([10, 10, 10, 3]);
});

test("platforms turn square to the longest leg; before the first leg nothing is said", () => {
  expect(squareHeadings([])).toBeNull();
  const legs = [
    { heading_deg: 12, length_m: 3 },
    { heading_deg: 217.2, length_m: 9 },
  ];
  expect(squareHeadings(legs)).toEqual([37, 127, 217, 307]);
});

test("a leg aslant the square headings says by how much, never more than 45 degrees", () => {
  const square = [37, 127, 217, 307];
  expect(offSquare(127, square)).toBe(0);
  expect(offSquare(30, square)).toBe(7);
  expect(offSquare(350, square)).toBe(43);
  expect(offSquare(82, square)).toBe(45);
});

test("a heading just short of north reads 0, not 360", () => {
  expect(degrees(359.7)).toBe("0°");
});
