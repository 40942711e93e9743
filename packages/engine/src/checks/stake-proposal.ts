import { areaOf, leastEmbedment, stakeSet, type StakeChoice, type StakeSet } from "../anchors/index.ts";
import type { SupportKind } from "../kit/index.ts";
import { flotationSafety, selfWeightFactor } from "../flood/index.ts";
import { densityAtMoisture } from "../structure/index.ts";
import { M_PER_IN, STANDARD_GRAVITY, showQuantity, type Qty } from "../units/index.ts";
import {
  jointDemand,
  kindAt,
  kitStakes,
  stakeChoice,
  stakeDemand,
  type JointDemand,
} from "./anchor-joint.ts";
import type { FloodLoads } from "./flood-demand.ts";
import type { Shapes } from "./flood-shapes.ts";
import type { GroundStrength } from "./ground-strength.ts";
import { dryMoisture } from "./rules.ts";
import type { Setting } from "./setting.ts";

type Anchor = NonNullable<SupportKind["anchor"]>;

/** Steps of length that stakes are cut to [m], from the shortest asked about to the longest. */
const CUT_M = { us: 12 * M_PER_IN, metric: 0.3 } as const;
const [SHORTEST_M, LONGEST_M] = [0.9, 3.1];
/** One on each side at the least: a single stake lets the other side rise. */
const LEAST_STAKES = 2;
const MOST_STAKES = 8;
/** Thickness and width of timber that one drives by hand [in]. */
const DRIVEN_IN = { thick: 1.4, wide: 3.6 } as const;
const MOST_PROPOSED = 3;

/** Sizes of the tables that are driven by hand in the kit's timber, the kit's own first. */
function sizesToTry(setting: Setting, anchor: Anchor | null): string[] {
  const driven = setting.context.tables.sizes
    .filter((s) => s.thickness_in >= DRIVEN_IN.thick && s.width_in <= DRIVEN_IN.wide)
    .map((s) => s.id);
  return [...new Set([...(anchor ? [anchor.size] : []), ...driven])];
}

function lengthsToTry(setting: Setting, anchor: Anchor | null): number[] {
  const step = CUT_M[setting.context.units];
  const cut = Array.from({ length: Math.ceil(LONGEST_M / step) }, (_, i) => (i + 1) * step);
  const own = anchor ? [anchor.length_mm / 1000] : [];
  return [...new Set([...own, ...cut.filter((l) => l >= SHORTEST_M && l <= LONGEST_M)])];
}

/** Choices of stake for a support, kept for all joints of a plan. */
export interface StakeShelf {
  readonly choices: (kind: SupportKind) => readonly StakeChoice[];
}

export function stakeShelf(setting: Setting): StakeShelf {
  const known = new Map<string, readonly StakeChoice[]>();
  return {
    choices: ({ id, anchor }) => {
      const found =
        known.get(id) ??
        sizesToTry(setting, anchor).flatMap((size) =>
          lengthsToTry(setting, anchor).flatMap((l) => stakeChoice(setting, size, [l]) ?? []),
        );
      known.set(id, found);
      return found;
    },
  };
}

export interface ProposedStakes {
  readonly anchor: Anchor;
  readonly set: StakeSet;
}

/** Length of a stake over the ground: as the kit has it, or up to the sill. */
const aboveOf = (kind: SupportKind, height_m: number): number =>
  kind.anchor ? (kind.anchor.length_mm - kind.anchor.embedment_mm) / 1000 : height_m;

/** What one more stake adds to the pull asked for: it floats as well, and its weight counts [N]. */
function ownPull(setting: Setting, choice: StakeChoice, length_m: number): number {
  const V = areaOf(choice.section) * length_m;
  const rho = densityAtMoisture({ G: setting.gravity, M: dryMoisture({}) });
  const lift = flotationSafety({}) * setting.input.plan.water_kg_m3;
  return Math.max(0, (lift - selfWeightFactor({}) * rho) * V * STANDARD_GRAVITY);
}

/**
 * Sets of stakes that hold a joint, least timber first: found with what they add themselves, then worked anew as a
 * support of the kit, so that what is proposed holds when it is taken over. Empty when none does.
 */
