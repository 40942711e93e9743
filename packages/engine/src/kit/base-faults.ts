import { shaftArea } from "./base-pieces.ts";
import { say, type Faults } from "./faults.ts";
import { hasBase, lieOf } from "./support-tiers.ts";
import type { Floats, ScrewPiles, SupportKind } from "./types.ts";

/** A float must stand higher over its freeboard than this to carry anything [mm]; a decision of this project. */
const LEAST_SWIM_MM = 25;

/** Ground that piles or floats cover [mm2]; null for a support on timber. */
export function baseContact({ form, piles, floats }: SupportKind): number | null {
  if (form === "screw-pile" && piles) return piles.count * shaftArea(piles);
  return form === "float" && floats ? floats.count * floats.length_mm * floats.width_mm : null;
}

/** What stands below the timber of a screw-pile or float support, and that nothing else has it. */
export function baseFaults(f: Faults, kind: SupportKind, place: string): void {
  const { form, piles, floats } = kind;
  belongs(f, place, "piles", piles, form === "screw-pile");
  belongs(f, place, "floats", floats, form === "float");
  if (form === "screw-pile" && piles) pileFaults(f, kind, piles, place);
  if (form === "float" && floats) floatFaults(f, kind, floats, place);
  if (!hasBase(kind)) return;
  kind.pieces.forEach((p, i) => {
    if (lieOf(kind, p) === "upright")
      f.add(
        "support",
        `${place}.pieces[${i}]`,
        p.name,
        `"${p.name}" stands upright, and on ${form === "float" ? "floats" : "screw piles"} only lying pieces have a place`,
        "Let it lie along or across, or use another form.",
      );
  });
}

function belongs(f: Faults, place: string, key: "piles" | "floats", value: unknown, asked: boolean): void {
  if (asked === (value !== undefined)) return;
  f.add(
    "support",
    `${place}.${key}`,
    value,
    asked ? `the recipe does not say which ${key} it stands on` : `this form of support has no ${key}`,
    asked ? `Give "${key}".` : `Leave "${key}" out, or change the form.`,
  );
}

function pileFaults(f: Faults, kind: SupportKind, piles: ScrewPiles, place: string): void {
  const ok = [
    f.whole(`${place}.piles.count`, piles.count, 2, "the count of piles"),
    f.whole(`${place}.piles.helices`, piles.helices, 1, "the count of helices"),
    ...(["shaft_mm", "helix_mm", "length_mm", "depth_mm", "mass_kg"] as const).map((key) =>
      f.positive(`${place}.piles.${key}`, piles[key], `the pile's ${key.replace(/_.*/, "")}`),
    ),
  ].every(Boolean);
  if (!ok) return;
  if (piles.helix_mm <= piles.shaft_mm)
    f.add(
      "support",
      `${place}.piles.helix_mm`,
      piles.helix_mm,
      `the helix is no wider than the shaft (${say(piles.shaft_mm)})`,
      "Give the helix's outer diameter.",
    );
  eachOnItsFoot(f, kind, "pile", piles.count, place);
}

function floatFaults(f: Faults, kind: SupportKind, floats: Floats, place: string): void {
  const ok = [
    f.whole(`${place}.floats.count`, floats.count, 1, "the count of floats"),
    ...(["length_mm", "width_mm", "height_mm", "mass_kg"] as const).map((key) =>
      f.positive(`${place}.floats.${key}`, floats[key], `the float's ${key.replace(/_.*/, "")}`),
    ),
    f.notNegative(`${place}.floats.freeboard_mm`, floats.freeboard_mm, "the freeboard"),
  ].every(Boolean);
  if (!ok) return;
  if (floats.height_mm - floats.freeboard_mm < LEAST_SWIM_MM)
    f.add(
      "support",
      `${place}.floats.freeboard_mm`,
      floats.freeboard_mm,
      `with this freeboard only ${say(Math.max(0, floats.height_mm - floats.freeboard_mm))} of the float may be under water`,
      "Use a higher float, or ask for less freeboard.",
    );
  eachOnItsFoot(f, kind, "float", floats.count, place);
  const asGiven = [floats.length_mm, floats.width_mm].sort((a, b) => a - b);
  kind.feet.forEach((foot, i) => {
    const own = [foot.along_mm, foot.across_mm].sort((a, b) => a - b);
    if (own.every((v, k) => Math.abs(v - asGiven[k]!) < 1)) return;
    f.add(
      "support",
      `${place}.feet[${i}]`,
      own.map((v) => Math.round(v)).join(" x "),
      "the foot is not as large as the float that lies on it",
      `Give ${say(floats.length_mm)} by ${say(floats.width_mm)}, whichever way the float lies.`,
    );
  });
}

/** One foot for each pile or float, no two at the same place across. */
function eachOnItsFoot(f: Faults, kind: SupportKind, what: string, count: number, place: string): void {
  const places = new Set(kind.feet.map((foot) => foot.offset_across_mm)).size;
  if (kind.feet.length === count && places === count) return;
  f.add(
    "support",
    `${place}.feet`,
    `${kind.feet.length} feet`,
    `${count} ${what}s stand on ${kind.feet.length} feet at ${places} places across`,
    `Give one foot for each ${what}, each at its own distance from the middle line.`,
  );
}
