import type { Box, Point } from "../scene/index.ts";

/** A rectangle on the ground: west, south, east, north [m]. */
export type Extent = readonly [number, number, number, number];

/** How ground stands on a sheet: a rectangle of it in a box, at one scale. */
export interface SheetView {
  readonly box: Box;
  readonly m_per_mm: number;
  /** Ground at the middle of the box. */
  readonly middle: readonly [number, number];
}

export const toSheet = (view: SheetView, [x, y]: readonly [number, number]): Point => [
  view.box.x + view.box.width / 2 + (x - view.middle[0]) / view.m_per_mm,
  view.box.y + view.box.height / 2 - (y - view.middle[1]) / view.m_per_mm,
];

export const extentOfView = ({ box, m_per_mm, middle: [x, y] }: SheetView): Extent => {
  const [w, h] = [(box.width / 2) * m_per_mm, (box.height / 2) * m_per_mm];
  return [x - w, y - h, x + w, y + h];
};

/** The rectangle around points, widened on every side; null for none. */
export function extentAround(points: readonly (readonly [number, number])[], beyond: number): Extent | null {
  if (points.length === 0) return null;
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  return [
    Math.min(...xs) - beyond,
    Math.min(...ys) - beyond,
    Math.max(...xs) + beyond,
    Math.max(...ys) + beyond,
  ];
}

export const meets = (a: Extent, b: Extent): boolean =>
  a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];

/** Places labels so that none covers another: the first come are placed, a later one that finds no room is left out. */
export class LabelRoom {
  readonly #taken: Box[] = [];
  readonly #within: Box;

  constructor(within: Box) {
    this.#within = within;
  }

  /** Keeps a place clear. */
  keep(box: Box): void {
    this.#taken.push(box);
  }

  /** Whether the place is free and inside; if so it is taken. */
  take(box: Box): boolean {
    const w = this.#within;
    const isInside =
      box.x >= w.x &&
      box.y >= w.y &&
      box.x + box.width <= w.x + w.width &&
      box.y + box.height <= w.y + w.height;
    const isFree = this.#taken.every(
      (t) =>
        t.x + t.width <= box.x ||
        box.x + box.width <= t.x ||
        t.y + t.height <= box.y ||
        box.y + box.height <= t.y,
    );
    if (isInside && isFree) this.#taken.push(box);
    return isInside && isFree;
  }
}
