/** Cautions that stand under every check of strength. */
export const GRADE =
  "The timber's grade is assumed until verified on site. Proof-load the finished walkway before use, and let an engineer confirm what carries people over water or at height.";

export const STAFF_ACCESS =
  "Held against the visits asked for (trained staff and their cart), not against a public crowd: where the public may come, ASCE 7-16 Table 4.3-1 asks for 60 psf on walkways.";

export const SOIL =
  "Soil strength is assumed until measured at the joint. Under 3 kPa, stop and measure. A stiff root mat may break through into weaker mud: use the mud's strength.";

export const FLOOD =
  "Still water only: current, waves, ice and drifting wrack come on top. The module must be tied to its supports, and these to their stakes. Fresh stakes hold 0.3 to 0.5 of this in the first hours.";

export const LIFT =
  "The NIOSH equation covers two-handed lifts on firm ground; it does not cover mud, carrying far, heat or cold, nor team lifts: take it as the best case. Freshly treated lumber may weigh 1.7 times its dry mass.";

export const ENGINEER =
  "An engineer must look at this before anyone walks on it: the number here only says whether it is worth asking.";
