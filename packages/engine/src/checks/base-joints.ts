import { pileDepth, supportStack, type SupportKind } from "../kit/index.ts";
import type { Joint } from "../layout/index.ts";
import type { LevelRole } from "../water/index.ts";
import type { BearingJoint } from "./bearing.ts";
import type { BearingDemand, LiveMemory } from "./bearing-check.ts";
import { checkFloats, type LowWater } from "./float.ts";
import type { MetJoint } from "./plan-joints.ts";
import { checkScrewPiles } from "./screw-pile.ts";
import { groupBy, type Setting } from "./setting.ts";
import type { CheckResult } from "./types.ts";

interface Loaded {
  readonly met: MetJoint;
  readonly joint: BearingJoint;
}

/** Underside of the timber on a joint's piles or floats, over the ground [mm]. */
const headOf = (setting: Setting, joint: Joint, kind: SupportKind): number =>
  supportStack(kind, joint.support_height_m * 1000, setting.context.tables.sizes).head_mm;

/** Depth of the lowest helix under a joint [m]; 0 for a kind without piles. */
export const pileDepthAt = (setting: Setting, joint: Joint, kind: SupportKind): number =>
  kind.piles ? pileDepth(kind.piles, headOf(setting, joint, kind)) / 1000 : 0;

/** Joints on screw piles and on floats; joints with the very same inputs share their results. */
export function baseJointChecks(
  setting: Setting,
  loaded: readonly Loaded[],
  demand: BearingDemand,
  memory: LiveMemory,
): CheckResult[] {
  return [...pileChecks(setting, loaded, demand, memory), ...floatChecks(setting, loaded, demand, memory)];
}

const shared = (group: readonly Loaded[]) => {
  const parts = group.map((g) => g.met.joint.id);
  const name = parts.length === 1 ? `joint ${parts[0]}` : `joint ${parts[0]} and ${parts.length - 1} alike`;
  return { id: parts[0]!, name, parts };
};

const loadKey = ({ joint }: Loaded): string =>
  [joint.left_m, joint.right_m, joint.dead_kg, joint.support.id].join("|");

function pileChecks(
  setting: Setting,
  loaded: readonly Loaded[],
  demand: BearingDemand,
  memory: LiveMemory,
): CheckResult[] {
  const onPiles = loaded.flatMap((l) => {
    const { piles } = l.joint.support;
    if (!piles) return [];
    return [{ ...l, piles, depth_m: pileDepthAt(setting, l.met.joint, l.joint.support) }];
  });
  const groups = groupBy(onPiles, (l) =>
    [loadKey(l), l.depth_m.toFixed(4), l.met.strength?.su, l.met.strength?.how].join("|"),
  );
  return [...groups.values()].flatMap((group) => {
    const { met, joint, piles, depth_m } = group[0]!;
    return checkScrewPiles(
      { ...joint, piles, depth_m },
      met.strength,
      demand,
      shared(group),
      setting.context,
      memory,
    );
  });
}

const LOW_ROLES: readonly LevelRole[] = ["mlw", "mllw", "lowest-predicted", "lowest-recorded", "groundwater"];

/** The lowest low water that the site names on its own datum. */
function lowWater({ input }: Setting): LowWater | { readonly missing: string } {
  const { site, plan } = input;
  const lows = [...site.levels, ...plan.levels].filter(
    (l) => LOW_ROLES.includes(l.role) && l.datum === site.datum,
  );
  const low = lows.reduce<LowWater | null>((a, b) => (a === null || b.z_m < a.z_m ? b : a), null);
  return low ?? { missing: `a low water level on the site's datum "${site.datum}"` };
}

function floatChecks(
  setting: Setting,
  loaded: readonly Loaded[],
  demand: BearingDemand,
  memory: LiveMemory,
): CheckResult[] {
  const { geometry, input } = setting;
  const afloat = loaded.flatMap((l) => {
    const { floats, anchor } = l.joint.support;
    if (!floats) return [];
    const { joint } = l.met;
    const float = {
      ...l.joint,
      floats,
      timber_m: joint.support_height_m - headOf(setting, joint, l.joint.support) / 1000,
      module_m: geometry.module_depth_m,
      ground_m: joint.ground_m,
      height_m: joint.support_height_m,
      water_kg_m3: input.plan.water_kg_m3,
    };
    return [{ ...l, float, anchored: anchor !== null }];
  });
  const low = lowWater(setting);
  const groups = groupBy(afloat, (l) =>
    [loadKey(l), l.float.ground_m.toFixed(3), l.float.height_m.toFixed(4)].join("|"),
  );
  return [...groups.values()].flatMap((group) => {
    const { float, anchored } = group[0]!;
    return checkFloats(float, low, demand, { ...shared(group), anchored }, setting.context, memory);
  });
}
