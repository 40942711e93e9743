import { frostOnStake, girthOf, type StakeSection } from "../anchors/index.ts";
import { frostHeave, iceLift, iceVerdict, isDay, iceStress, type Standing } from "../flood/index.ts";
import { recordValue, type Trace } from "../formula/index.ts";
import { supportKind, type SupportKind } from "../kit/index.ts";
import { inches, metres, millimetres, newtons, qty, showQuantity } from "../units/index.ts";
import { iceOnSupport, roundOfGirth } from "./cold-formulas.ts";
import { MISSING_STRENGTH, recordStrength, type GroundStrength } from "./ground-strength.ts";
import type { MetJoint } from "./plan-joints.ts";
import { cannotCheck, notApplicable, resultOf } from "./result.ts";
import { groupBy, type Setting } from "./setting.ts";
import type { CheckBase, CheckResult } from "./types.ts";

interface Post {
  readonly name: string;
  readonly count: number;
  readonly section: StakeSection;
  /** In the ground [m]; 0 = stands on it. */
  readonly embedment_m: number;
  readonly material: "wood" | "steel";
}

/** What of a support stands through ice or in frost: stakes, uprights, screw piles. */
function postsOf(setting: Setting, kind: SupportKind): Post[] {
  const sized = (size: string): StakeSection | null => {
    const row = setting.context.tables.sizes.find((s) => s.id === size);
    return row ? { shape: "rectangle", facing: inches(row.width_in), along: inches(row.thickness_in) } : null;
  };
  const { anchor, piles } = kind;
  const stake = anchor && sized(anchor.size);
  const uprights = kind.pieces
    .filter((p) => p.per_height > 0)
    .flatMap((p): Post[] => {
      const section = sized(p.size);
      return section ? [{ name: p.name, count: p.count, section, embedment_m: 0, material: "wood" }] : [];
    });
  return [
    ...(anchor && stake
      ? [
          {
            name: "stake",
            count: anchor.count,
            section: stake,
            embedment_m: anchor.embedment_mm / 1000,
            material: "wood" as const,
          },
        ]
      : []),
    ...(piles
      ? [
          {
            name: "screw pile",
            count: piles.count,
            section: { shape: "round" as const, diameter: millimetres(piles.shaft_mm) },
            embedment_m: piles.depth_mm / 1000,
            material: "steel" as const,
          },
        ]
      : []),
    ...uprights,
  ];
}

const RULE = iceStress.spec.source;
const base = (id: string, title: string, parts: readonly string[]): CheckBase => ({
  id: `cold.${id}`,
  kind: "cold",
  title,
  parts,
  rule: RULE,
  caution:
    "Ice that drifts and pushes, and ice on the deck, are not covered. What stands in ice is for the ice to move.",
});

function standingOf({ input }: Setting): Standing | null {
  const { laying, removal } = input.plan;
  if (!isDay(laying.from) || !isDay(removal.by) || removal.by < laying.from) return null;
  return { from: laying.from, to: removal.by };
}

/** Ice by the months told against the plan's days, and frost under every kind of support. */
export function coldChecks(setting: Setting, joints: readonly MetJoint[]): CheckResult[] {
  const groups = [...groupBy(joints, (j) => j.joint.support).values()];
  if (groups.length === 0) return [];
  return [iceCheck(setting, joints), ...frostChecks(setting, groups)];
}

function iceCheck(setting: Setting, joints: readonly MetJoint[]): CheckResult {
  const own = base(
    "ice",
    "Ice round posts and stakes",
    joints.map((j) => j.joint.id),
  );
  const { ice_months, ice_m } = setting.input.plan.proof.flood;
  const standing = standingOf(setting);
  if (ice_months?.length === 0) return notApplicable(own, "the plan tells of no month with ice");
  const verdict = iceVerdict(standing, ice_months, false);
  if (verdict.status === "clear") return notApplicable(own, verdict.words);
  const missing = [
    ...(standing ? [] : ["the days from which and to which it stands"]),
    ...(ice_months === null ? ["the months with ice at this site, or that there are none"] : []),
  ];
  if (missing.length > 0) return cannotCheck(own, missing);
  if (ice_m === null) return cannotCheck(own, [`the thickness of the ice: ${verdict.words}`]);
  return frozenIn(setting, own, joints, verdict.words);
}

