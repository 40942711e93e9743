import { stroked, words, type Box, type Ink, type Point, type Shape, type Stroke } from "../scene/index.ts";
import { linearScale, niceTicks, type LinearScale } from "./scale.ts";

export interface Axis {
  readonly title: string;
  readonly range: readonly [number, number];
  /** Words of a tick; the bare number when left out. */
  readonly show?: (value: number) => string;
}

export interface Chart {
  readonly x: LinearScale;
  readonly y: LinearScale;
  /** Frame, ticks, faint lines across and titles. */
  readonly shapes: readonly Shape[];
  /** Where the curves go. */
  readonly inner: Box;
}

const SIZE = 2.1;
const [LEFT, FOOT, HEAD] = [14, 10, 4];

/** The frame of a chart inside a box: x to the right, y upward, round ticks, faint lines at the heights. */
export function chartFrame(box: Box, x: Axis, y: Axis): Chart {
  const inner = {
    x: box.x + LEFT,
    y: box.y + HEAD,
    width: box.width - LEFT - 3,
    height: box.height - FOOT - HEAD,
  };
  const foot = inner.y + inner.height;
  const right = inner.x + inner.width;
  const xs = linearScale(x.range, [inner.x, right]);
  const ys = linearScale(y.range, [foot, inner.y]);
  const show = (axis: Axis, value: number): string => axis.show?.(value) ?? String(value);
  const across = niceTicks(...sorted(x.range), Math.max(2, inner.width / 22)).flatMap((v): Shape[] => [
    line([xs.at(v), foot], [xs.at(v), foot + 1.2], "ink"),
    words(show(x, v), [xs.at(v), foot + 3.6], { size: SIZE, anchor: "middle" }),
  ]);
  const up = niceTicks(...sorted(y.range), Math.max(2, inner.height / 12)).flatMap((v): Shape[] => [
    line([inner.x, ys.at(v)], [right, ys.at(v)], "rule"),
    words(show(y, v), [inner.x - 1.4, ys.at(v) + 0.7], { size: SIZE, anchor: "end" }),
  ]);
  return {
    x: xs,
    y: ys,
    inner,
    shapes: [
      ...up,
      ...across,
      line([inner.x, foot], [right, foot], "ink"),
      line([inner.x, inner.y], [inner.x, foot], "ink"),
      words(x.title, [right, foot + 7.6], { size: SIZE, anchor: "end", ink: "second" }),
      words(y.title, [box.x, box.y + 2], { size: SIZE, ink: "second" }),
    ],
  };
}

/** A curve through known points; it breaks where a value is null, for a gap is no value. */
export function curve(
  { x, y }: Pick<Chart, "x" | "y">,
  points: readonly { readonly x: number; readonly y: number | null }[],
  stroke: Stroke,
): Shape[] {
  const runs: Point[][] = [[]];
  for (const p of points) {
    if (p.y === null) runs.push([]);
    else runs.at(-1)!.push([x.at(p.x), y.at(p.y)]);
  }
  return runs.filter((run) => run.length > 1).map((run) => stroked(run, stroke));
}

const line = (a: Point, b: Point, ink: Ink): Shape =>
  stroked([a, b], { ink, width: ink === "rule" ? 0.13 : 0.2 });

const sorted = ([a, b]: readonly [number, number]): [number, number] => (a < b ? [a, b] : [b, a]);
