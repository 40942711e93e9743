import { stroked, words, type Point, type Shape } from "../scene/index.ts";

const LINE = { ink: "ink", width: 0.13 } as const;
const TICK = { ink: "ink", width: 0.3 } as const;
const SIZE = 2;

/** A row of lengths between points along the sheet's width, at height `y`; a short one's words stand aslant above. */
export function chainAcross(xs: readonly number[], y: number, text: (i: number) => string): Shape[] {
  if (xs.length < 2) return [];
  const shapes: Shape[] = [
    stroked(
      [
        [xs[0]! - 1, y],
        [xs.at(-1)! + 1, y],
      ],
      LINE,
    ),
    ...xs.map((x) => tick(x, y)),
  ];
  for (let i = 0; i + 1 < xs.length; i++) {
    const middle = (xs[i]! + xs[i + 1]!) / 2;
    const label = text(i);
    const isTight = xs[i + 1]! - xs[i]! < label.length * SIZE * 0.48;
    shapes.push(
      isTight
        ? words(label, [middle + 0.5, y - 1], { size: SIZE, turn: -60, halo: true })
        : words(label, [middle, y - 0.9], { size: SIZE, anchor: "middle", halo: true }),
    );
  }
  return shapes;
}

const tick = (x: number, y: number): Shape =>
  stroked(
    [
      [x - 0.8, y + 0.8],
      [x + 0.8, y - 0.8],
    ],
    TICK,
  );

/** One length up the sheet, at `x`, between two heights, its words along it: for lengths longer than the words. */
export const heightMark = (x: number, from: number, to: number, text: string): Shape[] => [
  stroked(
    [
      [x, from],
      [x, to],
    ],
    LINE,
  ),
  tick(x, from),
  tick(x, to),
  words(text, [x - 0.9, (from + to) / 2], { size: SIZE, turn: -90, anchor: "middle", halo: true }),
];

/** One length up the sheet with its words level beside it, for short lengths. */
export const heightBeside = (x: number, from: number, to: number, text: string): Shape[] => [
  stroked(
    [
      [x, from],
      [x, to],
    ],
    LINE,
  ),
  tick(x, from),
  tick(x, to),
  words(text, [x + 1.6, (from + to) / 2 + 0.7], { size: SIZE + 0.2, halo: true }),
];

/** A thin line from a drawing to its dimension. */
export const helper = (from: Point, to: Point): Shape => stroked([from, to], { ink: "rule", width: 0.13 });
