import { lateral, leastEmbedment, modulusOf, facingOf, swayStrength, woodMoment } from "../anchors/index.ts";
import {
  crestLevel,
  dragForce,
  lowerSpeed,
  requiredHoldDown,
  flotationSafety,
  upperSpeed,
  throughOrOver,
} from "../flood/index.ts";
import { recordValue, type Trace } from "../formula/index.ts";
import { metres, newtons, qty, showQuantity, type Qty } from "../units/index.ts";
import { kindAt, stakeChoice } from "./anchor-joint.ts";
import { pileDepthAt } from "./base-joints.ts";
import { millimetres } from "../units/index.ts";
import type { FloodCase } from "./flood-cases.ts";
import {
  crestOnPart,
  currentOnPart,
  jointDepth,
  jointsById,
  partDepth,
  zeroOf,
  type FloodLoads,
} from "./flood-demand.ts";
import { pushOnPart, sideAllowed } from "./flood-formulas.ts";
import {
  dragOnShape,
  together,
  times,
  waveAt,
  waveOnShape,
  wrackOnPart,
  type Push,
  type WetJoint,
  type WetLine,
  type WetPart,
} from "./flood-loads.ts";
import { NO_SPEED, PARTED } from "./flood-words.ts";
import { MISSING_STRENGTH, recordStrength } from "./ground-strength.ts";
import { cannotCheck, notApplicable, resultOf } from "./result.ts";
import type { Setting } from "./setting.ts";
import type { CheckBase, CheckResult } from "./types.ts";
import { stakeShare } from "./uplift.ts";

export type Ids = ReadonlyMap<string, WetJoint>;

export const floodBase = (id: string, title: string, parts: readonly string[]): CheckBase => ({
  id: `flood.${id}`,
  kind: "flood",
  title,
  parts,
  rule: dragForce.spec.source,
  caution: PARTED,
});

export const partIds = (line: WetLine): string[] => line.parts.map((p) => p.part.id);

/** Side force that the stakes or piles of one joint may hold at a height [N]; null without strength; 0 without any. */
export function sideOfJoint(setting: Setting, joint: WetJoint, e_m: number, trace?: Trace): number | null {
  const kind = kindAt(setting, joint);
  const { anchor, piles } = kind;
  if (!anchor && !piles) return 0;
  const { strength } = joint.met;
  if (!strength) return null;
  const F = qty(setting.input.plan.ground.safety, "1");
  const su = swayStrength({ su: strength.su }, trace);
  const e = metres(e_m);
  if (piles) {
    const L = metres(pileDepthAt(setting, joint.met.joint, kind));
    const side = lateral({ b: millimetres(piles.shaft_mm), L, e, su, head: "free", wood: null }, trace);
    return sideAllowed({ n: qty(piles.count, "1"), H_u: newtons(side.ground_n), F }, trace);
  }
  const choice = stakeChoice(setting, anchor!.size, []);
  const L = metres(anchor!.embedment_mm / 1000);
  if (!choice || L <= leastEmbedment(choice.section)) return 0;
  const wood = woodMoment({ S: modulusOf(choice.section, trace), f_b: choice.bending_pa }, trace);
  const side = lateral({ b: facingOf(choice.section), L, e, su, head: "free", wood }, trace);
  const ground = side.ground_n / F;
  const breaks = side.wood_n ?? Infinity;
  const [H_u, by] = breaks < ground ? [breaks, qty(1, "1")] : [side.ground_n, F];
  return sideAllowed({ n: qty(anchor!.count, "1"), H_u: newtons(H_u), F: by }, trace);
}

const jointsUnder = (part: WetPart, ids: Ids): WetJoint[] =>
  part.joints.flatMap((j) => ids.get(j.joint.id) ?? []);

/** Half of what the supports under a part hold sideways [N]; remembered by what it follows from. */
export function sideMemory(setting: Setting, ids: Ids): (part: WetPart, e_m: number) => number | null {
  const known = new Map<string, number | null>();
  return (part, e_m) => {
    let sum = 0;
    for (const joint of jointsUnder(part, ids)) {
      const { support, support_height_m } = joint.met.joint;
      const at = Math.ceil(e_m * 100) / 100;
      const key = `${support}|${support_height_m.toFixed(3)}|${joint.met.strength?.su}|${at.toFixed(2)}`;
      if (!known.has(key)) known.set(key, sideOfJoint(setting, joint, at));
      const side = known.get(key)!;
      if (side === null) return null;
      sum += side * stakeShare({});
    }
    return sum;
  };
}

interface Judged {
  readonly part: WetPart;
  readonly push: Push;
  readonly side: number;
}

