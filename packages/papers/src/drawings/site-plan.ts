import { roundScale, type Scale } from "../frame/index.ts";
import type { Box } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import type { Draft, Room, Sheet } from "../set/sheet.ts";
import { legendShapes, LEGEND_WIDTH } from "./legend.ts";
import { matchLines, matchWords } from "./match-lines.ts";
import { planGround, type PlanGround } from "./plan-ground.ts";
import { mapBox, planSheet } from "./plan-sheet.ts";
import { coverWithTiles, neighbours } from "./tiles.ts";
import { vicinityDraft } from "./vicinity.ts";
import { extentAround, extentOfView, type Extent, type SheetView } from "./view.ts";

/** Room around the walkway on the plan [m]. */
const AROUND_M = 12;

/** Ground around a start or plot that its detail sheet shows too [m]. */
const NAME_ROOM_M = 4;

/** A plan coarser than this gets detail sheets at this scale, which shows every tag [metres for one millimetre]. */
const READABLE = {
  us: { m_per_mm: (40 * 0.3048) / 25.4, words: "1 in = 40 ft" },
  metric: { m_per_mm: 0.5, words: "1 : 500" },
} as const satisfies Record<string, Scale>;

/** Vicinity and key map, the whole walkway on one sheet, and details with match lines where that one is too small. */
export const sitePlan: Sheet = {
  id: "site-plan",
  title: "Site plan",
  about: "Ground, regulated areas under their own symbols, walkway, water lines, parcels, limit of work.",
  drafts: (context, room) => {
    const extent = planExtent(context);
    const ground = planGround(context, { extent, m_per_mm: wholePerMm(room, extent, "landscape") });
    const whole = overview(context, room, extent, ground);
    const detail = details(context, room, ground, whole.scale);
    return [vicinityDraft(context, room, extent, detail.windows), whole.draft, ...detail.drafts];
  },
};

function planExtent({ results, plan }: PaperContext): Extent {
  const points = [
    ...results.layout.parts.flatMap((p) => p.outline.flat(2)),
    ...[...plan.starts, ...plan.plots].map((p) => [p.x, p.y] as const),
  ];
  return extentAround(points, AROUND_M) ?? [0, 0, 100, 100];
}

/** Every part, start and plot, with room for the names of the places [m]. */
function shownOnDetails({ results, plan }: PaperContext): Extent[] {
  const parts = results.layout.parts.map((p) => extentAround(p.outline.flat(2), 0.3)!);
  const places = [...plan.starts, ...plan.plots].map((p) => extentAround([[p.x, p.y]], NAME_ROOM_M)!);
  return [...parts, ...places];
}

const legendBox = (space: Box): Box => ({
  x: space.x + space.width - LEGEND_WIDTH,
  y: space.y,
  width: LEGEND_WIDTH,
  height: space.height,
});

/** Metres for one millimetre at which an extent fills the map of a page. */
function wholePerMm(room: Room, [w, s, e, n]: Extent, orientation: Draft["orientation"]): number {
  const box = mapBox(room[orientation]);
  return Math.max((e - w) / box.width, (n - s) / box.height);
}

function overview(
  context: PaperContext,
  room: Room,
  extent: Extent,
  ground: PlanGround,
): { readonly draft: Draft; readonly scale: Scale } {
  const perMm = (orientation: Draft["orientation"]): number => wholePerMm(room, extent, orientation);
  const orientation = perMm("landscape") <= perMm("portrait") ? "landscape" : "portrait";
  const scale = roundScale(perMm(orientation), 1, context.plan.units);
  const middle = [(extent[0] + extent[2]) / 2, (extent[1] + extent[3]) / 2] as const;
  return {
    scale,
    draft: {
      title: "Site plan, the whole walkway",
      orientation,
      scale: scale.words,
      draw: (space) => [
        ...planSheet(context, { box: mapBox(space), m_per_mm: scale.m_per_mm, middle }, scale, ground),
        ...legendShapes(context, ground, legendBox(space), true),
      ],
    },
  };
}

function details(
  context: PaperContext,
  room: Room,
  ground: PlanGround,
  whole: Scale,
): { readonly drafts: readonly Draft[]; readonly windows: readonly Extent[] } {
  const scale = READABLE[context.plan.units];
  if (whole.m_per_mm <= scale.m_per_mm + 1e-9) return { drafts: [], windows: [] };
  const parts = shownOnDetails(context);
  const per = scale.m_per_mm;
  const options = (["landscape", "portrait"] as const).map((orientation) => {
    const box = mapBox(room[orientation]);
    return { orientation, tiles: coverWithTiles(parts, [box.width * per, box.height * per]) };
  });
  const { orientation, tiles } = options.reduce((a, b) => (b.tiles.length < a.tiles.length ? b : a));
  const viewOf = (space: Box, n: number): SheetView => ({
    box: mapBox(space),
    m_per_mm: per,
    middle: tiles[n]!.middle,
  });
  return {
    windows: tiles.map((_, n) => extentOfView(viewOf(room[orientation], n))),
    drafts: tiles.map((tile, n) => ({
      title: `Site plan, detail ${n + 1} of ${tiles.length}`,
      orientation,
      scale: scale.words,
      draw: (space) => [
        ...planSheet(
          context,
          viewOf(space, n),
          scale,
          ground,
          matchWords(mapBox(space), neighbours(tile, tiles)),
        ),
        ...matchLines(mapBox(space), neighbours(tile, tiles)),
        ...legendShapes(context, ground, legendBox(space), false),
      ],
    })),
  };
}
