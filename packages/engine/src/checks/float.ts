import { recordValue, type Trace } from "../formula/index.ts";
import {
  bodyHeight,
  drawnLevel,
  floatDraught,
  gravityHeight,
  heelSlope,
  lowFreeboard,
  metacentreHeight,
  waterplaneInertia,
} from "../flood/index.ts";
import type { Floats } from "../kit/index.ts";
import { DomainError, kilograms, metres, millimetres, qty, showQuantity, type Qty } from "../units/index.ts";
import type { BearingJoint } from "./bearing.ts";
import { liveMemory, type BearingDemand, type BearingLabel, type LiveMemory } from "./bearing-check.ts";
import { ENGINEER } from "./cautions.ts";
import type { CheckContext } from "./input.ts";
import { carriesText } from "./ladder.ts";
import { cannotCheck, resultOf } from "./result.ts";
import type { CheckBase, CheckResult } from "./types.ts";
import type { LoadCase } from "./walk-demand.ts";

const G = 9.80665;

/** A joint that swims. */
export interface FloatJoint extends BearingJoint {
  readonly floats: Floats;
  /** Underside of the module over the tops of the floats, and top of the deck over that underside [m]. */
  readonly timber_m: number;
  readonly module_m: number;
  readonly ground_m: number;
  readonly height_m: number;
  readonly water_kg_m3: number;
}

/** The lowest water that the site knows; null when it names none on its datum. */
export interface LowWater {
  readonly name: string;
  readonly z_m: number;
  readonly datum: string;
}

export interface FloatLabel extends BearingLabel {
  readonly anchored: boolean;
}

const baseOf = (label: BearingLabel, part: string, title: string, rule: CheckBase["rule"]): CheckBase => ({
  id: `bearing.float.${part}.${label.id}`,
  kind: "bearing",
  title: `${title}, ${label.name}`,
  parts: label.parts,
  rule,
  caution: `${ENGINEER} Still water, small angles, the joint by itself: its neighbours neither hold it nor drag it down. Waves, wind, current, ice, growth and leaks come on top. Close it in rough water.`,
});

/** The floats of one joint as one body that tips across the walk only. */
interface Body {
  readonly A: Qty<"m2">;
  readonly J: Qty<"m4">;
  readonly edge_m: number;
  readonly H_m: number;
}

function bodyOf({ floats, support }: FloatJoint, trace?: Trace): Body {
  const foot = support.feet[0];
  if (!foot) throw new DomainError("float-without-foot", { support: support.id });
  const [l, b] = [millimetres(foot.along_mm), millimetres(foot.across_mm)];
  const Q = qty(
    support.feet.reduce((sum, f) => sum + (f.offset_across_mm / 1000) ** 2, 0),
    "m2",
  );
  const far = Math.max(...support.feet.map((f) => Math.abs(f.offset_across_mm))) / 1000;
  return {
    A: qty(floats.count * l * b, "m2"),
    J: waterplaneInertia({ n: qty(floats.count, "1"), l, b, Q }, trace),
    edge_m: far + b / 2,
    H_m: floats.height_mm / 1000,
  };
}

/** How a joint swims under one load. */
interface Swim {
  readonly T: Qty<"m">;
  readonly KM: Qty<"m">;
  readonly KG: Qty<"m">;
  /** Freeboard at the low edge; null when it tips over. */
  readonly freeboard: Qty<"m"> | null;
}

function swim(joint: FloatJoint, load: LoadCase | null, memory: LiveMemory, trace?: Trace): Swim {
  const body = bodyOf(joint, trace);
  const live = load ? memory.of(joint, load) : { N: 0, m: 0 };
  const m_d = kilograms(joint.dead_kg);
  const m_l = kilograms(live.N / G);
  const m = kilograms(m_d + m_l);
  recordValue(trace, {
    id: "float.mass",
    title: "Mass on the floats with people on",
    symbol: "m",
    value: m,
    unit: "kg",
    source: {
      id: "statics",
      title: "Statics",
      at: "parts, support and live load of the joint",
      status: "computed",
    },
    how: `${joint.dead_kg.toFixed(1)} kg of parts, floats among them, and ${m_l.toFixed(1)} kg live`,
  });
  const T = floatDraught({ m, rho_w: qty(joint.water_kg_m3, "kg/m3"), A: body.A }, trace);
  const h_d = metres(body.H_m + joint.timber_m);
  const h_l = metres(h_d + joint.module_m + bodyHeight({}, trace));
  const KM = metacentreHeight({ T, J: body.J, A: body.A }, trace);
  const KG = gravityHeight({ m_d, h_d, m_l, h_l }, trace);
  if (KM - KG <= 1e-6) return { T, KM, KG, freeboard: null };
  const s = heelSlope({ M: qty(live.m, "N*m"), m, KM, KG }, trace);
  const freeboard = lowFreeboard({ H: metres(body.H_m), T, y: metres(body.edge_m), s }, trace);
  return { T, KM, KG, freeboard };
}

/**
 * Floats of one joint: freeboard at the low edge with people as far to one side as they can stand, stability by the
 * metacentre, whether they lie on the ground at low water, and what holds them.
 *
 * low  the lowest water of the site on its datum; a list of what is missing when none is known
 */
