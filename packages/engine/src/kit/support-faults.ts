import type { ZoneUse } from "../site/index.ts";
import { LONGEST_MM, say, type Faults } from "./faults.ts";
import { baseContact, baseFaults } from "./base-faults.ts";
import { lying } from "./section.ts";
import { stakesHold, supportPieces } from "./support-pieces.ts";
import { lieOf, supportHeights, supportMisfit, supportPieceLength } from "./support-tiers.ts";
import type { Kit, SupportKind } from "./types.ts";

const ZONE_USES: readonly ZoneUse[] = [
  "habitat",
  "closed",
  "seasonal-closure",
  "buffer",
  "soft-ground",
  "channel",
  "pool",
  "parcel",
];

/** Timber may miss timber by this much before the recipe is called wrong [mm]. */
const FIT_MM = 1;
/** Feet may differ from the timber that touches the ground by this share of their area. */
const FOOT_SHARE = 0.02;

/** Every support kind by itself, and whether together they leave a height that none reaches. */
export function supportFaults(f: Faults): void {
  const { supports } = f.kit;
  if (supports.length === 0)
    f.add("support", "supports", supports, "the kit has no support kind", "Give at least one.");
  supports.forEach((kind, i) => {
    const place = `supports[${i}]`;
    if (supports.findIndex((s) => s.id === kind.id) < i)
      f.add("support", `${place}.id`, kind.id, `two supports are called "${kind.id}"`, "Rename one.");
    const before = f.problems.filter((p) => p.severity === "error").length;
    recipeFaults(f, kind, place);
    if (f.problems.filter((p) => p.severity === "error").length === before) fitFaults(f, kind, place);
  });
  heightGaps(f);
}

function recipeFaults(f: Faults, kind: SupportKind, place: string): void {
  heightFaults(f, kind, place);
  sillFaults(f, kind, place);
  kind.pieces.forEach((p, i) => {
    f.section(`${place}.pieces[${i}].size`, p.size);
    f.whole(`${place}.pieces[${i}].count`, p.count, 1, "the count");
    for (const h of [kind.height_min_mm, kind.height_max_mm])
      if (!(supportPieceLength(p, h) > 0 && supportPieceLength(p, h) <= LONGEST_MM))
        f.add(
          "support",
          `${place}.pieces[${i}].length_mm`,
          p.length_mm,
          `at a height of ${say(h)} the piece "${p.name}" would be ${Number(supportPieceLength(p, h).toFixed(1))} mm long`,
          "Mend its fixed length, its share of the height, or the range of heights.",
        );
  });
  footFaults(f, kind, place);
  baseFaults(f, kind, place);
  anchorFaults(f, kind, place);
  kind.screws.forEach((s, i) => {
    f.fastener(`${place}.screws[${i}].screw`, s.screw, null);
    f.whole(`${place}.screws[${i}].count`, s.count, 1, "the count");
  });
  if (kind.rating_n !== null) f.positive(`${place}.rating_n`, kind.rating_n, "the rating");
  kind.stands.not_in.forEach((use, i) => {
    if (!ZONE_USES.some((u) => u === use))
      f.add(
        "support",
        `${place}.stands.not_in[${i}]`,
        use,
        `"${use}" is no use of a zone, so that it keeps the support off nothing`,
        `Use one of: ${ZONE_USES.join(", ")}.`,
      );
  });
}

function heightFaults(f: Faults, kind: SupportKind, place: string): void {
  const ok = [
    f.positive(`${place}.height_min_mm`, kind.height_min_mm, "the least height"),
    f.positive(`${place}.height_max_mm`, kind.height_max_mm, "the greatest height"),
    f.positive(`${place}.height_step_mm`, kind.height_step_mm, "the height step"),
  ].every(Boolean);
  if (ok && kind.height_step_mm < 1)
    f.add(
      "support",
      `${place}.height_step_mm`,
      kind.height_step_mm,
      "no crew builds to steps under a millimetre",
      "Give a step of at least 1 mm.",
    );
  if (ok && kind.height_min_mm > kind.height_max_mm)
    f.add(
      "support",
      `${place}.height_min_mm`,
      kind.height_min_mm,
      `the least height ${say(kind.height_min_mm)} is above the greatest ${say(kind.height_max_mm)}`,
      "Exchange them.",
    );
}

function sillFaults(f: Faults, kind: SupportKind, place: string): void {
  const section = f.section(`${place}.sill.size`, kind.sill.size);
  const { overall_mm } = f.kit.stringers;
  if (kind.sill.length_mm < overall_mm)
    f.add(
      "support",
      `${place}.sill.length_mm`,
      kind.sill.length_mm,
      `the sill is shorter than the module is wide (${say(overall_mm)})`,
      `Make it at least ${say(overall_mm)} long.`,
    );
  const along = section ? lying(section, kind.sill.lay).along : null;
  if (along !== null && along <= f.kit.joint_gap_mm)
    f.add(
      "support",
      `${place}.sill.size`,
      kind.sill.size,
      `the joint gap of ${say(f.kit.joint_gap_mm)} leaves no seat on a sill ${say(along)} wide`,
      "Lay the sill flat, use a wider one, or close the gap.",
    );
}

