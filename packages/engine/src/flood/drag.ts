import { defineConstant, defineFormula, recordValue, type Trace } from "../formula/index.ts";
import type { DragCoefficient, Tables } from "../materials/index.ts";
import { qty, type Qty } from "../units/index.ts";
import { femaDrag, floodSpeed, geometry, lowVelocity, meshDrag } from "./sources.ts";

/**
 * Drag of flowing water on a body, at half the height of its wetted part.
 * rho_w [kg/m3], C_d [1], A area that the flow sees [m2], V speed [m/s] >= 0; F [N].
 */
export const dragForce = defineFormula(
  {
    id: "flood.drag.force",
    title: "Drag of the flowing water",
    symbol: "F",
    unit: "N",
    text: "0.5 * rho_w * C_d * A * V^2",
    inputs: { rho_w: "kg/m3", C_d: "1", A: "m2", V: "m/s" },
    validity: "Steady flow, the body under water over all of A; acts at half the height of the wetted part.",
    source: femaDrag("F = 0.5 rho Cd A V^2"),
  },
  ({ rho_w, C_d, A, V }) => 0.5 * rho_w * C_d * A * V ** 2,
);

/**
 * Area of a box that the flow sees. h wetted height, l along the line, w across it [m]; theta angle between flow and
 * line [rad], pi/2 = square onto it; A [m2]. The full speed is kept at every angle, which is the safer reading.
 */
export const facingArea = defineFormula(
  {
    id: "flood.drag.facing-area",
    title: "Area that the flow sees",
    symbol: "A",
    unit: "m2",
    text: "h * (l * abs(sin(theta)) + w * abs(cos(theta)))",
    inputs: { h: "m", l: "m", w: "m", theta: "rad" },
    validity: "Box with upright sides. w = 0 where the ends are hidden by the next part.",
    source: geometry("shadow of a box"),
  },
  ({ h, l, w, theta }) => h * (l * Math.abs(Math.sin(theta)) + w * Math.abs(Math.cos(theta))),
);

/** Open share of mesh that has caught wrack. p open share when clean, c clogged share of the openings [1]; p_c [1]. */
export const cloggedOpening = defineFormula(
  {
    id: "flood.drag.clogged-opening",
    title: "Open share of the clogged mesh",
    symbol: "p_c",
    unit: "1",
    text: "p * (1 - c)",
    inputs: { p: "1", c: "1" },
    validity: "p and c from 0 to 1.",
    source: geometry("openings left"),
  },
  ({ p, c }) => p * (1 - c),
);

/**
 * Drag coefficient of standing mesh on its whole outline. p_c open share [1], C_m on the solid area of open mesh,
 * C_p of a solid plate [1]; C_g [1]. Solid area alone over 0.5 open, a solid plate under 0.3, a straight line between.
 */
export const meshCoefficient = defineFormula(
  {
    id: "flood.drag.mesh",
    title: "Drag coefficient of mesh on its outline",
    symbol: "C_g",
    unit: "1",
    text: "max(C_m * (1 - p_c), min(C_p, 0.5 * C_m + (0.5 - p_c) / 0.2 * (C_p - 0.5 * C_m)))",
    inputs: { p_c: "1", C_m: "1", C_p: "1" },
    validity: "Mesh across the flow, p_c from 0 to 1, C_p >= C_m. Rough: no test of mesh stands behind it.",
    source: meshDrag(
      "Cd 1.2 to 1.6 on the solid area over 0.5 open, a solid plate under 0.3; the line between is ours",
    ),
  },
  ({ p_c, C_m, C_p }) =>
    Math.max(C_m * (1 - p_c), Math.min(C_p, 0.5 * C_m + ((0.5 - p_c) / 0.2) * (C_p - 0.5 * C_m))),
);

