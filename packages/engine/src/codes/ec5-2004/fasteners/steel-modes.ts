import { defineFormula, type Trace } from "../../../formula/index.ts";
import { qty, type Qty } from "../../../units/index.ts";
import { clause } from "./sources.ts";
import type { Mode } from "./wood-modes.ts";

const mode = <const I extends Readonly<Record<string, "m" | "Pa" | "1" | "N*m">>>(
  name: string,
  title: string,
  text: string,
  inputs: I,
) => ({
  id: `ec5-2004.fastener.steel-${name}`,
  title: `Lateral value with a steel plate, ${title}`,
  symbol: `F_${name}`,
  unit: "N" as const,
  text,
  inputs,
  validity:
    "One fastener and one shear plane, plate outside; k runs from a thin plate (0, up to d / 2) to a thick one (1, from d on).",
  source: clause("8.2.3, equations 8.9 to 8.13, straight lines between thin and thick plates"),
});

const base = { f_h: "Pa", t: "m", d: "m", k: "1" } as const;
/** The wood is crushed along the fastener. f_h [Pa], t in the wood, d [m], k [1]. */
export const steelCrush = defineFormula(
  mode("crush", "the wood crushed", "(0.4 + 0.6 * k) * f_h * t * d", base),
  ({ f_h, t, d, k }) => (0.4 + 0.6 * k) * f_h * t * d,
);
export const steelCrushMiddle = defineFormula(
  mode("crush-middle", "the middle piece crushed between two plates", "0.5 * f_h * t * d", {
    f_h: "Pa",
    t: "m",
    d: "m",
  }),
  ({ f_h, t, d }) => 0.5 * f_h * t * d,
);
/** The fastener bends once. M_y [N*m]. */
export const steelBendsOnce = defineFormula(
  mode("once", "the fastener bends once", "f_h * t * d * (sqrt(2 + 4 * M_y / (f_h * d * t^2)) - 1)", {
    f_h: "Pa",
    t: "m",
    d: "m",
    M_y: "N*m",
  }),
  ({ f_h, t, d, M_y }) => f_h * t * d * (Math.sqrt(2 + (4 * M_y) / (f_h * d * t ** 2)) - 1),
);
export const steelBendsTwice = defineFormula(
  mode(
    "twice",
    "the fastener bends in the plate and the wood",
    "(1.15 * sqrt(2) + k * (2.3 - 1.15 * sqrt(2))) * sqrt(M_y * f_h * d)",
    {
      M_y: "N*m",
      f_h: "Pa",
      d: "m",
      k: "1",
    },
  ),
  ({ M_y, f_h, d, k }) => (1.15 * Math.SQRT2 + k * (2.3 - 1.15 * Math.SQRT2)) * Math.sqrt(M_y * f_h * d),
);
/** Stiffness of the plate's hold on the head. t plate, d [m]; k [1] 0 to 1. */
export const plateHold = defineFormula(
  {
    id: "ec5-2004.fastener.plate-hold",
    title: "How firmly the plate holds the head: 0 thin, 1 thick",
    symbol: "k",
    unit: "1",
    text: "max(0, min(1, 2 * t / d - 1))",
    inputs: { t: "m", d: "m" },
    validity: "Hole tolerance under 0.1 d for a thick plate.",
    source: clause("8.2.3(1)"),
  },
  ({ t, d }) => Math.max(0, Math.min(1, (2 * t) / d - 1)),
);

export const steelModeFormulas = [
  steelCrush,
  steelCrushMiddle,
  steelBendsOnce,
  steelBendsTwice,
  plateHold,
] as const;

interface SteelDowel {
  readonly d: Qty<"m">;
  readonly M_y: Qty<"N*m">;
  readonly f_h: Qty<"Pa">;
  /** In the wood. */
  readonly t: Qty<"m">;
  readonly plate: Qty<"m">;
}

/** Ways to fail under outer steel plates. The bend at the plate counts only where it can form: a firm hold. */
export function steelModes(s: SteelDowel, shear: "single" | "double", trace?: Trace): readonly Mode[] {
  const k = plateHold({ t: s.plate, d: s.d }, trace);
  const twice: Mode = { name: "plate and wood", rope: true, value: (t) => steelBendsTwice({ ...s, k }, t) };
  if (shear === "double")
    return [{ name: "middle crushed", rope: false, value: (t) => steelCrushMiddle(s, t) }, twice];
  return [
    { name: "wood crushed", rope: false, value: (t) => steelCrush({ ...s, k: qty(k, "1") }, t) },
    { name: "bends once", rope: true, value: (t) => steelBendsOnce(s, t) },
    twice,
  ];
}
