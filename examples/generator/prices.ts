import { between, type Random } from "./random.ts";

const DATE = "2026-10-05";
/** Whose list it is, and in which currency. */
export interface Yard {
  readonly yard: string;
  readonly currency: string;
}
const FENNICK: Yard = { yard: "Fennick Yard list, invented", currency: "USD" };

const HEAD = "item,description,length_mm,pack,price,currency,date,source";

/** Dollars a foot for an 8 ft stick, spruce or pine as the yard has it. */
const PER_FOOT: Readonly<Record<string, number>> = {
  "2x2": 0.62,
  "2x4": 0.97,
  "2x6": 1.44,
  "2x8": 1.98,
  "2x10": 2.71,
  "2x12": 3.46,
  "5/4x6": 1.31,
  "4x4": 2.12,
};

/** Stock length in feet and whole millimetres, and what a foot of it costs beside a foot of an 8 ft stick. */
const STOCK = [
  [8, 2438, 1],
  [10, 3048, 1.03],
  [12, 3658, 1.06],
  [16, 4877, 1.13],
] as const;

const COUNTED: readonly (readonly [item: string, description: string, pack: number, price: number])[] = [
  ["screw-8x2.5", "Wood screw #8 x 2-1/2 in, stainless", 100, 17.6],
  ["screw-10x3", "Wood screw #10 x 3 in, stainless", 100, 25.4],
  ["screw-10x4", "Wood screw #10 x 4 in, stainless", 50, 19.8],
  ["mesh-clip", "Mesh clip with its screw, stainless", 100, 22.5],
  ["mesh 1219x914", "Welded mesh 1 x 1 in, 10 gauge, sheet 48 x 36 in", 1, 21.9],
  ["screw-14x5", "Wood screw #14 x 5 in, stainless", 25, 21.4],
  ["screw-10x3-316", "Wood screw #10 x 3 in, stainless 316", 100, 38.6],
  ["screw-14x5-316", "Wood screw #14 x 5 in, stainless 316", 25, 31.2],
  ["grating-clip", "Saddle clip for grating with its screw, stainless 316", 50, 64.5],
  ["panel-clip", "Edge clip for deck panels with its screw, stainless 316", 100, 49.8],
  ["moulded-grating 1219x914x38", "Moulded glass-fibre grating 38 mm, panel 48 x 36 in", 1, 189],
  ["plastic-panel 1219x762x50", "Grated plastic panel 50 mm, 48 x 30 in", 1, 118],
  ["screw-pile-60x203x2438", "Screw pile 60 mm, one helix of 8 in, 8 ft", 1, 142],
  ["float-1067x762x508", "Box float 42 x 30 x 20 in", 1, 236],
];

const line = (
  { yard, currency }: Yard,
  item: string,
  description: string,
  length_mm: number | "",
  pack: number,
  price: number,
): string => [item, description, length_mm, pack, price.toFixed(2), currency, DATE, yard].map(cell).join(",");

const cell = (v: string | number): string => (/[",\n]/.test(String(v)) ? `"${String(v)}"` : String(v));

/** An invented supplier's list: every lumber size in four stock lengths, then screws, clips and mesh by the pack. */
export function priceFile(random: Random, yard: Yard = FENNICK): string {
  const lumber = Object.entries(PER_FOOT).flatMap(([size, perFoot]) =>
    STOCK.map(([feet, length_mm, premium]) => {
      const price = Math.round(perFoot * feet * premium * between(random, 0.98, 1.02) * 20) / 20;
      return line(yard, size, `${size} framing lumber, ${feet} ft`, length_mm, 1, price);
    }),
  );
  const counted = COUNTED.map(([item, description, pack, price]) => line(yard, item, description, "", pack, price));
  return `${[HEAD, ...lumber, ...counted].join("\n")}\n`;
}
