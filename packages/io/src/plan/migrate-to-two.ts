import type { Json, JsonObject } from "@causey/engine/formula";

/**
 * Plans of schema 1 know nothing of these: told nothing, assumed nothing. Written out in full, for what an old plan
 * becomes in schema 2 must not change with the blanks of a later schema.
 */
const BLANK: JsonObject = {
  request: {
    requester: "",
    organisation: "",
    contact: "",
    purpose: "",
    received: null,
    wet_feet_ok: null,
    options: [],
  },
  survey: {
    benchmarks: [],
    check_shots: [],
    stations: [],
    correct_terrain: false,
    accuracy_m: null,
    date: null,
  },
  water: { exposure: "fresh", series: null },
  rules: { profile: "staff-access", overrides: [] },
  papers: {
    sheet: "letter",
    applicant: "",
    prepared_by: "",
    file_no: "",
    waterbody: "",
    date: null,
    adjoining: [],
  },
  photo: null,
};

const isObject = (v: Json | undefined): v is JsonObject =>
  typeof v === "object" && v !== null && !Array.isArray(v);

/** Adds what is missing; whatever is no object is left for the schema to complain about. */
const filled = (value: Json | undefined, blank: JsonObject): Json | undefined =>
  isObject(value) ? { ...blank, ...value } : value;

const each = (value: Json | undefined, change: (item: Json) => Json | undefined): Json | undefined =>
  Array.isArray(value) ? value.map((item: Json) => change(item) ?? null) : value;

export const visitToTwo = (visit: Json | undefined): Json | undefined =>
  isObject(visit) && isObject(visit["cart"])
    ? { ...visit, cart: { wet_kg: 0, width_mm: null, length_mm: null, ...visit["cart"] } }
    : visit;

export const layoutToTwo = (layout: Json | undefined): Json | undefined =>
  filled(layout, { lines: [], passing_every_m: null, as_laid: [], slop_mm: 25 });

/** A recipe; a ready kit named by its id stays as it is. */
export const kitToTwo = (kit: Json | undefined): Json | undefined =>
  isObject(kit) && !Object.hasOwn(kit, "ready")
    ? {
        ramp: null,
        spares_share: 0.03,
        ...kit,
        ...(isObject(kit["lumber"]) ? { lumber: { preservative: null, ...kit["lumber"] } } : {}),
        ...(isObject(kit["platform"]) ? { platform: { pieces: 1, ...kit["platform"] } } : {}),
      }
    : kit;

const moneyToTwo = (money: Json | undefined): Json | undefined =>
  filled(money, {
    donated_share: 0,
    donated_per_hour: 0,
    jig_hours_per_module: 0,
    inspections_per_year: 0,
    hours_per_inspection: 0,
    repair_share_per_year: 0,
    price_age_days: 180,
  });

const present = (document: JsonObject): JsonObject =>
  Object.fromEntries(Object.entries(document).filter(([, v]) => v !== undefined));

/** Schema 1 to 2: request, survey, water, rules and papers join the plan; the terrain says of which kind it is. */
export function toSchemaTwo(document: JsonObject): JsonObject {
  const { terrain, levels, visits, kit, layout, money } = document;
  return present({
    ...BLANK,
    ...document,
    terrain: filled(terrain, { kind: "grid" }) as Json,
    levels: each(levels, (l) => filled(l, { role: "other", basis: "assumed" })) as Json,
    visits: each(visits, visitToTwo) as Json,
    kit: kitToTwo(kit) as Json,
    layout: layoutToTwo(layout) as Json,
    money: moneyToTwo(money) as Json,
  });
}
