import type { Coating, Fastener, Preservative } from "../materials/tables.ts";
import type { Kit } from "./types.ts";

/** What the water of a site holds, as the plan says it. */
export type Exposure = "fresh" | "brackish" | "salt";

/** One material of the tables as a plan may choose it. */
export interface MaterialChoice {
  readonly id: string;
  readonly name: string;
  /** Why it may not be chosen here; null = it may. */
  readonly barred: string | null;
  /** What speaks against it without barring it; empty = nothing. */
  readonly note: string;
}

/** Metals that leach, by how hard they are on a wetland: the least treatment that does the job comes first. */
const harm = (p: Preservative): number => (p.has_copper ? 1 : 0) + (p.has_arsenic ? 2 : 0);

/**
 * Preservatives as this plan may choose them, those with the least treatment first and the barred last. What public
 * guidance bars or limits in wetlands is barred (creosote, penta, CCA), and so is what does not stand the site's water.
 *
 * A plan file that names a barred one is still read: the kit warns of it, and the check does not meet its rule.
 */
export function preservativeChoices(
  preservatives: readonly Preservative[],
  exposure: Exposure,
): MaterialChoice[] {
  return preservatives
    .map((p) => ({ harm: harm(p), choice: choiceOf(p, exposure !== "fresh") }))
    .toSorted(
      (a, b) =>
        Number(a.choice.barred !== null) - Number(b.choice.barred !== null) ||
        a.harm - b.harm ||
        (a.choice.id < b.choice.id ? -1 : 1),
    )
    .map(({ choice }) => choice);
}

function choiceOf(p: Preservative, isSalt: boolean): MaterialChoice {
  const barred = p.restricted
    ? p.note
    : isSalt && p.salt_use === "no"
      ? "not for timber in salt water"
      : null;
  const notes = [
    ...(isSalt && p.salt_use === "marine-retention" ? ["in salt water at marine retention only"] : []),
    ...(isSalt && p.salt_use === "unknown" ? ["whether it stands salt water is not known"] : []),
    ...(p.has_arsenic ? ["holds arsenic"] : []),
  ];
  return { id: p.id, name: p.name, barred, note: notes.join("; ") };
}

const TOO_THIN: readonly Coating[] = ["plain-zinc", "none"];

/**
 * Fasteners of one kind as this plan may choose them: copper in the wood eats plain zinc (FEMA P-499), and salt water
 * eats everything but stainless 316 and, for a few seasons, hot-dip zinc (from memory, confirm).
 */
export function fastenerChoices(
  fasteners: readonly Fastener[],
  kind: Fastener["kind"],
  lumber: Kit["lumber"],
  preservatives: readonly Preservative[],
  exposure: Exposure,
): MaterialChoice[] {
  const preservative = preservatives.find((p) => p.id === lumber.preservative);
  const isUnknown = lumber.treatment === "treated" && preservative === undefined;
  return fasteners
    .filter((f) => f.kind === kind)
    .map((f) => {
      const isThin = TOO_THIN.includes(f.coating);
      const eaten =
        isThin && preservative?.has_copper === true ? `copper in ${preservative.name} eats it` : null;
      const salted =
        exposure !== "fresh" && !["stainless-316", "hot-dip-zinc"].includes(f.coating)
          ? "salt water eats it"
          : null;
      const note =
        isThin && isUnknown ? "not with copper-treated wood: find out what this is treated with" : "";
      return { id: f.id, name: f.name, barred: eaten ?? salted, note };
    });
}