export function checkFloats(
  joint: FloatJoint,
  low: LowWater | { readonly missing: string },
  demand: BearingDemand,
  label: FloatLabel,
  context: CheckContext,
  memory: LiveMemory = liveMemory(),
): CheckResult[] {
  return [
    checkFreeboard(joint, demand, label, context, memory),
    checkStability(joint, demand, label, context, memory),
    checkAground(joint, low, label, context, memory),
    cannotCheck(baseOf(label, "anchor", "Anchors of the floats", floatDraught.spec.source), [
      label.anchored
        ? "the pull of current, wind and ice on the floats, against which the stakes must hold"
        : "anchors: the recipe has none, and current and wind pull on every float",
    ]),
  ];
}

const freeboardOf = (joint: FloatJoint, load: LoadCase, memory: LiveMemory): number =>
  swim(joint, load, memory).freeboard ?? -1;

function checkFreeboard(
  joint: FloatJoint,
  { cases, rungs }: BearingDemand,
  label: BearingLabel,
  { units }: CheckContext,
  memory: LiveMemory,
): CheckResult {
  const worst = cases.reduce((a, b) =>
    freeboardOf(joint, b, memory) < freeboardOf(joint, a, memory) ? b : a,
  );
  const working: Trace = [];
  worst.explain(working);
  const found = swim(joint, worst, memory, working);
  const demand = millimetres(joint.floats.freeboard_mm);
  const capacity = metres(Math.max(0, found.freeboard ?? 0));
  const say = (m: number): string => showQuantity(m, "m", units);
  const swims = (load: LoadCase): boolean => freeboardOf(joint, load, memory) >= demand;
  const wide = (by: number): FloatJoint => ({
    ...joint,
    support: {
      ...joint.support,
      feet: joint.support.feet.map((f) => ({
        ...f,
        across_mm: f.across_mm * by,
        offset_across_mm: f.offset_across_mm * by,
      })),
    },
  });
  const by = [1.1, 1.25, 1.5, 2, 2.5, 3].find((k) =>
    cases.every((c) => freeboardOf(wide(k), c, memory) >= demand),
  );
  const change = by
    ? `Would pass with floats ${Math.round((by - 1) * 100)} % wider across the walk and as much farther apart.`
    : "Needs more or higher floats, shorter modules, or fewer people at a time.";
  const passes = found.freeboard !== null && found.freeboard >= demand;
  return resultOf(
    baseOf(label, "freeboard", "Freeboard with people on", lowFreeboard.spec.source),
    { unit: "m", demand, capacity, governs: worst.name, working },
    {
      carries: `${carriesText(rungs, swims, "nobody with the freeboard asked for")} The low edge stands ${say(Math.max(0, found.freeboard ?? 0))} out of the water.`,
      change: passes ? null : change,
    },
  );
}

function checkStability(
  joint: FloatJoint,
  { cases }: BearingDemand,
  label: BearingLabel,
  { units }: CheckContext,
  memory: LiveMemory,
): CheckResult {
  const ratio = (load: LoadCase): number => {
    const { KM, KG } = swim(joint, load, memory);
    return KG / KM;
  };
  const worst = cases.reduce((a, b) => (ratio(b) > ratio(a) ? b : a));
  const working: Trace = [];
  worst.explain(working);
  const { KM, KG } = swim(joint, worst, memory, working);
  const say = (m: number): string => showQuantity(m, "m", units);
  return resultOf(
    baseOf(label, "stability", "Stability across the walk", metacentreHeight.spec.source),
    { unit: "m", demand: KG, capacity: KM, governs: worst.name, working },
    {
      carries: `The centre of gravity lies ${say(Math.abs(KM - KG))} ${KM > KG ? "under" : "over"} the point about which it would tip.`,
      change:
        KG <= KM
          ? null
          : "It tips over: set the floats farther apart across the walk, or add a row at each side.",
    },
  );
}

function checkAground(
  joint: FloatJoint,
  low: LowWater | { readonly missing: string },
  label: BearingLabel,
  { units }: CheckContext,
  memory: LiveMemory,
): CheckResult {
  const base = baseOf(label, "aground", "Water under the floats at low water", floatDraught.spec.source);
  if ("missing" in low) return cannotCheck(base, [low.missing]);
  const working: Trace = [];
  const { T } = swim(joint, null, memory, working);
  const level = drawnLevel(
    {
      z_g: metres(joint.ground_m),
      h: metres(joint.height_m),
      h_t: metres(joint.timber_m),
      H: millimetres(joint.floats.height_mm),
      T,
    },
    working,
  );
  recordValue(working, {
    id: "float.low-water",
    title: `Low water: ${low.name}`,
    symbol: "z_l",
    value: low.z_m,
    unit: "m",
    source: { id: "site-levels", title: `The site's water levels on ${low.datum}`, status: "project" },
    how: "as given",
  });
  const depth = metres(Math.max(0, low.z_m - joint.ground_m));
  const say = (m: number): string => showQuantity(m, "m", units);
  const drawn = `Its deck stands as drawn when the water is at ${level.toFixed(2)} m on ${low.datum}, and follows it up and down.`;
  return resultOf(
    base,
    { unit: "m", demand: T, capacity: depth, governs: `${low.name}, nobody on it`, working },
    {
      carries: `It swims in ${say(T)} of water. ${drawn}`,
      change:
        T <= depth
          ? null
          : "It lies on the ground at low water: set it over deeper water, or see that the ground carries it and nothing grows there.",
    },
  );
}
