import type { Coating, Fastener } from "@causey/engine/materials";

function clip(
  id: string,
  name: string,
  length_mm: number,
  diameter_mm: number,
  coating: Coating = "hot-dip-zinc",
): Fastener {
  return {
    id,
    name,
    kind: "clip",
    length_mm,
    diameter_mm,
    coating,
    source: "yard-mesh-clip",
    status: "practice",
  };
}

/** Clips have no capacity here: it must be tested. */
export const clips: readonly Fastener[] = [
  clip("mesh-clip", "Mesh clip with its screw", 25, 4),
  clip("mesh-staple", "Fence staple 1-1/2 in", 38, 3.8),
  clip("grating-clip", "Saddle clip for grating with its screw, stainless 316", 50, 6, "stainless-316"),
  clip("panel-clip", "Edge clip for deck panels with its screw, stainless 316", 40, 5, "stainless-316"),
];
