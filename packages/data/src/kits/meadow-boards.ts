import type { Kit } from "@causey/engine/kit";
import { openCrate, postPair, sleeper } from "./timber-supports.ts";

/**
 * A board walkway 30 in wide for a crew with a cart on a salt meadow. A kit of this project's own, invented: untreated
 * spruce for a few seasons, so that nothing leaches and a module stays within reach of a crew of carriers.
 *
 * Bodies are half an inch short of 12, 8 and 4 ft, so that the pitches are whole feet and the joint gap is as wide
 * as the gap between boards.
 */
export const meadowBoards: Kit = {
  id: "meadow-boards",
  name: "Meadow boards, 30 in",
  note: "This project's own recipe. Untreated spruce lasts a few seasons in the wet: look at it every month. Grade and screws are to be confirmed at the yard; have an engineer look at posts above 24 in.",
  lumber: { species: "spruce-pine-fir", grade: "no2", treatment: "none", incised: false, preservative: null },
  lengths_mm: [3644.9, 2425.7, 1206.5],
  joint_gap_mm: 12.7,
  stringers: { count: 2, size: "2x8", overall_mm: 711.2 },
  cross_pieces: {
    size: "2x4",
    lay: "edge",
    spacing_mm: 1219.2,
    exceptions: [],
    screw: "screw-10x3",
    screws_per_end: 2,
  },
  end: { kind: "plain" },
  deck: {
    kind: "boards",
    size: "2x6",
    gap_mm: 12.7,
    width_mm: 762,
    screw: "screw-10x3",
    screws_per_bearing: 2,
  },
  curb: { size: "2x2", screw: "screw-10x3", screw_spacing_mm: 609.6 },
  supports: [sleeper, openCrate, postPair],
  platform: {
    side_mm: 1816.1,
    pieces: 1,
    stringers: { size: "2x8", count: 4 },
    cross_pieces: { size: "2x4", count: 3 },
    screw: "screw-10x3",
    screws_per_end: 2,
  },
  ramp: null,
  spares_share: 0.03,
};
