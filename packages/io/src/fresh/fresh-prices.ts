import type { Price } from "@causey/engine/materials";
import { writePrices } from "../prices/index.ts";

const SOURCE = "Example, not a real price: put in your yard's";
const DATE = "2026-01-01";

/** Nominal sizes and an example price for a stick of 8 ft; longer ones cost more in proportion. */
const LUMBER: readonly (readonly [item: string, eight_feet: number])[] = [
  ["2x2", 5],
  ["2x4", 8],
  ["2x6", 12],
  ["2x8", 16],
  ["2x10", 22],
  ["2x12", 28],
  ["4x4", 18],
  ["5/4x6", 11],
];
/** Stock lengths: feet as the yard says, whole millimetres as a tape reads. */
const STOCK = [
  [8, 2438],
  [12, 3657],
  [16, 4876],
] as const;

const COUNTED: readonly (readonly [item: string, description: string, pack: number, price: number])[] = [
  ["screw-8x2.5", "Wood screw #8 x 2-1/2 in", 100, 18],
  ["screw-10x3", "Wood screw #10 x 3 in", 100, 25],
  ["screw-10x4", "Wood screw #10 x 4 in", 50, 20],
];

const dated = { currency: "USD", date: DATE, source: SOURCE } as const;

/** A price list with everything the board kit needs, every price marked as an example. */
export function freshPrices(): Uint8Array {
  const lumber: Price[] = LUMBER.flatMap(([item, price]) =>
    STOCK.map(([feet, length_mm]) => ({
      item,
      description: `${item} framing lumber, ${feet} ft`,
      length_mm,
      pack: 1,
      price: (price * feet) / 8,
      ...dated,
    })),
  );
  const counted: Price[] = COUNTED.map(([item, description, pack, price]) => ({
    item,
    description,
    length_mm: null,
    pack,
    price,
    ...dated,
  }));
  return writePrices([...lumber, ...counted]);
}
