import type { Box, CircleShape, Ink, PathShape, Point, Shape, Stroke, TextShape } from "./types.ts";

export const thin: Stroke = { ink: "ink", width: 0.18 };
export const medium: Stroke = { ink: "ink", width: 0.3 };
export const bold: Stroke = { ink: "ink", width: 0.5 };
export const faint: Stroke = { ink: "rule", width: 0.15 };

export const stroked = (points: readonly Point[], stroke: Stroke = thin): PathShape => ({
  kind: "path",
  lines: [points],
  closed: false,
  stroke,
});

export const area = (
  rings: readonly (readonly Point[])[],
  look: Pick<PathShape, "stroke" | "fill">,
): PathShape => ({ kind: "path", lines: rings, closed: true, ...look });

export const boxShape = (
  { x, y, width, height }: Box,
  look: Pick<PathShape, "stroke" | "fill"> = { stroke: thin },
): PathShape =>
  area(
    [
      [
        [x, y],
        [x + width, y],
        [x + width, y + height],
        [x, y + height],
      ],
    ],
    look,
  );

export const disc = (at: Point, radius: number, look: Pick<CircleShape, "stroke" | "fill">): CircleShape => ({
  kind: "circle",
  at,
  radius,
  ...look,
});

interface TextLook {
  readonly size?: number;
  readonly weight?: TextShape["weight"];
  readonly anchor?: TextShape["anchor"];
  readonly ink?: Ink;
  readonly turn?: number;
  readonly halo?: boolean;
}

/** Words on the sheet; 2.6 mm high unless told otherwise. */
export const words = (text: string, at: Point, look: TextLook = {}): TextShape => ({
  kind: "text",
  at,
  text,
  size: look.size ?? 2.6,
  weight: look.weight ?? "regular",
  anchor: look.anchor ?? "start",
  ink: look.ink ?? "ink",
  ...(look.turn === undefined ? {} : { turn: look.turn }),
  ...(look.halo === undefined ? {} : { halo: look.halo }),
});

/** Every shape of a list, those inside clips too. */
export function* allShapes(shapes: readonly Shape[]): Generator<Exclude<Shape, { kind: "clip" }>> {
  for (const shape of shapes) {
    if (shape.kind === "clip") yield* allShapes(shape.shapes);
    else yield shape;
  }
}

/** Every word that a scene shows, in the order it is drawn. */
export const sceneTexts = (shapes: readonly Shape[]): string[] =>
  [...allShapes(shapes)].flatMap((shape) => (shape.kind === "text" ? [shape.text] : []));
