import type { Cart } from "../plan/document.ts";
import { fullMass } from "./cart-mass.ts";
import { feetInches, showQuantity, type UnitSystem } from "../units/index.ts";
import { cartCase, fileCase, people, pointCase, type LoadCase, type WalkDemand } from "./walk-demand.ts";

/** One ordinary demand, from light to heavy within its `ladder`. */
export interface Rung {
  readonly ladder: string;
  readonly words: string;
  /** Words where the whole ladder passes. */
  readonly beyond: string;
  /** Words for "not even this", where it is the first of its ladder; null leaves them to the check. */
  readonly none: string | null;
  readonly load: LoadCase;
}

/** Most people in file that the answer speaks of. */
const MOST = 6;

/**
 * Ordinary demands that a person can picture, built from the heaviest walker and the closest file of the plan:
 * one person, two people and so on; each cart empty with one person, loaded with one, with two and so on; and the
 * single load that is always asked for.
 */
export function ladderOf(demands: readonly WalkDemand[], units: UnitSystem): Rung[] {
  const walking = demands.filter((d) => d.people > 0);
  const kg = Math.max(0, ...walking.map((d) => d.person_kg));
  const spacing = Math.min(...walking.map((d) => d.spacing_mm), 1e6) / 1000;
  const carts = cartsOf(demands).flatMap((cart) => cartRungs(cart, kg, spacing, walking.length > 0));
  return [...(walking.length > 0 ? fileRungs(kg, spacing, units) : []), ...carts, singleRung(units)];
}

function fileRungs(kg: number, spacing: number, units: UnitSystem): Rung[] {
  const apart = units === "us" ? feetInches(spacing, 1) : showQuantity(spacing, "m", units);
  const each = `${showQuantity(kg, "kg", units)} each, ${apart} apart`;
  return Array.from({ length: MOST }, (_, i): Rung => {
    const one = `one person of ${showQuantity(kg, "kg", units)}`;
    const words = i === 0 ? one : `${people(i + 1)} in file (${each})`;
    const beyond = `at least ${i + 1} people in file (${each})`;
    return { ladder: "people", words, beyond, none: null, load: fileCase(words, i + 1, kg, spacing) };
  });
}

function cartRungs(cart: Cart, kg: number, spacing: number, hasWalkers: boolean): Rung[] {
  const first = hasWalkers ? 1 : 0;
  const beside = (count: number, least = ""): string => (count === 0 ? "" : ` and ${least}${people(count)}`);
  const empty = `${cart.name} empty${first === 0 ? "" : " with 1 person"}`;
  const rung = (words: string, cart_kg: number, count: number, beyond = words): Rung => ({
    ladder: `cart ${cart.name}`,
    words,
    beyond,
    none: `not the ${empty}`,
    load: cartCase(words, cart, cart_kg, count, kg, spacing),
  });
  const full = fullMass(cart);
  const loaded = (count: number): Rung => {
    const words = `${cart.name} with its load`;
    return rung(words + beside(count), full, count, words + beside(count, "at least "));
  };
  return [rung(empty, cart.empty_kg, first), ...(hasWalkers ? [1, 2, 3] : [0]).map(loaded)];
}

function singleRung(units: UnitSystem): Rung {
  const load = pointCase(units);
  return { ladder: "single load", words: load.name, beyond: load.name, none: `not ${load.name}`, load };
}

/** Each cart of the visits once. */
export function cartsOf(demands: readonly WalkDemand[]): Cart[] {
  const carts = new Map<string, Cart>();
  for (const { cart } of demands) if (cart) carts.set(JSON.stringify(cart), cart);
  return [...carts.values()];
}

/**
 * What passes, in words: of each ladder the highest rung below which everything passes.
 *
 * passes   whether one rung's load passes
 * less     words for what is carried when not even the first person is
 */
export function carriesText(
  rungs: readonly Rung[],
  passes: (load: LoadCase) => boolean,
  less: string,
): string {
  const carried: string[] = [];
  const refused: string[] = [];
  for (const ladder of new Set(rungs.map((r) => r.ladder))) {
    const steps = rungs.filter((r) => r.ladder === ladder);
    const firstFail = steps.findIndex((r) => !passes(r.load));
    const best = firstFail < 0 ? steps.at(-1) : steps[firstFail - 1];
    if (best) carried.push(firstFail < 0 ? best.beyond : best.words);
    else if (steps[0]!.none === null) carried.push(less);
    else refused.push(steps[0]!.none);
  }
  return `Carries ${[...(carried.length > 0 ? carried : [less]), ...refused].join("; ")}.`;
}
