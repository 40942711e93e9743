/** Where a map looks: the ground point in the middle of the picture, and pixels per metre. */
export interface View {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** West, south, east, north [m]. */
export type Extent = readonly [number, number, number, number];
export type XY = readonly [number, number];

const FINEST = 400;
const COARSEST = 0.02;
const limit = (scale: number): number => Math.min(FINEST, Math.max(COARSEST, scale));

/** Ground to picture: east to the right, north up, pixels from the picture's upper left corner. */
export const toPicture = (view: View, size: Size, [x, y]: XY): XY => [
  size.width / 2 + (x - view.x) * view.scale,
  size.height / 2 - (y - view.y) * view.scale,
];

export const toGround = (view: View, size: Size, [px, py]: XY): XY => [
  view.x + (px - size.width / 2) / view.scale,
  view.y - (py - size.height / 2) / view.scale,
];

/** Room to keep free at the sides of a picture [px]. */
export interface Margins {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

/** The view that shows an extent whole inside the margins, in their middle. */
export function fit([west, south, east, north]: Extent, size: Size, margins: Margins): View {
  const { top, right, bottom, left } = margins;
  const scale = limit(
    Math.min(
      Math.max(size.width - left - right, 40) / Math.max(east - west, 1),
      Math.max(size.height - top - bottom, 40) / Math.max(north - south, 1),
    ),
  );
  return {
    x: (west + east) / 2 + (right - left) / 2 / scale,
    y: (south + north) / 2 + (top - bottom) / 2 / scale,
    scale,
  };
}

/** Zooms by a factor and keeps the ground under one picture point where it is. */
export function zoomAt(view: View, size: Size, at: XY, factor: number): View {
  const scale = limit(view.scale * factor);
  const [gx, gy] = toGround(view, size, at);
  return {
    scale,
    x: gx - (at[0] - size.width / 2) / scale,
    y: gy + (at[1] - size.height / 2) / scale,
  };
}

export const pan = (view: View, dx: number, dy: number): View => ({
  ...view,
  x: view.x - dx / view.scale,
  y: view.y + dy / view.scale,
});

/** The smallest extent around points; null for none. */
export function extentOf(points: Iterable<XY>): Extent | null {
  let [west, south, east, north] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    west = Math.min(west, x);
    south = Math.min(south, y);
    east = Math.max(east, x);
    north = Math.max(north, y);
  }
  return west <= east ? [west, south, east, north] : null;
}

/** The extent, widened about its middle to at least this breadth and height [m]: a lone place shows its surroundings. */
export function atLeast([west, south, east, north]: Extent, least_m: number): Extent {
  const across = Math.max(0, least_m - (east - west)) / 2;
  const up = Math.max(0, least_m - (north - south)) / 2;
  return [west - across, south - up, east + across, north + up];
}

/** SVG transform of a group whose coordinates are metres from `origin`, north up. */
export function groundTransform(view: View, size: Size, origin: XY): string {
  const [tx, ty] = toPicture(view, size, origin);
  return `translate(${tx} ${ty}) scale(${view.scale} ${-view.scale})`;
}
