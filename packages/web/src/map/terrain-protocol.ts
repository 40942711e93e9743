import type { Plan } from "@causey/engine/plan";
import type { Extent, XY } from "./view.ts";

export type Scheme = "light" | "dark";

export interface TerrainRequest {
  readonly id: number;
  readonly plan: Plan;
  readonly sha256: string;
  /** Sent once per hash; the worker keeps what it read. */
  readonly bytes: Uint8Array | null;
  readonly scheme: Scheme;
}

export interface ContourPath {
  readonly z_m: number;
  /** Every fifth line is drawn stronger. */
  readonly strong: boolean;
  /** SVG path in metres from the picture's origin, north up. */
  readonly path: string;
}

/** The terrain as it is drawn: a shaded picture of its extent, and lines of equal height. */
export interface TerrainPicture {
  readonly image: ImageBitmap;
  readonly extent: Extent;
  readonly origin: XY;
  readonly contours: readonly ContourPath[];
  readonly step_m: number;
  /** Cell size that the lines were drawn from [m]: coarser than the terrain's own when that is very fine. */
  readonly contour_cell_m: number;
  readonly cell_m: number;
}

export type TerrainAnswer =
  | { readonly id: number; readonly ok: true; readonly picture: TerrainPicture }
  | { readonly id: number; readonly ok: false; readonly message: string };
