import type { Cart } from "@causey/engine/plan";
import { showQuantity, type UnitSystem } from "@causey/engine/units";

/** A light hand cart to start from; its overall size must be told. Common practice, no source. */
export const handCart: Cart = {
  name: "Hand cart",
  empty_kg: 25,
  load_kg: 50,
  wet_kg: 5,
  width_mm: null,
  length_mm: null,
  track_mm: 500,
  axle_distance_mm: 0,
  axles: 1,
  wheel_width_mm: 50,
  wheel_contact_mm: 80,
};

const masses = ["empty_kg", "load_kg", "wet_kg"] as const;

/** What the cart weighs loaded, and with mud as the checks count it; whether these are still the first figures. */
export function loadWords(cart: Cart, units: UnitSystem): string {
  const kg = (mass: number): string => showQuantity(mass, "kg", units);
  const loaded = cart.empty_kg + cart.load_kg;
  const sum = `Loaded ${kg(loaded)}; with mud and water ${kg(loaded + cart.wet_kg)}, which the checks count.`;
  const isPreset = masses.every((key) => cart[key] === handCart[key]);
  return isPreset
    ? `${sum} These masses, mud and water too, stand here to begin with (common practice, no source): weigh your cart.`
    : sum;
}
