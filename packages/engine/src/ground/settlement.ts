import { defineFormula, type Trace } from "../formula/index.ts";
import { DomainError, metres, pascals, qty } from "../units/index.ts";
import { consolidation, twoToOne } from "./sources.ts";

/** Settlement of one layer while water drains out. H [m], Cc, e0 [1], s0 > 0 and ds >= 0 [Pa]; S [m]. */
export const primarySettlement = defineFormula(
  {
    id: "ground.settlement.primary",
    title: "Settlement of a layer by consolidation",
    symbol: "S",
    unit: "m",
    text: "H * Cc / (1 + e0) * log10((s0 + ds) / s0)",
    inputs: { H: "m", Cc: "1", e0: "1", s0: "Pa", ds: "Pa" },
    validity:
      "Normally consolidated, drained sideways little, s0 > 0, ds >= 0; the full amount, however long it takes.",
    source: consolidation,
  },
  ({ H, Cc, e0, s0, ds }) => ((H * Cc) / (1 + e0)) * Math.log10((s0 + ds) / s0),
);

/** Creep of one layer after that. H [m], Ca, e0 [1], t >= tp > 0 [h]; S [m]. */
export const creepSettlement = defineFormula(
  {
    id: "ground.settlement.creep",
    title: "Creep of a layer",
    symbol: "S",
    unit: "m",
    text: "H * Ca / (1 + e0) * log10(t / tp)",
    inputs: { H: "m", Ca: "1", e0: "1", t: "h", tp: "h" },
    validity: "From the end of consolidation tp on: t >= tp > 0, load unchanged.",
    source: consolidation,
  },
  ({ H, Ca, e0, t, tp }) => ((H * Ca) / (1 + e0)) * Math.log10(t / tp),
);

/** Added stress at a depth under a rectangle, spread 2:1. p [Pa], B, L sides, z depth below the foot [m]; ds [Pa]. */
export const spreadStress = defineFormula(
  {
    id: "ground.settlement.spread",
    title: "Added stress in the middle of the layer",
    symbol: "ds",
    unit: "Pa",
    text: "p * B * L / ((B + z) * (L + z))",
    inputs: { p: "Pa", B: "m", L: "m", z: "m" },
    validity: "Load spread 2:1 both ways, z >= 0.",
    source: twoToOne,
  },
  ({ p, B, L, z }) => (p * B * L) / ((B + z) * (L + z)),
);

/** A layer below the foot, from the top down. */
export interface SoilLayer {
  readonly thickness_m: number;
  readonly cc: number;
  readonly e0: number;
  /** Secondary compression index. */
  readonly ca: number;
  /** Effective stress in its middle before the load [Pa] > 0. */
  readonly stress_pa: number;
}

export interface LayerSettlement {
  readonly added_pa: number;
  readonly primary_m: number;
  readonly creep_m: number;
}

export interface Settlement {
  readonly layers: readonly LayerSettlement[];
  readonly primary_m: number;
  readonly creep_m: number;
  readonly words: readonly string[];
}

const HOURS = 24;

/**
 * Settlement of a foot over the life of a plan: consolidation in full and creep from its end on.
 *
 * foot        sides [m] > 0 and the lasting net pressure under it [Pa] >= 0: the parts' own weight, not the visits
 * days        how long it stands > 0
 * primary_days  when consolidation ends > 0; a shorter plan gets the full consolidation as its upper bound, no creep
 */
export function settlementOf(
  foot: { readonly width_m: number; readonly length_m: number; readonly pressure_pa: number },
  layers: readonly SoilLayer[],
  days: number,
  primary_days: number,
  trace?: Trace,
): Settlement {
  if (layers.length === 0 || !(days > 0 && primary_days > 0))
    throw new DomainError("settlement-input", { days });
  let depth = 0;
  const each = layers.map((layer, i) => {
    const z = metres(depth + layer.thickness_m / 2);
    depth += layer.thickness_m;
    const note = layers.length > 1 ? `layer ${i + 1} from the top` : undefined;
    const p = pascals(foot.pressure_pa);
    const ds = spreadStress({ p, B: metres(foot.width_m), L: metres(foot.length_m), z }, trace, note);
    const [H, e0] = [metres(layer.thickness_m), qty(layer.e0, "1")];
    const s0 = pascals(layer.stress_pa);
    const primary_m = primarySettlement({ H, Cc: qty(layer.cc, "1"), e0, s0, ds }, trace, note);
    const [t, tp] = [qty(days * HOURS, "h"), qty(primary_days * HOURS, "h")];
    const creep_m = t <= tp ? 0 : creepSettlement({ H, Ca: qty(layer.ca, "1"), e0, t, tp }, trace, note);
    return { added_pa: ds, primary_m, creep_m };
  });
  const sum = (of: (l: LayerSettlement) => number): number => each.reduce((s, l) => s + of(l), 0);
  const total = { primary_m: sum((l) => l.primary_m), creep_m: sum((l) => l.creep_m) };
  return { layers: each, ...total, words: wordsOf(layers, total, days < primary_days) };
}

function wordsOf(
  layers: readonly SoilLayer[],
  { primary_m, creep_m }: { readonly primary_m: number; readonly creep_m: number },
  isShort: boolean,
): string[] {
  const mm = (v: number): string => `${(v * 1000).toFixed(0)} mm`;
  const words = [`Consolidation ${mm(primary_m)}, creep ${mm(creep_m)} over the plan's life.`];
  if (isShort)
    words.push(
      "The plan ends before consolidation does: the figure is what it would come to, an upper bound.",
    );
  const depth = layers.reduce((s, l) => s + l.thickness_m, 0);
  if (primary_m + creep_m > 0.25 * depth)
    words.push("That is over a quarter of the layers' thickness: the method does not hold so far.");
  return words;
}
