import { expect, test } from "vitest";
import { fieldCart } from "../../test/support/straight-walkway.ts";
import { wheelOf } from "./piece-cases.ts";
import { casesOf } from "./walk-demand.ts";

test("mud and water on the cart weigh on the stringers and on one wheel as load does", () => {
  const muddy = { ...fieldCart, wet_kg: 12 };
  const heavier = { ...fieldCart, load_kg: fieldCart.load_kg + 12 };
  const weights = (cart: typeof fieldCart): number[] =>
    casesOf([{ name: "V", people: 2, person_kg: 90, spacing_mm: 1500, cart }], "metric").flatMap((c) =>
      c.loads.map((l) => l.weight),
    );
  expect(weights(muddy)).toEqual(weights(heavier));
  const sum = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0);
  expect(sum(weights(muddy))).toBeGreaterThan(sum(weights(fieldCart)));
  expect(wheelOf(muddy)()).toBe(wheelOf(heavier)());
  expect(wheelOf(muddy)()).toBeGreaterThan(wheelOf(fieldCart)());
});