/** The part with the largest push over what its stakes hold; `strength` when the ground's is not known. */
function worstPart(
  parts: readonly WetPart[],
  pushOf: (p: WetPart) => Push | null,
  sideOf: (part: WetPart, e_m: number) => number | null,
): Judged | "strength" | "tables" | null {
  let worst: Judged | null = null;
  const use = ({ push, side }: Judged): number => (side > 0 ? push.force_n / side : push.force_n * 1e9);
  for (const part of parts) {
    const push = pushOf(part);
    if (!push) return "tables";
    if (push.force_n <= 0) continue;
    const side = sideOf(part, push.acts_at_m);
    if (side === null) return "strength";
    const judged = { part, push, side };
    if (!worst || use(judged) > use(worst)) worst = judged;
  }
  return worst;
}

export const OUT_OF_TABLES = "the drag of wrack in water this fast and shallow: a Froude number of 1 or more";

/** The worst part in the current of one case, with wrack where it is told. */
export function dragCheck(
  setting: Setting,
  line: WetLine,
  loads: FloodLoads,
  speed: Qty<"m/s">,
  sideOf: (part: WetPart, e_m: number) => number | null,
): CheckResult {
  const { flood } = loads;
  const base = floodBase(`drag.${flood.id}`, `Push of the current, ${flood.name}`, partIds(line));
  const ids = jointsById(line);
  const worst = worstPart(line.parts, (p) => currentOnPart(setting, loads, p, ids, speed), sideOf);
  if (worst === "tables") return cannotCheck(base, [OUT_OF_TABLES]);
  if (worst === "strength") return cannotCheck(base, [MISSING_STRENGTH]);
  if (!worst)
    return notApplicable(base, speed > 0 ? `${flood.name} stays under every part` : "the water stands still");
  const working: Trace = [];
  recordSpeed(setting, speed, working);
  const demand = explainCurrent(setting, loads, worst.part, ids, speed, working);
  return sideResult(setting, base, worst, demand, flood, ids, working);
}

function recordSpeed(setting: Setting, speed: Qty<"m/s">, trace: Trace): void {
  const { speed_source } = setting.input.plan.proof.flood;
  recordValue(trace, {
    id: "flood.speed",
    title: "Speed of the water over the ground",
    symbol: "V",
    value: speed,
    unit: "m/s",
    source: { id: "plan-speed", title: `Plan: ${speed_source || "no source told"}`, status: "project" },
    how: "as told",
  });
}

function explainCurrent(
  setting: Setting,
  { flood }: FloodLoads,
  part: WetPart,
  ids: Ids,
  speed: Qty<"m/s">,
  trace: Trace,
): Qty<"N"> {
  const own = dragOnShape(
    setting,
    part.shape,
    { zero_m: zeroOf(part), depth_m: partDepth(flood, part), angle: part.angle },
    speed,
    trace,
  );
  const under = jointsUnder(part, ids).map((j) =>
    dragOnShape(
      setting,
      j.shape,
      { zero_m: 0, depth_m: jointDepth(flood, j), angle: j.parts[0]?.angle ?? part.angle },
      speed,
      trace,
    ),
  );
  const wrack = wrackOnPart(setting, part, partDepth(flood, part), speed, trace);
  return pushOnPart(
    {
      F_p: newtons(own.force_n),
      k_h: stakeShare({}, trace),
      F_s: newtons(under.reduce((sum, u) => sum + u.force_n, 0)),
      F_w: newtons(wrack?.force_n ?? 0),
    },
    trace,
  );
}

function sideResult(
  setting: Setting,
  base: CheckBase,
  { part, push, side }: Judged,
  demand: Qty<"N">,
  flood: FloodCase,
  ids: Ids,
  working: Trace,
): CheckResult {
  const first = jointsUnder(part, ids)[0];
  if (first?.met.strength) recordStrength(first.met.strength, working);
  if (first) sideOfJoint(setting, first, Math.ceil(push.acts_at_m * 100) / 100, working);
  const say = (n: number): string => showQuantity(n, "N", setting.context.units);
  const capacity = newtons(side);
  return resultOf(
    base,
    { unit: "N", demand, capacity, governs: `${flood.name}, ${part.part.id}`, working },
    {
      carries:
        side > 0
          ? `The stakes under ${part.part.id} may hold ${say(side)} sideways; the water pushes with ${say(demand)}, ${showQuantity(push.acts_at_m, "m", setting.context.units)} over the ground.`
          : `Nothing holds ${part.part.id} sideways once it is under water; the water pushes with ${say(demand)}.`,
      change:
        demand <= capacity
          ? null
          : `Needs stakes that hold ${say(demand - side)} more sideways: see the anchors, which name how many of which length.`,
    },
  );
}

/** Speeds of the flood rule at a depth [m/s]. */
export const boundsAt = (depth_m: number): readonly [number, number] => {
  const d = metres(Math.max(0, depth_m));
  return [lowerSpeed({ d }), upperSpeed({ d })];
};

