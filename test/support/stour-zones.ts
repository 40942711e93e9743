import { traceCells, twiceArea, type Corner } from "./trace-cells.ts";

/** Terrain as the fixture needs it: heights row by row from south to north, NaN without data. */
export interface Heights {
  readonly cols: number;
  readonly rows: number;
  /** South-west corner of the grid and cell size [m]. */
  readonly west: number;
  readonly south: number;
  readonly cell: number;
  readonly values: Float32Array;
}

interface Water {
  readonly id: string;
  readonly name: string;
  readonly use: "channel" | "pool";
  /** Middle line, set by eye on a picture of the terrain, and how far from it low ground still belongs to it [m]. */
  readonly line: readonly Corner[];
  readonly within: number;
}

/** Ground below this is creek, gully or pit; the platform of this marsh stands above it [m ODN]. */
export const LOW_GROUND_M = 1.5;

const WATERS: readonly Water[] = [
  {
    id: "middle-creek",
    name: "Middle creek",
    use: "channel",
    within: 8,
    line: [
      [621869, 233707],
      [621880, 233697],
      [621891.5, 233687.5],
      [621898, 233672],
      [621906.5, 233666],
      [621918.5, 233670],
      [621925, 233664],
      [621930, 233651],
      [621941, 233649],
      [621941, 233636],
      [621949.5, 233628],
      [621964.5, 233622],
      [621980, 233613],
    ],
  },
  {
    id: "pit-gully",
    name: "Pit gully",
    use: "channel",
    within: 5,
    line: [
      [621954, 233687],
      [621945.5, 233674.5],
      [621948.5, 233668],
      [621950.5, 233655],
      [621948.5, 233651],
    ],
  },
  {
    id: "west-gully",
    name: "West gully",
    use: "channel",
    within: 3.5,
    line: [
      [621911, 233706],
      [621909, 233687],
      [621911.5, 233674],
    ],
  },
  {
    id: "west-pit",
    name: "West pit",
    use: "pool",
    within: 12,
    line: [
      [621884, 233704],
      [621903, 233692],
    ],
  },
  {
    id: "borrow-pit",
    name: "Borrow pit",
    use: "pool",
    within: 13,
    line: [
      [621928, 233698],
      [621977, 233705],
      [622051, 233733],
    ],
  },
];

/** Low ground along each named line as GeoJSON zones; every low cell belongs to the line it is nearest to. */
export function stourWaterZones(h: Heights): object[] {
  const owners = new Map<Water, Set<number>>(WATERS.map((water) => [water, new Set()]));
  for (let k = 0; k < h.values.length; k++) {
    if (!(h.values[k]! < LOW_GROUND_M)) continue;
    const x = h.west + ((k % h.cols) + 0.5) * h.cell;
    const y = h.south + (Math.floor(k / h.cols) + 0.5) * h.cell;
    const near = WATERS.map((water) => ({ water, off: distanceToLine(water.line, x, y) })).filter(
      ({ water, off }) => off <= water.within,
    );
    const own = near.toSorted((a, b) => a.off - b.off)[0];
    if (own) owners.get(own.water)!.add(k);
  }
  return WATERS.map((water) => zoneOf(h, water, owners.get(water)!));
}

function zoneOf(h: Heights, water: Water, cells: ReadonlySet<number>): object {
  const onGrid = ([i, j]: Corner): Corner => [h.west + i * h.cell, h.south + j * h.cell];
  const rings = traceCells({ cols: h.cols, rows: h.rows, has: (i, j) => cells.has(j * h.cols + i) });
  const polygons = polygonsOf(rings).filter((rings) => twiceArea(rings[0]!) > 6);
  return {
    type: "Feature",
    properties: {
      id: water.id,
      name: water.name,
      use: water.use,
      hidden: false,
      source: `Ground below ${LOW_GROUND_M} m in the terrain, traced by cells`,
    },
    geometry: {
      type: "MultiPolygon",
      coordinates: polygons.map((rings) => rings.map((ring) => ring.map(onGrid))),
    },
  };
}

/** Outer rings, each followed by the holes that lie in it. */
function polygonsOf(rings: readonly Corner[][]): Corner[][][] {
  const outer = rings.filter((ring) => twiceArea(ring) > 0).map((ring) => [ring]);
  for (const hole of rings.filter((ring) => twiceArea(ring) < 0)) {
    const [i, j] = hole[0]!;
    const homes = outer.filter(
      ([ring]) => isIn(ring!, i + 0.001, j + 0.001) || isIn(ring!, i - 0.001, j - 0.001),
    );
    homes.toSorted((a, b) => twiceArea(a[0]!) - twiceArea(b[0]!))[0]?.push(hole);
  }
  return outer;
}

function isIn(ring: readonly Corner[], x: number, y: number): boolean {
  let inside = false;
  for (let i = 1; i < ring.length; i++) {
    const [p, q] = [ring[i - 1]!, ring[i]!];
    if (p[1] > y !== q[1] > y && x < p[0] + ((y - p[1]) * (q[0] - p[0])) / (q[1] - p[1])) inside = !inside;
  }
  return inside;
}

function distanceToLine(line: readonly Corner[], x: number, y: number): number {
  let least = Infinity;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const [ux, uy] = [b[0] - a[0], b[1] - a[1]];
    const t = Math.min(1, Math.max(0, ((x - a[0]) * ux + (y - a[1]) * uy) / (ux * ux + uy * uy)));
    least = Math.min(least, Math.hypot(x - a[0] - t * ux, y - a[1] - t * uy));
  }
  return least;
}
