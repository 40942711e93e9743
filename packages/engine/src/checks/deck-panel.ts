import type { Source, Trace } from "../formula/index.ts";
import { M_PER_IN, newtons, showQuantity } from "../units/index.ts";
import { STAFF_ACCESS } from "./cautions.ts";
import type { CheckContext } from "./input.ts";
import {
  panelCapacity,
  panelDemand,
  panelLoads,
  panelSag,
  sagAllowed,
  type PanelLoad,
  type PanelSetup,
} from "./panel-model.ts";
import { panelSpanLimit } from "./panel-formulas.ts";
import type { PieceLabel } from "./piece-check.ts";
import { cannotCheck, resultOf } from "./result.ts";
import type { Backwards, CheckBase, CheckResult } from "./types.ts";
import type { WalkDemand } from "./walk-demand.ts";

export type { PanelSetup } from "./panel-model.ts";

type PanelCheck = "bending" | "deflection";

const bendingRule: Source = {
  id: "causey-panels",
  title: "Project rule on panel decks",
  at: "simple span between cross pieces, load spread over its contact width and a share of the span, at the edge",
  status: "project",
};

const baseOf = (label: PieceLabel, part: string, words: string, rule: Source): CheckBase => ({
  id: `${label.id}.${part}`,
  kind: label.kind,
  title: `${label.name}: ${words}`,
  parts: label.parts,
  rule,
  caution: `The panel spans along the walk from cross piece to cross piece, as one span whatever its length; shear and pressing-in at its ends are not checked: hold them against the maker's table. Lay it with the strong way along the walk. ${STAFF_ACCESS}`,
});

/**
 * Bending and deflection of a deck panel between two cross pieces under a foot, a wheel and an axle, and the hold of
 * its fasteners, which has no known capacity: a third result that cannot be checked until one was tested.
 */
export function checkDeckPanel(
  setup: PanelSetup,
  demands: readonly WalkDemand[],
  label: PieceLabel,
  context: CheckContext,
): CheckResult[] {
  const loads = panelLoads(demands, context);
  return [
    checkOne("bending", setup, loads, label, context),
    checkOne("deflection", setup, loads, label, context),
    cannotCheck(baseOf(label, "anchorage", "hold of its fasteners", bendingRule), [
      `the tested hold of "${setup.deck.fastener}" against lifting water and wind: ${setup.deck.fasteners_per_panel} of them hold a panel`,
    ]),
  ];
}

const demandOf = (check: PanelCheck, setup: PanelSetup, load: PanelLoad, trace?: Trace): number =>
  check === "bending" ? panelDemand(setup, load, trace) : panelSag(setup, load, trace);

const capacityOf = (check: PanelCheck, setup: PanelSetup, trace?: Trace): number =>
  check === "bending" ? panelCapacity(setup, trace) : sagAllowed(setup, trace);

const passes = (check: PanelCheck, setup: PanelSetup, loads: readonly PanelLoad[]): boolean =>
  loads.every((load) => demandOf(check, setup, load) <= capacityOf(check, setup));

function checkOne(
  check: PanelCheck,
  setup: PanelSetup,
  loads: readonly PanelLoad[],
  label: PieceLabel,
  context: CheckContext,
): CheckResult {
  const rule = check === "bending" ? bendingRule : panelSpanLimit.spec.source;
  const base = baseOf(label, check, check, rule);
  const worst = loads.reduce((a, b) => (demandOf(check, setup, b) > demandOf(check, setup, a) ? b : a));
  const working: Trace = [];
  const backwards = backwardsOf(check, setup, loads, context);
  const governs = worst.name;
  if (check === "bending") {
    const demand = panelDemand(setup, worst, working);
    const capacity = panelCapacity(setup, working);
    return resultOf(base, { unit: "N", demand, capacity, governs, working }, backwards);
  }
  const demand = panelSag(setup, worst, working);
  const capacity = sagAllowed(setup, working);
  return resultOf(base, { unit: "m", demand, capacity, governs, working }, backwards);
}

/** A round step of a builder's tape [m]. */
const STEP_M = { us: M_PER_IN, metric: 0.025 } as const;

function backwardsOf(
  check: PanelCheck,
  setup: PanelSetup,
  loads: readonly PanelLoad[],
  context: CheckContext,
): Backwards {
  const foot = loads[0]!;
  const none = { ...foot, load: () => newtons(0) };
  const own = demandOf(check, setup, none);
  const live = demandOf(check, setup, foot) - own;
  const allowed = Math.max(0, (foot.load() * (capacityOf(check, setup) - own)) / live);
  const say = (m: number): string => showQuantity(m, "m", context.units);
  const carries = `Carries one foot of at most ${showQuantity(allowed, "N", context.units)} on its edge, with cross pieces ${say(setup.span_m)} apart.`;
  if (passes(check, setup, loads)) return { carries, change: null };
  return { carries, change: changeOf(check, setup, loads, context) };
}

function changeOf(
  check: PanelCheck,
  setup: PanelSetup,
  loads: readonly PanelLoad[],
  { units }: CheckContext,
): string {
  const step = STEP_M[units];
  const say = (m: number): string => showQuantity(m, "m", units);
  for (let n = Math.ceil(setup.span_m / step) - 1; n * step >= 4 * M_PER_IN; n--)
    if (passes(check, { ...setup, span_m: n * step }, loads))
      return `Would pass with cross pieces at most ${say(n * step)} apart, centre to centre.`;
  return "No spacing of cross pieces that can be built passes: use a stouter panel, or boards.";
}
