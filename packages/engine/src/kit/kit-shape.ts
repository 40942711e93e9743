import { shorten, type Json, type Problem } from "../formula/index.ts";
import { PANEL_KINDS } from "./panels.ts";
import type { Kit } from "./types.ts";

/** A small grammar of what a kit's JSON must look like: enough that no later step meets a missing field. */
type Shape =
  | "number"
  | "text"
  | "truth"
  | { readonly oneOf: readonly string[] }
  | { readonly list: Shape }
  | { readonly maybe: Shape }
  | { readonly orNull: Shape }
  | { readonly fields: Readonly<Record<string, Shape>> }
  | { readonly byKind: Readonly<Record<string, Readonly<Record<string, Shape>>>> };

const lay: Shape = { oneOf: ["flat", "edge"] };
const screws = { screw: "text", screws_per_end: "number" } as const;

const panelShape: Readonly<Record<string, Shape>> = {
  name: "text",
  thickness_mm: "number",
  panel_length_mm: "number",
  width_mm: "number",
  gap_mm: "number",
  opening_along_mm: "number",
  opening_across_mm: "number",
  open_share: "number",
  mass_kg_m2: "number",
  soak_kg_m2: "number",
  fastener: "text",
  fasteners_per_panel: "number",
  strength: {
    fields: {
      moment_n: "number",
      stiffness_nm: "number",
      creep: "number",
      source: "text",
      status: { oneOf: ["seen", "memory", "practice", "computed"] },
    },
  },
};

const supportShape: Shape = {
  fields: {
    id: "text",
    name: "text",
    form: { oneOf: ["open-crate", "sleeper", "post-pair", "screw-pile", "float"] },
    height_min_mm: "number",
    height_max_mm: "number",
    height_step_mm: "number",
    sill: { fields: { size: "text", length_mm: "number", lay } },
    pieces: {
      list: {
        fields: {
          name: "text",
          size: "text",
          count: "number",
          length_mm: "number",
          per_height: "number",
          lie: { maybe: { oneOf: ["upright", "along", "across"] } },
          lay: { maybe: lay },
          beside: { maybe: "truth" },
          fill: { maybe: "truth" },
        },
      },
    },
    feet: { list: { fields: { along_mm: "number", across_mm: "number", offset_across_mm: "number" } } },
    rating_n: { orNull: "number" },
    anchor: {
      orNull: {
        fields: {
          kind: { oneOf: ["stake"] },
          size: "text",
          length_mm: "number",
          embedment_mm: "number",
          count: "number",
        },
      },
    },
    screws: { list: { fields: { screw: "text", count: "number" } } },
    piles: {
      maybe: {
        fields: {
          item: "text",
          count: "number",
          shaft_mm: "number",
          helix_mm: "number",
          helices: "number",
          length_mm: "number",
          depth_mm: "number",
          mass_kg: "number",
        },
      },
    },
    floats: {
      maybe: {
        fields: {
          item: "text",
          count: "number",
          length_mm: "number",
          width_mm: "number",
          height_mm: "number",
          mass_kg: "number",
          freeboard_mm: "number",
        },
      },
    },
    stands: { fields: { ground_above_m: { orNull: "number" }, not_in: { list: "text" } } },
  },
};

const kitShape: Shape = {
  fields: {
    id: "text",
    name: "text",
    note: "text",
    lumber: {
      fields: {
        species: "text",
        grade: "text",
        treatment: { oneOf: ["none", "treated"] },
        incised: "truth",
        preservative: { orNull: "text" },
      },
    },
    lengths_mm: { list: "number" },
    joint_gap_mm: "number",
    stringers: { fields: { count: "number", size: "text", overall_mm: "number" } },
    cross_pieces: {
      fields: {
        size: "text",
        lay,
        spacing_mm: "number",
        exceptions: {
          list: {
            fields: {
              length_mm: { maybe: "number" },
              at_mm: "number",
              size: { maybe: "text" },
              omit: { maybe: "truth" },
            },
          },
        },
        ...screws,
      },
    },
    end: { byKind: { "catch-board": { size: "text", projection_mm: "number" }, plain: {} } },
    deck: {
      byKind: {
        boards: {
          size: "text",
          gap_mm: "number",
          width_mm: "number",
          screw: "text",
          screws_per_bearing: "number",
        },
        mesh: {
          name: "text",
          wire_mm: "number",
          pitch_mm: "number",
          panel_length_mm: "number",
          width_mm: "number",
          upturn_mm: "number",
          clip: "text",
          clips_per_panel: "number",
          mass_kg_m2: "number",
          open_share: "number",
          yield_mpa: "number",
        },
        ...Object.fromEntries(PANEL_KINDS.map((kind) => [kind, panelShape])),
      },
    },
    curb: { orNull: { fields: { size: "text", screw: "text", screw_spacing_mm: "number" } } },
    supports: { list: supportShape },
    platform: {
      fields: {
        side_mm: "number",
        pieces: "number",
        stringers: { fields: { size: "text", count: "number" } },
        cross_pieces: { fields: { size: "text", count: "number" } },
        ...screws,
        edge_sill_mm: { maybe: "number" },
      },
    },
    ramp: { orNull: { fields: { lengths_mm: { list: "number" }, max_grade: "number" } } },
    spares_share: "number",
  },
};

