import type { Calculation, JsonObject, Source } from "../formula/index.ts";
import type { Foot, PanelDeck, SupportKind } from "../kit/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { metacentreHeight } from "../flood/index.ts";
import { screwPileCapacity } from "../ground/index.ts";
import { pascals } from "../units/index.ts";
import { checkDeckPanel } from "./deck-panel.ts";
import { checkFloats } from "./float.ts";
import { ladderOf } from "./ladder.ts";
import { demandFields, demandFrom, number, optional, text } from "./method-fields.ts";
import { checkMethod } from "./method-results.ts";
import { barSpread, plateSpread } from "./panel-formulas.ts";
import { checkScrewPiles } from "./screw-pile.ts";
import { casesOf } from "./walk-demand.ts";

const asked: Source = { id: "asked", title: "Value as given", status: "project" };
const value = (input: JsonObject, key: string): number => input[key] as number;

const panelCalculation = checkMethod(
  {
    id: "check.deck-panel",
    title: "Check of a deck of grating, plywood or plastic panels",
    inputs: [
      text("kind", "Kind of panel", ["moulded-grating", "bar-grating", "plywood", "plastic-panel"]),
      number("span_mm", "Neighbouring cross pieces, centre to centre", 10, 10_000),
      number("width_mm", "Width of the deck", 50, 20_000),
      number("moment_n", "Moment that one metre of width may carry, wet [N*m per m]", 1, 1e7),
      number("stiffness_nm", "Stiffness of one metre of width, wet [N*m2 per m]", 1, 1e8),
      number("creep", "Deflection under lasting load over that under a short one", 1, 20),
      number("mass_kg_m2", "Mass", 0.1, 500),
      number("soak_kg_m2", "Water taken up", 0, 500),
      text("strength_source", "Where moment and stiffness come from"),
      ...demandFields,
    ],
    validity: "One simple span along the walk; the load at the panel's edge; shear is not checked.",
    sources: [plateSpread.spec.source, barSpread.spec.source],
  },
  (input, context) => {
    const deck: PanelDeck = {
      kind: input["kind"] as PanelDeck["kind"],
      name: "panel",
      thickness_mm: 1,
      panel_length_mm: value(input, "span_mm"),
      width_mm: value(input, "width_mm"),
      gap_mm: 0,
      opening_along_mm: 0,
      opening_across_mm: 0,
      open_share: 0,
      mass_kg_m2: value(input, "mass_kg_m2"),
      soak_kg_m2: value(input, "soak_kg_m2"),
      fastener: "fastener",
      fasteners_per_panel: 1,
      strength: {
        moment_n: value(input, "moment_n"),
        stiffness_nm: value(input, "stiffness_nm"),
        creep: value(input, "creep"),
        source: input["strength_source"] as string,
        status: "practice",
      },
    };
    const label = { id: "deck", kind: "deck", name: "Panel deck", parts: [] } as const;
    return checkDeckPanel(
      { deck, span_m: value(input, "span_mm") / 1000 },
      [demandFrom(input)],
      label,
      context,
    );
  },
);

const jointFields = [
  number("left_mm", "Span on one side, 0 for none", 0, 100_000),
  number("right_mm", "Span on the other side, 0 for none", 0, 100_000),
  number("dead_kg", "Soaked mass on the joint with the support", 0, 10_000),
  number("clear_width_mm", "Clear width of the deck", 50, 20_000),
  number("apart_mm", "The two of them apart across the walk, middle to middle", 1, 20_000),
] as const;

/** A support on two equal things, either side of the middle line. */
function supportOn(
  form: SupportKind["form"],
  foot: Omit<Foot, "offset_across_mm">,
  apart: number,
): SupportKind {
  return {
    id: "asked",
    name: "support",
    form,
    height_min_mm: 0,
    height_max_mm: 0,
    height_step_mm: 1,
    sill: { size: "2x4", length_mm: 1000, lay: "flat" },
    pieces: [],
    feet: [-apart / 2, apart / 2].map((offset_across_mm) => ({ ...foot, offset_across_mm })),
    rating_n: null,
    anchor: null,
    screws: [],
    stands: { ground_above_m: null, not_in: [] },
  };
}