export function proposeStakes(
  setting: Setting,
  shapes: Shapes,
  shelf: StakeShelf,
  loads: FloodLoads,
  demand: JointDemand,
  strength: GroundStrength,
  speed: Qty<"m/s">,
): readonly ProposedStakes[] {
  const kind = kindAt(setting, demand.joint);
  const height = demand.joint.met.joint.support_height_m;
  const above = aboveOf(kind, height);
  const found = shelf
    .choices(kind)
    .flatMap((choice) => fewestOf(setting, choice, kind, demand, above, strength));
  const order = found.sort((a, b) => a.set.timber_m3 - b.set.timber_m3 || a.set.count - b.set.count);
  const lean = order.filter((s, i) => !order.slice(0, i).some((o) => o.set.count <= s.set.count));
  const proven: ProposedStakes[] = [];
  for (const { anchor, choice } of lean) {
    const anew = proven.length < MOST_PROPOSED ? workedAnew() : null;
    if (anew && proven.every((p) => p.anchor.count > anew.anchor.count)) proven.push(anew);

    function workedAnew(): ProposedStakes | null {
      for (let count = anchor.count; count <= MOST_STAKES; count++) {
        const own = { ...anchor, count };
        const set = asKit(setting, shapes, loads, demand, { ...kind, anchor: own }, choice, strength, speed);
        if (set && set.combined <= 1) return { anchor: own, set };
      }
      return null;
    }
  }
  return proven;
}

/** Fewest stakes of one size and length that hold, with what they add to the pull themselves. */
function fewestOf(
  setting: Setting,
  choice: StakeChoice,
  kind: SupportKind,
  demand: JointDemand,
  above: number,
  strength: GroundStrength,
): { readonly anchor: Anchor; readonly set: StakeSet; readonly choice: StakeChoice }[] {
  const length = choice.lengths_m[0]!;
  const each = ownPull(setting, choice, length);
  const before = kind.anchor ? ownOld(setting, kind.anchor) : 0;
  const setOf = (count: number): StakeSet => {
    const pull_n = Math.max(0, demand.pull_n - before + count * each);
    return stakeSet(choice, length, count, stakeDemand(setting, { ...demand, pull_n }, above, strength));
  };
  if (length - above <= leastEmbedment(choice.section)) return [];
  const most = setOf(MOST_STAKES);
  if (most.combined > 1) return [];
  const least = Math.max(LEAST_STAKES, Math.ceil(leastCount(most) - 1e-9));
  for (let count = least; count <= MOST_STAKES; count++) {
    const set = setOf(count);
    if (set.combined <= 1) return [{ choice, set, anchor: anchorOf(choice, length, above, count) }];
  }
  return [];
}

/** No fewer than this hold sideways: twice the stakes at best halve what each takes of the side force. */
const leastCount = ({ count, lateral, bending }: StakeSet): number => count * Math.max(lateral, bending);

const anchorOf = (choice: StakeChoice, length: number, above: number, count: number): Anchor => ({
  kind: "stake",
  size: choice.name,
  length_mm: Math.round(length * 1e4) / 10,
  embedment_mm: Math.round((length - above) * 1e4) / 10,
  count,
});

function ownOld(setting: Setting, anchor: Anchor): number {
  const choice = stakeChoice(setting, anchor.size, []);
  return choice ? anchor.count * ownPull(setting, choice, anchor.length_mm / 1000) : 0;
}

/** The stakes as those of the kit: their timber floats and stands in the flow. */
function asKit(
  setting: Setting,
  shapes: Shapes,
  loads: FloodLoads,
  demand: JointDemand,
  kind: SupportKind,
  choice: StakeChoice,
  strength: GroundStrength,
  speed: Qty<"m/s">,
): StakeSet | null {
  const height = demand.joint.met.joint.support_height_m;
  const { mass } = demand.joint.shape;
  const old = kindAt(setting, demand.joint).anchor;
  const volume = (a: Anchor | null): number => {
    const c = a && stakeChoice(setting, a.size, []);
    return a && c ? (a.count * areaOf(c.section) * a.length_mm) / 1000 : 0;
  };
  const timber_m3 = Math.max(0, mass.timber_m3 - volume(old)) + volume(kind.anchor);
  const own = shapes.asked(kind, height, { ...mass, timber_m3 });
  const anew = jointDemand(setting, loads, demand.joint, speed, own);
  return anew && kitStakes(setting, anew, kind.anchor!, choice, strength);
}

/** A proposal as one says it to who drives the stakes. */
export const sayStakes = (setting: Setting, { anchor }: ProposedStakes): string => {
  const say = (mm: number): string => showQuantity(mm / 1000, "m", setting.context.units);
  return `${anchor.count} stakes ${anchor.size} of ${say(anchor.length_mm)}, ${say(anchor.embedment_mm)} in the ground`;
};
