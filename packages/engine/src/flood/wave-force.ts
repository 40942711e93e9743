import { defineConstant, defineFormula, recordValue, type Trace } from "../formula/index.ts";
import { metres, qty, type Qty } from "../units/index.ts";
import { geometry, linearWave, project, waveForce } from "./sources.ts";
import { surfaceReach, orbitalSpeed, waveLength, type Wave } from "./wave.ts";

/** An upright or lying piece in the wave: its size across the wave and the area of its plan, between two levels over the bed. */
export interface PieceInWave {
  readonly bottom_m: number;
  readonly top_m: number;
  /** Across the wave [m]: a post's width, a stringer's length. */
  readonly facing: Qty<"m">;
  /** Area of its horizontal section [m2]. */
  readonly plan: Qty<"m2">;
  readonly C_d: Qty<"1">;
  readonly C_m: Qty<"1">;
}

export const roundInertia = defineConstant(
  "flood.wave.inertia-round",
  "Inertia coefficient, round",
  "C_m",
  2,
  "1",
  waveForce("2.0 round"),
);
export const squareInertia = defineConstant(
  "flood.wave.inertia-square",
  "Inertia coefficient, square",
  "C_m",
  2.5,
  "1",
  waveForce("2.5 square"),
);

const overHeight = "0 <= s_1 <= s_2 <= d, heights over the bed; d up to 55 L.";

/** Integral of (speed at a height over surface speed x tanh)^2 over the wetted height. s_1, s_2, d, L [m]; J [m]. */
export const speedSquareSum = defineFormula(
  {
    id: "flood.wave.speed-square-sum",
    title: "Square of the speed summed over the wetted height",
    symbol: "J",
    unit: "m",
    text: "L / (8 * pi) * (4 * pi * (s_2 - s_1) / L + sinh(4 * pi * s_2 / L) - sinh(4 * pi * s_1 / L)) / sinh(2 * pi * d / L)^2",
    inputs: { s_1: "m", s_2: "m", d: "m", L: "m" },
    validity: overHeight,
    source: linearWave("integral of cosh^2(k s) / sinh^2(k d)", "computed"),
  },
  ({ s_1, s_2, d, L }) => {
    const four = (4 * Math.PI) / L;
    const sum = four * (s_2 - s_1) + Math.sinh(four * s_2) - Math.sinh(four * s_1);
    return ((L / (8 * Math.PI)) * sum) / Math.sinh((2 * Math.PI * d) / L) ** 2;
  },
);

/** Integral of the speed's profile over the wetted height. s_1, s_2, d, L [m]; I_1 [m]. */
export const speedSum = defineFormula(
  {
    id: "flood.wave.speed-sum",
    title: "Speed summed over the wetted height",
    symbol: "I_1",
    unit: "m",
    text: "L / (2 * pi) * (sinh(2 * pi * s_2 / L) - sinh(2 * pi * s_1 / L)) / sinh(2 * pi * d / L)",
    inputs: { s_1: "m", s_2: "m", d: "m", L: "m" },
    validity: overHeight,
    source: linearWave("integral of cosh(k s) / sinh(k d)", "computed"),
  },
  ({ s_1, s_2, d, L }) => {
    const two = (2 * Math.PI) / L;
    return ((L / (2 * Math.PI)) * (Math.sinh(two * s_2) - Math.sinh(two * s_1))) / Math.sinh(two * d);
  },
);

/** Height of the piece that only the crest reaches. b bottom, t top, d, H [m]; h_c [m]. */
export const crestStrip = defineFormula(
  {
    id: "flood.wave.crest-strip",
    title: "Height that the crest alone reaches",
    symbol: "h_c",
    unit: "m",
    text: "max(0, min(t, d + H / 2) - max(b, d))",
    inputs: { b: "m", t: "m", d: "m", H: "m" },
    validity: "Heights over the bed.",
    source: geometry("between still level and crest"),
  },
  ({ b, t, d, H }) => Math.max(0, Math.min(t, d + H / 2) - Math.max(b, d)),
);

