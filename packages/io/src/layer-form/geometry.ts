import type { LayerBudget, Position, Positions, VectorGeometry } from "./layer.ts";

/** A shape that cannot be used, in words that complete "The shape ...". */
export class ShapeFault extends Error {}

type GeometryType = VectorGeometry["type"];

/** How many lists stand around one position. */
const DEPTH: Readonly<Record<GeometryType, number>> = {
  Point: 0,
  MultiPoint: 1,
  LineString: 1,
  MultiLineString: 2,
  Polygon: 2,
  MultiPolygon: 3,
};
const COLLECTION_DEPTH = 8;

/**
 * The shapes of one raw GeoJSON-like geometry: none when it is null or empty; one for each family (points, lines,
 * areas) of a collection. Throws `ShapeFault` for what is no shape, numbers that are not finite, and more positions
 * than the budget has left.
 */
export function readGeometry(raw: unknown, budget: LayerBudget): readonly VectorGeometry[] {
  const single = flatten(raw, budget, 0);
  if (single.length < 2) return single;
  const points = single.flatMap((g) => (g.type === "Point" || g.type === "MultiPoint" ? pointsOf(g) : []));
  const lines = single.flatMap((g) =>
    g.type === "LineString" ? [g.coordinates] : g.type === "MultiLineString" ? g.coordinates : [],
  );
  const areas = single.flatMap((g) =>
    g.type === "Polygon" ? [g.coordinates] : g.type === "MultiPolygon" ? g.coordinates : [],
  );
  return [
    ...(points.length > 0 ? [{ type: "MultiPoint", coordinates: points } as const] : []),
    ...(lines.length > 0 ? [{ type: "MultiLineString", coordinates: lines } as const] : []),
    ...(areas.length > 0 ? [{ type: "MultiPolygon", coordinates: areas } as const] : []),
  ].map(simplest);
}

const pointsOf = (g: VectorGeometry & { type: "Point" | "MultiPoint" | "LineString" }): Positions =>
  g.type === "Point" ? [g.coordinates] : g.coordinates;

function flatten(raw: unknown, budget: LayerBudget, depth: number): VectorGeometry[] {
  if (raw === null || raw === undefined) return [];
  if (depth > COLLECTION_DEPTH)
    throw new ShapeFault("is a collection inside collections, too deep to be read");
  const { type, coordinates, geometries } = raw as Readonly<Record<string, unknown>>;
  if (type === "GeometryCollection") {
    if (!Array.isArray(geometries)) throw new ShapeFault("is a collection without a list of shapes");
    return geometries.flatMap((g: unknown) => flatten(g, budget, depth + 1));
  }
  if (typeof type !== "string" || !Object.hasOwn(DEPTH, type))
    throw new ShapeFault("is not a point, line or area");
  if (Array.isArray(coordinates) && coordinates.length === 0) return [];
  const read = readPositions(coordinates, DEPTH[type as GeometryType], budget);
  return [simplest({ type, coordinates: read } as VectorGeometry)];
}

function readPositions(raw: unknown, depth: number, budget: LayerBudget): unknown {
  if (!Array.isArray(raw)) throw new ShapeFault("has something else where a list of numbers should stand");
  if (depth === 0) return readPosition(raw, budget);
  return raw.map((item: unknown) => readPositions(item, depth - 1, budget));
}

function readPosition(raw: readonly unknown[], budget: LayerBudget): Position {
  if (--budget.positions < 0) throw new ShapeFault("comes after more positions than are read from one file");
  const [a, b] = raw;
  if (typeof a !== "number" || typeof b !== "number" || !Number.isFinite(a) || !Number.isFinite(b))
    throw new ShapeFault("has a position that is not two finite numbers");
  return [a, b];
}

/** A multi-shape of one part is that part: programs often store single points and areas so. */
export function simplest(g: VectorGeometry): VectorGeometry {
  if (!g.type.startsWith("Multi") || g.coordinates.length !== 1) return g;
  return { type: g.type.slice(5), coordinates: g.coordinates[0] } as VectorGeometry;
}

/** The same shape with every position put through `map`. */
export function mapPositions(g: VectorGeometry, map: (p: Position) => Position): VectorGeometry {
  switch (g.type) {
    case "Point":
      return { type: g.type, coordinates: map(g.coordinates) };
    case "MultiPoint":
    case "LineString":
      return { type: g.type, coordinates: g.coordinates.map(map) };
    case "MultiLineString":
    case "Polygon":
      return { type: g.type, coordinates: g.coordinates.map((line) => line.map(map)) };
    case "MultiPolygon":
      return {
        type: g.type,
        coordinates: g.coordinates.map((rings) => rings.map((ring) => ring.map(map))),
      };
  }
}

/** Every position of a shape, in order. */
export function allPositions(g: VectorGeometry): Positions {
  switch (g.type) {
    case "Point":
      return [g.coordinates];
    case "MultiPoint":
    case "LineString":
      return g.coordinates;
    case "MultiLineString":
    case "Polygon":
      return g.coordinates.flat();
    case "MultiPolygon":
      return g.coordinates.flat(2);
  }
}
