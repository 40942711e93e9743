import { northArrow, roundScale, scaleBar } from "../frame/index.ts";
import { boxShape, stroked, words, type Box, type Point, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import type { Draft, Room } from "../set/sheet.ts";
import { wrap } from "../text/index.ts";
import { rasterExtent } from "@causey/engine/site";
import { LabelRoom } from "./label-room.ts";
import { LEGEND_WIDTH } from "./legend.ts";
import { mapBox } from "./plan-sheet.ts";
import { keepOffWalkway, placeShapes } from "./plan-walkway.ts";
import { clearing, zoneLabels, zonesOf } from "./plan-zones.ts";
import { toSheet, type Extent, type SheetView } from "./view.ts";

/** The whole site with parcels, owners, water and the walkway as a line, and the windows of the detail sheets. */
export function vicinityDraft(
  context: PaperContext,
  room: Room,
  walkway: Extent,
  windows: readonly Extent[],
): Draft {
  const [w, s, e, n] = siteExtent(context, walkway);
  const box = mapBox(room.landscape);
  const scale = roundScale(Math.max((e - w) / box.width, (n - s) / box.height), 1, context.plan.units);
  const middle = [(w + e) / 2, (s + n) / 2] as const;
  return {
    title: "Vicinity and key map",
    orientation: "landscape",
    scale: scale.words,
    draw: (space) => {
      const view = { box: mapBox(space), m_per_mm: scale.m_per_mm, middle };
      const bar: Point = [view.box.x + 6, view.box.y + view.box.height - 5];
      const barBox = { x: bar[0] - 4, y: bar[1] - 3.4, width: 54, height: 8.2 };
      const northBox = { x: view.box.x + view.box.width - 16.5, y: view.box.y + 1, width: 16, height: 22 };
      return [
        { kind: "clip", box: view.box, shapes: vicinityShapes(context, view, windows, [barBox, northBox]) },
        boxShape(view.box, { stroke: { ink: "ink", width: 0.3 } }),
        clearing(barBox),
        ...scaleBar(scale, bar, context.plan.units),
        clearing(northBox),
        ...northArrow([view.box.x + view.box.width - 8.5, view.box.y + 6]),
        ...placeNotes(context, {
          x: space.x + space.width - LEGEND_WIDTH,
          y: space.y,
          width: LEGEND_WIDTH,
          height: space.height,
        }),
      ];
    },
  };
}

function siteExtent({ site }: PaperContext, walkway: Extent): Extent {
  const [w, s, e, n] = rasterExtent(site.terrain);
  return [Math.min(w, walkway[0]), Math.min(s, walkway[1]), Math.max(e, walkway[2]), Math.max(n, walkway[3])];
}

function vicinityShapes(
  context: PaperContext,
  view: SheetView,
  windows: readonly Extent[],
  kept: readonly Box[],
): Shape[] {
  const labels = new LabelRoom(view.box);
  for (const box of kept) labels.keep(box);
  keepOffWalkway(context, view, labels);
  const places = placeShapes(context, view, labels);
  const frames = windows.flatMap((extent, n) => windowShapes(extent, n, view, labels));
  const names = zoneLabels(context, view, labels);
  return [...zonesOf(context, view), ...lineOfWalkway(context, view), ...frames, ...names, ...places];
}

function windowShapes([w, s, e, n]: Extent, number: number, view: SheetView, labels: LabelRoom): Shape[] {
  const [x, y] = toSheet(view, [w, n]);
  const [x1, y1] = toSheet(view, [e, s]);
  return [
    boxShape(
      { x, y, width: x1 - x, height: y1 - y },
      { stroke: { ink: "ink", width: 0.3, dash: [8, 1.5, 1.5, 1.5] } },
    ),
    ...labels.label(
      `detail ${number + 1}`,
      [
        [x + 6, y + 2.4],
        [x1 - 6, y1 - 2.4],
        [x1 - 6, y + 2.4],
        [x + 6, y1 - 2.4],
      ],
      {
        size: 2.3,
        weight: "semibold",
      },
    ),
  ];
}

/** The walkway as one thick line along its joints. */
export function lineOfWalkway({ results }: PaperContext, view: SheetView): Shape[] {
  const joints = new Map(results.layout.joints.map((j) => [j.id, j]));
  return results.layout.parts.flatMap((part) => {
    const ends = part.kind === "module" ? [part.to] : Object.values(part.exits);
    const from = joints.get(part.from);
    return ends.flatMap((id) => {
      const to = joints.get(id);
      if (!from || !to) return [];
      return [
        stroked([toSheet(view, [from.x, from.y]), toSheet(view, [to.x, to.y])], { ink: "ink", width: 0.9 }),
      ];
    });
  });
}

/** Where the site lies, who owns what, who adjoins. */
function placeNotes({ plan, results }: PaperContext, box: Box): Shape[] {
  const owners = plan.zones.flatMap((z) =>
    z.use === "parcel" ? [`${z.name}: ${z.owner ?? "owner not told"}`] : [],
  );
  const starts = plan.starts.map((s) => `${s.name}: east ${s.x.toFixed(1)} m, north ${s.y.toFixed(1)} m`);
  const blocks: readonly (readonly [string, readonly string[]])[] = [
    ["Place", [plan.site_name, `Waterbody: ${plan.papers.waterbody || "not told yet"}`]],
    ["Coordinates of the start", [...starts, `System: ${results.crs}`]],
    ["Parcels and owners", owners.length > 0 ? owners : ["none told yet"]],
    ["Adjoining owners", plan.papers.adjoining.length > 0 ? plan.papers.adjoining : ["none told yet"]],
  ];
  let y = box.y + 3;
  return blocks.flatMap(([title, lines]): Shape[] => {
    const shapes: Shape[] = [words(title, [box.x, y], { weight: "semibold" })];
    for (const text of lines.flatMap((line) => wrap(line, box.width, 2.2))) {
      y += 3.1;
      shapes.push(words(text, [box.x, y], { size: 2.2 }));
    }
    y += 6;
    return shapes;
  });
}
