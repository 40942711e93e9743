import { unpricedWords, type Budget, type Cost } from "../cost/index.ts";
import type { Source, Trace, TraceStep } from "../formula/index.ts";
import type { Layout, LayoutFacts, LayoutFigures, Weights } from "../layout/index.ts";
import { M_PER_FT, type UnitSystem } from "../units/index.ts";
import { budgetFigures } from "./budget-figures.ts";
import { highestDeckFigure } from "./highest-deck.ts";
import type { Figure } from "./results.ts";
import { sumStep, type Term } from "./sum-step.ts";

interface FigureInput {
  readonly layout: Layout;
  readonly evaluation: LayoutFigures;
  readonly cost: Cost;
  readonly working: readonly TraceStep[];
  readonly facts: LayoutFacts;
  readonly units: UnitSystem;
  readonly weights: Weights;
  readonly budget: { readonly budget: Budget; readonly working: Trace };
}

const layoutMethod: Source = {
  id: "causey-layout",
  title: "Causey's layout, docs/methods/layout-search.md",
  status: "project",
};
const priceList: Source = { id: "price-list", title: "The plan's dated price list", status: "project" };
const planWeights: Source = {
  id: "plan-weights",
  title: "The plan's weights of harm and money",
  status: "project",
};

/** The figures of the Layout page and the summary: one value each, with its working. */
export function makeFigures(input: FigureInput): Figure[] {
  const { evaluation: e, layout } = input;
  const length = lengthFigure(input);
  return [
    length,
    shadeFigure(input),
    contactFigure(input),
    plain(
      "crossings",
      "Crossings of channels and pools",
      e.crossings.length,
      "1",
      e.crossings.map((c) => `${c.part} over ${c.name}`).join("; "),
    ),
    plain(
      "lowest-clear",
      "Least height of the underside over ground",
      e.lowest_deck_clear_m,
      "m",
      "Read every 0.1 m along the middle line of every module.",
    ),
    ...highestDeckFigure(layout.joints),
    plain(
      "steepest-grade",
      "Steepest grade between two joints",
      e.steepest_grade,
      "1",
      "Rise over run; 0.083 is 1 in 12.",
    ),
    plain(
      "plots-reached",
      "Plots reached",
      layout.reached.length,
      "1",
      layout.unreached.map((u) => `${u.plot}: ${u.because}`).join(" "),
    ),
    ...(layout.parts.length === 0 ? [] : moneyFigures(input)),
  ];
}

/** Left out where nothing is laid: what is paid all the same would pass for the price of a walkway. */
const moneyFigures = (input: FigureInput): readonly Figure[] => [
  ...[
    costFigure(input),
    costPerLength(input),
    ...budgetFigures(input.budget.budget, input.budget.working),
  ].map((figure) => withGaps(figure, input.cost)),
  weightedFigure(input),
];

/** A sum that leaves out what has no price says so beside its value. */
function withGaps(figure: Figure, cost: Cost): Figure {
  const incomplete = unpricedWords(cost);
  return incomplete === null ? figure : { ...figure, incomplete };
}

const plain = (id: string, title: string, value: number, unit: Figure["unit"], note: string): Figure => ({
  id,
  title,
  value,
  unit,
  note,
  working: [],
  sources: [layoutMethod],
});

function lengthFigure({ evaluation: e, facts }: FigureInput): Figure {
  const terms: Term[] = e.modules.map((m, n) => ({
    symbol: `p${n + 1}`,
    title: `pitch of a ${(m.length_m * 1000).toFixed(0)} mm module`,
    count: m.count,
    value: m.length_m + facts.gap_m,
    unit: "m",
  }));
  if (e.platforms > 0)
    terms.push({
      symbol: "pp",
      title: "pitch of a turning platform",
      count: e.platforms,
      value: facts.platform_side_m + facts.gap_m,
      unit: "m",
    });
  const step = sumStep(
    {
      id: "layout.length",
      title: "Walkway length, joint to joint",
      symbol: "L",
      unit: "m",
      source: layoutMethod,
    },
    terms,
  );
  return {
    id: "length",
    title: "Walkway length",
    value: e.length_m,
    unit: "m",
    note: "",
    working: [step],
    sources: [layoutMethod],
  };
}

