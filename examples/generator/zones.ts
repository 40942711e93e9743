import { bankOutline } from "./creek.ts";
import { GRID, type Meadow } from "./meadow.ts";
import { blot, outlineOf, type Spot } from "./polygon.ts";
import type { Random } from "./random.ts";

export interface Feature {
  readonly type: "Feature";
  readonly properties: Readonly<Record<string, string | number | boolean>>;
  readonly geometry: { readonly type: string; readonly coordinates: unknown };
}

const SURVEY = "Habitat walk of the demo site, invented, 2026-08";
const round = (v: number): number => Math.round(v * 100) / 100;

/** Grid coordinates of a spot, to the centimetre. */
export const onGrid = ([u, v]: Spot): [number, number] => [round(GRID.west + u), round(GRID.south + v)];

/** A closed ring on the grid, running counter-clockwise for an outer ring and clockwise for a hole. */
function ring(spots: readonly Spot[], hole = false): [number, number][] {
  const corners = spots.map(onGrid);
  const twice = corners.reduce((sum, [x, y], i) => {
    const [p, q] = corners[(i + 1) % corners.length]!;
    return sum + x * q - p * y;
  }, 0);
  if (twice > 0 === hole) corners.reverse();
  return [...corners, corners[0]!];
}

const zone = (
  properties: { readonly id: string; readonly name: string; readonly use: string } & Feature["properties"],
  polygons: readonly (readonly Spot[][])[],
): Feature => {
  const coordinates = polygons.map((rings) => rings.map((spots, i) => ring(spots, i > 0)));
  const geometry =
    coordinates.length === 1
      ? { type: "Polygon", coordinates: coordinates[0] }
      : { type: "MultiPolygon", coordinates };
  return {
    type: "Feature",
    properties: { hidden: false, source: SURVEY, ...properties },
    geometry,
  };
};

/** The line between two habitats from west to east, a corner every five metres. */
const across = (line: (u: number) => number): Spot[] =>
  Array.from({ length: GRID.cols / 5 + 1 }, (_, i): Spot => [i * 5, line(i * 5)]);

/** Width of the wet fringe around a pool [m]. */
const FRINGE_M = 2.8;

function habitats(meadow: Meadow): Feature[] {
  const fringes = meadow.pools.map((p) => outlineOf(p.shape, FRINGE_M));
  const rushes = outlineOf(meadow.rushes);
  const [foot, middle, edge] = [meadow.uplandFoot, meadow.highLow, meadow.bayEdge].map(across);
  return [
    zone({ id: "high-meadow", name: "High meadow", use: "habitat", sensitivity: 1 }, [
      [[...middle!, ...foot!.toReversed()], rushes],
    ]),
    zone({ id: "low-meadow", name: "Low meadow", use: "habitat", sensitivity: 2 }, [
      [[...edge!, ...middle!.toReversed()], ...fringes],
    ]),
    zone({ id: "pool-margins", name: "Pool margins and rushes", use: "habitat", sensitivity: 4 }, [
      ...meadow.pools.map((p, i) => [fringes[i]!, outlineOf(p.shape)]),
      [rushes],
    ]),
  ];
}

/** A parcel between two corners of the grid. */
const parcel = (id: string, name: string, owner: string, [u, v]: Spot, [w, h]: Spot): Feature =>
  zone(
    { id, name, use: "parcel", owner, source: "Land register of the demo site, invented, 2024" },
    [
      [
        [
          [u, v],
          [w, v],
          [w, h],
          [u, h],
        ],
      ],
    ],
  );

/** Every zone of the site, in the order of the file. */
export function drawZones(meadow: Meadow, random: Random): Feature[] {
  return [
    ...habitats(meadow),
    zone(
      {
        id: "tern-colony",
        name: "Tern colony",
        use: "seasonal-closure",
        from: "04-15",
        to: "08-31",
        source: "Bird wardens' closure list of the demo site, invented, 2026",
      },
      [[outlineOf(blot(random, [132, 143], 24, 11, 0.12))]],
    ),
    zone(
      {
        id: "rare-plant",
        name: "Rare plant",
        use: "closed",
        hidden: true,
        source: "Plant records of the demo site, invented, 2025; not for shared papers",
      },
      [[outlineOf(blot(random, [99, 151], 6, 4.5, 0.15, 16))]],
    ),
    parcel("trust-land", "Trust land", "Tarrowmere Trust", [0, 0], [168, GRID.rows]),
    parcel("commons", "Commons", "Quillet Bay Commoners", [168, 0], [GRID.cols, GRID.rows]),
    ...meadow.creeks.map((creek) =>
      zone({ id: creek.id, name: creek.name, use: "channel", water: "creek" }, [[bankOutline(creek, 0.15, 3)]]),
    ),
    ...meadow.pools.map((pool) =>
      zone({ id: pool.id, name: pool.name, use: "pool", water: "pool" }, [[outlineOf(pool.shape, 0.1)]]),
    ),
  ];
}
