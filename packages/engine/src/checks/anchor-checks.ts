import { combinedUse, lateral, lateralUse, pullUse, swayStrength, type StakeSet } from "../anchors/index.ts";
import { flotationSafety } from "../flood/index.ts";
import type { Trace } from "../formula/index.ts";
import { hasBase, type SupportKind } from "../kit/index.ts";
import { metres, millimetres, newtons, qty, showQuantity, type Qty } from "../units/index.ts";
import {
  jointDemand,
  kindAt,
  kitStakes,
  recordDemand,
  stakeChoice,
  type JointDemand,
} from "./anchor-joint.ts";
import { pileDepthAt } from "./base-joints.ts";
import { ENGINEER } from "./cautions.ts";
import { jointDepth, type FloodLoads } from "./flood-demand.ts";
import { pilesTogether } from "./flood-formulas.ts";
import type { Shapes } from "./flood-shapes.ts";
import type { WetJoint } from "./flood-loads.ts";
import { MISSING_STRENGTH, recordStrength, type GroundStrength } from "./ground-strength.ts";
import { cannotCheck, notApplicable, resultOf } from "./result.ts";
import { pileStrength } from "./screw-pile.ts";
import { groupBy, type Setting } from "./setting.ts";
import { proposeStakes, sayStakes, stakeShelf, type StakeShelf } from "./stake-proposal.ts";
import type { Backwards, CheckBase, CheckResult } from "./types.ts";
import { PARTED, STATE_WORDS } from "./flood-words.ts";

/** What holds one group of joints, for a page to list. */
export interface AnchorFigure {
  readonly joint: string;
  readonly pull_n: number;
  readonly push_n: number;
  readonly utilisation: number;
  readonly stakes: string;
}

interface Judged {
  readonly demand: JointDemand;
  readonly loads: FloodLoads;
  readonly use: number;
}

export interface AnchorSetting {
  readonly setting: Setting;
  readonly shapes: Shapes;
  readonly shelf: StakeShelf;
  readonly speed: Qty<"m/s">;
}

/** Utilisation of a joint that nothing holds. */
const UNHELD = 1e9;

const baseOf = (group: readonly WetJoint[]): CheckBase => {
  const ids = group.map((j) => j.met.joint.id);
  const name = ids.length === 1 ? `joint ${ids[0]}` : `joint ${ids[0]} and ${ids.length - 1} alike`;
  return {
    id: `anchor.${ids[0]}`,
    kind: "anchor",
    title: `Anchors pulled up and pushed sideways, ${name}`,
    parts: ids,
    rule: combinedUse.spec.source,
    caution: `${PARTED} Scour round the stakes, floating ice and stakes nearer than three widths are not covered. Prove it by pulling a stake.`,
  };
};

/** Joints with the same support, ground and parts share a result: that of the worst of them. */
const keyOf = ({ met, parts }: WetJoint): string =>
  [
    met.joint.support,
    met.strength?.su,
    met.strength?.how,
    ...parts.map((p) => (p.part.kind === "module" ? `m${p.part.length_m}` : "platform")).sort(),
  ].join("|");

/** Pull and push together on the anchors of every joint, over all levels. */
export function anchorChecks(
  setting: Setting,
  shapes: Shapes,
  joints: readonly WetJoint[],
  all: readonly FloodLoads[],
  speed: Qty<"m/s">,
): { readonly checks: readonly CheckResult[]; readonly figures: readonly AnchorFigure[] } {
  const own = { setting, shapes, shelf: stakeShelf(setting), speed };
  const done = [...groupBy(joints, keyOf).values()].map((group) => checkGroup(own, group, all));
  return { checks: done.map((d) => d.check), figures: done.flatMap((d) => d.figure ?? []) };
}

interface Done {
  readonly check: CheckResult;
  readonly figure: AnchorFigure | null;
}

function checkGroup(own: AnchorSetting, group: readonly WetJoint[], all: readonly FloodLoads[]): Done {
  const base = baseOf(group);
  const { setting } = own;
  const only = (check: CheckResult): Done => ({ check, figure: null });
  const wet = group.flatMap((joint) =>
    all.filter((l) => jointDepth(l.flood, joint) > 0).map((loads) => ({ joint, loads })),
  );
  if (wet.length === 0) return only(notApplicable(base, "no level reaches the ground there"));
  const kind = kindAt(setting, group[0]!);
  const strength = group[0]!.met.strength;
  const demands = wet.map(({ joint, loads }) => ({
    loads,
    demand: jointDemand(setting, loads, joint, own.speed),
  }));
  if (demands.some((d) => d.demand === null))
    return only(
      cannotCheck(base, ["the drag of wrack in water this fast and shallow: a Froude number of 1 or more"]),
    );
  if (!strength) return only(cannotCheck(base, [MISSING_STRENGTH]));
  const judged = demands.map(({ demand, loads }) => ({
    loads,
    demand: demand!,
    use: useOf(own, demand!, kind, strength) ?? UNHELD,
  }));
  const heavy = (j: Judged): number => j.demand.pull_n + j.demand.push.push.force_n;
  const worst = judged.reduce((a, b) => (b.use > a.use || (b.use === a.use && heavy(b) > heavy(a)) ? b : a));
  return conclude(own, base, worst, kind, strength);
}

