import type { CuttingPlan } from "../fabrication/types.ts";
import { cuttingProblems, stockPrices, type Unpriced } from "./cutting-problems.ts";
import { cheapestPacks } from "./packs.ts";
import type { CountLine, OrderLine, Price, TakeOff } from "./types.ts";

/** The cutting plan of one lumber size. */
export interface SizePlan {
  readonly size: string;
  readonly plan: CuttingPlan;
}

/** Money to the cent, halves away from zero. */
export const toCents = (amount: number): number => {
  const cents = Math.round(Math.abs(amount) * 100 + 1e-7);
  return amount < 0 && cents > 0 ? -cents / 100 : cents / 100;
};

/**
 * What to buy: sticks from the cutting plans, counted things in whole selling units.
 *
 * plans    one cutting plan for each size, as `cuttingProblems` asked for them
 * returns  order lines, each amount rounded to the cent, and what the price list lacks: nothing is ordered for that
 *
 * Where the list sells a counted thing in packs of several sizes, the mix that costs least is ordered.
 */
export function orderList(
  off: TakeOff,
  plans: readonly SizePlan[],
  prices: readonly Price[],
): { readonly order: readonly OrderLine[]; readonly unpriced: readonly Unpriced[] } {
  const timber = cuttingProblems(off, prices, 0);
  const unplanned = timber.problems
    .filter(({ size }) => !plans.some((p) => p.size === size))
    .map(({ size, problem }) => ({ item: size, needed: problem.pieces.reduce((n, p) => n + p.count, 0) }));
  const lumber = plans.map((p) => lumberLines(p, prices));
  const counted = off.counted.map((line) => countedLines(line, prices));
  return {
    order: [...lumber.flatMap((l) => l.order), ...counted.flatMap((l) => l ?? [])],
    unpriced: [
      ...timber.unpriced,
      ...unplanned,
      ...lumber.flatMap((l) => l.unpriced),
      ...off.counted
        .filter((_, i) => counted[i] === null)
        .map((line) => ({ item: line.item, needed: line.count })),
    ],
  };
}

function lumberLines({ size, plan }: SizePlan, prices: readonly Price[]) {
  const stock = stockPrices(prices, size);
  const order: OrderLine[] = [];
  const unpriced: Unpriced[] = [];
  for (const { length_mm, count } of plan.stock_used) {
    const price = stock.get(length_mm);
    if (price) order.push(orderLine(price, count, Math.ceil(count / price.pack)));
    else if (count > 0) unpriced.push({ item: `${size}, stock of ${length_mm} mm`, needed: count });
  }
  return { order: order.filter((line) => line.needed > 0), unpriced };
}

/** Null when the list has no price for the item. */
function countedLines(line: CountLine, prices: readonly Price[]): OrderLine[] | null {
  const offers = prices.filter((p) => p.item === line.item && p.length_mm === null);
  if (offers.length === 0) return null;
  const bought = cheapestPacks(line.count, offers);
  let open = line.count;
  return offers.flatMap((price, i) => {
    if (bought[i] === 0) return [];
    const covered = Math.min(open, bought[i]! * price.pack);
    open -= covered;
    return [orderLine(price, covered, bought[i]!)];
  });
}

const orderLine = (price: Price, needed: number, quantity: number): OrderLine => ({
  item: price.item,
  description: price.description,
  length_mm: price.length_mm,
  quantity,
  needed,
  unit_price: price.price,
  amount: toCents(quantity * price.price),
  price_date: price.date,
  price_source: price.source,
});
