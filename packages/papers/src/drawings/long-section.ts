import { M_PER_FT, type UnitSystem } from "@causey/engine/units";
import { roundScale, type Scale } from "../frame/index.ts";
import type { Box, Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import type { Draft, Sheet } from "../set/sheet.ts";
import {
  jointsOf,
  profileRow,
  ROW_FOOT,
  ROW_HEAD,
  ROW_LEFT,
  ROW_TOP,
  type ProfileRow,
  type Stretch,
} from "./profile-row.ts";

/** Ground that one row covers at least, where the branch is as long [m]. */
const ROW_M: Readonly<Record<UnitSystem, number>> = { us: 240 * M_PER_FT, metric: 75 };
/** How much larger heights are drawn: the most of these that needs no more pages than a smaller one. */
const TIMES = [10, 5, 4, 3, 2, 1] as const;
/** A smaller factor than this is taken only where a single row would not fit a page. */
const LEAST_TIMES = 4;

/** Sections along every branch, wrapped over rows and pages, heights drawn larger. */
export const longSection: Sheet = {
  id: "long-section",
  title: "Long section",
  about: "Ground, deck, supports and water levels along every branch, with the joints' tags and distances.",
  drafts: (context, room) => {
    const box = room.landscape;
    const longest = Math.max(0, ...context.results.strip.branches.map((b) => b.to_m - b.from_m));
    if (longest === 0) return [];
    const { units } = context.plan;
    const scale = roundScale(Math.min(longest, ROW_M[units]), box.width - ROW_LEFT - 2, units);
    const rows = rowsOf(context, (box.width - ROW_LEFT - 2) * scale.m_per_mm);
    const times = timesFor(rows, scale, box);
    return pagesOf(rows, scale, times, box).map((page, n, all) =>
      draftOf(context, page, scale, times, n, all.length),
    );
  },
};

function timesFor(rows: readonly ProfileRow[], scale: Scale, box: Box): number {
  const fitting = TIMES.filter((t) => rows.every((row) => heightOf(row, scale, t) <= box.height));
  const wanted = fitting.filter((t) => t >= LEAST_TIMES);
  const options = wanted.length > 0 ? wanted : fitting.slice(0, 1);
  const pages = options.map((t) => pagesOf(rows, scale, t, box).length);
  return options[pages.indexOf(Math.min(...pages))] ?? 1;
}

const heightOf = (row: ProfileRow, scale: Scale, times: number): number =>
  ROW_HEAD + ROW_TOP + ROW_FOOT + ((row.high_m - row.low_m) * times) / scale.m_per_mm;

function pagesOf(rows: readonly ProfileRow[], scale: Scale, times: number, box: Box): ProfileRow[][] {
  const pages: ProfileRow[][] = [];
  let left = 0;
  for (const row of rows) {
    const height = heightOf(row, scale, times);
    if (height > left || pages.length === 0) {
      pages.push([]);
      left = box.height;
    }
    pages.at(-1)!.push(row);
    left -= height;
  }
  return pages;
}

function draftOf(
  context: PaperContext,
  rows: readonly ProfileRow[],
  scale: Scale,
  times: number,
  n: number,
  of: number,
): Draft {
  return {
    title: of > 1 ? `Long section, ${n + 1} of ${of}` : "Long section",
    orientation: "landscape",
    scale: times === 1 ? scale.words : `${scale.words}, heights x ${times}`,
    draw: (space) => {
      let y = space.y;
      return rows.flatMap((row): Shape[] => {
        const height = heightOf(row, scale, times);
        const shapes = profileRow(context, row, scale.m_per_mm, times, { ...space, y, height });
        y += height;
        return shapes;
      });
    },
  };
}

/** Branches cut into rows at joints, so that no part is torn; each row has its own range of heights. */
function rowsOf(context: PaperContext, long_m: number): ProfileRow[] {
  const { results, plan } = context;
  return results.strip.branches.flatMap((branch) => {
    const plot = plan.plots.find((p) => p.id === branch.plot)?.name;
    const parts = results.strip.cells.filter((c) => c.branch === branch.id);
    const ends = parts.map((c) => c.to_m);
    const rows: ProfileRow[] = [];
    let from = branch.from_m;
    const share = evenShare(
      branch.to_m - branch.from_m,
      long_m,
      Math.max(...parts.map((c) => c.to_m - c.from_m)),
    );
    while (from < branch.to_m - 0.01) {
      const fitting = ends.filter((e) => e > from + 0.01 && e <= from + share + 0.01);
      const to = Math.min(branch.to_m, fitting.length > 0 ? Math.max(...fitting) : from + long_m);
      const stretch = { branch: branch.id, from_m: from, to_m: to };
      const range = rangeOf(context, stretch);
      const title = `Branch ${branch.id}${plot ? ` to ${plot}` : ""}${from > branch.from_m ? ", continued" : ""}`;
      if (range) rows.push({ ...stretch, title, begin_m: branch.from_m, ...range });
      from = to;
    }
    return rows;
  });
}

/** Length of the rows of one branch, all about alike, so that none is a stub [m]. */
const evenShare = (length_m: number, long_m: number, longestPart_m: number): number => {
  const rows = Math.ceil(length_m / long_m - 1e-9);
  return Math.min(long_m, length_m / rows + longestPart_m);
};

/** Heights that a row shows: ground and deck, and the water levels near them [m]; null where nothing is known. */
function rangeOf(
  context: PaperContext,
  row: Stretch,
): { readonly low_m: number; readonly high_m: number } | null {
  const { strip } = context.results;
  const joints = jointsOf(context, row);
  const ground = strip.ground.flatMap((g) =>
    g.z_m !== null && g.at_m >= row.from_m && g.at_m < row.to_m ? [g.z_m] : [],
  );
  const lows = [...ground, ...joints.map((j) => j.ground_m)];
  if (lows.length === 0) return null;
  const low = Math.min(...lows);
  const high = Math.max(...lows, ...joints.map((j) => j.deck_m));
  const levels = strip.levels.map((l) => l.z_m).filter((z) => z > low - 0.5 && z < high + 0.8);
  return {
    low_m: Math.min(low, ...levels) - 0.15,
    high_m: Math.max(high + 0.15, ...levels.map((z) => z + 0.1)),
  };
}