/** Utilisation of what the kit has at a joint; null when nothing of it holds. */
function useOf(
  own: AnchorSetting,
  demand: JointDemand,
  kind: SupportKind,
  strength: GroundStrength,
): number | null {
  if (demand.pull_n <= 0 && demand.push.push.force_n <= 0) return 0;
  if (hasBase(kind) && kind.piles) return pilesUse(own, demand, kind, strength);
  return stakesOf(own, demand, kind, strength)?.combined ?? null;
}

function stakesOf(
  { setting }: AnchorSetting,
  demand: JointDemand,
  { anchor }: SupportKind,
  strength: GroundStrength,
  trace?: Trace,
): StakeSet | null {
  const choice = anchor && stakeChoice(setting, anchor.size, []);
  return anchor && choice ? kitStakes(setting, demand, anchor, choice, strength, trace) : null;
}

/** Screw piles: their helices pulled, their shafts pushed as stakes are. */
function pilesUse(
  { setting }: AnchorSetting,
  { joint, pull_n, push }: JointDemand,
  kind: SupportKind,
  { su }: GroundStrength,
  trace?: Trace,
): number {
  const piles = kind.piles!;
  const depth = pileDepthAt(setting, joint.met.joint, kind);
  const n = qty(piles.count, "1");
  const n_f = flotationSafety({}, trace);
  const R_s = pileStrength(piles, depth, su, trace);
  const u_p = pullUse({ n_p: n_f, U: newtons(pull_n / n_f), n, R_s }, trace);
  const side = lateral(
    {
      b: millimetres(piles.shaft_mm),
      L: metres(depth),
      e: metres(push.push.acts_at_m),
      su: swayStrength({ su }, trace),
      head: "free",
      wood: null,
    },
    trace,
  );
  const safety = qty(setting.input.plan.ground.safety, "1");
  const H = newtons(push.push.force_n);
  const u_h = lateralUse({ n_h: safety, H, n, H_u: newtons(side.ground_n) }, trace);
  return pilesTogether({ u_p, u_h }, trace);
}

function conclude(
  own: AnchorSetting,
  base: CheckBase,
  worst: Judged,
  kind: SupportKind,
  strength: GroundStrength,
): Done {
  const { demand } = worst;
  const { setting } = own;
  const working: Trace = [];
  recordDemand(setting, demand, working);
  recordStrength(strength, working);
  const { units } = setting.context;
  const say = (n: number): string => showQuantity(n, "N", units);
  const [pull_n, push_n] = [demand.pull_n, demand.push.push.force_n];
  const words = kind.anchor
    ? `${kind.anchor.count} ${kind.anchor.count === 1 ? "stake" : "stakes"} ${kind.anchor.size}, ${showQuantity(kind.anchor.embedment_mm / 1000, "m", units)} in the ground, ${STATE_WORDS[setting.input.plan.proof.flood.stakes]}`
    : kind.piles
      ? `${kind.piles.count} screw piles`
      : "no stakes";
  const governs = `${demand.flood.name}, joint ${demand.joint.met.joint.id}`;
  const asked = `At joint ${demand.joint.met.joint.id} the anchors must hold ${say(pull_n)} up, the ratio in it, and ${say(push_n)} sideways.`;
  if (kind.piles) pilesUse(own, demand, kind, strength, working);
  else stakesOf(own, demand, kind, strength, working);
  const use = worst.use;
  const figure = { joint: demand.joint.met.joint.id, pull_n, push_n, utilisation: use, stakes: words };
  const verdict = {
    unit: "1",
    demand: qty(use >= UNHELD ? 1 : use, "1"),
    capacity: qty(use >= UNHELD ? 0 : 1, "1"),
    governs,
    working,
  } as const;
  return { check: resultOf(base, verdict, backwardsOf(own, worst, kind, strength, asked)), figure };
}

function backwardsOf(
  own: AnchorSetting,
  { demand, loads, use }: Judged,
  kind: SupportKind,
  strength: GroundStrength,
  asked: string,
): Backwards {
  const { setting, shapes, shelf, speed } = own;
  const say = (n: number): string => showQuantity(n, "N", setting.context.units);
  if (kind.piles)
    return {
      carries: `${asked} ${ENGINEER}`,
      change: use <= 1 ? null : "Needs more or longer screw piles, or stakes beside them.",
    };
  const count = kind.anchor?.count ?? 0;
  const test =
    count > 0 && demand.pull_n > 0
      ? ` Proof test: pull one stake straight up with ${say(demand.pull_n / count)}, a minute long; it must not move.`
      : "";
  if (use <= 1) return { carries: `${asked}${test}`, change: null };
  const sets = proposeStakes(setting, shapes, shelf, loads, demand, strength, speed);
  const change =
    sets.length > 0
      ? `Would pass with ${sets.map((s) => sayStakes(setting, s)).join(", or ")}.`
      : "No stakes that one drives by hand hold here: take it up before the flood, or use screw piles.";
  return { carries: `${asked}${test}`, change };
}