function footFaults(f: Faults, kind: SupportKind, place: string): void {
  if (kind.feet.length === 0)
    f.add("support", `${place}.feet`, kind.feet, "the support has no foot", "Give each patch on the ground.");
  kind.feet.forEach((foot, i) => {
    f.positive(`${place}.feet[${i}].along_mm`, foot.along_mm, "the foot along");
    f.positive(`${place}.feet[${i}].across_mm`, foot.across_mm, "the foot across");
  });
  const lines = new Set(kind.feet.map((foot) => foot.offset_across_mm)).size;
  kind.pieces.forEach((p, i) => {
    if (!p.beside && lieOf(kind, p) === "upright" && lines > 1 && p.count % lines !== 0)
      f.add(
        "support",
        `${place}.pieces[${i}].count`,
        p.count,
        `${p.count} uprights cannot stand evenly on ${lines} lines of feet`,
        `Give a multiple of ${lines}.`,
      );
    if (p.beside && !kind.pieces.some((u) => !u.beside && lieOf(kind, u) === "upright"))
      f.add(
        "support",
        `${place}.pieces[${i}].beside`,
        true,
        `"${p.name}" lies beside uprights, and the support has none`,
        "Add uprights, or let it lie above or below.",
      );
  });
}

function anchorFaults(f: Faults, kind: SupportKind, place: string): void {
  const { anchor } = kind;
  if (!anchor) return;
  f.section(`${place}.anchor.size`, anchor.size);
  f.whole(`${place}.anchor.count`, anchor.count, 1, "the count of stakes");
  const ok = f.positive(`${place}.anchor.embedment_mm`, anchor.embedment_mm, "the length in the ground");
  if (ok && anchor.embedment_mm >= anchor.length_mm)
    f.add(
      "support",
      `${place}.anchor.embedment_mm`,
      anchor.embedment_mm,
      "the stake is no longer than its part in the ground, so that nothing is left to hold the support",
      "Lengthen the stake.",
    );
}

/** What only the finished boxes show: held at every height the support can be built to. */
function fitFaults(f: Faults, kind: SupportKind, place: string): void {
  for (const h of supportHeights(kind)) {
    const misfit = supportMisfit(kind, h, f.sizes);
    if (Math.abs(misfit) > FIT_MM) {
      f.add(
        "support",
        `${place}.pieces`,
        h,
        misfitText(kind, h, misfit),
        "Mend the fixed length, the share of the height, the height step, or the range of heights.",
      );
      return;
    }
    if (!stakesHold(kind, h, f.sizes)) {
      f.add(
        "support",
        `${place}.anchor.length_mm`,
        kind.anchor?.length_mm,
        `at a height of ${say(h)} a stake reaches no timber of the support`,
        "Lengthen the stake, or set less of it in the ground.",
      );
      return;
    }
  }
  contactFault(f, f.kit, kind, place);
}

function misfitText(kind: SupportKind, h: number, misfit: number): string {
  const by = say(Math.abs(misfit));
  if (kind.form === "screw-pile")
    return `at a height of ${say(h)} the piles are ${by} too short to reach their depth`;
  if (kind.form === "float") return `at a height of ${say(h)} the floats would lie ${by} in the ground`;
  return `at a height of ${say(h)} its pieces are ${by} too ${misfit > 0 ? "short" : "long"} for the sill`;
}

/** Contact that is counted must be contact that is there: feet against the timber on the ground. */
function contactFault(f: Faults, kit: Kit, kind: SupportKind, place: string): void {
  const declared = kind.feet.reduce((sum, foot) => sum + foot.along_mm * foot.across_mm, 0);
  const onGround = baseContact(kind) ?? timberContact(f, kit, kind);
  if (Math.abs(declared - onGround) > FOOT_SHARE * onGround)
    f.add(
      "support",
      `${place}.feet`,
      `${Math.round(declared)} mm2`,
      `the feet cover ${Math.round(declared)} mm2, what touches the ground ${Math.round(onGround)} mm2`,
      "Give each foot the size of the piece that touches the ground there.",
      "warning",
    );
}

const timberContact = (f: Faults, kit: Kit, kind: SupportKind): number =>
  supportPieces(kit, kind, kind.height_min_mm / 1000, f.sizes)
    .filter((p) => p.role !== "stake" && p.z0 < 1e-4)
    .reduce((sum, p) => sum + (p.x1 - p.x0) * (p.y1 - p.y0) * 1e6, 0);

function heightGaps(f: Faults): void {
  const ranges = f.kit.supports
    .map((s) => ({ from: s.height_min_mm, to: s.height_max_mm, step: s.height_step_mm }))
    .sort((a, b) => a.from - b.from);
  let reached = ranges[0];
  for (const next of ranges.slice(1)) {
    if (reached && next.from - reached.to > Math.max(next.step, reached.step) + FIT_MM)
      f.add(
        "support",
        "supports",
        next.from,
        `no support can be built to heights between ${say(reached.to)} and ${say(next.from)}`,
        "Widen the range of one of them, or add a kind.",
        "warning",
      );
    if (!reached || next.to > reached.to) reached = next;
  }
}
