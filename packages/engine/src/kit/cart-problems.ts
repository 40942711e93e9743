import { shorten, type Problem } from "../formula/index.ts";
import type { LumberSize } from "../materials/tables.ts";
import { clearWidth } from "./deck.ts";
import { say } from "./faults.ts";
import type { Kit } from "./types.ts";

/** What decides whether a cart fits on the deck. */
export interface CartTrack {
  readonly name: string;
  /** Wheels apart across the walkway, centre to centre. */
  readonly track_mm: number;
  readonly wheel_width_mm: number;
}

/**
 * Whether a cart's wheels find room between the curbs or edges of a kit.
 *
 * place    where the cart stands in the plan file, for the message
 * returns  one problem when wheel track plus wheel width exceeds the clear width, else none
 */
export function cartProblems(
  kit: Kit,
  cart: CartTrack,
  sizes: readonly LumberSize[],
  place = "cart",
): Problem[] {
  const needed = cart.track_mm + cart.wheel_width_mm;
  const clear = clearWidth(kit, sizes);
  if (needed <= clear) return [];
  return [
    {
      code: "kit-cart",
      severity: "error",
      file: "plan.json",
      place,
      value: shorten(cart.track_mm),
      message: `the wheels of "${cart.name}" need ${say(needed)} across, and the deck is clear for ${say(clear)}`,
      mend: `Use a cart with wheels at most ${say(Math.max(0, clear - cart.wheel_width_mm))} apart, or a kit with a wider deck.`,
    },
  ];
}
