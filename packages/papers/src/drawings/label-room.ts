import { words, type Box, type Ink, type Point, type Shape } from "../scene/index.ts";
import { textWidth, type Weight } from "../text/index.ts";

interface LabelLook {
  readonly size: number;
  readonly weight?: Weight;
  readonly ink?: Ink;
  /** Whether it may lie over what was only asked to be kept free if possible. */
  readonly mayCover?: boolean;
}

const apart = (a: Box, b: Box): boolean =>
  a.x + a.width <= b.x || b.x + b.width <= a.x || a.y + a.height <= b.y || b.y + b.height <= a.y;

/** Places labels so that none covers another: the first come are placed, a later one that finds no room is left out. */
export class LabelRoom {
  readonly #taken: Box[] = [];
  readonly #shy: Box[] = [];
  readonly #within: Box;

  constructor(within: Box) {
    this.#within = within;
  }

  /** Keeps a place clear of every label. */
  keep(box: Box): void {
    this.#taken.push(box);
  }

  /** Keeps a place clear of those labels that may not cover it. */
  shun(box: Box): void {
    this.#shy.push(box);
  }

  /** A label centred on the first of the places where it is free and inside; nothing where there is none. */
  label(text: string, middles: readonly Point[], look: LabelLook): Shape[] {
    const width = textWidth(text, look.size, look.weight) + 0.8;
    const height = look.size * 1.15;
    for (const [x, y] of middles) {
      const box = { x: x - width / 2, y: y - height / 2, width, height };
      if (!this.#isFree(box, look.mayCover ?? false)) continue;
      this.#taken.push(box);
      return [
        words(text, [x, y + look.size * 0.34], {
          size: look.size,
          weight: look.weight ?? "regular",
          ink: look.ink ?? "ink",
          anchor: "middle",
          halo: true,
        }),
      ];
    }
    return [];
  }

  #isFree(box: Box, mayCover: boolean): boolean {
    const w = this.#within;
    const isInside =
      box.x >= w.x + 0.6 &&
      box.y >= w.y + 0.6 &&
      box.x + box.width <= w.x + w.width - 0.6 &&
      box.y + box.height <= w.y + w.height - 0.6;
    return isInside && [...this.#taken, ...(mayCover ? [] : this.#shy)].every((t) => apart(t, box));
  }
}

/** Places around a point for a label of this width: right, left, above, below, and the corners. */
export function around([x, y]: Point, off: number, text: string, size: number, weight?: Weight): Point[] {
  const half = textWidth(text, size, weight) / 2 + 0.4;
  const up = off + size * 0.6;
  return [
    [x + off + half, y],
    [x - off - half, y],
    [x, y - up],
    [x, y + up],
    [x + off + half, y - up],
    [x - off - half, y - up],
    [x + off + half, y + up],
    [x - off - half, y + up],
  ];
}
