import { recordValue, type Source, type Trace } from "../formula/index.ts";
import { daysBetween } from "../cost/index.ts";
import { consolidation, settlementOf } from "../ground/index.ts";
import type { SoftLayer } from "../plan/proof-choice.ts";
import { metres, showQuantity } from "../units/index.ts";
import { edgeFeet, EMPTY } from "./foot-loads.ts";
import { shared } from "./ground-bearing.ts";
import { cannotCheck, resultOf } from "./result.ts";
import { groupBy, type Setting } from "./setting.ts";
import { settlingBase } from "./settling-base.ts";
import { leewayOf } from "./settling-leeway.ts";
import { consolidationEnd } from "./soil-rules.ts";
import { outlineOf } from "./soil-field.ts";
import type { PlanSoil, SoilJoint } from "./soil.ts";
import type { CheckResult } from "./types.ts";

/** Consolidation and creep under the parts' own weight, from the first day of laying to removal. */
export function timeChecks(setting: Setting, { joints }: PlanSoil): CheckResult[] {
  const { laying, removal, proof } = setting.input.plan;
  if (joints.length === 0) return [];
  const all = joints.map((j) => j.met.joint.id);
  const base = settlingBase("time", "Settlement until the walkway is taken out", all, consolidation);
  const layer = proof.ground.soft_layer;
  if (!layer)
    return [
      cannotCheck(base, [
        "the soft layer: its thickness, how far it compresses and creeps, and the pressure in it",
      ]),
    ];
  const days = daysBetween(laying.from, removal.by);
  if (!(days > 0 && layer.pressure_kpa > 0 && layer.thickness_m > 0))
    return [
      cannotCheck(base, [
        "a removal after the laying, and a soft layer with a thickness and a pressure over 0",
      ]),
    ];
  return [...groupBy(joints, (j) => j.word).values()].map((group) => oneTime(setting, group, layer, days));
}

/** Feet as they press: each for itself, or all together as one block; whichever settles more. */
function footings({ plain, joint }: SoilJoint) {
  const { pressed } = edgeFeet(plain.stance, EMPTY);
  const block = outlineOf(joint.support);
  const whole = pressed.load_n * plain.stance.count;
  return [
    { width_m: pressed.along_m, length_m: pressed.across_m, pressure_pa: pressed.pressure_pa },
    {
      width_m: block.along_m,
      length_m: block.across_m,
      pressure_pa: whole / (block.along_m * block.across_m),
    },
  ];
}

function oneTime(setting: Setting, group: readonly SoilJoint[], layer: SoftLayer, days: number): CheckResult {
  const { units } = setting.context;
  const { id, name, parts } = shared(group.map((g) => g.met.joint.id));
  const title = `Settlement until the walkway is taken out, ${name}`;
  const base = settlingBase(`time.${id}`, title, parts, consolidation);
  const working: Trace = [];
  recordLayer(layer, days, working);
  const primary_days = consolidationEnd({}, working) / 24;
  // The plan tells Cc / (1 + e0) in one number: e0 = 0 leaves it as it is.
  const soil = {
    thickness_m: layer.thickness_m,
    cc: layer.compression,
    e0: 0,
    ca: layer.creep_share * layer.compression,
    stress_pa: layer.pressure_kpa * 1000,
  };
  const total = (f: ReturnType<typeof footings>[number], trace?: Trace) => {
    const found = settlementOf(f, [soil], days, primary_days, trace);
    return { sum: found.primary_m + found.creep_m, words: found.words };
  };
  const worst = footings(group[0]!).reduce((a, b) => (total(b).sum > total(a).sum ? b : a));
  const { sum, words } = total(worst, working);
  const leeway = leewayOf(setting, group[0]!.joint.support, working);
  return resultOf(
    base,
    {
      unit: "m",
      demand: metres(sum),
      capacity: leeway.most,
      governs: `the parts' own weight over ${days} days`,
      working,
    },
    {
      carries: `Settles ${showQuantity(sum, "m", units)}. ${words.join(" ")} ${leeway.words[0]!.toUpperCase()}${leeway.words.slice(1)}.`,
      change:
        sum <= leeway.most
          ? null
          : "Needs larger feet, or packing up under the sills at inspections; or an earlier removal.",
    },
  );
}

function recordLayer(layer: SoftLayer, days: number, trace: Trace): void {
  const source: Source = { id: "plan-soft-layer", title: `Plan: ${layer.source}`, status: "project" };
  const told = (id: string, title: string, symbol: string, value: number): void =>
    recordValue(trace, { id: `check.layer.${id}`, title, symbol, value, unit: "1", source, how: "as told" });
  told("compression", "Compression of the soft layer, Cc / (1 + e0)", "Cc'", layer.compression);
  told("creep", "Creep over compression", "Ca / Cc", layer.creep_share);
  const how = "from the first day of laying to removal";
  recordValue(trace, {
    id: "check.layer.life",
    title: "Time that the walkway lies",
    symbol: "t",
    value: days * 24,
    unit: "h",
    source: { id: "plan-laying", title: "The plan's days of laying and removal", status: "project" },
    how,
  });
}
