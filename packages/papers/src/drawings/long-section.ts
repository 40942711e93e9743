import type { StripModel } from "@causey/engine/plan";
import { M_PER_FT } from "@causey/engine/units";
import { roundScale } from "../frame/index.ts";
import { area, boxShape, disc, stroked, words, type Box, type Point, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import type { Draft, Sheet } from "../set/sheet.ts";
import { textWidth } from "../text/index.ts";
import { levelText, shower } from "./show.ts";

/** Ground covered by one row [m], and how much heights are drawn larger. */
const ROW_M = { us: 200 * M_PER_FT, metric: 60 } as const;
/** How much heights are drawn larger: the most of these with which two rows stand on a page. */
const TIMES = [10, 5, 4, 3, 2] as const;
const ROWS_A_PAGE = 2;
const LEFT = 34;
const HEAD = 7;
const FOOT = 16;

interface Row {
  readonly branch: string;
  readonly title: string;
  /** On the strip [m]. */
  readonly from_m: number;
  readonly to_m: number;
  readonly begin_m: number;
}

/** Sections along every branch, wrapped over rows and pages, heights drawn larger. */
export const longSection: Sheet = {
  id: "long-section",
  title: "Long section",
  about: "Ground, deck, supports and water levels along every branch, with the joints' tags and distances.",
  drafts: (context, room) => {
    const { results, plan } = context;
    const rows = rowsOf(context);
    if (rows.length === 0) return [];
    const box = room.landscape;
    const scale = roundScale(ROW_M[plan.units], box.width - LEFT - 4, plan.units);
    const tall = (times: number): number => heightOf(results.strip) / (scale.m_per_mm / times) + HEAD + FOOT;
    const times = TIMES.find((t) => tall(t) <= box.height / ROWS_A_PAGE) ?? 2;
    const high = tall(times);
    const perPage = Math.max(1, Math.floor(box.height / high));
    const pages = Array.from({ length: Math.ceil(rows.length / perPage) }, (_, n) =>
      rows.slice(n * perPage, (n + 1) * perPage),
    );
    return pages.map((page, n): Draft => ({
      title: pages.length > 1 ? `Long section ${n + 1} of ${pages.length}` : "Long section",
      orientation: "landscape",
      scale: `${scale.words}, heights x ${times}`,
      draw: (space) =>
        page.flatMap((row, i) =>
          rowShapes(context, row, scale.m_per_mm, times, { ...space, y: space.y + i * high, height: high }),
        ),
    }));
  },
};

const heightOf = (strip: StripModel): number => strip.z_max_m - zLow(strip) + 0.3;

/** Lowest height that is drawn: water far below the ground would waste the sheet. */
function zLow(strip: StripModel): number {
  const ground = strip.ground.flatMap((g) => (g.z_m === null ? [] : [g.z_m]));
  return Math.max(strip.z_min_m, Math.min(...ground, ...strip.joints.map((j) => j.ground_m)) - 0.6);
}

function rowsOf({ results, plan }: PaperContext): Row[] {
  const long = ROW_M[plan.units];
  return results.strip.branches.flatMap((branch) => {
    const length = branch.to_m - branch.from_m;
    const plot = plan.plots.find((p) => p.id === branch.plot)?.name;
    return Array.from({ length: Math.max(1, Math.ceil(length / long - 1e-9)) }, (_, n) => ({
      branch: branch.id,
      title: `Branch ${branch.id}${plot ? ` to ${plot}` : ""}${n > 0 ? ", continued" : ""}`,
      from_m: branch.from_m + n * long,
      to_m: Math.min(branch.to_m, branch.from_m + (n + 1) * long),
      begin_m: branch.from_m,
    }));
  });
}

function rowShapes(context: PaperContext, row: Row, m_per_mm: number, times: number, box: Box): Shape[] {
  const { strip } = context.results;
  const low = zLow(strip);
  const bottom = box.y + box.height - FOOT;
  const at = (along: number, z: number): Point => [
    box.x + LEFT + (along - row.from_m) / m_per_mm,
    bottom - (z - low) / (m_per_mm / times),
  ];
  const inRow = (m: number): boolean => m >= row.from_m - 1e-6 && m <= row.to_m + 1e-6;
  const right = at(row.to_m, low)[0];
  return [
    words(row.title, [box.x + LEFT, box.y + 4], { size: 2.6, weight: "semibold" }),
    ...groundShapes(context, row, at, bottom),
    ...levelLines(context, at, row, box, right, low),
    ...jointShapes(context, row, at, inRow, bottom),
    ...cellShapes(context, row, at),
    boxShape(
      {
        x: box.x + LEFT,
        y: box.y + HEAD - 1,
        width: right - box.x - LEFT,
        height: bottom - box.y - HEAD + 1,
      },
      { stroke: { ink: "ink", width: 0.2 } },
    ),
  ];
}

function groundShapes(
  { results }: PaperContext,
  row: Row,
  at: (along: number, z: number) => Point,
  bottom: number,
): Shape[] {
  const points = results.strip.ground
    .filter((g) => g.at_m >= row.from_m - 0.6 && g.at_m <= row.to_m + 0.6)
    .flatMap((g) => (g.z_m === null ? [] : [at(Math.min(row.to_m, Math.max(row.from_m, g.at_m)), g.z_m)]));
  const joints = results.strip.joints.filter((j) => j.at_m >= row.from_m - 1e-6 && j.at_m <= row.to_m + 1e-6);
  if (points.length < 2) return [];
  const clipped = points.map(([x, y]): Point => [x, Math.min(y, bottom)]);
  const deck = joints.toSorted((a, b) => a.at_m - b.at_m).map((j) => at(j.at_m, j.deck_m));
  return [
    area([[...clipped, [clipped.at(-1)![0], bottom], [clipped[0]![0], bottom]]], { fill: "pale-earth" }),
    stroked(clipped, { ink: "earth", width: 0.35 }),
    stroked(deck, { ink: "ink", width: 0.6 }),
  ];
}

function levelLines(
  { plan, results }: PaperContext,
  at: (along: number, z: number) => Point,
  row: Row,
  box: Box,
  right: number,
  low: number,
): Shape[] {
  let last = -Infinity;
  return results.strip.levels
    .filter((l) => l.z_m > low)
    .toSorted((a, b) => b.z_m - a.z_m)
    .flatMap((level): Shape[] => {
      const [x, y] = at(row.from_m, level.z_m);
      const text = Math.max(y + 0.7, last + 2.5);
      last = text;
      return [
        stroked(
          [
            [x, y],
            [right, y],
          ],
          { ink: "water", width: 0.2, dash: [2, 1] },
        ),
        words(`${level.name} ${levelText(level.z_m, plan)}`, [box.x + LEFT - 1.5, text], {
          size: 1.8,
          ink: "water",
          anchor: "end",
        }),
      ];
    });
}

function jointShapes(
  { results, plan }: PaperContext,
  row: Row,
  at: (along: number, z: number) => Point,
  inRow: (m: number) => boolean,
  bottom: number,
): Shape[] {
  const show = shower(plan);
  let last = -Infinity;
  return results.strip.joints
    .filter((j) => inRow(j.at_m))
    .toSorted((a, b) => a.at_m - b.at_m)
    .flatMap((j): Shape[] => {
      const foot = at(j.at_m, j.ground_m);
      const head = at(j.at_m, j.deck_m);
      const text = `${j.id}  ${show(j.at_m - row.begin_m, "m")}`;
      const isRoom = head[0] - last > 2.6;
      if (isRoom) last = head[0];
      return [
        stroked([[foot[0], Math.min(foot[1], bottom)], head], { ink: "ink", width: 0.25 }),
        disc(head, 0.45, { fill: "ink" }),
        ...(isRoom
          ? [words(text, [head[0] + 0.7, bottom + 1.2 + textWidth(text, 1.7)], { size: 1.7, turn: -90 })]
          : []),
      ];
    });
}

/** Tags of the parts over the deck, where there is room. */
function cellShapes({ results }: PaperContext, row: Row, at: (along: number, z: number) => Point): Shape[] {
  return results.strip.cells
    .filter((c) => c.from_m >= row.from_m - 0.5 && c.to_m <= row.to_m + 0.5)
    .flatMap((c): Shape[] => {
      const [x0] = at(c.from_m, 0);
      const [x1] = at(c.to_m, 0);
      if (x1 - x0 < textWidth(c.part, 1.7) + 0.6) return [];
      const deck = results.strip.joints
        .filter((j) => Math.abs(j.at_m - c.from_m) < 0.3 || Math.abs(j.at_m - c.to_m) < 0.3)
        .map((j) => j.deck_m);
      const top = at(0, deck.length > 0 ? Math.max(...deck) : results.strip.z_max_m)[1];
      return [words(c.part, [(x0 + x1) / 2, top - 1.2], { size: 1.7, anchor: "middle", halo: true })];
    });
}
