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
  let [w, s, e, n] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    w = Math.min(w, x);
    s = Math.min(s, y);
    e = Math.max(e, x);
    n = Math.max(n, y);
  }
  return [w - beyond, s - beyond, e + beyond, n + beyond];
}

export const meets = (a: Extent, b: Extent): boolean =>
  a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];
