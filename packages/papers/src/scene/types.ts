/** A point on the sheet: millimetres from its upper left corner, y downwards. */
export type Point = readonly [number, number];

/** Inks of the drawings; each has a grey of its own, so that a sheet printed in black still tells them apart. */
export type Ink = "ink" | "second" | "rule" | "water" | "plants" | "warning" | "closed" | "earth";

export interface Stroke {
  readonly ink: Ink;
  /** [mm] */
  readonly width: number;
  /** Dashes and gaps [mm]; whole when left out. */
  readonly dash?: readonly number[];
}

/** Even lines across an area; drawn as lines, so that every printer shows them alike. */
export interface Hatch {
  readonly ink: Ink;
  readonly angle_deg: number;
  readonly gap: number;
  readonly width: number;
  /** A second set of lines at right angles to the first. */
  readonly crossed?: boolean;
  readonly dash?: readonly number[];
}

export interface PathShape {
  readonly kind: "path";
  /** Lines, or the rings of an area: holes by the even-odd rule. */
  readonly lines: readonly (readonly Point[])[];
  readonly closed: boolean;
  readonly stroke?: Stroke;
  /** Ground colour of the area: white, or a pale tint of an ink. */
  readonly fill?: "white" | Ink | `pale-${Ink}`;
}

export interface TextShape {
  readonly kind: "text";
  readonly at: Point;
  readonly text: string;
  /** Height of the type [mm]. */
  readonly size: number;
  readonly weight: "regular" | "semibold";
  readonly anchor: "start" | "middle" | "end";
  readonly ink: Ink;
  /** Clockwise about `at` [degrees]. */
  readonly turn?: number;
  /** A white edge around the letters, so that they can be read over lines. */
  readonly halo?: boolean;
}

export interface CircleShape {
  readonly kind: "circle";
  readonly at: Point;
  readonly radius: number;
  readonly stroke?: Stroke;
  readonly fill?: PathShape["fill"];
}

/** Shapes that are cut off at a rectangle. */
export interface ClipShape {
  readonly kind: "clip";
  readonly box: Box;
  readonly shapes: readonly Shape[];
}

export type Shape = PathShape | TextShape | CircleShape | ClipShape;

/** A rectangle on the sheet [mm]. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** One sheet: plain data that is drawn alike on the screen and on paper. */
export interface Scene {
  readonly id: string;
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
}
