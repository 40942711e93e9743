import type { Coating } from "../materials/tables.ts";
import type { Faults, KitTables } from "./faults.ts";
import type { Kit } from "./types.ts";

/** Copper in the wood eats these: hot-dip zinc or stainless is asked for with copper treatments (FEMA P-499). */
const TOO_THIN: readonly Coating[] = ["plain-zinc", "none"];

/** The preservative is known, is not barred from wetlands, and does not eat the screws. */
export function preservativeFaults(f: Faults, { preservatives, fasteners }: KitTables): void {
  const { treatment, preservative } = f.kit.lumber;
  if (preservative === null) return;
  const row = preservatives.find((p) => p.id === preservative);
  if (!row) {
    const known = preservatives.map((p) => p.id).join(", ");
    f.add(
      "preservative",
      "lumber.preservative",
      preservative,
      `preservative "${preservative}" is not in the tables`,
      `Use one of: ${known}; or null when it is not known.`,
    );
    return;
  }
  if (treatment === "none")
    f.add(
      "preservative",
      "lumber.preservative",
      preservative,
      `the lumber is called untreated and has a preservative, ${row.name}`,
      "Call it treated, or set the preservative to null.",
    );
  if (row.restricted)
    f.add(
      "preservative",
      "lumber.preservative",
      preservative,
      `${row.name} is barred or limited for small structures in wetlands: ${row.note}`,
      "Ask the permitting office, or choose another treatment or untreated durable wood.",
      "warning",
    );
  if (!row.has_copper) return;
  for (const id of fastenersOf(f.kit)) {
    const fastener = fasteners.find((x) => x.id === id);
    if (fastener && TOO_THIN.includes(fastener.coating))
      f.add(
        "preservative",
        "lumber.preservative",
        id,
        `the copper in ${row.name} eats "${fastener.name}" (${fastener.coating === "none" ? "no coating" : "plain zinc"})`,
        "Use fasteners with hot-dip zinc or of stainless steel; stainless 316 near salt water.",
        "warning",
      );
  }
}

/** Every fastener that the recipe names, once. */
export function fastenersOf({ cross_pieces, deck, curb, platform, supports }: Kit): string[] {
  const own = deck.kind === "boards" ? deck.screw : deck.kind === "mesh" ? deck.clip : deck.fastener;
  return [
    ...new Set([
      cross_pieces.screw,
      own,
      ...(curb ? [curb.screw] : []),
      platform.screw,
      ...supports.flatMap((s) => s.screws.map((x) => x.screw)),
    ]),
  ];
}
