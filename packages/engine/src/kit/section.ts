import type { LumberSize } from "../materials/tables.ts";
import { DomainError, M_PER_IN } from "../units/index.ts";
import type { SizeId } from "./types.ts";

/** Actual section of one lumber size, in the builder's unit. */
export interface Section {
  readonly thickness_mm: number;
  readonly width_mm: number;
}

const MM_PER_IN = M_PER_IN * 1000;

/** The actual section of a nominal size [mm]. Throws `DomainError` when the table lacks the size. */
export function sectionOf(sizes: readonly LumberSize[], id: SizeId): Section {
  const row = sizes.find((s) => s.id === id);
  if (!row) throw new DomainError("unknown-lumber-size", { size: id });
  return { thickness_mm: row.thickness_in * MM_PER_IN, width_mm: row.width_in * MM_PER_IN };
}

/** How far a lying piece reaches along the walk and upward: flat shows its wide face up, edge its narrow one. */
export const lying = (s: Section, lay: "flat" | "edge"): { readonly along: number; readonly high: number } =>
  lay === "flat" ? { along: s.width_mm, high: s.thickness_mm } : { along: s.thickness_mm, high: s.width_mm };

/** Saw lengths are kept to a hundredth of a millimetre, so equal pieces have equal numbers. */
export const sawLength = (mm: number): number => Math.round(mm * 100) / 100;
