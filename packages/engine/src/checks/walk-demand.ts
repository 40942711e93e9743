import type { Trace } from "../formula/index.ts";
import { fullMass } from "./cart-mass.ts";
import type { Cart, Visit } from "../plan/document.ts";
import { weightOf } from "../structure/index.ts";
import { kilograms, newtons, qty, showQuantity, type UnitSystem } from "../units/index.ts";
import { axleLoad } from "./formulas.ts";
import { bumpFactor, pointLoad } from "./rules.ts";

/** Who and what walks over the deck at one time. */
export type WalkDemand = Pick<Visit, "name" | "people" | "person_kg" | "spacing_mm" | "cart">;

/** One load of a case along the walkway: a walker, or an axle of the cart. */
export interface CaseLoad {
  /** Along the walkway [m]. */
  readonly at: number;
  /** [N] */
  readonly weight: number;
  /** The cart whose axle it is; null for feet. */
  readonly cart: Cart | null;
}

/** Loads that move together over the walkway, with the steps that made them. */
export interface LoadCase {
  readonly name: string;
  readonly loads: readonly CaseLoad[];
  readonly cart: Cart | null;
  readonly explain: (trace: Trace) => void;
  /** Pressure all over the clear deck at once [Pa]; there are no `loads` then. */
  readonly area_pa?: number;
  /** Deflection that the rule behind the case allows: span over this; left out, the checks' own limit. */
  readonly span_over?: number;
}

const walkers = (count: number, kg: number, spacing: number, from: number): CaseLoad[] =>
  Array.from({ length: count }, (_, i) => ({
    at: from + i * spacing,
    weight: weightOf({ m: kilograms(kg) }),
    cart: null,
  }));

/** "1 person", "3 people". */
export const people = (count: number): string => (count === 1 ? "1 person" : `${count} people`);

/** People walking in file. */
export function fileCase(name: string, count: number, kg: number, spacing: number): LoadCase {
  return {
    name,
    loads: walkers(count, kg, spacing, 0),
    cart: null,
    explain: (trace) => void weightOf({ m: kilograms(kg) }, trace, "one person with the pack"),
  };
}

/** A cart, empty or loaded, with a walker ahead when there are two or more, the others behind. */
export function cartCase(
  name: string,
  cart: Cart,
  cart_kg: number,
  count: number,
  kg: number,
  spacing: number,
): LoadCase {
  const load = (trace?: Trace): number =>
    axleLoad(
      { m: kilograms(cart_kg), k_b: bumpFactor({}, trace), n: qty(cart.axles, "1") },
      trace,
      cart.name,
    );
  const axles = Array.from({ length: cart.axles }, (_, i): CaseLoad => {
    return { at: (i * cart.axle_distance_mm) / 1000, weight: load(), cart };
  });
  const rear = axles.at(-1)!.at;
  const ahead = count >= 2 ? 1 : 0;
  const people = [
    ...walkers(ahead, kg, spacing, -spacing),
    ...walkers(count - ahead, kg, spacing, rear + spacing),
  ];
  return {
    name,
    loads: [...axles, ...people],
    cart,
    explain: (trace) => {
      load(trace);
      if (count > 0) weightOf({ m: kilograms(kg) }, trace, "one person with the pack");
    },
  };
}

/** The single load that any part of the walkway must carry whatever the visits are. */
export const pointCase = (units: UnitSystem): LoadCase => ({
  name: `one load of ${showQuantity(pointLoad({}), "N", units)} anywhere`,
  loads: [{ at: 0, weight: newtons(pointLoad({})), cart: null }],
  cart: null,
  explain: (trace) => void pointLoad({}, trace),
});

/** Every case that the visits ask for: each in file, each with its loaded cart, and the single load. */
export function casesOf(demands: readonly WalkDemand[], units: UnitSystem): LoadCase[] {
  const cases = demands.flatMap(({ name, people: count, person_kg, spacing_mm, cart }) => {
    const spacing = spacing_mm / 1000;
    const file = count > 0 ? [fileCase(`${name}: ${people(count)} in file`, count, person_kg, spacing)] : [];
    if (!cart) return file;
    const title = `${name}: ${cart.name} with its load and ${people(count)}`;
    return [...file, cartCase(title, cart, fullMass(cart), count, person_kg, spacing)];
  });
  return [...cases, pointCase(units)];
}
