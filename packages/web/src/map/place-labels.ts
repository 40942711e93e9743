import type { XY } from "./view.ts";

export type LabelKind = "plot" | "start" | "branch" | "closed" | "water" | "habitat" | "quiet";

export interface LabelWish {
  readonly id: string;
  readonly text: string;
  readonly kind: LabelKind;
  /** The point it belongs to [px]. */
  readonly at: XY;
  /** Room between the point and the text; 0 centres the text on the point [px]. */
  readonly gap: number;
  readonly size: number;
}

export interface PlacedLabel extends LabelWish {
  /** Middle of the text [px]. */
  readonly middle: XY;
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Mean advance of the typeface over its size. */
const ADVANCE = 0.53;
export const textWidth = (text: string, size: number): number => text.length * size * ADVANCE;

const boxAt = ([x, y]: XY, { text, size }: LabelWish): Box => {
  const half = textWidth(text, size) / 2 + 2;
  return { left: x - half, right: x + half, top: y - size * 0.65, bottom: y + size * 0.65 };
};

const SIGN_HALF = 12;
/** The square of a plot or the triangle of a start. */
export const signBox = ([x, y]: XY): Box => ({
  left: x - SIGN_HALF,
  right: x + SIGN_HALF,
  top: y - SIGN_HALF,
  bottom: y + SIGN_HALF,
});

const meet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const holds = (box: Box, [x, y]: XY): boolean =>
  x > box.left && x < box.right && y > box.top && y < box.bottom;

/** Around a sign: right, left, above, below, then the corners. In an area: its middle, then a little off it. */
function middles(wish: LabelWish): XY[] {
  const { at, gap } = wish;
  if (gap === 0)
    return [
      [0, 0],
      [0, -20],
      [0, 20],
      [-50, 0],
      [50, 0],
    ].map(([dx, dy]) => [at[0] + dx!, at[1] + dy!]);
  const half = textWidth(wish.text, wish.size) / 2 + gap;
  const up = gap + wish.size * 0.5;
  return [
    [half, 0],
    [-half, 0],
    [0, -up],
    [0, up],
    [half * 0.9, -up],
    [half * 0.9, up],
    [-half * 0.9, -up],
    [-half * 0.9, up],
  ].map(([dx, dy]) => [at[0] + dx!, at[1] + dy!]);
}

/**
 * Finds a place for each label, in the order given: clear of the labels before it and of what is `blocked` (plots,
 * starts, the furniture of the map), and as far as may be of the `walkway`. Zone names that find no room are left out; plots and starts never are.
 */
export function placeLabels(
  wishes: readonly LabelWish[],
  blocked: readonly Box[],
  walkway: readonly XY[],
  size: { readonly width: number; readonly height: number },
): PlacedLabel[] {
  const taken: Box[] = [...blocked];
  const placed: PlacedLabel[] = [];
  for (const wish of wishes) {
    const best = bestMiddle(wish, taken, walkway, size);
    if (!best) continue;
    taken.push(boxAt(best, wish));
    placed.push({ ...wish, middle: best });
  }
  return placed;
}

function bestMiddle(
  wish: LabelWish,
  taken: readonly Box[],
  walkway: readonly XY[],
  { width, height }: { readonly width: number; readonly height: number },
): XY | null {
  const must = wish.kind === "plot" || wish.kind === "start";
  let best: XY | null = null;
  let least = must ? Infinity : wish.gap > 0 || wish.kind === "closed" ? 100 : 1;
  for (const middle of middles(wish)) {
    const box = boxAt(middle, wish);
    const outside = box.left < 4 || box.top < 4 || box.right > width - 4 || box.bottom > height - 4;
    const harm =
      (taken.some((t) => meet(t, box)) ? 100 : 0) +
      (outside ? 100 : 0) +
      walkway.filter((o) => holds(box, o)).length;
    if (harm < least) [best, least] = [middle, harm];
  }
  return best;
}