const jointFrom = (input: JsonObject, support: SupportKind) => ({
  left_m: value(input, "left_mm") / 1000,
  right_m: value(input, "right_mm") / 1000,
  dead_kg: value(input, "dead_kg"),
  support,
  clear_width_m: value(input, "clear_width_mm") / 1000,
});

const pileCalculation = checkMethod(
  {
    id: "check.screw-pile",
    title: "Check of a support on two screw piles",
    inputs: [
      ...jointFields,
      number("shaft_mm", "Diameter of the shaft", 10, 500),
      number("helix_mm", "Diameter of a helix", 20, 1000),
      { key: "helices", title: "Helices on one pile", type: "integer", min: 1, max: 6 },
      number("depth_mm", "Lowest helix below ground", 1, 20_000),
      optional(number("su_kpa", "Undrained strength of the ground", 0.1, 500)),
      number("safety", "Ratio of capacity to load asked for", 1, 10),
      ...demandFields,
    ],
    validity: screwPileCapacity.spec.validity,
    sources: [screwPileCapacity.spec.source],
  },
  (input, context) => {
    const foot = { along_mm: value(input, "shaft_mm"), across_mm: value(input, "shaft_mm") };
    const piles = {
      item: "pile",
      count: 2,
      shaft_mm: value(input, "shaft_mm"),
      helix_mm: value(input, "helix_mm"),
      helices: value(input, "helices"),
      length_mm: value(input, "depth_mm"),
      depth_mm: value(input, "depth_mm"),
      mass_kg: 0,
    };
    const demands = [demandFrom(input)];
    const su = input["su_kpa"] as number | undefined;
    return checkScrewPiles(
      {
        ...jointFrom(input, supportOn("screw-pile", foot, value(input, "apart_mm"))),
        piles,
        depth_m: value(input, "depth_mm") / 1000,
      },
      su === undefined ? null : { su: pascals(su * 1000), source: asked, how: "as given" },
      {
        cases: casesOf(demands, context.units),
        rungs: ladderOf(demands, context.units),
        safety: value(input, "safety"),
      },
      { id: "asked", name: "support", parts: [] },
      context,
    );
  },
);

const floatCalculation = checkMethod(
  {
    id: "check.float",
    title: "Check of a joint on two box floats",
    inputs: [
      ...jointFields,
      number("float_along_mm", "One float along the walk", 10, 20_000),
      number("float_across_mm", "One float across the walk", 10, 20_000),
      number("float_height_mm", "Height of a float", 10, 5000),
      number("freeboard_mm", "Freeboard asked for with people on", 0, 5000),
      number("timber_mm", "Underside of the module over the floats", 0, 5000),
      number("module_mm", "Top of the deck over that underside", 1, 2000),
      number("water_kg_m3", "Density of the water", 900, 1100),
      optional(number("water_depth_mm", "Depth at low water", 0, 100_000)),
      ...demandFields,
    ],
    validity: metacentreHeight.spec.validity,
    sources: [metacentreHeight.spec.source],
  },
  (input, context) => {
    const foot = { along_mm: value(input, "float_along_mm"), across_mm: value(input, "float_across_mm") };
    const demands = [demandFrom(input)];
    const depth = input["water_depth_mm"] as number | undefined;
    const timber_m = value(input, "timber_mm") / 1000;
    return checkFloats(
      {
        ...jointFrom(input, supportOn("float", foot, value(input, "apart_mm"))),
        floats: {
          item: "float",
          count: 2,
          length_mm: foot.along_mm,
          width_mm: foot.across_mm,
          height_mm: value(input, "float_height_mm"),
          mass_kg: 0,
          freeboard_mm: value(input, "freeboard_mm"),
        },
        timber_m,
        module_m: value(input, "module_mm") / 1000,
        ground_m: 0,
        height_m: timber_m + value(input, "float_height_mm") / 1000,
        water_kg_m3: value(input, "water_kg_m3"),
      },
      depth === undefined
        ? { missing: "the depth at low water" }
        : { name: "low water", z_m: depth / 1000, datum: "the ground" },
      { cases: casesOf(demands, context.units), rungs: ladderOf(demands, context.units), safety: 1 },
      { id: "asked", name: "joint", parts: [], anchored: false },
      context,
    );
  },
);

/** Checks of panel decks, screw piles and floats as registered calculations. */
export const kindCalculations: readonly Calculation<CalcContext>[] = [
  panelCalculation,
  pileCalculation,
  floatCalculation,
];