/** Reads JSON as a kit: the kit, or every field that is missing, unknown or of the wrong type. */
export function readKit(
  value: Json,
  file = "input",
  place = "kit",
): { readonly kit: Kit } | { readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  check(kitShape, value, place, (at, found, message, mend) =>
    problems.push({
      code: "kit-shape",
      severity: "error",
      file,
      place: at,
      value: shorten(found),
      message,
      mend,
    }),
  );
  return problems.length > 0 ? { problems } : { kit: value as unknown as Kit };
}

type Report = (place: string, value: unknown, message: string, mend: string) => void;
type JsonMap = Readonly<Record<string, Json>>;
const isMap = (v: Json | undefined): v is JsonMap => typeof v === "object" && v !== null && !Array.isArray(v);

function check(shape: Shape, value: Json | undefined, place: string, report: Report): void {
  if (typeof shape === "string") return checkPlain(shape, value, place, report);
  if ("maybe" in shape) {
    if (value !== undefined) check(shape.maybe, value, place, report);
  } else if ("orNull" in shape) {
    if (value !== null) check(shape.orNull, value, place, report);
  } else if ("oneOf" in shape) {
    if (typeof value !== "string" || !shape.oneOf.includes(value))
      report(place, value, "is not one of the words allowed here", `Give ${shape.oneOf.join(" or ")}.`);
  } else if ("list" in shape) {
    if (Array.isArray(value)) value.forEach((v: Json, i) => check(shape.list, v, `${place}[${i}]`, report));
    else report(place, value, "must be a list", "Give [ ... ].");
  } else if ("fields" in shape) checkFields(shape.fields, value, place, report);
  else checkKind(shape.byKind, value, place, report);
}

const plainWords = { number: "a number", text: "text", truth: "true or false" } as const;
const plainTypes = { number: "number", text: "string", truth: "boolean" } as const;

function checkPlain(
  shape: keyof typeof plainWords,
  value: Json | undefined,
  place: string,
  report: Report,
): void {
  if (value === undefined) report(place, value, "is missing", `Give ${plainWords[shape]}.`);
  else if (typeof value !== plainTypes[shape] || (shape === "number" && !Number.isFinite(value)))
    report(place, value, `must be ${plainWords[shape]}`, `Give ${plainWords[shape]}.`);
}

function checkFields(
  fields: Readonly<Record<string, Shape>>,
  value: Json | undefined,
  place: string,
  report: Report,
): void {
  if (!isMap(value)) return report(place, value, "must be an object", "Give { ... }.");
  for (const [key, shape] of Object.entries(fields))
    check(shape, Object.hasOwn(value, key) ? value[key] : undefined, `${place}.${key}`, report);
  for (const key of Object.keys(value))
    if (!Object.hasOwn(fields, key))
      report(
        `${place}.${key}`,
        value[key],
        "is not a field of a kit here",
        `Fields: ${Object.keys(fields).join(", ")}.`,
      );
}

function checkKind(
  kinds: Readonly<Record<string, Readonly<Record<string, Shape>>>>,
  value: Json | undefined,
  place: string,
  report: Report,
): void {
  if (!isMap(value)) return report(place, value, "must be an object", "Give { kind: ... }.");
  const kind = value["kind"];
  const names = Object.keys(kinds);
  if (typeof kind !== "string" || !names.includes(kind))
    return report(`${place}.kind`, kind, "is not a kind allowed here", `Give ${names.join(" or ")}.`);
  checkFields({ kind: "text", ...kinds[kind] }, value, place, report);
}
