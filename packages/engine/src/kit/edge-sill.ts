import type { Kit, SupportKind } from "./types.ts";

/**
 * A kind of support as it stands under an edge that a platform's stringers end at: with the longer sill that the
 * recipe gives for that place, where its own is shorter.
 */
export function underPlatformEdge(kit: Kit, kind: SupportKind): SupportKind {
  const length_mm = kit.platform.edge_sill_mm ?? 0;
  if (length_mm <= kind.sill.length_mm) return kind;
  return { ...kind, sill: { ...kind.sill, length_mm } };
}
