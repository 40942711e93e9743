import { stroked, words, type Box, type Point, type Shape } from "../scene/index.ts";
import type { Side } from "./tiles.ts";

const LABEL_MM = 30;

/** Places that the words of the match lines take up. */
export const matchWords = ({ x, y, width, height }: Box, next: Partial<Record<Side, number>>): Box[] => {
  const [cx, cy] = [x + width / 2 - LABEL_MM / 2, y + height / 2 - LABEL_MM / 2];
  const boxes: Readonly<Record<Side, Box>> = {
    west: { x, y: cy, width: 4, height: LABEL_MM },
    east: { x: x + width - 4, y: cy, width: 4, height: LABEL_MM },
    north: { x: cx, y, width: LABEL_MM, height: 4 },
    south: { x: cx, y: y + height - 4, width: LABEL_MM, height: 4 },
  };
  return (Object.keys(next) as Side[]).map((side) => boxes[side]);
};

/** Heavy lines along the sides where another detail goes on, each with the number of that detail. */
export function matchLines({ x, y, width, height }: Box, next: Partial<Record<Side, number>>): Shape[] {
  const [right, foot] = [x + width, y + height];
  const sides: Readonly<
    Record<Side, { readonly line: readonly Point[]; readonly at: Point; readonly turn: number }>
  > = {
    west: {
      line: [
        [x, y],
        [x, foot],
      ],
      at: [x + 2.6, y + height / 2],
      turn: -90,
    },
    east: {
      line: [
        [right, y],
        [right, foot],
      ],
      at: [right - 1.4, y + height / 2],
      turn: -90,
    },
    north: {
      line: [
        [x, y],
        [right, y],
      ],
      at: [x + width / 2, y + 2.6],
      turn: 0,
    },
    south: {
      line: [
        [x, foot],
        [right, foot],
      ],
      at: [x + width / 2, foot - 1.2],
      turn: 0,
    },
  };
  return (Object.entries(next) as [Side, number][]).flatMap(([side, n]) => {
    const { line, at, turn } = sides[side];
    return [
      stroked(line, { ink: "ink", width: 0.7, dash: [8, 1.5, 1.5, 1.5] }),
      words(`match line, see detail ${n + 1}`, at, {
        size: 2.2,
        weight: "semibold",
        anchor: "middle",
        turn,
        halo: true,
      }),
    ];
  });
}
