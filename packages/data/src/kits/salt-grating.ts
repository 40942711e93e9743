import type { Kit } from "@causey/engine/kit";
import { deckChoice, deckOf } from "../decks/index.ts";
import { openCrate, postPair, sleeper } from "./timber-supports.ts";

/**
 * A walkway of moulded grating 36 in wide on post pairs, for a salt marsh where light must reach the plants. A kit of
 * this project's own, invented. The grating is heavy, so that the modules are short and the platform is carried in two
 * halves.
 */
export const saltGrating: Kit = {
  id: "salt-grating",
  name: "Salt grating, 36 in",
  note: "This project's own recipe. The grating's strength is from memory: use the load table of the grating you buy. Have an engineer look at posts above 24 in. Saw and drill grating and treated wood away from the marsh.",
  lumber: {
    species: "southern-pine",
    grade: "no2",
    treatment: "treated",
    incised: false,
    preservative: "ca-c",
  },
  lengths_mm: [2425.7, 1206.5],
  joint_gap_mm: 12.7,
  stringers: { count: 2, size: "2x8", overall_mm: 863.6 },
  cross_pieces: {
    size: "2x4",
    lay: "flat",
    spacing_mm: 609.6,
    exceptions: [],
    screw: "screw-10x3-316",
    screws_per_end: 2,
  },
  end: { kind: "plain" },
  deck: deckOf(deckChoice("moulded-38")!, 914.4),
  curb: { size: "2x2", screw: "screw-14x5-316", screw_spacing_mm: 609.6 },
  supports: [sleeper, openCrate, postPair],
  platform: {
    side_mm: 1816.1,
    pieces: 2,
    stringers: { size: "2x8", count: 6 },
    cross_pieces: { size: "2x4", count: 5 },
    screw: "screw-10x3-316",
    screws_per_end: 2,
    edge_sill_mm: 1816.1,
  },
  ramp: { lengths_mm: [1206.5, 2425.7], max_grade: 0.125 },
  spares_share: 0.03,
};
