import { bankOutline } from "../creek.ts";
import { outlineOf, type Spot } from "../polygon.ts";
import type { Feature } from "../zones.ts";
import { FEN_GRID, type Fen } from "./lie.ts";

const SURVEY = "Plant walk of the demo fen, invented, 2026-07";
const round = (v: number): number => Math.round(v * 100) / 100;
export const onFen = ([u, v]: Spot): [number, number] => [
  round(FEN_GRID.west + u),
  round(FEN_GRID.south + v),
];

/** A closed ring, counter-clockwise. */
function ring(spots: readonly Spot[]): [number, number][] {
  const corners = spots.map(onFen);
  const twice = corners.reduce((sum, [x, y], i) => {
    const [p, q] = corners[(i + 1) % corners.length]!;
    return sum + x * q - p * y;
  }, 0);
  const turned = twice > 0 ? corners : corners.toReversed();
  return [...turned, turned[0]!];
}

const zone = (
  properties: Feature["properties"] & { readonly id: string; readonly use: string },
  spots: readonly Spot[],
): Feature => ({
  type: "Feature",
  properties: { hidden: false, source: SURVEY, ...properties },
  geometry: { type: "Polygon", coordinates: [ring(spots)] },
});

const { cols, rows } = FEN_GRID;
const across = (line: (u: number) => number): Spot[] =>
  Array.from({ length: cols / 5 + 1 }, (_, i): Spot => [i * 5, line(i * 5)]);

/** Habitats, springs, pools, the runnel, the parcels, and an orchid stand that no shared paper may show. */
export function fenZones(fen: Fen): Feature[] {
  return [
    zone({ id: "fen-meadow", name: "Fen meadow", use: "habitat", sensitivity: 2 }, [
      ...across(() => 70),
      ...across(fen.edge).toReversed(),
    ]),
    zone({ id: "moss-carpet", name: "Moss carpet", use: "habitat", sensitivity: 5 }, [
      ...across(() => 0),
      ...across(() => 70).toReversed(),
    ]),
    ...fen.domes.map(({ id, name, shape }) =>
      zone({ id, name, use: "closed", buffer_m: 2, contact: "Fen warden" }, outlineOf(shape)),
    ),
    zone({ id: "orchid-stand", name: "Orchid stand", use: "closed", hidden: true, buffer_m: 1 }, [
      [86, 130],
      [94, 130],
      [94, 136],
      [86, 136],
    ]),
    ...fen.pools.map(({ id, name, shape }) => zone({ id, name, use: "pool" }, outlineOf(shape, 0.1))),
    zone({ id: fen.runnel.id, name: fen.runnel.name, use: "channel" }, bankOutline(fen.runnel, 0.1, 3)),
    zone({ id: "reserve", name: "Fen reserve", use: "parcel", owner: "Hollin Fen Trust" }, [
      [0, 0],
      [cols, 0],
      [cols, 120],
      [0, 120],
    ]),
    zone({ id: "glebe", name: "Glebe pasture", use: "parcel", owner: "Parish of Hollin" }, [
      [0, 120],
      [cols, 120],
      [cols, rows],
      [0, rows],
    ]),
  ];
}

const place = (spot: Spot, properties: Feature["properties"]): Feature => ({
  type: "Feature",
  properties,
  geometry: { type: "Point", coordinates: onFen(spot) },
});
const well = (id: string, spot: Spot): Feature =>
  place(spot, { kind: "plot", id, name: `Well ${id.slice(1)}`, keep_off_m: 1, reach_m: 1.5 });

/** A start at the pasture gate and four groundwater wells, one of them across the runnel. */
export const fenPlaces = (): Feature[] => [
  place([100, 152], { kind: "start", id: "gate", name: "Pasture gate" }),
  well("W1", [112, 104]),
  well("W2", [70, 78]),
  well("W3", [128, 66]),
  well("W4", [84, 44]),
];
