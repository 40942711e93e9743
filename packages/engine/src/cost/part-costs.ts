import {
  moduleCounts,
  modulePieces,
  platformCounts,
  platformPieces,
  rampCounts,
  rampPieces,
  supportCounts,
  supportKind,
  supportPieces,
  type Counted,
  type Kit,
  type PlacedPiece,
} from "../kit/index.ts";
import { stockPrices, type LumberSize, type Price } from "../materials/index.ts";

/** Money of one part, or null when the price list lacks something it needs. */
export interface PartCosts {
  readonly module: (length_mm: number) => number | null;
  readonly platform: number | null;
  readonly support: (kind: string, height_m: number) => number | null;
  readonly ramp: (length_mm: number) => number | null;
  /** Items without a price, over every part of the kit. */
  readonly missing: readonly string[];
}

/**
 * What each part of a kit costs in materials, quickly, for the layout search.
 *
 * Each piece is priced by length at the cheapest stock that is long enough for it, counted things at the cheapest
 * pack. An estimate: waste, whole packs, tax and labour are left out, so a finished order costs more.
 *
 * prices   all in one currency
 * returns  money; null where a price is missing, and `missing` names what
 */
export function partCosts(kit: Kit, prices: readonly Price[], sizes: readonly LumberSize[]): PartCosts {
  const rates = new Rates(prices);
  const memo = new Map<string, number | null>();
  const remember = (key: string, find: () => number | null): number | null => {
    if (!memo.has(key)) memo.set(key, find());
    return memo.get(key)!;
  };
  const module = (length_mm: number): number | null =>
    remember(`module ${length_mm}`, () =>
      rates.part(modulePieces(kit, length_mm, sizes), moduleCounts(kit, length_mm, sizes)),
    );
  const support = (kind: string, height_m: number): number | null =>
    remember(`${kind} ${Math.round(height_m * 1e5)}`, () =>
      rates.part(supportPieces(kit, kind, height_m, sizes), supportCounts(supportKind(kit, kind))),
    );
  const ramp = (length_mm: number): number | null =>
    remember(`ramp ${length_mm}`, () =>
      rates.part(rampPieces(kit, length_mm, sizes), rampCounts(kit, length_mm, sizes)),
    );
  const platform = rates.part(platformPieces(kit, sizes), platformCounts(kit, sizes));
  for (const length of kit.lengths_mm) module(length);
  for (const length of kit.ramp?.lengths_mm ?? []) ramp(length);
  for (const s of kit.supports) support(s.id, s.height_max_mm / 1000);
  return { module, platform, support, ramp, missing: rates.missing() };
}

/** Prices of a list turned into money per millimetre and per piece; remembers what it could not find. */
class Rates {
  readonly #prices: readonly Price[];
  readonly #stock = new Map<string, readonly { readonly length: number; readonly perMm: number }[]>();
  readonly #missing = new Set<string>();

  constructor(prices: readonly Price[]) {
    this.#prices = prices;
  }

  missing = (): string[] => [...this.#missing].sort();

  part(pieces: readonly PlacedPiece[], counted: readonly Counted[]): number | null {
    const amounts = [
      ...pieces.flatMap((p) => (p.size === null ? [] : [this.#timber(p.size, p.length_mm)])),
      ...counted.map((c) => this.#counted(c)),
    ];
    return amounts.includes(null) ? null : amounts.reduce<number>((sum, a) => sum + a!, 0);
  }

  #timber(size: string, length_mm: number): number | null {
    const fits = this.#stockOf(size).filter((s) => s.length >= length_mm - 1);
    if (fits.length > 0) return Math.min(...fits.map((s) => Math.min(length_mm, s.length) * s.perMm));
    this.#missing.add(this.#stockOf(size).length === 0 ? size : `${size}, ${length_mm} mm`);
    return null;
  }

  #stockOf(size: string) {
    const known = this.#stock.get(size);
    if (known) return known;
    const stock = [...stockPrices(this.#prices, size)].map(([length, p]) => ({
      length,
      perMm: p.price / p.pack / length,
    }));
    this.#stock.set(size, stock);
    return stock;
  }

  #counted({ item, count }: Counted): number | null {
    const offers = this.#prices.filter((p) => p.item === item && p.length_mm === null);
    if (offers.length > 0) return count * Math.min(...offers.map((p) => p.price / p.pack));
    this.#missing.add(item);
    return null;
  }
}