/** It stands in the ice: fails, with the lift on the support that the ice grips most. */
function frozenIn(setting: Setting, own: CheckBase, joints: readonly MetJoint[], words: string): CheckResult {
  const { plan } = setting.input;
  const { ice_m, ice_months } = plan.proof.flood;
  const kinds = [...new Set(joints.map((j) => j.joint.support))].map((id) => supportKind(plan.kit, id));
  const posts = kinds.flatMap((kind) => postsOf(setting, kind).map((post) => ({ kind, post })));
  const out = iceVerdict(standingOf(setting), ice_months, true);
  const by =
    out.status === "lift-out" ? `Would pass when lifted out by ${out.by}.` : "Needs laying after the ice.";
  const liftOf = (post: Post, trace?: Trace): number => {
    const diameter = roundOfGirth({ P: girthOf(post.section, trace) }, trace);
    const rho_w = qty(plan.water_kg_m3, "kg/m3");
    const F = iceLift({ diameter, thickness: metres(ice_m!), area: null, rho_w }, trace);
    return iceOnSupport({ n: qty(post.count, "1"), F }, trace);
  };
  const worst = posts.toSorted((a, b) => liftOf(b.post) - liftOf(a.post))[0];
  if (!worst) return cannotCheck(own, [`what of the supports the ice grips: ${words}`]);
  const working: Trace = [];
  const demand = newtons(liftOf(worst.post, working));
  const each = showQuantity(demand / worst.post.count, "N", setting.context.units);
  return resultOf(
    own,
    { unit: "N", demand, capacity: newtons(0), governs: `${worst.kind.name}: ${words}`, working },
    {
      carries: `${words} Rising ice of ${showQuantity(ice_m!, "m", setting.context.units)} lifts each ${worst.post.name} with ${each}; no hold is counted against it.`,
      change: by,
    },
  );
}

function frostChecks(setting: Setting, groups: readonly (readonly MetJoint[])[]): CheckResult[] {
  const { frost_m, ice_months } = setting.input.plan.proof.flood;
  const ids = groups.flat().map((j) => j.joint.id);
  const all = { ...base("frost", "Frost under posts and stakes", ids), rule: frostHeave.spec.source };
  if (frost_m === 0) return [notApplicable(all, "the plan tells that the ground does not freeze")];
  if (frost_m === null && ice_months?.length === 0)
    return [notApplicable(all, "the plan tells of no month with ice, and of no frost")];
  if (ice_months && iceVerdict(standingOf(setting), ice_months, false).status === "clear")
    return [notApplicable(all, "it stands in no month with ice")];
  if (frost_m === null)
    return [cannotCheck(all, ["the depth that the frost reaches at this site, or that there is none"])];
  return groups.map((group) => frostCheck(setting, group, frost_m));
}

function weakest(joints: readonly MetJoint[]): GroundStrength | null {
  const known = joints.flatMap((j) => j.strength ?? []);
  if (known.length < joints.length) return null;
  return known.reduce((a, b) => (b.su < a.su ? b : a));
}

function frostCheck(setting: Setting, group: readonly MetJoint[], frost_m: number): CheckResult {
  const kind = supportKind(setting.input.plan.kit, group[0]!.joint.support);
  const own = {
    ...base(
      `frost.${kind.id}`,
      `Frost, ${kind.name}`,
      group.map((j) => j.joint.id),
    ),
    rule: frostHeave.spec.source,
  };
  const post = postsOf(setting, kind).find((p) => p.embedment_m > 0);
  if (!post) return notApplicable(own, "it stands on the ground, and rises and falls with it");
  const strength = weakest(group);
  if (!strength) return cannotCheck(own, [MISSING_STRENGTH]);
  const working: Trace = [];
  recordStrength(strength, working);
  recordValue(working, {
    id: "cold.frost-depth",
    title: "Depth that the frost reaches",
    symbol: "z_f",
    value: frost_m,
    unit: "m",
    source: { id: "plan-frost", title: "Plan", status: "project" },
    how: "as told",
  });
  const at = (embedment_m: number, trace?: Trace): ReturnType<typeof frostOnStake> =>
    frostOnStake(
      {
        section: post.section,
        embedment: metres(embedment_m),
        frost: metres(frost_m),
        su: strength.su,
        load: newtons(0),
        material: post.material,
      },
      trace,
    );
  const found = at(post.embedment_m, working);
  const deeper = Array.from({ length: 30 }, (_, i) => (i + 1) * 0.1).find(
    (by) => !at(post.embedment_m + by).heaves,
  );
  const say = (m: number): string => showQuantity(m, "m", setting.context.units);
  return resultOf(
    own,
    {
      unit: "N",
      demand: newtons(found.heave_n),
      capacity: newtons(found.hold_n),
      governs: `${kind.name}, frost ${say(frost_m)} deep`,
      working,
    },
    {
      carries: `Each ${post.name}: ${found.words}`,
      change: !found.heaves
        ? null
        : deeper
          ? `Would pass with each ${post.name} ${say(deeper)} deeper, or taken out before winter.`
          : "No depth that one drives by hand holds: take it out before winter.",
    },
  );
}