function shadeFigure({ evaluation: e, facts }: FigureInput): Figure {
  const terms: Term[] = e.modules.map((m, n) => ({
    symbol: `a${n + 1}`,
    title: `outline of a ${(m.length_m * 1000).toFixed(0)} mm module, ${(facts.width_m * 1000).toFixed(0)} mm wide`,
    count: m.count,
    value: m.length_m * facts.width_m,
    unit: "m2",
  }));
  if (e.platforms > 0)
    terms.push({
      symbol: "ap",
      title: "outline of a turning platform",
      count: e.platforms,
      value: facts.platform_side_m ** 2,
      unit: "m2",
    });
  const step = sumStep(
    {
      id: "layout.shaded-area",
      title: "Ground under the deck",
      symbol: "A",
      unit: "m2",
      source: layoutMethod,
    },
    terms,
  );
  return {
    id: "shaded",
    title: "Shaded ground",
    value: e.shaded_m2,
    unit: "m2",
    note: e.shaded_by_zone
      .filter((z) => z.area_m2 > 0.005)
      .map((z) => `${z.name} ${z.area_m2.toFixed(1)} m²`)
      .join("; "),
    working: [step],
    sources: [layoutMethod],
  };
}

function contactFigure({ layout, evaluation: e, facts }: FigureInput): Figure {
  const terms: Term[] = facts.supports.flatMap((kind, n) => {
    const count = layout.joints.filter((j) => j.support === kind.id).length;
    const area = kind.feet.reduce((sum, f) => sum + (f.along_mm * f.across_mm) / 1e6, 0);
    return count === 0
      ? []
      : [
          {
            symbol: `c${n + 1}`,
            title: `ground under one ${kind.name}`,
            count,
            value: area,
            unit: "m2" as const,
          },
        ];
  });
  const step = sumStep(
    {
      id: "layout.contact-area",
      title: "Ground under the supports",
      symbol: "C",
      unit: "m2",
      source: layoutMethod,
    },
    terms,
  );
  return {
    id: "contact",
    title: "Ground touched",
    value: e.contact_m2,
    unit: "m2",
    note: "",
    working: [step],
    sources: [layoutMethod],
  };
}

function costFigure({ cost, working }: FigureInput): Figure {
  const terms: Term[] = cost.lines.map((l, n) => ({
    symbol: `m${n + 1}`,
    title: `${l.title}: ${l.note}`,
    count: 1,
    value: l.amount,
    unit: "money",
  }));
  const step = sumStep(
    { id: "cost.total", title: "Cost of the walkway", symbol: "M", unit: "money", source: priceList },
    terms,
  );
  const note =
    cost.unpriced.length > 0
      ? `Left out for want of a price: ${cost.unpriced.map((u) => u.item).join("; ")}.`
      : "";
  return {
    id: "cost",
    title: "Cost",
    value: cost.total,
    unit: "money",
    note,
    working: [...working, step],
    sources: [priceList],
  };
}

/** Cost of a foot or of a metre of walkway, by the plan's units. */
function costPerLength({ cost, evaluation, units }: FigureInput): Figure {
  const one = units === "us" ? { name: "foot", length_m: M_PER_FT } : { name: "metre", length_m: 1 };
  const length = evaluation.length_m;
  const value = length > 0 ? (cost.total / length) * one.length_m : 0;
  const step: TraceStep = {
    id: "cost.per-length",
    title: `Cost of one ${one.name} of walkway`,
    symbol: "m",
    text: "M / L * l",
    inputs: [
      { symbol: "M", value: cost.total, unit: "money" },
      { symbol: "L", value: length, unit: "m" },
      { symbol: "l", value: one.length_m, unit: "m" },
    ],
    value,
    unit: "money",
    source: priceList,
  };
  return {
    id: "cost-per-length",
    title: `Cost per ${one.name}`,
    value,
    unit: "money",
    note: length > 0 ? "" : "No walkway.",
    working: length > 0 ? [step] : [],
    sources: [priceList],
  };
}

function weightedFigure({ evaluation: e }: FigureInput): Figure {
  const terms = (["money", "shade", "contact", "crossings"] as const).map((k): Term => ({
    symbol: k,
    title: `weighted ${k}`,
    count: 1,
    value: e.weighted[k],
    unit: "money",
  }));
  const step = sumStep(
    {
      id: "layout.weighted",
      title: "Weighted cost of money and harm",
      symbol: "W",
      unit: "money",
      source: planWeights,
    },
    terms,
  );
  return {
    id: "weighted",
    title: "Weighted cost with harm",
    value: e.weighted.total,
    unit: "money",
    note: "What the search makes least.",
    working: [step],
    sources: [planWeights],
  };
}
