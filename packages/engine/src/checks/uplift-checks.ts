import { caseOf, type FloodCase } from "./flood-cases.ts";
import { supportKind } from "../kit/index.ts";
import type { Part } from "../layout/index.ts";
import type { PartMass } from "./input.ts";
import { jointsOf, type MetJoint } from "./plan-joints.ts";
import { pileDepthAt } from "./base-joints.ts";
import { cannotCheck, notApplicable } from "./result.ts";
import { groupBy, type Setting } from "./setting.ts";
import type { CheckBase, CheckResult } from "./types.ts";
import { checkUplift, stakeShare, type AfloatPart, type Hold } from "./uplift.ts";
import { flotationSafety } from "../flood/index.ts";

/** The flood level of the plan: none, a level on the site's datum, or what is wrong with it. */
export function floodOf(setting: Setting): FloodCase | null | { readonly missing: string } {
  const { flood_level } = setting.input.plan;
  return flood_level === null ? null : caseOf(setting, flood_level);
}

/** Stakes and screw piles of one support that count for one of the parts it carries. */
export function holdAt(setting: Setting, met: MetJoint): Hold | null {
  const kind = supportKind(setting.input.plan.kit, met.joint.support);
  const { anchor, piles } = kind;
  if (!anchor && !piles) return null;
  const half = stakeShare({});
  return {
    stakes: anchor ? anchor.count * half : 0,
    size: anchor?.size ?? "",
    embedment_m: anchor ? anchor.embedment_mm / 1000 : 0,
    strength: met.strength,
    state: setting.input.plan.proof.flood.stakes,
    ...(piles
      ? { pile: { count: piles.count * half, piles, depth_m: pileDepthAt(setting, met.joint, kind) } }
      : {}),
  };
}

/** The part and its share of the supports under it. */
function massAfloat(setting: Setting, part: Part, joints: readonly MetJoint[]): PartMass {
  const { masses } = setting.input;
  const own = part.kind === "module" ? masses.module(part.length_m) : masses.platform;
  const share = stakeShare({});
  let { timber_m3, other_kg, bulk_kg = 0, bulk_m3 = 0 } = own;
  for (const { joint, support: kind } of joints) {
    const support = masses.support(kind, joint.support_height_m);
    timber_m3 += support.timber_m3 * share;
    other_kg += support.other_kg * share;
    bulk_kg += (support.bulk_kg ?? 0) * share;
    bulk_m3 += (support.bulk_m3 ?? 0) * share;
  }
  return { timber_m3, other_kg, bulk_kg, bulk_m3 };
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
    return {
      part,
      swims: met.map((m) => floatsAt(setting, m)),
      afloat: partAfloat(setting, part, met, depth),
    };
  });
  const swimming = flood ? afloat.filter((a) => a.swims.includes(true)) : [];
  const groups = groupBy(
    afloat.filter((a) => !swimming.includes(a)),
    (a) => keyOf(a.part, a.afloat),
  );
  const held = [...groups.values()].map((group) => {
    const depths = group.map((g) => g.afloat.depth_m ?? -Infinity);
    const deepest = group[depths.indexOf(Math.max(...depths))]!;
    const ids = group.map((g) => g.part.id);
    const name = ids.length === 1 ? ids[0]! : `${ids[0]} and ${ids.length - 1} alike`;
    const label = { id: ids[0]!, name, parts: ids, level: flood?.name ?? "" };
    return checkUplift(deepest.afloat, label, setting.context);
  });
  return [...held, ...swimmingChecks(swimming)];
}

const floatsAt = (setting: Setting, { joint }: MetJoint): boolean =>
  supportKind(setting.input.plan.kit, joint.support).form === "float";

/** Parts on floats rise with a flood; one end held down and one afloat is more than these checks know. */
function swimmingChecks(
  parts: readonly { readonly part: Part; readonly swims: readonly boolean[] }[],
): CheckResult[] {
  const ids = (all: boolean): string[] =>
    parts.filter((p) => p.swims.every(Boolean) === all).map((p) => p.part.id);
  const base = (name: string, which: readonly string[]): CheckBase => ({
    id: `uplift.${name}`,
    kind: "uplift",
    title: `Staying put under water, parts on floats`,
    parts: which,
    rule: flotationSafety.spec.source,
    caution:
      "Floats rise with the water and pull on their anchors, and the walkway bends where it meets what stays.",
  });
  const [wholly, partly] = [ids(true), ids(false)];
  return [
    ...(wholly.length > 0
      ? [notApplicable(base("afloat", wholly), "it rises and falls with the water on its floats")]
      : []),
    ...(partly.length > 0
      ? [
          cannotCheck(base("half-afloat", partly), [
            "how far a part may tilt between an end that floats and an end that stays: give it a hinge, and ask an engineer",
          ]),
        ]
      : []),
  ];
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
    .map((h) =>
      [
        h.stakes,
        h.size,
        h.embedment_m,
        h.strength?.su,
        h.strength?.how,
        h.pile?.count,
        h.pile?.depth_m,
      ].join(),
    )
    .sort();
  return [kind, a.mass.timber_m3.toFixed(6), a.mass.other_kg.toFixed(3), a.mass.bulk_m3, ...holds].join("|");
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
