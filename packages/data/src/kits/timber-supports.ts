import type { SupportKind } from "@causey/engine/kit";

/** Feet of a support on two runners or plates, the given distance off the middle line. */
const pair = (along_mm: number, across_mm: number, off_mm: number): SupportKind["feet"] => [
  { along_mm, across_mm, offset_across_mm: -off_mm },
  { along_mm, across_mm, offset_across_mm: off_mm },
];
const notInWater = { ground_above_m: null, not_in: ["channel", "pool"] } as const;

/** A 36 in 2x6 laid flat: each of two module ends has 63.5 mm of seat on it. */
const sill = { size: "2x6", length_mm: 914.4, lay: "flat" } as const;

export const sleeper: SupportKind = {
  id: "sleeper",
  name: "Sleeper, 3 to 9 in",
  form: "sleeper",
  height_min_mm: 76.2,
  height_max_mm: 228.6,
  height_step_mm: 38.1,
  sill,
  pieces: [
    { name: "sole board", size: "2x10", count: 2, length_mm: 914.4, per_height: 0, lie: "across" },
    { name: "packing", size: "2x6", count: 1, length_mm: 914.4, per_height: 0, fill: true },
  ],
  feet: [{ along_mm: 469.9, across_mm: 914.4, offset_across_mm: 0 }],
  rating_n: null,
  anchor: { kind: "stake", size: "2x2", length_mm: 1828.8, embedment_mm: 1524, count: 2 },
  screws: [{ screw: "screw-10x3", count: 12 }],
  stands: notInWater,
};

export const openCrate: SupportKind = {
  id: "open-crate",
  name: "Open crate, 9 to 20 in",
  form: "open-crate",
  height_min_mm: 228.6,
  height_max_mm: 508,
  height_step_mm: 25.4,
  sill,
  pieces: [
    { name: "runner", size: "2x12", count: 2, length_mm: 609.6, per_height: 0 },
    { name: "leg", size: "2x4", count: 4, length_mm: -165.1, per_height: 1 },
    { name: "rail", size: "2x4", count: 2, length_mm: 609.6, per_height: 0, lay: "edge" },
    { name: "tie", size: "2x4", count: 2, length_mm: 762, per_height: 0, lie: "across", beside: true },
  ],
  feet: pair(609.6, 285.75, 304.8),
  rating_n: null,
  anchor: { kind: "stake", size: "2x2", length_mm: 2133.6, embedment_mm: 1524, count: 2 },
  screws: [
    { screw: "screw-10x3", count: 32 },
    { screw: "screw-10x4", count: 8 },
  ],
  stands: notInWater,
};

export const postPair: SupportKind = {
  id: "post-pair",
  name: "Post pair, 18 to 36 in",
  form: "post-pair",
  height_min_mm: 457.2,
  height_max_mm: 914.4,
  height_step_mm: 25.4,
  sill,
  pieces: [
    { name: "plate", size: "2x12", count: 2, length_mm: 609.6, per_height: 0 },
    { name: "post", size: "4x4", count: 2, length_mm: -76.2, per_height: 1 },
    { name: "tie", size: "2x4", count: 2, length_mm: 762, per_height: 0, lie: "across", beside: true },
  ],
  feet: pair(609.6, 285.75, 304.8),
  rating_n: null,
  anchor: { kind: "stake", size: "2x2", length_mm: 2438.4, embedment_mm: 1524, count: 2 },
  screws: [
    { screw: "screw-10x3", count: 20 },
    { screw: "screw-10x4", count: 12 },
  ],
  stands: notInWater,
};
