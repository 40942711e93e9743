import type { Shape, Stroke } from "../scene/index.ts";

/** Height of ordinary type on a sheet [mm]. */
export const SIZE = 2.6;
export const LEADING = 1.34;

/** Type of one flow: its height, and the height of a line [mm]. */
export interface Type {
  readonly size: number;
  readonly line: number;
  /** Over one at ordinary height: heads and gaps shrink and grow with the type. */
  readonly scale: number;
}
export const fine: Stroke = { ink: "rule", width: 0.15 };
export const firm: Stroke = { ink: "ink", width: 0.25 };

/** What stands on a page as a whole, and never across two. */
export interface Piece {
  readonly height: number;
  readonly draw: (x: number, y: number) => Shape[];
  /** Must not stand alone at the foot of a page. */
  readonly keepWithNext?: boolean;
  /** Drawn again at the head of the next page. */
  readonly head?: Piece;
  /** Drawn at the head of a page. */
  readonly turns?: boolean;
}

/** Height of a line that a hand writes on [mm]: common practice, no source. */
export const HAND_LINE = 8;
