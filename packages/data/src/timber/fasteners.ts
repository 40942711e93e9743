import type { Fastener } from "@causey/engine/materials";

const MM_PER_IN = 25.4;
const inchText = (v: number): string => (v % 1 === 0 ? `${v} in` : `${Math.floor(v)}-1/2 in`);

/** Gauge: shank and root diameter [in], bending yield [psi]. */
const gauges = {
  8: [0.164, 0.131, 90_000],
  10: [0.19, 0.152, 80_000],
  12: [0.216, 0.171, 80_000],
  14: [0.242, 0.196, 70_000],
} as const;

function woodScrew(gauge: keyof typeof gauges, length: number): Fastener {
  const [shank, root, yieldStrength] = gauges[gauge];
  return {
    id: `screw-${gauge}x${length}`,
    name: `Wood screw #${gauge} x ${inchText(length)}, stainless or hot-dip galvanised`,
    kind: "wood-screw",
    length_mm: length * MM_PER_IN,
    diameter_mm: shank * MM_PER_IN,
    root_mm: root * MM_PER_IN,
    fyb_psi: yieldStrength,
    source: "asme-b18-6-1",
    status: "memory",
  };
}

function nail(penny: string, diameter: number, length: number, yieldStrength: number): Fastener {
  return {
    id: `nail-${penny}`,
    name: `Common nail ${penny}, hot-dip galvanised or stainless`,
    kind: "nail",
    length_mm: length * MM_PER_IN,
    diameter_mm: diameter * MM_PER_IN,
    fyb_psi: yieldStrength,
    source: "astm-f1667",
    status: "seen",
  };
}

function clip(id: string, name: string, length_mm: number, diameter_mm: number): Fastener {
  return { id, name, kind: "clip", length_mm, diameter_mm, source: "yard-mesh-clip", status: "practice" };
}

/** Screws, nails and clips a kit may name. Clips have no capacity here: it must be tested. */
export const fasteners = [
  woodScrew(8, 1.5),
  woodScrew(8, 2),
  woodScrew(8, 2.5),
  woodScrew(8, 3),
  woodScrew(10, 2),
  woodScrew(10, 2.5),
  woodScrew(10, 3),
  woodScrew(10, 3.5),
  woodScrew(10, 4),
  woodScrew(12, 3),
  woodScrew(12, 3.5),
  woodScrew(12, 4),
  woodScrew(14, 3.5),
  woodScrew(14, 4),
  woodScrew(14, 5),
  nail("8d", 0.131, 2.5, 100_000),
  nail("10d", 0.148, 3, 90_000),
  nail("16d", 0.162, 3.5, 90_000),
  clip("mesh-clip", "Mesh clip with its screw", 25, 4),
  clip("mesh-staple", "Fence staple 1-1/2 in", 38, 3.8),
] as const satisfies readonly Fastener[];
