import type { JsonObject } from "@causey/engine/formula";
import type { Joint, Part } from "@causey/engine/layout";
import type { Results } from "@causey/engine/plan";
import type { Crs, Polygons } from "@causey/engine/site";
import { planCrsOf } from "../crs/index.ts";
import { writeGeoPackage, type SqliteHook, type TableLayer } from "../geopackage/index.ts";
import { roundTo } from "../json/index.ts";
import type { Position, Positions, VectorFeature, VectorGeometry } from "../layer-form/index.ts";
import { branchLines } from "../results/index.ts";

/**
 * The layout as a GeoPackage in the site's grid, places to 1 mm: the tables joints (points), parts (outlines of
 * modules and platforms), feet (patches of ground under the supports) and branches (middle lines). A local grid is
 * written as "undefined Cartesian". Equal results give equal bytes. Nothing of any zone is written, not even which
 * channel a part bridges, so hidden zones cannot show.
 */
export function layoutGeoPackage(results: Results, crs: Crs, hook: SqliteHook = {}): Promise<Uint8Array> {
  const { layout } = results;
  const own = planCrsOf(crs);
  const table = (name: string, features: readonly VectorFeature[]): TableLayer => ({
    name,
    crs: own,
    features,
  });
  const branches = branchLines(layout).map(({ line, ...facts }) =>
    feature({ ...facts }, { type: "LineString", coordinates: line.map(millimetres) }),
  );
  return writeGeoPackage(
    [
      table(
        "joints",
        layout.joints.map((j) => jointFeature(j, results.datum)),
      ),
      table("parts", layout.parts.map(partFeature)),
      table("feet", layout.joints.flatMap(footFeatures)),
      table("branches", branches),
    ],
    hook,
  );
}

const millimetres = ([x, y]: Position): Position => [roundTo(x, 3), roundTo(y, 3)];

const ringOf = (ring: Positions): Positions => [...ring, ...ring.slice(0, 1)].map(millimetres);

const areaOf = (polygons: Polygons): VectorGeometry =>
  polygons.length === 1
    ? { type: "Polygon", coordinates: polygons[0]!.map(ringOf) }
    : { type: "MultiPolygon", coordinates: polygons.map((rings) => rings.map(ringOf)) };

const feature = (properties: JsonObject, geometry: VectorGeometry): VectorFeature => ({
  id: null,
  properties,
  geometry,
});

const jointFeature = (j: Joint, datum: string): VectorFeature =>
  feature(
    {
      id: j.id,
      branch: j.branch,
      along_m: roundTo(j.along_m, 3),
      heading_deg: roundTo(j.heading_deg, 3),
      ground_m: roundTo(j.ground_m, 3),
      deck_m: roundTo(j.deck_m, 3),
      vertical_datum: datum,
      support: j.support,
      support_height_m: roundTo(j.support_height_m, 3),
    },
    { type: "Point", coordinates: millimetres([j.x, j.y]) },
  );

function partFeature(part: Part): VectorFeature {
  const length_m = part.kind === "module" ? part.length_m : part.side_m;
  const properties = {
    id: part.id,
    kind: part.kind,
    use: part.kind === "platform" ? part.use : null,
    branch: part.branch,
    length_m: roundTo(length_m, 4),
    heading_deg: roundTo(part.heading_deg, 3),
    from_joint: part.from,
    to_joint: part.kind === "module" ? part.to : part.exits.ahead,
    along_m: roundTo(part.along_m, 3),
  };
  return feature(properties, areaOf(part.outline));
}

const footFeatures = (joint: Joint): VectorFeature[] =>
  joint.feet.map((rings, i) =>
    feature(
      { id: `${joint.id}/foot-${i + 1}`, joint: joint.id, foot: i + 1, support: joint.support },
      areaOf([rings]),
    ),
  );
