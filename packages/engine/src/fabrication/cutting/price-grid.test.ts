import { describe, expect, test } from "vitest";
import { greatestCommonDivisor, priceGrid } from "./price-grid.ts";

describe("price grid", () => {
  test("prices in cents become whole cents, at the coarsest step that holds them", () => {
    expect(priceGrid([9.5, 13.1], 100).units).toEqual([95, 131]);
    expect(priceGrid([9.48, 13], 100).units).toEqual([948, 1300]);
    expect(priceGrid([9, 13], 100).units).toEqual([9, 13]);
    expect(priceGrid([9.48, 13], 100).toMoney(948 * 3)).toBe(28.44);
  });

  test("the rounding noise of a product is no difference in price", () => {
    const price = 3.658 * 2.61;
    const grid = priceGrid([price, 12], 10);
    expect(grid.isExact).toBe(true);
    expect(grid.toMoney(grid.units[0]!)).toBeCloseTo(price, 12);
  });

  test("one price with a long tail counts sticks", () => {
    const grid = priceGrid([1 / 3, 1 / 3], 10);
    expect(grid.units).toEqual([1, 1]);
    expect(grid.toMoney(4)).toBe(4 / 3);
  });

  test("several prices with long tails are rounded down, by less than a billionth", () => {
    const prices = [1 / 3, 2 / 7, 9.123456789];
    const grid = priceGrid(prices, 2000);
    expect(grid.isExact).toBe(false);
    grid.units.forEach((unit, i) => {
      expect(Number.isSafeInteger(unit * 2000)).toBe(true);
      expect(grid.toMoney(unit)).toBeLessThanOrEqual(prices[i]!);
      expect(grid.toMoney(unit)).toBeGreaterThan(prices[i]! * (1 - 1e-9));
    });
  });

  test("prices of nothing stay nothing", () => {
    expect(priceGrid([0, 0], 5).units).toEqual([0, 0]);
    expect(greatestCommonDivisor([0, 0])).toBe(0);
    expect(greatestCommonDivisor([950, 1200, 0])).toBe(50);
  });
});