/** Greatest drag of the wave. rho_w, C_d, b facing [m], H [m], T [s], J under the still level [m], h_c [m], u_s surface speed [m/s]; F_D [N]. */
export const waveDrag = defineFormula(
  {
    id: "flood.wave.drag",
    title: "Greatest drag of the wave",
    symbol: "F_D",
    unit: "N",
    text: "0.5 * rho_w * C_d * b * ((pi * H / T)^2 * J + u_s^2 * h_c)",
    inputs: { rho_w: "kg/m3", C_d: "1", b: "m", H: "m", T: "s", J: "m", u_s: "m/s", h_c: "m" },
    validity: "Slender piece; the crest's strip at the speed of the surface, which is ours.",
    source: waveForce("0.5 rho Cd b u |u|"),
  },
  ({ rho_w, C_d, b, H, T, J, u_s, h_c }) =>
    0.5 * rho_w * C_d * b * (((Math.PI * H) / T) ** 2 * J + u_s ** 2 * h_c),
);

/** Greatest inertia force of the wave. C_m [1], A_p plan [m2], H [m], T [s], I_1 [m]; F_I [N]. */
export const waveInertia = defineFormula(
  {
    id: "flood.wave.inertia",
    title: "Greatest inertia force of the wave",
    symbol: "F_I",
    unit: "N",
    text: "rho_w * C_m * A_p * 2 * pi^2 * H / T^2 * I_1",
    inputs: { rho_w: "kg/m3", C_m: "1", A_p: "m2", H: "m", T: "s", I_1: "m" },
    validity: "Slender piece: width under a fifth of the wave's length.",
    source: waveForce("rho Cm V du/dt"),
  },
  ({ rho_w, C_m, A_p, H, T, I_1 }) => ((rho_w * C_m * A_p * 2 * Math.PI ** 2 * H) / T ** 2) * I_1,
);

/**
 * Greatest sum of drag and inertia over a period: F_D cos^2 + F_I sin at its best phase. F_D > 0, F_I [N]; F [N].
 */
export const waveForceMax = defineFormula(
  {
    id: "flood.wave.force",
    title: "Greatest force of the wave",
    symbol: "F",
    unit: "N",
    text: "F_D + min(F_I, 2 * F_D) * (2 * F_I - min(F_I, 2 * F_D)) / (4 * F_D)",
    inputs: { F_D: "N", F_I: "N" },
    validity: "Drag and inertia a quarter period apart, F_D > 0.",
    source: waveForce("largest over the phase", "computed"),
  },
  ({ F_D, F_I }) => {
    const m = Math.min(F_I, 2 * F_D);
    return F_D + (m * (2 * F_I - m)) / (4 * F_D);
  },
);

export interface WaveOnPiece {
  readonly drag_n: number;
  readonly inertia_n: number;
  readonly force_n: number;
  /** Height over the bed at which the force is taken to act [m]: the top of what the crest wets, the safer reading. */
  readonly acts_at_m: number;
}
export const actsAtTop = project("force of a wave taken at the top of what the water wets");

/** Horizontal force of a wave on one piece; all zero when even the crest stays under it. rho_w [kg/m3]. */
export function waveOnPiece(wave: Wave, piece: PieceInWave, rho_w: Qty<"kg/m3">, trace?: Trace): WaveOnPiece {
  const { H, T, d } = wave;
  const [b, t] = [metres(piece.bottom_m), metres(piece.top_m)];
  const L = waveLength(wave, trace);
  const [s_1, s_2] = [metres(Math.min(b, d)), metres(Math.min(t, d))];
  const J = speedSquareSum({ s_1, s_2, d, L }, trace);
  const I_1 = speedSum({ s_1, s_2, d, L }, trace);
  const h_c = crestStrip({ b, t, d, H }, trace);
  const u_s = orbitalSpeed({ A: surfaceReach({ H, d, L }, trace), T }, trace, "at the surface");
  const F_D = waveDrag({ rho_w, C_d: piece.C_d, b: piece.facing, H, T, J, u_s, h_c }, trace);
  const F_I = waveInertia({ rho_w, C_m: piece.C_m, A_p: piece.plan, H, T, I_1 }, trace);
  const force = F_D > 1e-9 ? waveForceMax({ F_D, F_I }, trace) : qty(Math.max(F_D, F_I), "N");
  recordValue(trace, {
    id: "flood.wave.acts-at",
    title: "Height over the bed at which the force is taken",
    symbol: "z_F",
    value: Math.min(t, d + H / 2),
    unit: "m",
    source: actsAtTop,
    how: "top of what the crest wets",
  });
  return { drag_n: F_D, inertia_n: F_I, force_n: force, acts_at_m: Math.min(t, d + H / 2) };
}

export const waveForceFormulas = [
  roundInertia,
  squareInertia,
  speedSquareSum,
  speedSum,
  crestStrip,
  waveDrag,
  waveInertia,
  waveForceMax,
] as const;
