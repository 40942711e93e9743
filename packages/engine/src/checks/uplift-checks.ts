import { supportKind } from "../kit/index.ts";
import type { Part } from "../layout/index.ts";
import type { PartMass } from "./input.ts";
import { jointsOf, type MetJoint } from "./plan-joints.ts";
import { cannotCheck } from "./result.ts";
import { groupBy, type Setting } from "./setting.ts";
import type { CheckResult } from "./types.ts";
import { checkUplift, stakeShare, type AfloatPart, type Hold } from "./uplift.ts";
import { flotationSafety } from "../flood/index.ts";

interface Flood {
  readonly name: string;
  readonly z_m: number;
}

/** The flood level of the plan: none, a level on the site's datum, or what is wrong with it. */
function floodOf({ input }: Setting): Flood | null | { readonly missing: string } {
  const { plan, site } = input;
  if (plan.flood_level === null) return null;
  const level = [...site.levels, ...plan.levels].find((l) => l.id === plan.flood_level);
  if (!level) return { missing: `a water level "${plan.flood_level}" in the plan's levels` };
  if (level.datum !== site.datum)
    return { missing: `the flood level on the site's datum "${site.datum}": it stands on "${level.datum}"` };
  return { name: level.name, z_m: level.z_m };
}

/** Stakes of one support that count for one of the parts it carries. */
function holdAt(setting: Setting, met: MetJoint): Hold | null {
  const { anchor } = supportKind(setting.input.plan.kit, met.joint.support);
  if (!anchor) return null;
  return {
    stakes: anchor.count * stakeShare({}),
    size: anchor.size,
    embedment_m: anchor.embedment_mm / 1000,
    strength: met.strength,
  };
}

/** The part and its share of the supports under it. */
function massAfloat(setting: Setting, part: Part, joints: readonly MetJoint[]): PartMass {
  const { masses } = setting.input;
  const own = part.kind === "module" ? masses.module(part.length_m) : masses.platform;
  let { timber_m3, other_kg } = own;
  for (const { joint } of joints) {
    const support = masses.support(joint.support, joint.support_height_m);
    timber_m3 += support.timber_m3 * stakeShare({});
    other_kg += support.other_kg * stakeShare({});
  }
  return { timber_m3, other_kg };
}

const undersideOf = ({ joint }: MetJoint): number => joint.ground_m + joint.support_height_m;

/** Every module and platform under the flood; parts with the very same inputs share a result. */
export function upliftChecks(setting: Setting, joints: readonly MetJoint[]): CheckResult[] {
  const flood = floodOf(setting);
  const { parts } = setting.input.layout;
  if (flood && "missing" in flood) return [unknownFlood(parts, flood.missing)];
  const at = new Map(joints.map((met) => [met.joint.id, met]));
  const afloat = parts.map((part) => {
    const met = jointsOf(part).flatMap((id) => at.get(id) ?? []);
    const depth = flood ? flood.z_m - Math.min(...met.map(undersideOf)) : null;
    return { part, afloat: partAfloat(setting, part, met, depth) };
  });
  const groups = groupBy(afloat, (a) => keyOf(a.part, a.afloat));
  return [...groups.values()].map((group) => {
    const depths = group.map((g) => g.afloat.depth_m ?? -Infinity);
    const deepest = group[depths.indexOf(Math.max(...depths))]!;
    const ids = group.map((g) => g.part.id);
    const name = ids.length === 1 ? ids[0]! : `${ids[0]} and ${ids.length - 1} alike`;
    const label = { id: ids[0]!, name, parts: ids, level: flood?.name ?? "" };
    return checkUplift(deepest.afloat, label, setting.context);
  });
}

const partAfloat = (
  setting: Setting,
  part: Part,
  met: readonly MetJoint[],
  depth_m: number | null,
): AfloatPart => ({
  gravity: setting.gravity,
  mass: massAfloat(setting, part, met),
  holds: met.flatMap((m) => holdAt(setting, m) ?? []),
  water_kg_m3: setting.input.plan.water_kg_m3,
  depth_m,
});

/** Above the water nothing but the kind of part matters; under it, mass and hold do. */
function keyOf(part: Part, a: AfloatPart): string {
  const kind = part.kind === "module" ? `module ${part.length_m}` : "platform";
  if (a.depth_m === null || a.depth_m <= 0) return `${kind}|above`;
  const holds = a.holds
    .map((h) => `${h.stakes},${h.size},${h.embedment_m},${h.strength?.su},${h.strength?.how}`)
    .sort();
  return [kind, a.mass.timber_m3.toFixed(6), a.mass.other_kg.toFixed(3), ...holds].join("|");
}

const unknownFlood = (parts: readonly Part[], missing: string): CheckResult =>
  cannotCheck(
    {
      id: "uplift.all",
      kind: "uplift",
      title: "Staying put under water",
      parts: parts.map((p) => p.id),
      rule: flotationSafety.spec.source,
      caution: "Without a flood level on the site's datum nothing can be said.",
    },
    [missing],
  );
