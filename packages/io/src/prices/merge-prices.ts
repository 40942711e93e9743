import type { Problem } from "@causey/engine/formula";
import type { Price } from "@causey/engine/materials";
import { fault } from "../problem/index.ts";

/** "add": new prices take the place of those of the same item and length, the others stay. "replace": all of them go. */
export type MergeWay = "add" | "replace";

export interface MergedPrices {
  readonly prices: readonly Price[];
  /** Rows of the old list that are gone, and those that stay. */
  readonly gone: readonly Price[];
  readonly stay: readonly Price[];
  /** New prices of things that the old list did not price. */
  readonly added: readonly Price[];
}

/** Stock lengths nearer than this are one: 8 ft is sold as 2438 mm and as 2438.4 mm [mm]. */
const SAME_LENGTH_MM = 1;

/** How far two prices of one item are apart in length [mm]; infinite when only one of them has a length. */
const apart = (a: Price, b: Price): number =>
  a.length_mm === null || b.length_mm === null
    ? a.length_mm === b.length_mm
      ? 0
      : Infinity
    : Math.abs(a.length_mm - b.length_mm);

/**
 * The list with new prices. With "add" a new price stands where the old one of its item and length stood, whatever its
 * pack; what was not priced before follows at the end. Merging the same prices again changes nothing.
 */
export function mergePrices(there: readonly Price[], come: readonly Price[], way: MergeWay): MergedPrices {
  const places = placesByItem(there);
  const fresh = placesByItem(come);
  const sorted = offersTogether(come);
  const anchors = sorted.map((price) => nearest(there, places.get(price.item) ?? [], price));
  const isGone = there.map((old) => nearest(come, fresh.get(old.item) ?? [], old) >= 0);
  const added = sorted.filter((_, i) => anchors[i] === -1);
  if (way === "replace") return { prices: come, gone: there, stay: [], added };
  const standing = new Map<number, Price[]>();
  sorted.forEach((price, i) => standing.set(anchors[i]!, [...(standing.get(anchors[i]!) ?? []), price]));
  const prices = there.flatMap((old, at) => [...(standing.get(at) ?? []), ...(isGone[at] ? [] : [old])]);
  return {
    prices: [...prices, ...added],
    gone: there.filter((_, i) => isGone[i]),
    stay: there.filter((_, i) => !isGone[i]),
    added,
  };
}

function placesByItem(prices: readonly Price[]): ReadonlyMap<string, readonly number[]> {
  const places = new Map<string, number[]>();
  prices.forEach((price, i) => {
    const mine = places.get(price.item);
    if (mine) mine.push(i);
    else places.set(price.item, [i]);
  });
  return places;
}

/** Several packs of one thing follow each other, or merging twice would part them. */
function offersTogether(prices: readonly Price[]): readonly Price[] {
  const offers = new Map<string, Price[]>();
  for (const price of prices) {
    const thing = JSON.stringify([price.item, price.length_mm]);
    const mine = offers.get(thing);
    if (mine) mine.push(price);
    else offers.set(thing, [price]);
  }
  return [...offers.values()].flat();
}

/** The place, among those given, of the price nearest in length, the first of several; -1 when none is the same. */
function nearest(prices: readonly Price[], places: readonly number[], price: Price): number {
  let [best, at] = [SAME_LENGTH_MM, -1];
  for (const i of places) {
    const far = apart(prices[i]!, price);
    if (far < best) [best, at] = [far, i];
  }
  return at;
}

/** Packs of the old list that the new prices take out, in words: a price of a box is not one of a piece. */
export function packNotes(gone: readonly Price[], come: readonly Price[]): readonly string[] {
  return gone.flatMap((old) => {
    const now = come.filter((p) => p.item === old.item && apart(old, p) < SAME_LENGTH_MM);
    if (now.length === 0 || now.some((price) => price.pack === old.pack)) return [];
    const packs = [...new Set(now.map((price) => price.pack))].join(", ");
    return [
      `${old.item}: the list had a price for ${pieces(old.pack)}, the file for ${packs}. Look at its pack.`,
    ];
  });
}

const pieces = (pack: number): string => (pack === 1 ? "one piece" : `a pack of ${pack}`);

/** What stands against merging: two currencies cannot be added. */
export function mergeFaults(
  file: string,
  there: readonly Price[],
  come: readonly Price[],
  way: MergeWay,
): readonly Problem[] {
  const [old, fresh] = [there, come].map((prices) => [...new Set(prices.map((p) => p.currency))].sort());
  if (way === "replace" || old!.length === 0 || fresh!.length === 0 || String(old) === String(fresh))
    return [];
  return [
    fault(file, {
      code: "price-currencies",
      place: "currency",
      value: `${fresh!.join(", ")} and ${old!.join(", ")}`,
      message: `The file is in ${fresh!.join(" and ")}, the list in ${old!.join(" and ")}: they cannot be added.`,
      mend: `Replace the list; or, if the list's numbers are in truth ${fresh!.join(" and ")}, close this and write it into "Currency" first; or turn the file's prices into ${old!.join(" and ")}, with the rate in the source.`,
    }),
  ];
}
