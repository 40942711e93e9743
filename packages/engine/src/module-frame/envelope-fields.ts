import type { Field } from "../formula/index.ts";
import { choice, list, number, optional, whole, yes } from "../formula/fields.ts";

export const envelopeInputs: readonly Field[] = [
  number("length_mm", "Length of the module", 100, 20_000),
  list("stringers_mm", "Stringer middles across, rising, from the middle line"),
  number("stringer_ei_n_m2", "Bending stiffness of one stringer", 1, 1e12),
  number("stringer_ga_n", "Shear stiffness of one stringer", 1, 1e12),
  number("stringer_gj_n_m2", "Torsional stiffness of one stringer", 0, 1e12),
  list("rows_mm", "Middles of the rows of cross pieces from the start"),
  number("row_ei_n_m2", "Bending stiffness of a cross piece", 1, 1e12),
  number("row_ga_n", "Shear stiffness of a cross piece", 1, 1e12),
  number("row_gj_n_m2", "Torsional stiffness of a cross piece", 0, 1e12),
  choice("deck", "What the deck hands loads to", ["stringers", "rows"]),
  choice("ends", "Ends of the cross pieces", ["hinged", "stiff"]),
  number("own_n_per_m", "Own weight along the module", 0, 1e5),
  list("loads_n", "Loads of the train [N]"),
  list("at_mm", "Place of each load along the train [mm]"),
  number("offset_mm", "Middle of the train off the middle line", -5000, 5000),
  optional(number("track_mm", "Wheels apart across; left out or 0 for feet", 0, 5000)),
  optional(
    list("rests_mm", "Bearings as [along, stringer number from 0]; the ends of every stringer unless given"),
  ),
  optional(whole("settled_rest", "Bearing that has settled, from 0", 0, 1000)),
  optional(number("settled_mm", "How far it has settled", 0, 1000)),
  optional(whole("lost_row", "Row of cross pieces that is gone, from 0", 0, 1000)),
  optional(
    number("division_mm", "Longest division between which effects are read (50 unless given)", 5, 500),
  ),
];

export const envelopeOutputs: readonly Field[] = [
  list("stations_mm", "Stations along the module"),
  list("moment_most_n_m", "Largest moment, one list per stringer"),
  list("moment_least_n_m", "Least moment"),
  list("shear_most_n", "Largest shear beside the station"),
  list("shear_least_n", "Least shear"),
  list("sag_most_mm", "Largest sag under the loads alone"),
  list("sag_least_mm", "Least sag"),
  {
    key: "peaks",
    title: "Largest of each effect with place, stringer and where the first load stands",
    type: "object",
  },
  yes("tips", "Whether some place of the loads tips the module off its bearings"),
];
