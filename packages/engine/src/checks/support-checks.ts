import { stringerEdgeJoints } from "../layout/index.ts";
import { M_PER_IN } from "../units/index.ts";
import type { Frame } from "./frame.ts";
import { soakedMasses, spanOf, type MetJoint } from "./plan-joints.ts";
import { notApplicable } from "./result.ts";
import { groupBy, sizeOf, type Setting } from "./setting.ts";
import { baseFor } from "./support-base.ts";
import { beamMoments, type BeamPattern } from "./support-beam.ts";
import { checkPressed } from "./support-contact.ts";
import { sillPatterns, type EndingStringers } from "./support-loads.ts";
import { checkSupportBeam, type PatternEffect } from "./support-member.ts";
import { carrierChecks, postChecks } from "./support-rails.ts";
import { carriersOf, loadPath, type LoadPath } from "./support-path.ts";
import type { CheckResult } from "./types.ts";

/** Timber of every kind of support that the layout uses, each check at its worst joint. */
export function supportChecks(
  setting: Setting,
  joints: readonly MetJoint[],
  moduleFrame: Frame | null,
  platform: Frame | null,
): CheckResult[] {
  const edges = stringerEdgeJoints(setting.input.layout.parts);
  const mass = soakedMasses(setting);
  const groups = groupBy(joints, (met) => `${met.support.id}|${met.support.sill.length_mm}`);
  return [...groups.values()].flatMap((group) => {
    const alike = groupBy(group, (met) => jointKey(met, edges, mass));
    const results = [...alike.values()].flatMap(([met]) => {
      const ending = endingAt(met!, edges, mass, moduleFrame, platform);
      return ending.length > 0 ? jointChecks(setting, met!, ending) : [];
    });
    return worstOfEach(
      results,
      group.map((met) => met.joint.id),
    );
  });
}

const jointKey = (
  { joint, parts, support }: MetJoint,
  edges: ReadonlySet<string>,
  mass: (part: MetJoint["parts"][number]) => number,
): string =>
  [
    support.id,
    joint.support_height_m.toFixed(4),
    edges.has(joint.id),
    ...parts.map((p) => `${p.kind}|${spanOf(p).toFixed(4)}|${mass(p).toFixed(3)}`).sort(),
  ].join(";");

/** Of the results of one name the one that asks for most; what cannot be checked stands before all. */
function worstOfEach(results: readonly CheckResult[], parts: readonly string[]): CheckResult[] {
  const use = (r: CheckResult): number =>
    r.status === "cannot-check" ? Infinity : "utilisation" in r ? r.utilisation : -1;
  return [...groupBy(results, (r) => r.id).values()].map((same) => ({
    ...same.reduce((a, b) => (use(b) > use(a) ? b : a)),
    parts,
  }));
}

/** The frames that end on the joint's sill: modules with both spans, a platform by itself where its stringers end. */
function endingAt(
  { joint, parts, support }: MetJoint,
  edges: ReadonlySet<string>,
  mass: (part: MetJoint["parts"][number]) => number,
  moduleFrame: Frame | null,
  platform: Frame | null,
): EndingStringers[] {
  const modules = parts.filter((p) => p.kind === "module").sort((a, b) => spanOf(b) - spanOf(a));
  const platforms = edges.has(joint.id) ? parts.filter((p) => p.kind === "platform") : [];
  const half = (all: typeof parts): number => all.reduce((sum, p) => sum + mass(p) / 2, 0);
  const ending = (frame: Frame | null, on: typeof parts): EndingStringers[] =>
    frame && on.length > 0
      ? [
          {
            positions_m: frame.positions_m,
            clear_width_m: frame.clear_width_m,
            left_m: spanOf(on[0]!),
            right_m: on[1] ? spanOf(on[1]) : 0,
            sill_m: support.sill.length_mm / 1000,
            dead_kg: half(on),
          },
        ]
      : [];
  return [...ending(moduleFrame, modules), ...ending(platform, platforms)];
}

function jointChecks(setting: Setting, met: MetJoint, ending: readonly EndingStringers[]): CheckResult[] {
  const { sizes } = setting.context.tables;
  const { kit } = setting.input.plan;
  const path = loadPath(kit, met.support, met.joint.support_height_m, sizes);
  const patterns = ending.flatMap((s) => sillPatterns(s, setting.cases));
  return [
    ...sillChecks(setting, met, path, patterns),
    ...stringerContact(setting, met, path, ending),
    ...carrierChecks(setting, met, path, patterns),
    ...postChecks(setting, met, path, patterns),
  ];
}

/** The sill as a beam, or the word that it lies on its packing all along. */
function sillChecks(
  setting: Setting,
  met: MetJoint,
  path: LoadPath,
  patterns: readonly BeamPattern[],
): CheckResult[] {
  const { context, lumber } = setting;
  const base = baseFor(setting, met);
  const { piece, on } = path.sill;
  const carriers = carriersOf(on, "y", piece);
  const beam = { name: "sill", size: piece.size!, lay: met.support.sill.lay, lumber, carriers };
  return (["bending", "shear"] as const).map((part) => {
    const own = base(`sill-${part}`, `Sill in ${part}`, context.code.rule(part));
    const isBent =
      carriers.length === 0 ||
      patterns.some((p) => beamMoments(carriers, p.loads).some((e) => e.dead + e.live > 1e-6));
    if (!isBent)
      return notApplicable(own, "it lies along on what carries it under every stringer: nothing bends");
    return checkSupportBeam(part, beam, patterns, own, context);
  });
}

/** A stringer's end across the grain of the sill: one end by itself, on the half of the sill that is its own. */
function stringerContact(
  setting: Setting,
  met: MetJoint,
  { sill }: LoadPath,
  ending: readonly EndingStringers[],
): CheckResult[] {
  const { context, lumber, input } = setting;
  const { kit } = input.plan;
  const gap = kit.joint_gap_mm / 1000;
  const forces = ending.flatMap((s) =>
    [s.left_m, s.right_m]
      .filter((span) => span > 0)
      .flatMap((left_m) =>
        pressing(sillPatterns({ ...s, left_m, right_m: 0, dead_kg: s.dead_kg }, setting.cases)),
      ),
  );
  const stringer = sizeOf(setting, kit.stringers.size).thickness_in * M_PER_IN;
  const outer = Math.max(...ending.flatMap((s) => s.positions_m.map(Math.abs)));
  const positions = ending.flatMap((s) => s.positions_m.slice(1).map((x, i) => x - s.positions_m[i]!));
  const piece = {
    name: "sill under a stringer",
    size: sill.piece.size!,
    lay: met.support.sill.lay,
    lumber,
    length_m: stringer,
    breadth_m: Math.max(0, (sill.piece.x1 - sill.piece.x0 - gap) / 2),
    to_end_m: Math.max(0, sill.piece.y1 - outer - stringer / 2),
    to_next_m: Math.max(0, Math.min(...positions) - stringer),
    is_continuous: sill.on.some((p) => p.y1 - p.y0 > (sill.piece.y1 - sill.piece.y0) / 2),
  };
  const base = baseFor(setting, met)(
    "sill-bearing",
    "Sill pressed by a stringer",
    context.code.rule("bearing"),
  );
  return [checkPressed(piece, forces, base, context)];
}

const pressing = (patterns: readonly BeamPattern[]): PatternEffect[] =>
  patterns.flatMap((pattern) =>
    pattern.loads.map((l, i) => ({
      pattern,
      effect: { dead: l.dead_n, live: l.live_n, where: `under stringer ${i + 1}` },
    })),
  );
