import { recordValue, type Trace } from "../formula/index.ts";
import type { PanelDeck } from "../kit/index.ts";
import type { LoadRule } from "../materials/index.ts";
import type { Cart } from "../plan/document.ts";
import { largestMoment, patchMoment, recordTrain } from "../structure/index.ts";
import { metres, millimetres, newtons, qty, type Qty } from "../units/index.ts";
import type { CheckContext } from "./input.ts";
import { cartsOf } from "./ladder.ts";
import {
  barSpread,
  loadPerWidth,
  loadWidth,
  momentPerWidth,
  ownMoment,
  ownPressure,
  panelDeflectionAllowed,
  panelDepthLimit,
  panelLineDeflection,
  panelSpanLimit,
  panelTotalDeflection,
  panelTotalMoment,
  panelUniformDeflection,
  plateSpread,
} from "./panel-formulas.ts";
import { footLoad, wheelOf, type Load } from "./piece-cases.ts";
import { pointOf, recordRule } from "./rule-loads.ts";
import { footPatch } from "./rules.ts";
import type { WalkDemand } from "./walk-demand.ts";

/** A deck of panels over cross pieces. */
export interface PanelSetup {
  readonly deck: PanelDeck;
  /** Neighbouring cross pieces, centre to centre, the widest of the part [m]. */
  readonly span_m: number;
}

/** One way to load a panel: a foot, a wheel, or both wheels of an axle that share a width. */
export interface PanelLoad {
  readonly name: string;
  /** One foot or wheel [N]. */
  readonly load: Load;
  /** How many of them stand side by side on the width, and how far apart [m]. */
  readonly count: 1 | 2;
  readonly apart_m: number;
  readonly width_m: number;
  readonly contact_m: number;
  /** Axles behind one another on the span [m]; 0 for one. */
  readonly behind_m: number;
  /** A pressure all over the panel in place of a load on a width [Pa]. */
  readonly pressure_pa?: number;
}

const spreadOf = ({ deck }: PanelSetup, trace?: Trace): Qty<"1"> =>
  deck.kind === "bar-grating" ? barSpread({}, trace) : plateSpread({}, trace);

function wheelLoads(cart: Cart): PanelLoad[] {
  const one = {
    load: wheelOf(cart),
    width_m: cart.wheel_width_mm / 1000,
    contact_m: cart.wheel_contact_mm / 1000,
    behind_m: cart.axles === 2 ? cart.axle_distance_mm / 1000 : 0,
  };
  return [
    { ...one, name: `a wheel of ${cart.name} with its load`, count: 1, apart_m: 0 },
    { ...one, name: `both wheels of ${cart.name} side by side`, count: 2, apart_m: cart.track_mm / 1000 },
  ];
}

/** A foot on its patch, and each cart by its wheel and by its axle. */
export function panelLoads(demands: readonly WalkDemand[], context: CheckContext): PanelLoad[] {
  const foot = footLoad(demands, context.units);
  const patch = footPatch({});
  return [
    {
      name: foot.name,
      load: foot.load,
      count: 1,
      apart_m: 0,
      width_m: patch,
      contact_m: patch,
      behind_m: 0,
    },
    ...cartsOf(demands).flatMap(wheelLoads),
    ...(context.load_rules ?? []).map((rule) => ruleLoad(rule, context)),
  ];
}

function ruleLoad(rule: LoadRule, { tables }: CheckContext): PanelLoad {
  const one = { name: rule.name, count: 1, apart_m: 0, behind_m: 0 } as const;
  if (rule.kind === "point")
    return { ...one, load: pointOf(rule, tables), width_m: rule.side_m, contact_m: rule.side_m };
  const load: Load = (trace) => {
    recordRule(rule, tables, trace);
    return newtons(0);
  };
  return { ...one, load, width_m: 0, contact_m: 0, pressure_pa: rule.pressure_pa };
}

/** Width that takes one load or two neighbours; two whose widths overlap share what both reach. */
function widthOf(setup: PanelSetup, load: PanelLoad, trace?: Trace): Qty<"m"> {
  return loadWidth(
    {
      W: millimetres(setup.deck.width_mm),
      c: metres(load.width_m + load.apart_m),
      s: spreadOf(setup, trace),
      L: metres(setup.span_m),
    },
    trace,
  );
}

const totalOf = (load: PanelLoad, trace?: Trace): Qty<"N"> => qty(load.count * load.load(trace), "N");

