import { sameYard, type LumberSize } from "../materials/index.ts";
import { M_PER_IN } from "../units/index.ts";
import { worstShare, type AcrossLoads, type WorstShare } from "../structure/index.ts";
import type { GradedLumber } from "./input.ts";
import type { Cart } from "../plan/document.ts";
import type { CaseLoad } from "./walk-demand.ts";
import { footEdgeDistance } from "./rules.ts";

/** Stringers of one part as a check sees them. */
export interface Frame {
  /** "12 ft module", "platform". */
  readonly name: string;
  /** Taken as the whole body length: the seats are not taken off. [m] */
  readonly span_m: number;
  /** Stringer centres across, rising [m]. */
  readonly positions_m: readonly number[];
  readonly size: string;
  readonly lumber: GradedLumber;
  /** Where feet and wheels can go: between curbs or deck edges [m]. */
  readonly clear_width_m: number;
  /** Longest free length of a stringer between cross pieces [m]. */
  readonly brace_m: number;
  /** A deck of boards across the stringers, that share the load. */
  readonly has_boards: boolean;
  /** Own weight of the part, soaked [kg/m]. */
  readonly dead_kg_m: number;
  /** How the part hangs together beside its stringers; left out, the stringers are checked one by one. */
  readonly build?: FrameBuild;
}

/** One row across the stringers. */
export interface FrameRow {
  /** Its middle from the part's start [m]. */
  readonly x_m: number;
  readonly size: string;
  readonly lay: "edge" | "flat";
}

/** Rows of cross pieces between the stringers, and what the part rests on. */
export interface FrameBuild {
  readonly rows: readonly FrameRow[];
  /** Deck boards that run through over all stringers; none where they end at each, or the deck is another. */
  readonly boards: readonly FrameRow[];
  /** Thickness of a stringer [m]: two that stand closer than that face to face have no cross piece between them. */
  readonly stringer_m: number;
  /** Length of the sills under the four edges of a platform [m]; null for a module, which rests on its ends. */
  readonly platform_sill_m: number | null;
  /** Length of the sills under the two edges that its stringers end at, where they are longer than the others [m]. */
  readonly platform_end_sill_m?: number;
}

const MOST_REPETITIVE_SPACING = 24 * M_PER_IN;

/** Three or more stringers, at most 24 in apart, under boards. */
export function isRepetitive({ positions_m: p, has_boards }: Frame): boolean {
  const widest = Math.max(...p.slice(1).map((x, i) => x - p[i]!));
  return has_boards && p.length >= 3 && widest <= MOST_REPETITIVE_SPACING + 1e-9;
}

/** Part of the own weight that the most loaded stringer takes: half of the bays on its two sides. */
export function deadShare({ positions_m: p }: Frame): number {
  if (p.length === 2) return 0.5;
  const inner = p.slice(1, -1).map((_, i) => (p[i + 2]! - p[i]!) / 2);
  return Math.max(...inner) / (p.at(-1)! - p[0]!);
}

const FEET: AcrossLoads = [{ offset: 0, part: 1 }];
const wheels = (cart: Cart): AcrossLoads => [
  { offset: -cart.track_mm / 2000, part: 0.5 },
  { offset: cart.track_mm / 2000, part: 0.5 },
];

/** How far the middle of a walker or a cart may stand from the middle of the deck [m]; negative when it does not fit. */
export const reachOf = (clear_width_m: number, cart: Cart | null): number =>
  cart
    ? (clear_width_m - (cart.track_mm + cart.wheel_width_mm) / 1000) / 2
    : Math.max(0, clear_width_m / 2 - footEdgeDistance({}));

/** Largest share of a walker or a cart that one stringer of the frame takes, and where it then stands. */
export const shareOn = (frame: Frame, stringer: number, cart: Cart | null): WorstShare =>
  worstShare(frame.positions_m, stringer, cart ? wheels(cart) : FEET, reachOf(frame.clear_width_m, cart));

/** The shares of every kind of load, worked out once per frame. */
export function shareTable(frame: Frame): (stringer: number, load: CaseLoad) => number {
  const known = new Map<Cart | null, number[]>();
  return (stringer, { cart }) => {
    let row = known.get(cart);
    if (!row) {
      row = frame.positions_m.map((_, i) => shareOn(frame, i, cart).share);
      known.set(cart, row);
    }
    return row[stringer]!;
  };
}

/** Stringers that differ: the other half mirrors them. */
export const distinctStringers = (frame: Frame): number[] =>
  Array.from({ length: Math.ceil(frame.positions_m.length / 2) }, (_, i) => i);

/** Lumber sizes of the same thickness that are deeper, from the next one up. */
export function deeperSizes(sizes: readonly LumberSize[], id: string): LumberSize[] {
  const own = sizes.find((s) => s.id === id);
  if (!own) return [];
  return sizes
    .filter((s) => sameYard(s, own) && s.thickness_in === own.thickness_in && s.width_in > own.width_in)
    .sort((a, b) => a.width_in - b.width_in);
}
