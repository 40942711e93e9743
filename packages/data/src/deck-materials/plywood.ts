import type { PlywoodRow } from "@causey/engine/materials";

const panel = (rating: string, stiffness: number, bending: number): PlywoodRow => ({
  id: `plywood-${rating}`,
  name: `Panel with the span rating ${rating}, exterior`,
  bending_lb_in_per_ft: bending,
  stiffness_lb_in2_per_ft: stiffness,
  shear_lb_per_ft: null,
  source: "apa-d510",
  status: "memory",
});

/** Dry capacities, strong way across the supports, one foot of width. Shear is known of the worked example alone. */
export const plywood: readonly PlywoodRow[] = [
  panel("32/16", 115_000, 370),
  panel("40/20", 225_000, 625),
  panel("48/24", 400_000, 845),
  panel("24oc", 330_000, 640),
  {
    id: "plywood-32/16-example",
    name: "Plywood 32/16 of a worked example",
    bending_lb_in_per_ft: 407,
    stiffness_lb_in2_per_ft: 126_500,
    shear_lb_per_ft: 198,
    source: "plywood-example",
    status: "seen",
  },
];
