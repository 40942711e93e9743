import { M_PER_FT } from "@causey/engine/units";
import { niceTicks } from "../chart/index.ts";
import { area, boxShape, disc, stroked, words, type Box, type Point, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import { textWidth } from "../text/index.ts";
import { heightStaff } from "./height-staff.ts";
import { waterStroke } from "./plan-ground.ts";
import { shower } from "./show.ts";

/** A stretch of one branch, from and to on the strip [m]. */
export interface Stretch {
  readonly branch: string;
  readonly from_m: number;
  readonly to_m: number;
}

/** One stretch with all that its drawing on the long section needs. */
export interface ProfileRow extends Stretch {
  readonly title: string;
  /** Where the branch begins on the strip: distances along are measured from here [m]. */
  readonly begin_m: number;
  /** Heights shown [m]. */
  readonly low_m: number;
  readonly high_m: number;
}

/** Room beside, over and under a row's drawing [mm]. */
export const ROW_LEFT = 50;
export const ROW_HEAD = 9;
export const ROW_FOOT = 17;
/** Room inside the frame over the highest deck, for the tags [mm]. */
export const ROW_TOP = 3;
const TAG = 1.75;

type Place = (along_m: number, z_m: number) => Point;

/** Ground, deck, joints, levels and crossings of one row, with heights at the left and distances below. */
export function profileRow(
  context: PaperContext,
  row: ProfileRow,
  m_per_mm: number,
  times: number,
  box: Box,
): Shape[] {
  const bottom = box.y + box.height - ROW_FOOT;
  const left = box.x + ROW_LEFT;
  const at: Place = (along, z) => [
    left + (along - row.from_m) / m_per_mm,
    bottom - ((z - row.low_m) * times) / m_per_mm,
  ];
  const right = at(row.to_m, 0)[0];
  const frame = { x: left, y: box.y + ROW_HEAD, width: right - left, height: bottom - box.y - ROW_HEAD };
  const heights = context.plan.levels.map((l) => ({ name: l.name, z_m: l.z_m, ink: "water" as const }));
  return [
    words(row.title, [left, box.y + 4.6], { size: 2.5, weight: "semibold" }),
    ...groundShapes(context, row, at, bottom),
    ...levelLines(context, row, at, right),
    ...crossingMarks(context, row, at, box.y + ROW_HEAD),
    ...jointShapes(context, row, at, bottom),
    ...partTags(context, row, at),
    ...heightAxis(context, row, at, left),
    boxShape(frame, { stroke: { ink: "ink", width: 0.2 } }),
    ...heightStaff(context, heights, {
      x: left - 11,
      left: box.x,
      yOf: (z) => at(row.from_m, z)[1],
      low_m: row.low_m,
      high_m: row.high_m,
    }),
  ];
}

const isIn = (row: Stretch, at: number): boolean => at >= row.from_m - 1e-6 && at <= row.to_m + 1e-6;

function groundShapes(context: PaperContext, row: ProfileRow, at: Place, bottom: number): Shape[] {
  const { results } = context;
  const joints = jointsOf(context, row);
  const between = results.strip.ground.flatMap((g) =>
    g.z_m !== null && g.at_m >= row.from_m && g.at_m < row.to_m - 1e-6 ? [at(g.at_m, g.z_m)] : [],
  );
  const end = joints.at(-1);
  const points = end ? [...between, at(end.at_m, end.ground_m)] : between;
  if (points.length < 2) return [];
  const foot: Point[] = [
    [points.at(-1)![0], bottom],
    [points[0]![0], bottom],
  ];
  return [
    area([[...points, ...foot]], { fill: "pale-earth" }),
    stroked(points, { ink: "earth", width: 0.35 }),
  ];
}

function levelLines({ plan }: PaperContext, row: ProfileRow, at: Place, right: number): Shape[] {
  return plan.levels.flatMap((level, n) => {
    if (level.z_m <= row.low_m || level.z_m >= row.high_m) return [];
    const [x, y] = at(row.from_m, level.z_m);
    return [
      stroked(
        [
          [x, y],
          [right, y],
        ],
        { ...waterStroke(n), width: 0.22 },
      ),
    ];
  });
}

interface RowJoint {
  readonly id: string;
  readonly at_m: number;
  readonly ground_m: number;
  readonly deck_m: number;
}

/** The joints that the row's parts lie on, by their place on the strip: a branch's first is its platform's. */
export function jointsOf({ results }: PaperContext, row: Stretch): RowJoint[] {
  const joints = new Map(results.layout.joints.map((j) => [j.id, j]));
  const found = new Map<string, RowJoint>();
  for (const cell of results.strip.cells.filter((c) => c.branch === row.branch)) {
    const part = results.layout.parts.find((p) => p.id === cell.part);
    if (!part) continue;
    for (const [id, at_m] of [
      [part.from, cell.from_m],
      [part.kind === "module" ? part.to : part.exits.ahead, cell.to_m],
    ] as const) {
      const joint = joints.get(id);
      if (joint && isIn(row, at_m))
        found.set(id, { id, at_m, ground_m: joint.ground_m, deck_m: joint.deck_m });
    }
  }
  return [...found.values()].sort((a, b) => a.at_m - b.at_m);
}

/** Deck as a thick line, each joint's support, and its tag with the distance along below. */
function jointShapes(context: PaperContext, row: ProfileRow, at: Place, bottom: number): Shape[] {
  const joints = jointsOf(context, row);
  let last = -Infinity;
  const tags = joints.flatMap((j): Shape[] => {
    const [x] = at(j.at_m, 0);
    if (x - last < 2.3) return [];
    last = x;
    const text = `${j.id}  ${along(j.at_m - row.begin_m, context)}`;
    return [words(text, [x + TAG * 0.35, bottom + 1.2 + textWidth(text, TAG)], { size: TAG, turn: -90 })];
  });
  return [
    stroked(
      joints.map((j) => at(j.at_m, j.deck_m)),
      { ink: "ink", width: 0.6 },
    ),
    ...joints.flatMap((j) => [
      stroked([at(j.at_m, j.ground_m), at(j.at_m, j.deck_m)], { ink: "ink", width: 0.25 }),
      disc(at(j.at_m, j.deck_m), 0.4, { fill: "ink" }),
    ]),
    ...tags,
  ];
}

/** Distance along to a tenth of a foot or a hundredth of a metre: short enough to stand at every joint. */
const along = (metres: number, { plan }: PaperContext): string =>
  plan.units === "us" ? `${(metres / M_PER_FT).toFixed(1)} ft` : `${metres.toFixed(2)} m`;

/** Tags of the parts over the deck, where there is room. */
function partTags(context: PaperContext, row: ProfileRow, at: Place): Shape[] {
  const { strip } = context.results;
  const joints = jointsOf(context, row);
  return strip.cells
    .filter((c) => c.branch === row.branch && c.from_m >= row.from_m - 0.5 && c.to_m <= row.to_m + 0.5)
    .flatMap((c): Shape[] => {
      const [x0, x1] = [at(c.from_m, 0)[0], at(c.to_m, 0)[0]];
      if (x1 - x0 < textWidth(c.part, TAG) + 0.6) return [];
      const ends = joints.filter((j) => Math.abs(j.at_m - c.from_m) < 0.3 || Math.abs(j.at_m - c.to_m) < 0.3);
      if (ends.length === 0) return [];
      const top = Math.min(...ends.map((j) => at(0, j.deck_m)[1]));
      return [words(c.part, [(x0 + x1) / 2, top - 1.1], { size: TAG, anchor: "middle", halo: true })];
    });
}

/** Channels and pools over the parts that bridge them, with the clear width. */
function crossingMarks({ plan, results }: PaperContext, row: ProfileRow, at: Place, top: number): Shape[] {
  return results.evaluation.crossings
    .filter((c) => plan.zones.some((z) => z.id === c.zone))
    .flatMap((c): Shape[] => {
      const cell = results.strip.cells.find((p) => p.part === c.part && p.branch === row.branch);
      if (!cell || !isIn(row, cell.from_m) || !isIn(row, cell.to_m)) return [];
      const x = at((cell.from_m + cell.to_m) / 2, 0)[0];
      return [
        words(`${c.name}, ${shower(plan)(c.clear_m, "m")} clear`, [x, top - 0.9], {
          size: 1.9,
          ink: "water",
          anchor: "middle",
          halo: true,
        }),
      ];
    });
}

/** Round heights along the left side of the row. */
function heightAxis({ plan }: PaperContext, row: ProfileRow, at: Place, left: number): Shape[] {
  const unit = plan.units === "us" ? M_PER_FT : 1;
  return niceTicks(row.low_m / unit, row.high_m / unit, 4).flatMap((value) => {
    const y = at(row.from_m, value * unit)[1];
    return [
      stroked(
        [
          [left - 1.2, y],
          [left, y],
        ],
        { ink: "ink", width: 0.2 },
      ),
      words(`${value} ${plan.units === "us" ? "ft" : "m"}`, [left - 1.8, y + 0.7], {
        size: 1.8,
        anchor: "end",
      }),
    ];
  });
}
