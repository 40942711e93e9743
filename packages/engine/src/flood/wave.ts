import { defineConstant, defineFormula, recordValue, type Trace } from "../formula/index.ts";
import { DomainError, metres, type Qty } from "../units/index.ts";
import { deckUplift, linearWave, project } from "./sources.ts";

const GRAVITY = 9.80665;

/** A small regular wave. Height crest to trough, period, still depth; all > 0. */
export interface Wave {
  readonly H: Qty<"m">;
  readonly T: Qty<"s">;
  readonly d: Qty<"m">;
}

/**
 * Solves x tanh x = y for x = k d by Newton. y = omega^2 d / g > 0 [1]; residual under 1e-12 of y.
 * Eckart's y / sqrt(tanh y) lies within 5 % of the root everywhere, from where a handful of steps reach rounding.
 */
export function dispersion(y: number): number {
  if (!(y > 0) || !Number.isFinite(y)) throw new DomainError("no-wave", { y });
  let x = y / Math.sqrt(Math.tanh(y));
  for (let i = 0; i < 60; i++) {
    const t = Math.tanh(x);
    const step = (x * t - y) / (t + x * (1 - t * t));
    x -= step;
    if (Math.abs(step) <= 1e-16 * x) break;
  }
  return x;
}

/** Length of the wave [m], exact in linear theory: L = 2 pi d / (k d). */
export function waveLength({ T, d }: Wave, trace?: Trace): Qty<"m"> {
  const y = ((2 * Math.PI) / T) ** 2 * (d / GRAVITY);
  const L = metres((2 * Math.PI * d) / dispersion(y));
  recordValue(trace, {
    id: "flood.wave.length",
    title: "Length of the wave",
    symbol: "L",
    value: L,
    unit: "m",
    source: linearWave("omega^2 = g k tanh(k d)"),
    how: "solved by Newton from the period and the depth",
  });
  return L;
}

export const breakingShare = defineConstant(
  "flood.wave.breaking-share",
  "Greatest height of a wave over the depth",
  "k_b",
  0.78,
  "1",
  {
    id: "depth-limit",
    title: "Depth limit of waves",
    at: "0.78 d; 0.5 to 0.6 d over vegetation",
    status: "memory",
  },
);
/** Highest wave the depth carries. k_b [1], d [m]; H_b [m]. */
export const highestWave = defineFormula(
  {
    id: "flood.wave.highest",
    title: "Highest wave that the depth carries",
    symbol: "H_b",
    unit: "m",
    text: "k_b * d",
    inputs: { k_b: "1", d: "m" },
    validity: "Gentle bed; lower over vegetation.",
    source: breakingShare.spec.source,
  },
  ({ k_b, d }) => k_b * d,
);

const linear = "Small regular wave, L as solved for this depth; H at most 0.78 d.";
/** Reach of the water's orbit at the surface, along the wave, to one side. H, d, L [m]; A_0 [m]. */
export const surfaceReach = defineFormula(
  {
    id: "flood.wave.surface-reach",
    title: "Reach of the orbit at the surface",
    symbol: "A_0",
    unit: "m",
    text: "H / 2 / tanh(2 * pi * d / L)",
    inputs: { H: "m", d: "m", L: "m" },
    validity: linear,
    source: linearWave("displacement at z = 0"),
  },
  ({ H, d, L }) => H / 2 / Math.tanh((2 * Math.PI * d) / L),
);
/** Reach of the orbit at the bed. H, d, L [m]; A_d [m]. */
export const bedReach = defineFormula(
  {
    id: "flood.wave.bed-reach",
    title: "Reach of the orbit at the bed",
    symbol: "A_d",
    unit: "m",
    text: "H / 2 / sinh(2 * pi * d / L)",
    inputs: { H: "m", d: "m", L: "m" },
    validity: linear,
    source: linearWave("displacement at z = -d"),
  },
  ({ H, d, L }) => H / 2 / Math.sinh((2 * Math.PI * d) / L),
);
/** Greatest speed of the orbit. A reach [m], T [s]; u [m/s]. */
export const orbitalSpeed = defineFormula(
  {
    id: "flood.wave.orbital-speed",
    title: "Greatest speed of the orbit",
    symbol: "u",
    unit: "m/s",
    text: "2 * pi * A / T",
    inputs: { A: "m", T: "s" },
    validity: linear,
    source: linearWave("reach times 2 pi / T"),
  },
  ({ A, T }) => (2 * Math.PI * A) / T,
);

/** Level of the crest over the ground. d still depth, H [m]; z_c [m]. */
export const crestLevel = defineFormula(
  {
    id: "flood.wave.crest",
    title: "Crest over the ground",
    symbol: "z_c",
    unit: "m",
    text: "d + H / 2",
    inputs: { d: "m", H: "m" },
    validity: "Linear wave: real crests in shallow water stand higher, up to 0.75 H over the still level.",
    source: linearWave("half the height over the still level"),
  },
  ({ d, H }) => d + H / 2,
);

/**
 * Upward force of the crest under a deck, at most that of half the wave's height: what the still water lifts stands in
 * the buoyancy. rho_w [kg/m3], z_c crest, z_u underside over the ground, H [m], A_s solid area [m2], k_s [1] 1 to 2;
 * U [N], 0 while the crest stays under the deck.
 */
export const crestUplift = defineFormula(
  {
    id: "flood.wave.uplift",
    title: "Uplift of the crest under the deck",
    symbol: "U",
    unit: "N",
    text: "k_s * rho_w * 9.80665 * min(H / 2, max(0, z_c - z_u)) * A_s",
    inputs: { k_s: "1", rho_w: "kg/m3", H: "m", z_c: "m", z_u: "m", A_s: "m2" },
    validity: "Quasi-static, the crest under the whole deck at once; k_s 1 without slamming to 2 with it.",
    source: deckUplift("p = rho g (crest - underside) on the solid area, times 1 to 2 for slamming"),
  },
  ({ k_s, rho_w, H, z_c, z_u, A_s }) => k_s * rho_w * 9.80665 * Math.min(H / 2, Math.max(0, z_c - z_u)) * A_s,
);

/** Solid part of a deck and how hard the crest slams, for the uplift at several heights. */
export interface DeckInWaves {
  readonly solid_m2: Qty<"m2">;
  readonly slam: Qty<"1">;
  readonly rho_w: Qty<"kg/m3">;
}

/** Uplift of the crest at each height of the underside over the ground [m -> N]; never rises with the height. */
export function upliftByHeight(
  wave: Wave,
  deck: DeckInWaves,
  undersides_m: readonly number[],
): readonly { readonly underside_m: number; readonly uplift_n: number }[] {
  const z_c = crestLevel({ d: wave.d, H: wave.H });
  return undersides_m.map((underside_m) => ({
    underside_m,
    uplift_n: crestUplift({
      k_s: deck.slam,
      rho_w: deck.rho_w,
      H: wave.H,
      z_c,
      z_u: metres(underside_m),
      A_s: deck.solid_m2,
    }),
  }));
}

/** Rule on decks in waves, for words beside a failing result. */
export const throughOrOver = project(
  "let the water through (40 % open or more), tie every panel, or keep the underside over the crest",
);

export const waveFormulas = [
  breakingShare,
  highestWave,
  surfaceReach,
  bedReach,
  orbitalSpeed,
  crestLevel,
  crestUplift,
] as const;
