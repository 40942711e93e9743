import { DomainError } from "../../units/index.ts";
import type { Lattice } from "../lattice.ts";
import type { Spot } from "./guide.ts";

const MOST_POINTS = 40_000_000;

/**
 * The kit's lattice through a place, wide enough for some points and a margin around them. Cut to the lines instead of
 * the terrain, a lattice along a line stays narrow. Throws `DomainError` when it would hold more points than memory allows.
 */
export function latticeAround(
  step: number,
  heading_deg: number,
  origin: Spot,
  points: readonly Spot[],
  margin_m: number,
): Lattice {
  const h = (heading_deg * Math.PI) / 180;
  const e0 = [Math.sin(h), Math.cos(h)] as const;
  const e1 = [Math.cos(h), -Math.sin(h)] as const;
  const [x, y] = origin;
  const margin = Math.ceil(margin_m / step);
  const u = points.map((p) => ((p[0] - x) * e0[0] + (p[1] - y) * e0[1]) / step);
  const v = points.map((p) => ((p[0] - x) * e1[0] + (p[1] - y) * e1[1]) / step);
  const si = Math.ceil(-Math.min(0, ...u)) + margin;
  const sj = Math.ceil(-Math.min(0, ...v)) + margin;
  const nx = Math.ceil(Math.max(0, ...u)) + si + margin + 1;
  const ny = Math.ceil(Math.max(0, ...v)) + sj + margin + 1;
  if (nx * ny > MOST_POINTS)
    throw new DomainError("site-too-large-for-lattice", { points: nx * ny, most: MOST_POINTS });
  return { heading_deg, step, nx, ny, si, sj, x, y, e0, e1 };
}
