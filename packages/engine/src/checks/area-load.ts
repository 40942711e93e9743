import type { Strengths } from "../codes/index.ts";
import { defineFormula, recordValue, type Source, type Trace } from "../formula/index.ts";
import { rectangleInertia, uniformDeflection, uniformMoment, uniformShear } from "../structure/index.ts";
import { metres, qty, type Qty } from "../units/index.ts";
import type { Frame } from "./frame.ts";
import { deflectionLimit } from "./rules.ts";
import type { LoadCase } from "./walk-demand.ts";

/** What a load over an area asks of a stringer. */
type AreaCheck = "bending" | "shear" | "deflection";

/** The stringers of a frame as a load over its deck sees them. */
interface AreaModel {
  readonly frame: Pick<Frame, "positions_m" | "clear_width_m" | "span_m">;
  readonly section: { readonly b: Qty<"m">; readonly d: Qty<"m"> };
  /** E I of one stringer [N*m2]. */
  readonly stiffness: number;
}

/** The stringer and the case that a working tells. */
interface AreaPlace {
  readonly load: LoadCase;
  readonly stringer: number;
  readonly held: { readonly strengths: Strengths };
}

const TRIBUTARY: Source = {
  id: "statics",
  title: "Statics",
  at: "half of the deck between neighbouring stringers, and what lies outside the outer one",
  status: "computed",
};

/** Load along a stringer under a pressure on the deck. p [Pa], b width of deck that it carries [m]; w [N/m]. */
export const areaLine = defineFormula(
  {
    id: "check.area-line-load",
    title: "Load along the stringer under the load over the deck",
    symbol: "w_l",
    unit: "N/m",
    text: "p * b",
    inputs: { p: "Pa", b: "m" },
    validity: "Pressure even over the whole clear deck.",
    source: TRIBUTARY,
  },
  ({ p, b }) => p * b,
);

/**
 * Width of the clear deck that each stringer carries [m]: half of the way to its neighbours, the outer two up to the
 * edge of the clear deck. They sum to the clear width where that reaches to the outer stringers or past them; a
 * clear deck that ends inside of them is shared as far as it goes.
 */
export function tributaryWidths(positions_m: readonly number[], clear_width_m: number): number[] {
  const half = clear_width_m / 2;
  const inside = (y: number): number => Math.min(half, Math.max(-half, y));
  return positions_m.map((y, i) => {
    const before = positions_m[i - 1];
    const after = positions_m[i + 1];
    const left = before === undefined ? -half : inside((before + y) / 2);
    const right = after === undefined ? half : inside((y + after) / 2);
    return right - left;
  });
}

const widthOn = ({ frame }: AreaModel, stringer: number): number =>
  tributaryWidths(frame.positions_m, frame.clear_width_m)[stringer]!;

/** Moment, end shear or midspan deflection of one stringer under a pressure all over the clear deck [N*m, N or m]. */
export function areaDemand(
  check: AreaCheck,
  model: AreaModel,
  stringer: number,
  pressure_pa: number,
): number {
  const w = areaLine({ p: qty(pressure_pa, "Pa"), b: metres(widthOn(model, stringer)) });
  const L = metres(model.frame.span_m);
  if (check === "bending") return uniformMoment({ w, L });
  if (check === "shear") return uniformShear({ w, L });
  return (5 * w * L ** 4) / (384 * model.stiffness);
}

/** The steps behind `areaDemand`. */
export function areaSteps(
  check: AreaCheck,
  model: AreaModel,
  { load, stringer, held }: AreaPlace,
  trace: Trace,
): void {
  const w = areaLine({ p: qty(load.area_pa!, "Pa"), b: metres(widthOn(model, stringer)) }, trace);
  const L = metres(model.frame.span_m);
  if (check === "bending") uniformMoment({ w, L }, trace, load.name);
  else if (check === "shear") uniformShear({ w, L }, trace, load.name);
  else {
    const I = rectangleInertia(model.section);
    uniformDeflection({ w, L, E: held.strengths.e, I }, trace, load.name);
  }
}

/** Span over this is the deflection that a case allows. */
export const limitOf = ({ span_over }: Pick<LoadCase, "span_over">): number =>
  span_over ?? deflectionLimit({});

/** The same with a step of the working: the rule's own number, or the checks' limit. */
export function recordLimit(
  { span_over, name }: Pick<LoadCase, "span_over" | "name">,
  trace: Trace,
): Qty<"1"> {
  if (span_over === undefined) return deflectionLimit({}, trace);
  recordValue(trace, {
    id: "check.rule-deflection-limit",
    title: "Deflection limit of the load rule: span over this",
    symbol: "n_d",
    value: span_over,
    unit: "1",
    source: { id: "load-rules", title: "Table of load rules", at: name, status: "project" },
    how: "as tabulated with the load",
  });
  return qty(span_over, "1");
}

const grouped = new WeakMap<readonly LoadCase[], readonly (readonly LoadCase[])[]>();

/** Cases by their deflection limit; the very same list where all have one, so that its peaks are found once. */
export function listsByLimit(cases: readonly LoadCase[]): readonly (readonly LoadCase[])[] {
  let lists = grouped.get(cases);
  if (lists) return lists;
  const limits = [...new Set(cases.map(limitOf))];
  lists = limits.length === 1 ? [cases] : limits.map((n) => cases.filter((c) => limitOf(c) === n));
  grouped.set(cases, lists);
  return lists;
}
