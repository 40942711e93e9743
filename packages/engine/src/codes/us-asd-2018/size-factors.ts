import { defineConstant, type Constant } from "../../formula/index.ts";
import type { LumberSize } from "../../materials/index.ts";
import { nominalOf } from "./member.ts";
import { thinBoardFactor, noFactor } from "./service-factors.ts";
import { supplement } from "./sources.ts";

type Widths = 2 | 3 | 4 | 5 | 6 | 8 | 10 | 12;
type ByWidth = Readonly<Record<Widths, Constant<"1">>>;

function byWidth(
  id: string,
  title: string,
  symbol: string,
  values: Readonly<Record<Widths, number>>,
): ByWidth {
  const rows = Object.entries(values).map(([width, value]) => [
    width,
    defineConstant(
      `us-asd-2018.${id}.${width}`,
      `${title}, ${width} in wide`,
      symbol,
      value,
      "1",
      supplement("Table 4A, adjustment factors", "seen"),
    ),
  ]);
  return Object.fromEntries(rows) as ByWidth;
}

const bending = byWidth("size.fb", "Size factor, bending, 2 in and 3 in thick", "CF_fb", {
  2: 1.5,
  3: 1.5,
  4: 1.5,
  5: 1.4,
  6: 1.3,
  8: 1.2,
  10: 1.1,
  12: 1,
});
const bendingThick = byWidth("size.fb.4-in", "Size factor, bending, 4 in thick", "CF_fb", {
  2: 1.5,
  3: 1.5,
  4: 1.5,
  5: 1.4,
  6: 1.3,
  8: 1.3,
  10: 1.2,
  12: 1.1,
});
const compression = byWidth("size.fc", "Size factor, compression", "CF_fc", {
  2: 1.15,
  3: 1.15,
  4: 1.15,
  5: 1.1,
  6: 1.1,
  8: 1.05,
  10: 1,
  12: 1,
});
const flat = byWidth("flat-use", "Flat use factor, 2 in and 3 in thick", "Cfu", {
  2: 1,
  3: 1,
  4: 1.1,
  5: 1.1,
  6: 1.15,
  8: 1.15,
  10: 1.2,
  12: 1.2,
});
const flatThick = byWidth("flat-use.4-in", "Flat use factor, 4 in thick", "Cfu", {
  2: 1,
  3: 1,
  4: 1,
  5: 1.05,
  6: 1.05,
  8: 1.05,
  10: 1.1,
  12: 1.1,
});

export const sizeFactorConstants: readonly Constant<"1">[] = [
  bending,
  bendingThick,
  compression,
  flat,
  flatThick,
].flatMap((rows) => Object.values(rows));

const pick = (size: LumberSize, thin: ByWidth, thick: ByWidth): Constant<"1"> => {
  const nominal = nominalOf(size);
  if (nominal.thick < 2) return thinBoardFactor;
  return (nominal.thick < 4 ? thin : thick)[nominal.wide as Widths];
};

/** CF on Fb; 1 where the table holds values by size (Southern Pine). */
export const bendingSizeFactor = (size: LumberSize, inside: boolean): Constant<"1"> =>
  inside ? noFactor : pick(size, bending, bendingThick);

/** CF on Fc; 1 where the table holds values by size. */
export const compressionSizeFactor = (size: LumberSize, inside: boolean): Constant<"1"> =>
  inside ? noFactor : pick(size, compression, compression);

/** Cfu for a piece laid flat; 1 on edge. */
export const flatUseFactor = (size: LumberSize, use: "edge" | "flat"): Constant<"1"> =>
  use === "edge" ? noFactor : pick(size, flat, flatThick);

/** Row of a table by size: widths to 4 in share a row, 5 and 6 in share a row. */
export const widthRow = (size: LumberSize): string => {
  const width = nominalOf(size).wide;
  return width <= 4 ? "4" : width <= 6 ? "6" : String(width);
};
