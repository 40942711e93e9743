import type { AuditInput } from "../../packages/engine/src/audit/index.ts";

/**
 * A correct layout worked out by hand on level ground at 1.0 m: from the start south over one module, a platform,
 * one module across a channel to plot A, and from the platform's left (east) edge one module to plot B.
 * Pitches 3.61 m and 2.41 m, platform joints 0.60 m from its middle.
 */
export type Feature = {
  properties: Record<string, string | number>;
  geometry: { type: string; coordinates: unknown };
};
export interface Sheet {
  type: string;
  features: Feature[];
  reached: { plot: string; joint: string; distance_m: number }[];
}
type Box = [west: number, south: number, east: number, north: number];

export const ring = ([w, s, e, n]: Box): [number, number][] => [
  [w, s],
  [e, s],
  [e, n],
  [w, n],
  [w, s],
];
const polygon = (properties: Feature["properties"], box: Box): Feature => ({
  properties,
  geometry: { type: "Polygon", coordinates: [ring(box)] },
});

export const joint = (id: string, branch: string, heading_deg: number, x: number, y: number): Feature => ({
  properties: {
    kind: "joint",
    id,
    branch,
    heading_deg,
    along_m: 0,
    ground_m: 1,
    support: "crate",
    support_height_m: 0.2,
    deck_m: 1.4,
  },
  geometry: { type: "Point", coordinates: [x, y] },
});
export const crate = (joint: string, x: number, y: number, heading: "ns" | "ew"): Feature => {
  const [dx, dy] = heading === "ns" ? [0.45, 0.1] : [0.1, 0.45];
  return polygon({ kind: "foot", joint, index: 0 }, [x - dx, y - dy, x + dx, y + dy]);
};
const post = (joint: string, index: number, x: number, y: number): Feature =>
  polygon({ kind: "foot", joint, index }, [x - 0.05, y - 0.05, x + 0.05, y + 0.05]);

export function sheet(): Sheet {
  const features: Feature[] = [
    polygon(
      {
        kind: "module",
        id: "M1",
        branch: "a",
        length_m: 3.6,
        heading_deg: 180,
        from: "J1",
        to: "J2",
        along_m: 0,
      },
      [9.55, 26.395, 10.45, 29.995],
    ),
    polygon(
      {
        kind: "platform",
        id: "P1",
        branch: "a",
        side_m: 1.19,
        heading_deg: 180,
        from: "J2",
        ahead: "J3",
        left: "J4",
        right: "J5",
      },
      [9.405, 25.195, 10.595, 26.385],
    ),
    polygon(
      {
        kind: "module",
        id: "M2",
        branch: "a",
        length_m: 3.6,
        heading_deg: 180,
        from: "J3",
        to: "J6",
        along_m: 4.81,
      },
      [9.55, 21.585, 10.45, 25.185],
    ),
    polygon(
      {
        kind: "module",
        id: "M3",
        branch: "b",
        length_m: 2.4,
        heading_deg: 90,
        from: "J4",
        to: "J7",
        along_m: 0,
      },
      [10.605, 25.34, 13.005, 26.24],
    ),
    joint("J1", "a", 180, 10, 30),
    joint("J2", "a", 180, 10, 26.39),
    joint("J3", "a", 180, 10, 25.19),
    joint("J4", "a", 90, 10.6, 25.79),
    joint("J5", "a", 270, 9.4, 25.79),
    joint("J6", "a", 180, 10, 21.58),
    joint("J7", "b", 90, 13.01, 25.79),
    crate("J1", 10, 30, "ns"),
    crate("J2", 10, 26.39, "ns"),
    crate("J3", 10, 25.19, "ns"),
    crate("J4", 10.6, 25.79, "ew"),
    crate("J5", 9.4, 25.79, "ew"),
    post("J6", 0, 9.5, 21.58),
    post("J6", 1, 10.5, 21.58),
    crate("J7", 13.01, 25.79, "ew"),
    {
      properties: { kind: "branch", id: "a", from: "S", to_plot: "A" },
      geometry: {
        type: "LineString",
        coordinates: [
          [10, 30],
          [10, 21.58],
        ],
      },
    },
    {
      properties: { kind: "branch", id: "b", from: "P1", to_plot: "B" },
      geometry: {
        type: "LineString",
        coordinates: [
          [10.6, 25.79],
          [13.01, 25.79],
        ],
      },
    },
  ];
  feature(features, "J6")["support"] = "posts";
  const reached = [
    { plot: "A", joint: "J6", distance_m: 2.58 },
    { plot: "B", joint: "J7", distance_m: 1.99 },
  ];
  return { type: "FeatureCollection", features, reached };
}

export const feature = (features: Feature[], id: string): Feature["properties"] =>
  features.find((f) => f.properties["id"] === id)!.properties;
export const footOf = (s: Sheet, joint: string): Feature =>
  s.features.find((f) => f.properties["joint"] === joint)!;
export const shapeOf = (s: Sheet, id: string): Feature["geometry"] =>
  s.features.find((f) => f.properties["id"] === id)!.geometry;

export const zone = (id: string, use: string, box: Box, days: { from?: string; to?: string } = {}) => ({
  id,
  use,
  polygons: [[ring(box)]],
  ...days,
});

export function facts(layout: Sheet): AuditInput {
  return {
    layout,
    terrain: {
      cols: 41,
      rows: 41,
      x0: 0,
      y0: 0,
      dx: 1,
      dy: 1,
      values: new Float32Array(41 * 41).fill(1),
    },
    zones: [
      zone("creek", "channel", [0, 22.5, 30, 24.3]),
      zone("rare", "closed", [20, 20, 25, 30]),
      zone("terns", "seasonal-closure", [0, 20, 5, 30], { from: "04-15", to: "08-31" }),
    ],
    starts: [{ id: "S", x: 10.1, y: 30.2 }],
    plots: [
      { id: "A", x: 10, y: 19, keep_off_m: 1, reach_m: 1.8 },
      { id: "B", x: 15, y: 25.79, keep_off_m: 1, reach_m: 1.5 },
    ],
    kit: {
      lengths_mm: [2400, 3600],
      joint_gap_mm: 10,
      platform: { side_mm: 1190 },
      supports: [
        {
          id: "crate",
          height_min_mm: 150,
          height_max_mm: 500,
          feet: [{ along_mm: 200, across_mm: 900, offset_across_mm: 0 }],
          stands: { ground_above_m: 0.8, not_in: ["channel", "pool"] },
        },
        {
          id: "posts",
          height_min_mm: 150,
          height_max_mm: 2000,
          feet: [
            { along_mm: 100, across_mm: 100, offset_across_mm: -500 },
            { along_mm: 100, across_mm: 100, offset_across_mm: 500 },
          ],
          stands: { ground_above_m: null, not_in: ["pool"] },
        },
      ],
    },
    module_depth_m: 0.2,
    laying: { from: "2027-05-10", to: "2027-05-14" },
    max_grade: 0.08,
    min_clear_mm: 150,
  };
}
