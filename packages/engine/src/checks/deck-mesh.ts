import { defineFormula, recordValue, type Source, type Trace } from "../formula/index.ts";
import type { LoadRule } from "../materials/index.ts";
import { recordTrain, strandSag, strandStress, strandTension, wireArea } from "../structure/index.ts";
import { metres, newtons, qty, showQuantity, type Qty } from "../units/index.ts";
import { STAFF_ACCESS } from "./cautions.ts";
import type { CheckContext } from "./input.ts";
import { cartsOf } from "./ladder.ts";
import { footLoad, wheelOf, type Load } from "./piece-cases.ts";
import type { PieceLabel } from "./piece-check.ts";
import { cannotCheck, resultOf } from "./result.ts";
import { pointOf, recordRule } from "./rule-loads.ts";
import { footPatch, steelStiffness } from "./rules.ts";
import type { Backwards, CheckBase, CheckResult } from "./types.ts";
import type { WalkDemand } from "./walk-demand.ts";

/** A deck of welded mesh over the frame. */
export interface MeshDeckSetup {
  readonly wire_m: number;
  readonly pitch_m: number;
  readonly yield_pa: number;
  /** Clear span of the strands: the shorter way between timbers [m]. */
  readonly span_m: number;
  readonly clip: string;
}

const strandRule: Source = {
  id: "causey-mesh",
  title: "Project rule on mesh decks",
  at: "each strand under the load as a cable between its ends, one way only, elastic to yield",
  status: "project",
};

/** Load of one strand. P [N], n strands [1]; P_1 [N]. */
export const strandLoad = defineFormula(
  {
    id: "mesh.strand-load",
    title: "Load of one strand",
    symbol: "P_1",
    unit: "N",
    text: "P / n",
    inputs: { P: "N", n: "1" },
    validity: "Strands under the load's width share it evenly; strands the other way do not help.",
    source: strandRule,
  },
  ({ P, n }) => P / n,
);

/** Strands under a load of a width: one more than the pitches it spans. */
export const strandsUnder = (width_m: number, pitch_m: number): number =>
  Math.floor(width_m / pitch_m + 1e-9) + 1;

interface MeshLoad {
  readonly name: string;
  readonly load: Load;
  readonly width_m: number;
}

/** A patch by the strands under it; a pressure by what one metre of width carries, taken as if it hung at midspan. */
function ruleLoad(rule: LoadRule, { span_m }: MeshDeckSetup, { tables }: CheckContext): MeshLoad {
  if (rule.kind === "point") return { name: rule.name, load: pointOf(rule, tables), width_m: rule.side_m };
  const load: Load = (trace) => {
    recordRule(rule, tables, trace);
    const W = newtons(rule.pressure_pa * span_m);
    recordTrain(trace, "P", "Load on one metre of width between timbers", W, "N", rule.name);
    return W;
  };
  return { name: rule.name, load, width_m: 1 };
}

function meshLoads(mesh: MeshDeckSetup, demands: readonly WalkDemand[], context: CheckContext): MeshLoad[] {
  const foot = footLoad(demands, context.units);
  return [
    { name: `${foot.name} on a heel`, load: foot.load, width_m: footPatch({}) },
    ...cartsOf(demands).map((cart) => ({
      name: `a wheel of ${cart.name}`,
      load: wheelOf(cart),
      width_m: Math.min(cart.wheel_width_mm, cart.wheel_contact_mm) / 1000,
    })),
    ...(context.load_rules ?? []).map((rule) => ruleLoad(rule, mesh, context)),
  ];
}

const perStrand = (mesh: MeshDeckSetup, { load, width_m }: MeshLoad): number =>
  load() / strandsUnder(width_m, mesh.pitch_m);

const stressOf = (mesh: MeshDeckSetup, P: number): number =>
  strandStress({ P: newtons(P), A: wireArea({ d: metres(mesh.wire_m) }), E: steelStiffness({}) });