/** One result for all that needs the speed, with both bounds of the flood rule and the push at each. */
export function speedMissing(setting: Setting, line: WetLine, all: readonly FloodLoads[]): CheckResult {
  const base = floodBase("speed", "Push of the current, drifting logs", partIds(line));
  const ids = jointsById(line);
  const words = all.flatMap((loads) => {
    const deepest = line.parts.reduce<WetPart | null>(
      (a, b) => (a === null || partDepth(loads.flood, b) > partDepth(loads.flood, a) ? b : a),
      null,
    );
    if (!deepest || partDepth(loads.flood, deepest) <= 0) return [];
    const depth = partDepth(loads.flood, deepest);
    const bounds = boundsAt(depth);
    const push = bounds.map((v) => currentOnPart(setting, loads, deepest, ids, qty(v, "m/s"))?.force_n);
    const say = (n: number | undefined): string =>
      n === undefined ? "more than the tables hold" : showQuantity(n, "N", setting.context.units);
    return [
      `${loads.flood.name}: by the flood rule between ${bounds[0].toFixed(2)} and ${bounds[1].toFixed(2)} m/s in the ${showQuantity(depth, "m", setting.context.units)} of water at ${deepest.part.id}, a push of ${say(push[0])} to ${say(push[1])}`,
    ];
  });
  return cannotCheck(base, [[NO_SPEED, ...words].join("; ")]);
}

/** Push of the wave on the worst part, and the lift of its crest. */
export function waveChecks(
  setting: Setting,
  line: WetLine,
  loads: FloodLoads,
  sideOf: (part: WetPart, e_m: number) => number | null,
): CheckResult[] {
  const { flood } = loads;
  const base = floodBase(`wave.${flood.id}`, `Push of waves, ${flood.name}`, partIds(line));
  const ids = jointsById(line);
  const pushOf = (part: WetPart): Push => {
    const own = loads.wave(part.shape, zeroOf(part), partDepth(flood, part));
    const under = jointsUnder(part, ids).map((j) => loads.wave(j.shape, 0, jointDepth(flood, j)));
    return together([...(own ? [own] : []), ...under.flatMap((u) => (u ? [times(u, 0.5)] : []))]);
  };
  const worst = worstPart(line.parts, pushOf, sideOf);
  if (worst === "tables" || worst === "strength") return [cannotCheck(base, [MISSING_STRENGTH])];
  if (!worst) return [notApplicable(base, `no wave of ${flood.name} reaches a part`)];
  const working: Trace = [];
  const wave = waveAt(setting, partDepth(flood, worst.part), working)!;
  const own = waveOnShape(setting, worst.part.shape, wave, zeroOf(worst.part), working);
  const all = pushOf(worst.part).force_n;
  const F_s = newtons(Math.max(0, all - own.force_n) / stakeShare({}));
  const demand = pushOnPart(
    { F_p: newtons(own.force_n), k_h: stakeShare({}, working), F_s, F_w: newtons(0) },
    working,
  );
  const pushed = sideResult(setting, base, worst, demand, flood, ids, working);
  return [pushed, crestCheck(setting, line, flood)];
}

/** Open share from which a deck lets the crest through, by the rule. */
const OPEN_ENOUGH = 0.4;

/** The crest under the part that it lifts most, against the part's own weight: the stakes stand under the anchors. */
function crestCheck(setting: Setting, line: WetLine, flood: FloodCase): CheckResult {
  const base = {
    ...floodBase(`wave-lift.${flood.id}`, `Crest over the underside, ${flood.name}`, partIds(line)),
    rule: throughOrOver,
  };
  const lifted = line.parts.map((part) => ({ part, U: crestOnPart(setting, flood, part) }));
  const worst = lifted.reduce((a, b) => (b.U > a.U ? b : a), lifted[0]!);
  const { deck } = setting.input.plan.kit;
  if (deck.kind !== "boards" && deck.open_share >= OPEN_ENOUGH)
    return notApplicable(
      base,
      "40 % or more of the deck is open: it lets the crest through; tie every panel",
    );
  const wave = waveAt(setting, partDepth(flood, worst.part));
  if (!wave || worst.U <= 0) return notApplicable(base, "the crest stays under every deck");
  const working: Trace = [];
  const U = crestOnPart(setting, flood, worst.part, working);
  requiredHoldDown(
    { n_f: flotationSafety({}, working), B: U },
    working,
    "what the crest adds to the pull on the stakes",
  );
  const z_c = crestLevel({ d: wave.d, H: wave.H });
  const zero = zeroOf(worst.part);
  const say = (m: number): string => showQuantity(m, "m", setting.context.units);
  return resultOf(
    base,
    {
      unit: "m",
      demand: z_c,
      capacity: metres(zero),
      governs: `${flood.name}, ${worst.part.part.id}`,
      working,
    },
    {
      carries: `The crest lifts ${worst.part.part.id} with ${showQuantity(U, "N", setting.context.units)}; the anchors are held against it.`,
      change: `Would pass with its underside ${say(z_c - zero)} higher, or with a deck of which 40 % or more is open and every panel tied.`,
    },
  );
}
