import {
  kitGeometry,
  moduleDrawing,
  supportDrawing,
  supportKind,
  underPlatformEdge,
  type DrawnPiece,
} from "@causey/engine/kit";
import { stringerEdgeJoints, type Joint } from "@causey/engine/layout";
import { groundAt, type Site } from "@causey/engine/site";
import type { WaterLevel } from "@causey/engine/water";
import { roundScale, scaleBar } from "../frame/index.ts";
import { area, boxShape, hatched, stroked, words, type Box, type Point, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import type { Draft, Sheet } from "../set/sheet.ts";
import { chainAcross, heightBeside, helper } from "./dimension.ts";
import { heightStaff, levelNotes } from "./height-staff.ts";
import { levelText, partLength, shower } from "./show.ts";

/** Ground shown to either side of the middle line, at most [m]. */
const BESIDE_M = 4;
/** Room beside the deck for the heights and their words [mm]. */
const BESIDE_MM = 62;
const STEP_M = 0.1;
/** A level farther over the deck than this is noted instead of drawn [m]. */
const OVER_DECK_M = 2;
/** Columns left and right of the section, and lines above and below it [mm]. */
const [LEFT, RIGHT, ABOVE, BELOW] = [52, 8, 19, 9];

/** Section across the walkway where the water stands deepest over the deck, or nearest under it. */
export const crossSection: Sheet = {
  id: "cross-section",
  title: "Cross-section",
  about:
    "Support, module and deck where the deck lies lowest against the highest tide, with the water levels.",
  drafts: (context, room) => {
    const joint = sectionJoint(context);
    return joint ? [sectionDraft(context, joint, room.landscape)] : [];
  },
};

/**
 * The joint that the section is cut at. Water is level, so it stands deepest over the lowest deck; of several as low,
 * the one over the lowest ground. A plan without water levels shows the deck that stands lowest over its ground.
 */
export function sectionJoint({ results, plan }: PaperContext): Joint | null {
  const over = (j: Joint): number => j.deck_m - j.ground_m;
  const isBefore = (a: Joint, b: Joint): boolean =>
    plan.levels.length === 0
      ? over(a) < over(b)
      : a.deck_m < b.deck_m - SAME_M || (a.deck_m <= b.deck_m + SAME_M && a.ground_m < b.ground_m - SAME_M);
  return results.layout.joints.reduce<Joint | null>(
    (low, joint) => (low === null || isBefore(joint, low) ? joint : low),
    null,
  );
}

/** Heights nearer than this are the same [m]. */
const SAME_M = 1e-4;

/** Why this joint: how far its deck lies under or over the highest tide, or the highest level of all. */
function whyHere({ plan }: PaperContext, joint: Joint): string {
  const tides = plan.levels.filter((l) => l.role === "highest-predicted");
  const top = (tides.length > 0 ? tides : plan.levels).reduce<WaterLevel | null>(
    (a, l) => (a === null || l.z_m > a.z_m ? l : a),
    null,
  );
  if (top === null) return "where the deck stands lowest over the ground";
  const depth = top.z_m - joint.deck_m;
  const words = `${levelText(Math.abs(depth), plan)} ${depth > 0 ? "under" : "over"} ${top.name}`;
  return `where the deck of the line is lowest, ${words}`;
}

interface Section {
  readonly joint: Joint;
  readonly support: readonly DrawnPiece[];
  readonly module: readonly DrawnPiece[];
  /** Heights that the view shows [m]. */
  readonly low_m: number;
  readonly high_m: number;
}

function sectionOf(context: PaperContext, joint: Joint): Section {
  const { plan, results, tables } = context;
  const kind = supportKind(plan.kit, joint.support);
  const standing = stringerEdgeJoints(results.layout.parts).has(joint.id)
    ? underPlatformEdge(plan.kit, kind)
    : kind;
  const support = supportDrawing(plan.kit, standing, joint.support_height_m, tables.sizes).end;
  const part = results.layout.parts.find(
    (p) => p.kind === "module" && (p.to === joint.id || p.from === joint.id),
  );
  const length =
    part?.kind === "module" ? kitLengthOf(plan.kit.lengths_mm, part.length_m) : plan.kit.lengths_mm[0]!;
  const feet = joint.ground_m + Math.min(0, ...support.map((p) => p.v0)) / 1000;
  const levels = plan.levels.map((l) => l.z_m).filter((z) => z > feet && z < joint.deck_m + OVER_DECK_M);
  return {
    joint,
    support,
    module: moduleDrawing(plan.kit, length, tables.sizes).end,
    low_m: Math.min(feet, joint.ground_m - 0.3) - 0.15,
    high_m: Math.max(joint.deck_m + 0.3, ...levels.map((z) => z + 0.1)),
  };
}

function sectionDraft(context: PaperContext, joint: Joint, room: Box): Draft {
  const section = sectionOf(context, joint);
  const half = kitGeometry(context.plan.kit, context.tables.sizes).deck_width_m / 2;
  const scale = roundScale(
    Math.max(
      (section.high_m - section.low_m) / (room.height - ABOVE - BELOW),
      half / ((room.width - LEFT - RIGHT) / 2 - BESIDE_MM),
    ),
    1,
    context.plan.units,
  );
  return {
    title: `Cross-section at joint ${joint.id}`,
    orientation: "landscape",
    scale: scale.words,
    draw: (box) => [
      ...headLines(context, section, box),
      ...sectionShapes(context, section, scale.m_per_mm, box),
      ...scaleBar(scale, [box.x + LEFT, box.y + box.height - 3.4], context.plan.units),
    ],
  };
}

function headLines(context: PaperContext, { joint }: Section, box: Box): Shape[] {
  const { plan, results } = context;
  const support = supportKind(plan.kit, joint.support).name;
  return [
    words(
      `Joint ${joint.id}, ${shower(plan)(joint.along_m, "m")} along branch ${joint.branch}, ${whyHere(context, joint)}; seen in the direction of travel`,
      [box.x, box.y + 2.6],
      { weight: "semibold", size: 2.6 },
    ),
    words(
      `Support: ${support}. Least height of the underside over ground on the whole line: ${shower(plan)(results.evaluation.lowest_deck_clear_m, "m")}. Heights on ${results.datum}.`,
      [box.x, box.y + 6.6],
      { size: 2.2, ink: "second" },
    ),
  ];
}

function sectionShapes(context: PaperContext, section: Section, m_per_mm: number, box: Box): Shape[] {
  const { joint, low_m, high_m } = section;
  const foot = box.y + ABOVE + (high_m - low_m) / m_per_mm;
  const wide = Math.min(BESIDE_M / m_per_mm, (box.width - LEFT - RIGHT) / 2);
  const cx = box.x + LEFT + wide;
  const at = (off: number, z: number): Point => [cx + off / m_per_mm, foot - (z - low_m) / m_per_mm];
  const half = wide * m_per_mm;
  const ground = groundAcross(context.site, joint, half);
  return [
    ...groundShapes(ground, at, foot),
    ...levelLines(context, section, at, half),
    ...pieces(section.support, at, joint.ground_m, "pale-rule"),
    ...pieces(section.module, at, joint.ground_m + joint.support_height_m, "white"),
    ...marks(context, section, at),
    ...heightStaff(context, staffHeights(context, section), {
      x: cx - wide - 2,
      yOf: (z) => at(0, z)[1],
      left: box.x,
      low_m,
      high_m,
    }),
    ...levelNotes(context, joint.ground_m, {
      x: at(0.7, 0)[0],
      y: at(0, joint.ground_m)[1] + 12,
      width: 62,
      height: 0,
    }),
  ];
}

/** Ground across the walkway, left of travel first: offset [m] and height, where it is known. */
function groundAcross(site: Site, joint: Joint, half: number): (readonly [number, number])[] {
  const turn = (joint.heading_deg * Math.PI) / 180;
  const count = Math.round((2 * half) / STEP_M);
  return Array.from({ length: count + 1 }, (_, i) => {
    const off = -half + (2 * half * i) / count;
    const z = groundAt(site.terrain, joint.x + Math.cos(turn) * off, joint.y - Math.sin(turn) * off);
    return [off, z] as const;
  }).filter(([, z]) => !Number.isNaN(z));
}

function groundShapes(
  ground: readonly (readonly [number, number])[],
  at: (off: number, z: number) => Point,
  foot: number,
): Shape[] {
  if (ground.length < 2) return [];
  const top = ground.map(([off, z]) => at(off, z));
  const ring: Point[] = [...top, [top.at(-1)![0], foot], [top[0]![0], foot]];
  return [
    area([ring], { fill: "pale-earth" }),
    ...hatched([ring], { ink: "earth", angle_deg: 35, gap: 3.5, width: 0.1, dash: [1.4, 2.4] }),
    stroked(top, { ink: "earth", width: 0.4 }),
    words("ground", [top.at(-1)![0] - 2, top.at(-1)![1] + 3.6], {
      size: 2.2,
      ink: "earth",
      anchor: "end",
      halo: true,
    }),
  ];
}

function levelLines(
  { plan }: PaperContext,
  { low_m, high_m }: Section,
  at: (off: number, z: number) => Point,
  half: number,
): Shape[] {
  return plan.levels
    .filter((l) => l.z_m > low_m && l.z_m < high_m)
    .map((level) =>
      stroked([at(-half, level.z_m), at(half, level.z_m)], {
        ink: "water",
        width: 0.3,
        ...(level.basis === "mean" ? {} : { dash: [2.4, 1] }),
      }),
    );
}

/** Heights of the staff beside the section: water in its ink, the walkway's own in black. */
const staffHeights = ({ plan }: PaperContext, { joint }: Section) => [
  ...plan.levels.map((l) => ({ name: l.name, z_m: l.z_m, ink: "water" as const })),
  { name: "Top of deck", z_m: joint.deck_m, ink: "ink" as const },
  { name: "Underside of module", z_m: joint.ground_m + joint.support_height_m, ink: "ink" as const },
  { name: "Ground", z_m: joint.ground_m, ink: "ink" as const },
];

const pieces = (
  drawn: readonly DrawnPiece[],
  at: (off: number, z: number) => Point,
  base_m: number,
  fill: "white" | "pale-rule",
): Shape[] =>
  drawn.map((p) => {
    const [x0, y0] = at(p.u0 / 1000, base_m + p.v0 / 1000);
    const [x1, y1] = at(p.u1 / 1000, base_m + p.v1 / 1000);
    return boxShape(
      { x: Math.min(x0, x1), y: Math.min(y0, y1), width: Math.abs(x1 - x0), height: Math.abs(y1 - y0) },
      { stroke: { ink: "ink", width: 0.2 }, fill },
    );
  });

/** The kit's own length of a part of the layout [mm]. */
export const kitLengthOf = (lengths_mm: readonly number[], length_m: number): number =>
  lengths_mm.reduce((best, mm) =>
    Math.abs(mm / 1000 - length_m) < Math.abs(best / 1000 - length_m) ? mm : best,
  );

/** Deck and clear width above the section, heights to its right. */
function marks(
  { plan, tables }: PaperContext,
  section: Section,
  at: (off: number, z: number) => Point,
): Shape[] {
  const { joint } = section;
  const kit = kitGeometry(plan.kit, tables.sizes);
  const half = kit.deck_width_m / 2;
  const inner = kit.clear_width_m / 2;
  const top = Math.max(...section.module.map((p) => p.v1)) / 1000 + joint.ground_m + joint.support_height_m;
  const [xl, yTop] = at(-half, top);
  const [xr, yDeck] = at(half, joint.deck_m);
  const yGround = at(0, joint.ground_m)[1];
  const yUnder = at(0, joint.ground_m + joint.support_height_m)[1];
  const [il] = at(-inner, 0);
  const [ir] = at(inner, 0);
  return [
    helper([xl, yTop], [xl, yTop - 11]),
    helper([xr, yTop], [xr, yTop - 11]),
    ...chainAcross([xl, xr], yTop - 10, () => `deck ${partLength(kit.deck_width_m, plan)}`),
    ...(inner < half - 1e-6
      ? chainAcross([il, ir], yTop - 4, () => `clear ${partLength(kit.clear_width_m, plan)}`)
      : []),
    helper([xr, yDeck], [xr + 32, yDeck]),
    helper([xr, yUnder], [xr + 8, yUnder]),
    ...heightBeside(xr + 7, yGround, yUnder, `support ${partLength(joint.support_height_m, plan)}`),
    ...heightBeside(
      xr + 30,
      yGround,
      yDeck,
      `deck over ground ${partLength(joint.deck_m - joint.ground_m, plan)}`,
    ),
  ];
}
