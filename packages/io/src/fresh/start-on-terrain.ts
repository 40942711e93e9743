import { groundAt, type Raster, type Start } from "@causey/engine/site";
import { PLACEHOLDER_START } from "./placeholder-start.ts";

interface Spot {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/**
 * A start for a walkway whose start is not known yet: where the ground is highest among the first known places inward
 * from the middles of the four sides, for people come from dry ground. Its name says that it is to be moved. Where the
 * middles hold no ground, the highest known place of all.
 */
export function startOnTerrain(raster: Raster): Start {
  const { cols, rows } = raster;
  const [midCol, midRow] = [Math.floor(cols / 2), Math.floor(rows / 2)];
  const inward = [
    first(range(rows, (row) => spot(raster, midCol, row))),
    first(range(rows, (row) => spot(raster, midCol, rows - 1 - row))),
    first(range(cols, (col) => spot(raster, col, midRow))),
    first(range(cols, (col) => spot(raster, cols - 1 - col, midRow))),
  ].filter((s) => s !== null);
  const { x, y } = highest(inward) ?? highest(all(raster)) ?? middle(raster);
  return { id: "S1", name: PLACEHOLDER_START, x, y };
}

function* range(n: number, at: (i: number) => Spot | null): Generator<Spot | null> {
  for (let i = 0; i < n; i++) yield at(i);
}

function first(spots: Iterable<Spot | null>): Spot | null {
  for (const s of spots) if (s !== null) return s;
  return null;
}

function* all(raster: Raster): Generator<Spot> {
  for (let row = 0; row < raster.rows; row++)
    for (let col = 0; col < raster.cols; col++) {
      const s = spot(raster, col, row);
      if (s !== null) yield s;
    }
}

/** Ground is known so far round the start, for a module to stand on [m]. */
const ROUND_M = 2;

/** The centre of a cell, when its ground is known there and round it. */
function spot(raster: Raster, col: number, row: number): Spot | null {
  const x = Math.round((raster.x0 + col * raster.dx) * 100) / 100;
  const y = Math.round((raster.y0 + row * raster.dy) * 100) / 100;
  const round = [-ROUND_M, ROUND_M].flatMap((d) => [groundAt(raster, x + d, y), groundAt(raster, x, y + d)]);
  const z = groundAt(raster, x, y);
  return [z, ...round].some((h) => Number.isNaN(h)) ? null : { x, y, z };
}

function highest(spots: Iterable<Spot>): Spot | null {
  let best: Spot | null = null;
  for (const s of spots) if (best === null || s.z > best.z) best = s;
  return best;
}

const middle = ({ x0, y0, dx, dy, cols, rows }: Raster): Spot => ({
  x: x0 + (dx * (cols - 1)) / 2,
  y: y0 + (dy * (rows - 1)) / 2,
  z: NaN,
});
