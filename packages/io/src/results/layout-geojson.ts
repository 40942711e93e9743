import type { Json } from "@causey/engine/formula";
import type { Joint, Layout, Part } from "@causey/engine/layout";
import type { Plan, Results } from "@causey/engine/plan";
import type { Ring } from "@causey/engine/site";
import { roundTo } from "../json/index.ts";
import { closed, featureCollection, type FeatureJson } from "../vector/index.ts";

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

/** Middle lines, joint to joint; a branch without a part has no line to draw. */
function branchFeatures(layout: Layout): FeatureJson[] {
  const joints = new Map(layout.joints.map((j) => [j.id, j]));
  const parts = new Map(layout.parts.map((p) => [p.id, p]));
  return layout.branches.flatMap((branch) => {
    const along = branch.parts.flatMap((id) => middleLine(parts.get(id), joints));
    const line = along.filter(([x, y], i) => i === 0 || x !== along[i - 1]![0] || y !== along[i - 1]![1]);
    if (line.length < 2) return [];
    const { id, from, to_plot, length_m } = branch;
    const coordinates = line.map(([x, y]) => [x, y]);
    return [feature({ id, kind: "branch", from, to_plot, length_m }, { type: "LineString", coordinates })];
  });
}

function middleLine(part: Part | undefined, joints: ReadonlyMap<string, Joint>): [number, number][] {
  if (part === undefined) return [];
  const from = joints.get(part.from);
  const to = part.kind === "module" ? joints.get(part.to) : part;
  return [from, to].flatMap((p) =>
    p === undefined ? [] : [[roundTo(p.x, 3), roundTo(p.y, 3)] as [number, number]],
  );
}