const bounds = "Bounds to choose a speed between; a measured or estimated speed comes first.";
/** Lower bound of the speed of a flood. d depth [m]; V_l [m/s]. */
export const lowerSpeed = defineFormula(
  {
    id: "flood.speed.lower",
    title: "Lower bound of the flood's speed",
    symbol: "V_l",
    unit: "m/s",
    text: "d / 1",
    inputs: { d: "m" },
    validity: bounds,
    source: floodSpeed("V = d / 1 s"),
  },
  ({ d }) => d / 1,
);
/** Upper bound of the speed of a flood. d depth [m] >= 0; V_u [m/s]. */
export const upperSpeed = defineFormula(
  {
    id: "flood.speed.upper",
    title: "Upper bound of the flood's speed",
    symbol: "V_u",
    unit: "m/s",
    text: "sqrt(9.80665 * d)",
    inputs: { d: "m" },
    validity: bounds,
    source: floodSpeed("V = sqrt(g d)"),
  },
  ({ d }) => Math.sqrt(9.80665 * d),
);

/** Extra depth that stands for slow flow, as still water. a [1] >= 1.25, V [m/s]; dh [m]. */
export const extraDepth = defineFormula(
  {
    id: "flood.speed.extra-depth",
    title: "Extra depth that stands for the flow",
    symbol: "dh",
    unit: "m",
    text: "a * V^2 / (2 * 9.80665)",
    inputs: { a: "1", V: "m/s" },
    validity:
      "V up to 3.05 m/s (10 ft/s), a at least 1.25: still water that much deeper upstream instead of drag.",
    source: lowVelocity("dh = a V^2 / (2 g)"),
  },
  ({ a, V }) => (a * V ** 2) / (2 * 9.80665),
);

export const leastShapeFactor = defineConstant(
  "flood.speed.shape-factor",
  "Least factor on the velocity head",
  "a",
  1.25,
  "1",
  lowVelocity("a at least 1.25"),
);

/** Fastest flow that the extra depth may stand for: 10 ft/s. */
export const SLOW_M_S = 3.048;

type Family = NonNullable<DragCoefficient["family"]>;
/** The table of drag coefficients with the sources that its rows name. */
export type DragTables = Pick<Tables, "drag_coefficients" | "sources">;

/**
 * Drag coefficient of a family at a ratio, read on a straight line between the rows and held beyond the first and the
 * last. Null when the table has no row of the family.
 */
export function familyCoefficient(
  tables: DragTables,
  family: Family,
  ratio: number,
  trace?: Trace,
): Qty<"1"> | null {
  const own = tables.drag_coefficients
    .filter((r) => r.family === family && r.ratio !== null)
    .map((r) => ({ ...r, ratio: r.ratio! }))
    .sort((a, b) => a.ratio - b.ratio);
  const [first, last] = [own[0], own.at(-1)];
  if (!first || !last) return null;
  const at = Math.min(last.ratio, Math.max(first.ratio, ratio));
  const after = Math.max(
    own.findIndex((r) => r.ratio >= at),
    1,
  );
  const [a, b] = [own[after - 1]!, own[after] ?? last];
  const share = b.ratio > a.ratio ? (at - a.ratio) / (b.ratio - a.ratio) : 0;
  return recordCoefficient(
    a.cd + share * (b.cd - a.cd),
    b,
    tables,
    trace,
    `${family} at ratio ${ratio.toFixed(2)}`,
  );
}

/** Drag coefficient of a single row by id; null when the table has none. */
export function shapeCoefficient(tables: DragTables, id: string, trace?: Trace): Qty<"1"> | null {
  const row = tables.drag_coefficients.find((r) => r.id === id);
  return row ? recordCoefficient(row.cd, row, tables, trace, row.name) : null;
}

function recordCoefficient(
  cd: number,
  row: DragCoefficient,
  { sources }: DragTables,
  trace: Trace | undefined,
  note: string,
): Qty<"1"> {
  const { id = row.source, title = row.source, at } = sources[row.source] ?? {};
  recordValue(trace, {
    id: "flood.drag.coefficient",
    title: "Drag coefficient",
    symbol: "C_d",
    value: cd,
    unit: "1",
    source: { id, title, status: row.status, ...(at === undefined ? {} : { at }) },
    how: row.family ? "read between the rows of the table" : "as tabulated",
    note,
  });
  return qty(cd, "1");
}

export const dragFormulas = [
  dragForce,
  facingArea,
  cloggedOpening,
  meshCoefficient,
  lowerSpeed,
  upperSpeed,
  extraDepth,
  leastShapeFactor,
] as const;
