import { segmentDistance, type Raster } from "../site/index.ts";
import { DomainError } from "../units/index.ts";
import { fillTriangle, latticeOver } from "./surface-raster.ts";
import { longestEdge, triangulate, type Tin } from "./tin.ts";
import type { Station } from "./types.ts";

interface Place {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}
type Line = readonly [Place, Place];

/**
 * The ground that a list of typed stations tells of, as a grid.
 *
 * cell_m   cell size [m] > 0
 * reach_m  ground is taken as known this far from a station or from the line between one station and the next [m] > 0
 *
 * Along a line between two stations that follow each other in the list the ground runs straight from height to height;
 * across it, it is level (this is an assumption: nobody looked there). Between three stations that are no more than
 * twice the reach apart it is the plane through them. Elsewhere it is NaN. Stations on one spot count as one of their
 * mean height. Throws `DomainError` for no station, for sizes that are not above zero and for over 25 million cells.
 */
export function stationSurface(stations: readonly Station[], cell_m: number, reach_m: number): Raster {
  if (stations.length === 0) throw new DomainError("no-stations");
  if (!(Number.isFinite(reach_m) && reach_m > 0)) throw new DomainError("reach", { reach_m });
  const tin = triangulate({
    x: stations.map((s) => s.x),
    y: stations.map((s) => s.y),
    z: stations.map((s) => s.ground_m),
  });
  const raster = blankRaster(stations, cell_m, reach_m);
  const near = Array.from({ length: tin.triangles.length / 3 }, (_, t) => t).filter(
    (t) => longestEdge(tin, t) <= 2 * reach_m,
  );
  const isTaken = new Uint8Array(raster.values.length);
  for (const t of near) fillTriangle(tin, t, raster, () => true);
  raster.values.forEach((v, cell) => (isTaken[cell] = Number.isNaN(v) ? 0 : 1));
  fillAlongLines(
    [...walkedLines(stations, tin), ...near.flatMap((t) => edgesOf(tin, t))],
    raster,
    isTaken,
    reach_m,
  );
  return raster;
}

function blankRaster(stations: readonly Station[], cell_m: number, reach_m: number): Raster {
  const [xs, ys] = [stations.map((s) => s.x), stations.map((s) => s.y)];
  const least = (v: readonly number[]): number => v.reduce((a, b) => Math.min(a, b));
  const most = (v: readonly number[]): number => v.reduce((a, b) => Math.max(a, b));
  const lattice = latticeOver(
    least(xs) - reach_m,
    least(ys) - reach_m,
    most(xs) + reach_m,
    most(ys) + reach_m,
    cell_m,
  );
  return {
    ...lattice,
    dx: cell_m,
    dy: cell_m,
    values: new Float32Array(lattice.cols * lattice.rows).fill(NaN),
  };
}

/** Lines from each station to the next in the list; a single station is a line without length. */
function walkedLines(stations: readonly Station[], tin: Tin): Line[] {
  const height = new Map<string, number>();
  for (let i = 0; i < tin.z.length; i++) height.set(`${tin.xy[2 * i]!} ${tin.xy[2 * i + 1]!}`, tin.z[i]!);
  const [x0, y0] = tin.origin;
  const places = stations.map((s) => ({ x: s.x, y: s.y, z: height.get(`${s.x - x0} ${s.y - y0}`)! }));
  return places.length === 1
    ? [[places[0]!, places[0]!]]
    : places.slice(1).map((place, i) => [places[i]!, place]);
}

function edgesOf({ xy, z, triangles, origin }: Tin, t: number): Line[] {
  const corner = (k: number): Place => {
    const i = triangles[3 * t + (k % 3)]!;
    return { x: xy[2 * i]! + origin[0], y: xy[2 * i + 1]! + origin[1], z: z[i]! };
  };
  return [0, 1, 2].map((k) => [corner(k), corner(k + 1)]);
}

/** Each cell within reach takes the height at the foot of its perpendicular on the nearest line. */
function fillAlongLines(lines: readonly Line[], r: Raster, isTaken: Uint8Array, reach_m: number): void {
  const nearest = new Float64Array(r.values.length).fill(reach_m * (1 + 1e-9));
  for (const [a, b] of lines) {
    const [i0, i1] = cellRange(a.x, b.x, reach_m, r.x0, r.dx, r.cols);
    const [j0, j1] = cellRange(a.y, b.y, reach_m, r.y0, r.dy, r.rows);
    for (let j = j0; j <= j1; j++)
      for (let i = i0; i <= i1; i++) {
        const cell = j * r.cols + i;
        if (isTaken[cell] === 1) continue;
        const [x, y] = [r.x0 + i * r.dx, r.y0 + j * r.dy];
        const distance = segmentDistance(x, y, [a.x, a.y], [b.x, b.y]);
        if (!(distance < nearest[cell]!)) continue;
        nearest[cell] = distance;
        r.values[cell] = heightOnLine(a, b, x, y);
      }
  }
}

function cellRange(
  a: number,
  b: number,
  reach: number,
  zero: number,
  step: number,
  count: number,
): readonly [number, number] {
  const from = Math.floor((Math.min(a, b) - reach - zero) / step);
  const to = Math.ceil((Math.max(a, b) + reach - zero) / step);
  return [Math.max(0, from), Math.min(count - 1, to)];
}

function heightOnLine(a: Place, b: Place, x: number, y: number): number {
  const [ex, ey] = [b.x - a.x, b.y - a.y];
  const length2 = ex * ex + ey * ey;
  const t = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((x - a.x) * ex + (y - a.y) * ey) / length2));
  return a.z + (b.z - a.z) * t;
}
