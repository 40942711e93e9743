import { moduleDrawing, supportDrawing } from "@causey/engine/kit";
import type { Joint } from "@causey/engine/layout";
import { groundAt, type Site } from "@causey/engine/site";
import { roundScale, scaleBar } from "../frame/index.ts";
import { area, boxShape, hatched, stroked, words, type Box, type Point, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import type { Draft, Sheet } from "../set/sheet.ts";
import { chainAcross, heightMark, helper } from "./dimension.ts";
import { levelText, partLength } from "./show.ts";

/** Ground shown to either side of the middle line [m]. */
const BESIDE_M = 3;
const STEP_M = 0.25;

/** Section across the walkway where the ground lies lowest, with the water levels. */
export const crossSection: Sheet = {
  id: "cross-section",
  title: "Cross-section",
  about:
    "Support, module and deck over the lowest ground of the line, with the water levels and heights over ground.",
  drafts: (context, room) => {
    const joint = lowestJoint(context);
    if (!joint) return [];
    const scale = roundScale((2 * BESIDE_M) / (room.landscape.width - 70), 1, context.plan.units);
    const draft: Draft = {
      title: `Cross-section at joint ${joint.id}`,
      orientation: "landscape",
      scale: scale.words,
      draw: (box) =>
        sectionShapes(context, joint, scale.m_per_mm, box, () =>
          scaleBar(scale, [box.x + 4, box.y + box.height - 6], context.plan.units),
        ),
    };
    return [draft];
  },
};

/** The joint on the lowest ground; the first of several. */
const lowestJoint = ({ results }: PaperContext): Joint | null =>
  results.layout.joints.reduce<Joint | null>(
    (low, joint) => (low === null || joint.ground_m < low.ground_m ? joint : low),
    null,
  );

/** Ground across the walkway, left of travel first: offset [m] and height, where it is known. */
function groundAcross(site: Site, joint: Joint): (readonly [number, number])[] {
  const turn = (joint.heading_deg * Math.PI) / 180;
  const count = Math.round((2 * BESIDE_M) / STEP_M);
  return Array.from({ length: count + 1 }, (_, i) => {
    const off = -BESIDE_M + i * STEP_M;
    const z = groundAt(site.terrain, joint.x + Math.cos(turn) * off, joint.y - Math.sin(turn) * off);
    return [off, z] as const;
  }).filter(([, z]) => !Number.isNaN(z));
}

function sectionShapes(
  context: PaperContext,
  joint: Joint,
  m_per_mm: number,
  box: Box,
  bar: () => Shape[],
): Shape[] {
  const { plan, site, results } = context;
  const ground = groundAcross(site, joint);
  const heights = [...ground.map((g) => g[1]), joint.deck_m + 0.3, ...nearLevels(context, joint)];
  const middle_z = (Math.min(...heights) + Math.max(...heights)) / 2;
  const cx = box.x + box.width / 2 + 8;
  const cy = box.y + box.height / 2 - 6;
  const at = (off: number, z: number): Point => [cx + off / m_per_mm, cy - (z - middle_z) / m_per_mm];
  const floor = Math.min(box.y + box.height - 14, at(0, Math.min(...heights) - 0.5)[1]);
  return [
    ...groundShapes(ground, at, floor),
    ...levelShapes(context, joint, at, box),
    ...supportShapes(context, joint, at),
    ...moduleShapes(context, joint, at),
    ...marks(context, joint, at),
    words(
      `Joint ${joint.id}, ${partLength(joint.along_m, plan)} along branch ${joint.branch}; seen in the direction of travel`,
      [box.x + 2, box.y + 4],
      { size: 2.4 },
    ),
    words(`Heights on ${results.datum}.`, [box.x + 2, box.y + 8], { size: 2.2, ink: "second" }),
    ...bar(),
  ];
}

/** Levels that matter near the section: within 3 m of the deck. */
const nearLevels = ({ plan }: PaperContext, joint: Joint): number[] =>
  plan.levels.map((l) => l.z_m).filter((z) => Math.abs(z - joint.deck_m) < 3);

function groundShapes(
  ground: readonly (readonly [number, number])[],
  at: (off: number, z: number) => Point,
  floor: number,
): Shape[] {
  if (ground.length < 2) return [];
  const top = ground.map(([off, z]) => at(off, z));
  const ring: Point[] = [...top, [top.at(-1)![0], floor], [top[0]![0], floor]];
  return [
    area([ring], { fill: "pale-earth" }),
    ...hatched([ring], { ink: "earth", angle_deg: 35, gap: 3.5, width: 0.1, dash: [1.4, 2.4] }),
    stroked(top, { ink: "earth", width: 0.4 }),
    words("ground", [top.at(-1)![0] - 10, top.at(-1)![1] + 4], { size: 2.1, ink: "earth" }),
  ];
}

function levelShapes(
  { plan }: PaperContext,
  joint: Joint,
  at: (off: number, z: number) => Point,
  box: Box,
): Shape[] {
  let last = -Infinity;
  return [...plan.levels]
    .filter((l) => Math.abs(l.z_m - joint.deck_m) < 3)
    .toSorted((a, b) => b.z_m - a.z_m)
    .flatMap((level): Shape[] => {
      const [x0, y] = at(-BESIDE_M - 0.3, level.z_m);
      const [x1] = at(BESIDE_M + 0.3, level.z_m);
      const text = Math.max(y + 0.8, last + 3.2);
      last = text;
      return [
        stroked(
          [
            [x0, y],
            [x1, y],
          ],
          { ink: "water", width: 0.3, ...(level.basis === "mean" ? {} : { dash: [2.4, 1] }) },
        ),
        words(`${level.name} ${levelText(level.z_m, plan)}`, [Math.max(box.x + 2, x0 - 1), text], {
          size: 2.1,
          ink: "water",
          anchor: x0 - 1 - box.x > 50 ? "end" : "start",
          halo: true,
        }),
      ];
    });
}

const view = (
  pieces: ReturnType<typeof moduleDrawing>["end"],
  at: (off: number, z: number) => Point,
  base_m: number,
  fill: "white" | "pale-rule",
): Shape[] =>
  pieces.map((p) => {
    const [x0, y0] = at(p.u0 / 1000, base_m + p.v0 / 1000);
    const [x1, y1] = at(p.u1 / 1000, base_m + p.v1 / 1000);
    return boxShape(
      { x: Math.min(x0, x1), y: Math.min(y0, y1), width: Math.abs(x1 - x0), height: Math.abs(y1 - y0) },
      { stroke: { ink: "ink", width: 0.2 }, fill },
    );
  });

function supportShapes(
  { plan, tables }: PaperContext,
  joint: Joint,
  at: (off: number, z: number) => Point,
): Shape[] {
  const drawing = supportDrawing(plan.kit, joint.support, joint.support_height_m, tables.sizes);
  return view(drawing.end, at, joint.ground_m, "pale-rule");
}

function moduleShapes(
  { plan, results, tables }: PaperContext,
  joint: Joint,
  at: (off: number, z: number) => Point,
): Shape[] {
  const part = results.layout.parts.find(
    (p) => p.kind === "module" && (p.to === joint.id || p.from === joint.id),
  );
  const length =
    part?.kind === "module" ? kitLengthOf(plan.kit.lengths_mm, part.length_m) : plan.kit.lengths_mm[0]!;
  const drawing = moduleDrawing(plan.kit, length, tables.sizes);
  return view(drawing.end, at, joint.ground_m + joint.support_height_m, "white");
}

/** The kit's own length of a part of the layout [mm]. */
export const kitLengthOf = (lengths_mm: readonly number[], length_m: number): number =>
  lengths_mm.reduce((best, mm) =>
    Math.abs(mm / 1000 - length_m) < Math.abs(best / 1000 - length_m) ? mm : best,
  );

function marks({ plan }: PaperContext, joint: Joint, at: (off: number, z: number) => Point): Shape[] {
  const half = plan.kit.deck.width_mm / 2000;
  const under = joint.ground_m + joint.support_height_m;
  const [xl] = at(-half, joint.deck_m);
  const [xr, yDeck] = at(half, joint.deck_m);
  const [, yGround] = at(0, joint.ground_m);
  const [, yUnder] = at(0, under);
  const right = xr + 14;
  const above = yDeck - 8;
  return [
    helper([xl, yDeck], [xl, above]),
    helper([xr, yDeck], [xr, above]),
    ...chainAcross([xl, xr], above, () => `deck ${partLength(plan.kit.deck.width_mm / 1000, plan)}`),
    helper([xr, yDeck], [right + 8, yDeck]),
    helper([xr, yUnder], [right, yUnder]),
    helper([xr, yGround], [right + 8, yGround]),
    ...heightMark(right, yGround, yUnder, `clear ${partLength(joint.support_height_m, plan)}`),
    ...heightMark(
      right + 8,
      yGround,
      yDeck,
      `deck over ground ${partLength(joint.deck_m - joint.ground_m, plan)}`,
    ),
    words(`deck ${levelText(joint.deck_m, plan)}`, [right + 11, yDeck + 0.8], { size: 2.1, halo: true }),
    words(`ground ${levelText(joint.ground_m, plan)}`, [right + 11, yGround + 0.8], {
      size: 2.1,
      halo: true,
    }),
  ];
}
