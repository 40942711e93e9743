import type { Box, Shape } from "../../src/scene/index.ts";
import { textWidth } from "../../src/text/index.ts";

/** The rectangle that a shape takes up; what is cut off by a clip is not counted. */
export function extentOf(shape: Shape): Box | null {
  switch (shape.kind) {
    case "clip":
      return shape.box;
    case "circle":
      return boxOf([
        [shape.at[0] - shape.radius, shape.at[1] - shape.radius],
        [shape.at[0] + shape.radius, shape.at[1] + shape.radius],
      ]);
    case "path":
      return boxOf(shape.lines.flat());
    case "text": {
      const width = textWidth(shape.text, shape.size, shape.weight);
      const from = { start: 0, middle: -width / 2, end: -width }[shape.anchor];
      const turn = ((shape.turn ?? 0) * Math.PI) / 180;
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      return boxOf(
        [from, from + width].flatMap((u) =>
          [-0.7 * shape.size, 0.2 * shape.size].map(
            (v) => [shape.at[0] + u * c - v * s, shape.at[1] + u * s + v * c] as const,
          ),
        ),
      );
    }
  }
}

function boxOf(points: readonly (readonly [number, number])[]): Box | null {
  if (points.length === 0) return null;
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}