/** Live moment of a load over the span: the load on its contact length at midspan, or two axles as they move. */
function liveMoment(setup: PanelSetup, load: PanelLoad, trace?: Trace): Qty<"N*m"> {
  const L = metres(setup.span_m);
  const P = totalOf(load, trace);
  if (load.behind_m > 0 && load.behind_m < setup.span_m) {
    const train = [0, load.behind_m].map((at) => ({ at, weight: P }));
    const M = qty(largestMoment(train, L).value, "N*m");
    recordTrain(trace, "M", "Largest moment of the two axles", M, "N*m", load.name);
    return M;
  }
  return patchMoment({ P, L, c: metres(Math.min(load.contact_m, setup.span_m)) }, trace);
}

/** Own weight, soaked [Pa]. */
const ownOf = ({ deck }: PanelSetup, trace?: Trace): Qty<"Pa"> =>
  ownPressure({ q: qty(deck.mass_kg_m2 + deck.soak_kg_m2, "kg/m2") }, trace);

function loadMoment(setup: PanelSetup, load: PanelLoad, trace?: Trace): Qty<"N"> {
  if (load.pressure_pa !== undefined) {
    load.load(trace);
    return ownMoment({ u: qty(load.pressure_pa, "Pa"), L: metres(setup.span_m) }, trace, load.name);
  }
  const M = liveMoment(setup, load, trace);
  return momentPerWidth({ M, b: widthOf(setup, load, trace) }, trace);
}

/** Moment in one metre of width under own weight and one load [N*m per m]. */
export function panelDemand(setup: PanelSetup, load: PanelLoad, trace?: Trace): Qty<"N"> {
  const L = metres(setup.span_m);
  const m_u = ownMoment({ u: ownOf(setup, trace), L }, trace);
  const m_d = loadMoment(setup, load, trace);
  return panelTotalMoment({ m_u, m_d }, trace);
}

/** Deflection under own weight with its creep and one passing load [m]. */
export function panelSag(setup: PanelSetup, load: PanelLoad, trace?: Trace): Qty<"m"> {
  const { strength } = setup.deck;
  const L = metres(setup.span_m);
  recordStiffness(setup, trace);
  const k = qty(strength.stiffness_nm, "N*m");
  const delta_u = panelUniformDeflection({ u: ownOf(setup, trace), L, k }, trace);
  const delta_l = loadSag(setup, load, L, k, trace);
  return panelTotalDeflection({ psi: qty(strength.creep, "1"), delta_u, delta_l }, trace);
}

function loadSag(setup: PanelSetup, load: PanelLoad, L: Qty<"m">, k: Qty<"N*m">, trace?: Trace): Qty<"m"> {
  if (load.pressure_pa !== undefined) {
    load.load(trace);
    return panelUniformDeflection({ u: qty(load.pressure_pa, "Pa"), L, k }, trace, load.name);
  }
  const c = loadPerWidth({ P: totalOf(load, trace), b: widthOf(setup, load, trace) }, trace);
  return panelLineDeflection({ c, L, k }, trace);
}

export const sagAllowed = (setup: PanelSetup, trace?: Trace): Qty<"m"> =>
  panelDeflectionAllowed(
    { L: metres(setup.span_m), n: panelSpanLimit({}, trace), d_m: panelDepthLimit({}, trace) },
    trace,
  );

const strengthSource = ({ deck }: PanelSetup) => ({
  id: "panel-strength",
  title: `The kit's recipe: ${deck.strength.source}`,
  status: deck.strength.status,
});

function recordStiffness(setup: PanelSetup, trace?: Trace): void {
  recordValue(trace, {
    id: "panel.recipe-stiffness",
    title: "Bending stiffness of one metre of width, wet",
    symbol: "k",
    value: setup.deck.strength.stiffness_nm,
    unit: "N*m",
    source: strengthSource(setup),
    how: "as the recipe gives it",
  });
}

/** Moment that the recipe says one metre of width may carry [N*m per m]. */
export function panelCapacity(setup: PanelSetup, trace?: Trace): Qty<"N"> {
  recordValue(trace, {
    id: "panel.recipe-moment",
    title: "Moment that one metre of width may carry, wet",
    symbol: "m_r",
    value: setup.deck.strength.moment_n,
    unit: "N",
    source: strengthSource(setup),
    how: "as the recipe gives it",
  });
  return qty(setup.deck.strength.moment_n, "N");
}
