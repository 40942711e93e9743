import type { Coating, Fastener } from "@causey/engine/materials";

const MM_PER_IN = 25.4;
const inchText = (v: number): string => (v % 1 === 0 ? `${v} in` : `${Math.floor(v)}-1/2 in`);

/** Gauge: shank and root diameter [in], bending yield [psi]. */
const gauges = {
  8: [0.164, 0.131, 90_000],
  10: [0.19, 0.152, 80_000],
  12: [0.216, 0.171, 80_000],
  14: [0.242, 0.196, 70_000],
} as const;

const coatingWords: Readonly<Record<Coating, string>> = {
  "stainless-316": "stainless 316",
  "stainless-304": "stainless 304",
  "hot-dip-zinc": "hot-dip galvanised",
  "plain-zinc": "plain zinc",
  none: "uncoated",
};
const idEnd: Readonly<Record<Coating, string>> = {
  "stainless-316": "-316",
  "stainless-304": "-304",
  "hot-dip-zinc": "",
  "plain-zinc": "-zinc",
  none: "-bare",
};

/** The same screw in another coating is a row of its own: its strength is alike, its life in the wet is not. */
function woodScrew(gauge: keyof typeof gauges, length: number, coating: Coating = "hot-dip-zinc"): Fastener {
  const [shank, root, yieldStrength] = gauges[gauge];
  return {
    id: `screw-${gauge}x${length}${idEnd[coating]}`,
    name: `Wood screw #${gauge} x ${inchText(length)}, ${coatingWords[coating]}`,
    kind: "wood-screw",
    length_mm: length * MM_PER_IN,
    diameter_mm: shank * MM_PER_IN,
    coating,
    root_mm: root * MM_PER_IN,
    fyb_psi: yieldStrength,
    source: "asme-b18-6-1",
    status: "memory",
  };
}

function nail(penny: string, diameter: number, length: number, yieldStrength: number): Fastener {
  return {
    id: `nail-${penny}`,
    name: `Common nail ${penny}, hot-dip galvanised`,
    kind: "nail",
    length_mm: length * MM_PER_IN,
    diameter_mm: diameter * MM_PER_IN,
    coating: "hot-dip-zinc",
    fyb_psi: yieldStrength,
    source: "astm-f1667",
    status: "seen",
  };
}

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
  ...([304, 316] as const).flatMap((steel) => [
    woodScrew(8, 2.5, `stainless-${steel}`),
    woodScrew(10, 2.5, `stainless-${steel}`),
    woodScrew(10, 3, `stainless-${steel}`),
    woodScrew(10, 4, `stainless-${steel}`),
    woodScrew(12, 3.5, `stainless-${steel}`),
    woodScrew(14, 5, `stainless-${steel}`),
  ]),
  woodScrew(8, 2.5, "plain-zinc"),
  woodScrew(10, 3, "plain-zinc"),
  nail("8d", 0.131, 2.5, 100_000),
  nail("10d", 0.148, 3, 90_000),
  nail("16d", 0.162, 3.5, 90_000),
  clip("mesh-clip", "Mesh clip with its screw", 25, 4),
  clip("mesh-staple", "Fence staple 1-1/2 in", 38, 3.8),
  clip("grating-clip", "Saddle clip for grating with its screw, stainless 316", 50, 6, "stainless-316"),
  clip("panel-clip", "Edge clip for deck panels with its screw, stainless 316", 40, 5, "stainless-316"),
] as const satisfies readonly Fastener[];
