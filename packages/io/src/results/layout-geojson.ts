import type { Json } from "@causey/engine/formula";
import type { Joint, Layout, Part } from "@causey/engine/layout";
import type { Plan, Results } from "@causey/engine/plan";
import type { Ring } from "@causey/engine/site";
import { roundTo } from "../json/index.ts";
import { closed, featureCollection, type FeatureJson } from "../vector/index.ts";
import { branchLines } from "./branch-lines.ts";

type Properties = FeatureJson["properties"];

/**
 * The layout as a GeoJSON FeatureCollection in the site's grid, corners to 1 mm. Features carry `kind`: branch
 * (LineString), module and platform (Polygon of the body), joint (Point), foot (Polygon of the patch on the ground).
 * The member `figures` repeats the totals of the results, `reached` says which joint reaches which plot.
 */
export function layoutGeoJson(results: Results, plan: Plan): { readonly [key: string]: Json } {
  const { layout, evaluation, cost } = results;
  const features = [
    ...branchFeatures(layout),
    ...layout.parts.map(partFeature),
    ...layout.joints.map(jointFeature),
    ...layout.joints.flatMap(footFeatures),
  ];
  return featureCollection(plan.crs, features, {
    name: plan.id,
    vertical_datum: results.datum,
    figures: {
      length_m: evaluation.length_m,
      shaded_m2: evaluation.shaded_m2,
      contact_m2: evaluation.contact_m2,
      cost: cost.total,
      currency: cost.currency,
    },
    reached: layout.reached.map((r) => ({ ...r })),
  });
}

const millimetres = (ring: Ring): Ring => ring.map(([x, y]) => [roundTo(x, 3), roundTo(y, 3)]);

const polygon = (ring: Ring): FeatureJson["geometry"] => ({
  type: "Polygon",
  coordinates: [closed(millimetres(ring))],
});

const feature = (properties: Properties, geometry: FeatureJson["geometry"]): FeatureJson => ({
  type: "Feature",
  properties,
  geometry,
});

function partFeature(part: Part): FeatureJson {
  const { outline, ...rest } = part;
  const properties: Properties =
    rest.kind === "module"
      ? { ...rest }
      : {
          id: rest.id,
          kind: rest.kind,
          branch: rest.branch,
          side_m: rest.side_m,
          heading_deg: rest.heading_deg,
          from: rest.from,
          ...rest.exits,
          along_m: rest.along_m,
          bridges: rest.bridges,
        };
  return feature(properties, polygon(outline[0]?.[0] ?? []));
}

function jointFeature(joint: Joint): FeatureJson {
  const { id, branch, along_m, heading_deg, ground_m, deck_m, support, support_height_m, x, y } = joint;
  const heights = { ground_m, deck_m, support, support_height_m };
  const properties = { id, kind: "joint", branch, along_m, heading_deg, ...heights };
  return feature(properties, { type: "Point", coordinates: [roundTo(x, 3), roundTo(y, 3)] });
}

const footFeatures = (joint: Joint): FeatureJson[] =>
  joint.feet.map((rings, index) =>
    feature(
      { id: `${joint.id}/foot-${index + 1}`, kind: "foot", joint: joint.id, index, support: joint.support },
      polygon(rings[0] ?? []),
    ),
  );

const branchFeatures = (layout: Layout): FeatureJson[] =>
  branchLines(layout).map(({ line, id, ...branch }) =>
    feature(
      { id, kind: "branch", ...branch },
      { type: "LineString", coordinates: line.map(([x, y]) => [roundTo(x, 3), roundTo(y, 3)]) },
    ),
  );
