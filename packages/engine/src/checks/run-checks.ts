import type { Problem, Source } from "../formula/index.ts";
import type { Part } from "../layout/index.ts";
import { feelChecks } from "./feel.ts";
import { fasteningChecks } from "./fastening-checks.ts";
import type { Frame } from "./frame.ts";
import { checkCorner, checkDamage, checkStands } from "./frame-checks.ts";
import { frameDrawings, type FrameDrawing } from "./frame-drawing.ts";
import { handlingChecks } from "./handling.ts";
import type { ChecksInput } from "./input.ts";
import { bearingChecks, seatBearingChecks, seatLengthChecks } from "./joint-checks.ts";
import {
  crossPieceChecks,
  deckChecks,
  halfLiftingChecks,
  liftingChecks,
  moduleStringerChecks,
  platformCrossPieceChecks,
  stringerChecks,
} from "./part-checks.ts";
import { moduleGroups, platformFrame, type ModuleGroup } from "./plan-frames.ts";
import { metJoints } from "./plan-joints.ts";
import { cannotCheck, missingOf } from "./result.ts";
import { RULE_KINDS, ruleChecks } from "./rule-checks.ts";
import { saidOf } from "./said-of.ts";
import { seatStepChecks } from "./seat-step.ts";
import { settingOf, type Setting } from "./setting.ts";
import { softGroundChecks } from "./settling-checks.ts";
import { planSoil } from "./soil.ts";
import { soilLine, type SoilLine } from "./soil-proof.ts";
import { supportChecks } from "./support-checks.ts";
import type { CheckKind, CheckResult } from "./types.ts";
import { upliftChecks } from "./uplift-checks.ts";
import { waterChecks, type FloodFigures } from "./water-checks.ts";

const KINDS: readonly CheckKind[] = [
  "stringer-bending",
  "stringer-shear",
  "stringer-deflection",
  "cross-piece",
  "deck",
  "seat",
  "bearing",
  "uplift",
  "lifting",
  "platform",
  "damage",
  "supports",
  "fastening",
  "feel",
  "handling",
  "settling",
  "plot",
  "flood",
  "anchor",
  "cold",
  ...RULE_KINDS,
];

/**
 * Every check of a plan's layout: stringers, cross pieces, deck, seats, ground, flood, lifting and platforms.
 *
 * Parts and joints with the very same inputs share one result, which lists their ids. The kit must have passed
 * `validateKit`; a species or grade that the tables lack gives one result per kind that cannot be checked, never a
 * pass. The order of results is fixed: by kind, then as the layout lists the parts.
 */
export const runChecks = (input: ChecksInput): readonly CheckResult[] => prove(input).checks;

/** All checks of a layout, and what stands behind them: the modules as structures. */
export interface Proof {
  readonly checks: readonly CheckResult[];
  readonly frames: readonly FrameDrawing[];
  /** The ground along the walkway; null when nothing is known of it. */
  readonly soil: SoilLine | null;
  /** Null without a flood level. */
  readonly flood: FloodFigures | null;
}

/** `runChecks` with what a page or sheet draws beside the checks. */
export function prove(input: ChecksInput): Proof {
  const setting = settingOf(input);
  if (!setting.ok)
    return { checks: nothingKnown(input, setting.problems), frames: [], soil: null, flood: null };
  const groups = moduleGroups(setting.value);
  const joints = metJoints(setting.value);
  const soil = planSoil(setting.value, joints);
  const platform = platformFrame(setting.value);
  const water = waterChecks(setting.value, joints);
  const results = [
    ...moduleStringerChecks(setting.value, groups),
    ...groups.flatMap((group) => damageChecks(setting.value, group)),
    ...crossPieceChecks(setting.value, groups),
    ...moduleDeckChecks(setting.value, groups),
    ...seatLengthChecks(setting.value, joints),
    ...seatBearingChecks(setting.value, joints, frameFinder(groups, platform?.frame ?? null)),
    ...bearingChecks(setting.value, soil),
    ...seatStepChecks(setting.value, joints),
    ...upliftChecks(setting.value, joints),
    ...liftingChecks(setting.value, groups),
    ...feelChecks(setting.value, groups),
    ...handlingChecks(setting.value, groups),
    ...(platform
      ? platformChecks(
          setting.value,
          platform.frame,
          platform.parts.map((p) => p.id),
        )
      : []),
    ...softGroundChecks(setting.value, soil),
    ...supportChecks(setting.value, joints, groups[0]?.frame ?? null, platform?.frame ?? null),
    ...fasteningChecks(setting.value, groups, joints),
    ...ruleChecks(setting.value, joints),
    ...water.checks,
  ];
  return {
    checks: saidOf(results, setting.value.context).toSorted(
      (a, b) => KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind),
    ),
    frames: frameDrawings(setting.value, groups),
    soil: soilLine(setting.value, soil),
    flood: water.flood,
  };
}

const moduleDeckChecks = (setting: Setting, groups: readonly ModuleGroup[]): CheckResult[] => {
  const first = groups[0];
  if (!first) return [];
  const parts = groups.flatMap((g) => g.parts.map((p) => p.id));
  const frame: Frame = {
    ...first.frame,
    name: "module",
    brace_m: Math.max(...groups.map((g) => g.frame.brace_m)),
  };
  return deckChecks(setting, frame, { id: "deck", kind: "deck", parts });
};

const platformChecks = (setting: Setting, frame: Frame, parts: readonly string[]): CheckResult[] => [
  ...stringerChecks(setting, frame, { kind: "platform", suffix: "", parts }),
  ...platformCrossPieceChecks(setting, frame, parts),
  ...deckChecks(setting, frame, { id: "platform.deck", kind: "platform", parts }),
  ...halfLiftingChecks(setting, parts),
  checkCorner(frame, setting.cases, { kind: "platform", suffix: "", parts }, setting.context),
];

/** What a module does when it is damaged, and whether a load at its edge lifts it. */
function damageChecks({ cases, context }: Setting, { frame, length_mm, parts }: ModuleGroup): CheckResult[] {
  const label = {
    kind: "module",
    suffix: `${Math.round(length_mm)}mm`,
    parts: parts.map((p) => p.id),
  } as const;
  return [checkDamage(frame, cases, label, context), checkStands(frame, cases, label, context)];
}

function frameFinder(groups: readonly ModuleGroup[], platform: Frame | null): (part: Part) => Frame {
  const byPart = new Map(groups.flatMap((g) => g.parts.map((p) => [p.id, g.frame] as const)));
  return (part) => (part.kind === "platform" ? platform! : byPart.get(part.id)!);
}

/** The tables lack the kit's timber or the plan's code: nothing can be said, and each kind says so. */
function nothingKnown({ layout }: ChecksInput, problems: readonly Problem[]): CheckResult[] {
  const rule: Source = { id: "tables", title: "Tables of timber and design codes", status: "project" };
  const parts = layout.parts.map((p) => p.id);
  return KINDS.map((kind) =>
    cannotCheck(
      {
        id: `${kind}.all`,
        kind,
        title: `${kind.replace("-", " ")}: all parts`,
        parts,
        rule,
        caution: "Name the timber that will be bought before anything is built.",
      },
      missingOf(problems),
    ),
  );
}