/**
 * Stress of one mesh strand against yield, and the pull on its clips, which has no known capacity: a second result
 * that cannot be checked until a clip of the kit was tested.
 */
export function checkDeckMesh(
  mesh: MeshDeckSetup,
  demands: readonly WalkDemand[],
  label: PieceLabel,
  context: CheckContext,
): CheckResult[] {
  const loads = meshLoads(mesh, demands, context);
  const worst = loads.reduce((a, b) => (perStrand(mesh, b) > perStrand(mesh, a) ? b : a));
  const working: Trace = [];
  const P = loadSteps(mesh, worst, working);
  const A = wireArea({ d: metres(mesh.wire_m) }, working);
  const E = steelStiffness({}, working);
  const demand = strandStress({ P, A, E }, working);
  strandSag({ P, A, E, L: metres(mesh.span_m) }, working);
  const pull = strandTension({ P, A, E }, working);
  const capacity = qty(mesh.yield_pa, "Pa");
  const governs = worst.name;
  const base = baseOf(label, "strand", "stress of a strand");
  return [
    resultOf(
      base,
      { unit: "Pa", demand, capacity, governs, working },
      meshBackwards(mesh, loads, worst, context),
    ),
    cannotCheck(baseOf(label, "anchorage", "hold of the clips"), [
      `the tested capacity of "${mesh.clip}" on this timber: a strand under ${worst.name} pulls ${showQuantity(pull, "N", context.units)}`,
    ]),
  ];
}

function loadSteps(mesh: MeshDeckSetup, worst: MeshLoad, trace: Trace): Qty<"N"> {
  const P = worst.load(trace);
  const n = qty(strandsUnder(worst.width_m, mesh.pitch_m), "1");
  recordValue(trace, {
    id: "mesh.strands",
    title: "Strands under the load",
    symbol: "n",
    value: n,
    unit: "1",
    source: strandRule,
    how: `one more than the pitches in ${(worst.width_m * 1000).toFixed(0)} mm`,
  });
  return strandLoad({ P, n }, trace);
}

const baseOf = (label: PieceLabel, part: string, words: string): CheckBase => ({
  id: `${label.id}.${part}`,
  kind: label.kind,
  title: `${label.name}: ${words}`,
  parts: label.parts,
  rule: strandRule,
  caution: `The clips usually give way long before the strand: test one on the kit before use. Mesh sags and catches heels; look for broken welds and sharp ends. ${STAFF_ACCESS}`,
});

function meshBackwards(
  mesh: MeshDeckSetup,
  loads: readonly MeshLoad[],
  worst: MeshLoad,
  { units }: CheckContext,
): Backwards {
  const isFine = (m: MeshDeckSetup): boolean =>
    loads.every((l) => stressOf(m, perStrand(m, l)) <= m.yield_pa);
  const factor = (mesh.yield_pa / stressOf(mesh, perStrand(mesh, worst))) ** 1.5;
  const carries = `A strand at yield carries ${showQuantity(worst.load() * factor, "N", units)} placed as ${worst.name}.`;
  if (isFine(mesh)) return { carries, change: null };
  const wires = Array.from({ length: 80 }, (_, i) => Math.ceil(mesh.wire_m * 1e4 + i + 1) / 1e4);
  const wire = wires.find((wire_m) => isFine({ ...mesh, wire_m }));
  const pitches = [2, 3, 4].map((k) => mesh.pitch_m / k);
  const pitch = pitches.find((pitch_m) => isFine({ ...mesh, pitch_m }));
  const words = [
    ...(wire ? [`wire of ${(wire * 1000).toFixed(1)} mm`] : []),
    ...(pitch ? [`a pitch of ${showQuantity(pitch, "m", units)}`] : []),
  ];
  return {
    carries,
    change:
      words.length > 0
        ? `Would pass with ${words.join(", or ")}.`
        : "No mesh of ordinary wire passes: use boards.",
  };
}
