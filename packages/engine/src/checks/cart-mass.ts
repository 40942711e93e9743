import type { Cart } from "../plan/document.ts";

/** The cart as it comes back off the marsh: itself, its load, and what mud and water add [kg]. */
export const fullMass = (cart: Cart): number => cart.empty_kg + cart.load_kg + cart.wet_kg;
