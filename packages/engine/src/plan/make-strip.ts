import { RULE_KINDS, type CheckKind, type CheckResult } from "../checks/index.ts";
import type { Joint, Layout, Part } from "../layout/index.ts";
import { groundAt, type Site } from "../site/index.ts";
import type { StripCell, StripModel } from "./strip.ts";

/** From this share of the limit on, a part is shown as near it. */
export const NEAR_LIMIT = 0.8;
const GROUND_SPACING = 0.5;

/** The strip: branch after branch along one line, ground and deck above, one cell a part below. */
export function makeStrip(
  layout: Layout,
  checks: readonly CheckResult[],
  site: Site,
  gap_m: number,
): StripModel {
  const offsets = new Map<string, number>();
  let length = 0;
  for (const branch of layout.branches) {
    offsets.set(branch.id, length);
    length += branch.length_m;
  }
  const joints = new Map(layout.joints.map((j) => [j.id, j]));
  const at = (branch: string, along: number): number => offsets.get(branch)! + along;
  const ground = layout.parts.flatMap((p) => groundUnder(p, joints, at(p.branch, p.along_m), site));
  const drawn = layout.joints.map((j) => ({
    id: j.id,
    at_m: at(j.branch, j.along_m),
    ground_m: j.ground_m,
    deck_m: j.deck_m,
  }));
  const heights = [
    ...ground.flatMap((g) => (g.z_m === null ? [] : [g.z_m])),
    ...drawn.map((j) => j.deck_m),
    ...site.levels.map((l) => l.z_m),
  ];
  const lowest = heights.reduce((a, b) => Math.min(a, b), Infinity);
  const highest = heights.reduce((a, b) => Math.max(a, b), -Infinity);
  return {
    length_m: length,
    datum: site.datum,
    z_min_m: highest === -Infinity ? 0 : lowest,
    z_max_m: highest === -Infinity ? 0 : highest,
    branches: layout.branches.map((b) => ({
      id: b.id,
      from_m: offsets.get(b.id)!,
      to_m: offsets.get(b.id)! + b.length_m,
      plot: b.to_plot,
    })),
    ground,
    joints: drawn,
    levels: site.levels.map((l) => ({ id: l.id, name: l.name, z_m: l.z_m })),
    cells: layout.parts.map((p) => makeCell(p, at(p.branch, p.along_m), gap_m, checks)),
  };
}

function groundUnder(
  part: Part,
  joints: ReadonlyMap<string, Joint>,
  from: number,
  site: Site,
): { at_m: number; z_m: number | null }[] {
  const a = joints.get(part.from)!;
  const b = joints.get(part.kind === "module" ? part.to : part.exits.ahead)!;
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const pieces = Math.max(1, Math.round(length / GROUND_SPACING));
  return Array.from({ length: pieces }, (_, k) => {
    const t = k / pieces;
    const z = groundAt(site.terrain, a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t);
    return { at_m: from + length * t, z_m: Number.isNaN(z) ? null : z };
  });
}

function makeCell(part: Part, from: number, gap: number, checks: readonly CheckResult[]): StripCell {
  const length = part.kind === "module" ? part.length_m : part.side_m;
  const tags =
    part.kind === "module"
      ? [part.id, part.from, part.to]
      : [part.id, part.from, ...Object.values(part.exits)];
  const here = checks.filter((c) => c.parts.some((id) => tags.includes(id)));
  const mine = here.filter((c) => !isRule(c) && !BESIDE.has(c.kind));
  const judged = mine.flatMap((c) => (c.status === "pass" || c.status === "fail" ? [c] : []));
  const worst = judged.reduce<(typeof judged)[number] | null>(
    (a, c) => (a === null || c.utilisation > a.utilisation ? c : a),
    null,
  );
  const unchecked = mine.find((c) => c.status === "cannot-check" && !WHEN_TOLD.has(c.kind));
  const broken = here.find((c) => isRule(c) && c.status === "fail");
  const state = stateOf(worst?.utilisation ?? null, broken !== undefined, unchecked !== undefined);
  return {
    part: part.id,
    kind: part.kind,
    from_m: from,
    to_m: from + length + gap,
    length_m: length,
    branch: part.branch,
    utilisation: worst?.utilisation ?? null,
    state,
    governs: state === "broken" ? broken!.title : (worst?.title ?? unchecked?.title ?? "nothing checked"),
  };
}

/** How a part feels, is carried or comes out again is no share of what it carries where it lies. */
const BESIDE: ReadonlySet<CheckKind> = new Set(["handling", "feel", "plot", "cold"]);
/** Asked for only where the owner tells of it: its lack leaves no part of the walkway unchecked. */
const WHEN_TOLD: ReadonlySet<CheckKind> = new Set(["settling", "flood"]);

/** Rules of width, gap or grade are yes or no: figures are shares of what carries, but a broken rule marks its part. */
const isRule = (check: CheckResult): boolean => RULE_KINDS.some((kind) => kind === check.kind);

function stateOf(utilisation: number | null, broken: boolean, unchecked: boolean): StripCell["state"] {
  if (utilisation !== null && utilisation > 1) return "over";
  if (broken) return "broken";
  if (unchecked || utilisation === null) return "not-checked";
  return utilisation > NEAR_LIMIT ? "near" : "within";
}
