import { massOf, type LiftState } from "../checks/index.ts";
import { recordValue, type Source, type Trace } from "../formula/index.ts";
import type { Counted, PlacedPiece } from "../kit/index.ts";
import type { PartMass } from "../materials/index.ts";
import { qty, type Qty, type Unit } from "../units/index.ts";
import type { KitFigure, PieceLine } from "./types.ts";

/** A figure that is worked out: `find` writes its working. */
export function figureOf(title: string, unit: Unit, find: (trace: Trace) => number): KitFigure {
  const working: Trace = [];
  return { title, value: find(working), unit, working, missing: [] };
}

/** A figure that cannot be said, with what would be needed. */
export const missingFigure = (title: string, unit: Unit, missing: readonly string[]): KitFigure => ({
  title,
  value: null,
  unit,
  working: [],
  missing,
});

/** Mass of a part; missing when the table lacks the timber. */
export const massFigure = (
  title: string,
  mass: PartMass,
  gravity: Qty<"1"> | null,
  state: LiftState,
): KitFigure =>
  gravity === null
    ? missingFigure(title, "kg", ["a species and grade of the tables"])
    : figureOf(title, "kg", (trace) => massOf(mass, gravity, state, trace));

const priceList: Source = {
  id: "price-list",
  title: "The plan's price list",
  at: "each piece by length at the cheapest stock long enough for it, counted things at the cheapest pack",
  status: "project",
};

/** Materials of a part; missing when an item has no price. */
export function costFigure(
  title: string,
  amount: number | null,
  counted: readonly Counted[],
  unpriced: readonly string[],
): KitFigure {
  if (amount === null)
    return missingFigure(
      title,
      "money",
      unpriced.length > 0 ? unpriced.map((i) => `a price for ${i}`) : ["prices"],
    );
  return figureOf(title, "money", (trace) => {
    recordValue(trace, {
      id: "kit.material-cost",
      title,
      symbol: "A",
      value: qty(amount, "money"),
      unit: "money",
      source: priceList,
      how: "sum over all pieces and counted things",
      note: `without waste, whole packs, tax and labour; counted: ${counted.map((c) => `${c.count} ${c.name}`).join(", ")}`,
    });
    return amount;
  });
}

/** Pieces of a part, alike ones counted once, in the order they are first met. */
export function pieceLines(pieces: readonly PlacedPiece[]): PieceLine[] {
  const lines = new Map<string, PieceLine>();
  for (const { role, size, length_mm } of pieces) {
    const key = `${role}|${size}|${length_mm}`;
    lines.set(key, { role, size, length_mm, count: (lines.get(key)?.count ?? 0) + 1 });
  }
  return [...lines.values()];
}
