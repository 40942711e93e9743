import { encode } from "uqr";
import { area, boxShape, words, type Box, type Point, type Shape } from "../scene/index.ts";
import { partLength, shower } from "../drawings/show.ts";
import type { PaperContext } from "../set/context.ts";
import type { Draft, Sheet } from "../set/sheet.ts";

const COLS = 3;
const HIGH = 27;

interface Label {
  readonly tag: string;
  readonly lines: readonly string[];
}

/** One label for each part: tag, distance along, and the tag as a QR code, so that a stray can be claimed. */
export const labelSheets: Sheet = {
  id: "labels",
  title: "Module labels",
  about: "Tag, distance along and QR code of every part, to cut out, laminate and screw on.",
  drafts: (context, room) => {
    const labels = labelsOf(context);
    const box = room.portrait;
    const perPage = COLS * Math.floor(box.height / HIGH);
    const pages = Array.from({ length: Math.ceil(labels.length / perPage) }, (_, n) =>
      labels.slice(n * perPage, (n + 1) * perPage),
    );
    return pages.map((page, n): Draft => ({
      title: pages.length > 1 ? `Module labels, ${n + 1} of ${pages.length}` : "Module labels",
      orientation: "portrait",
      scale: "not to scale",
      draw: (space) => page.flatMap((label, i) => labelShapes(context, label, cellOf(space, i))),
    }));
  },
};

const cellOf = (box: Box, i: number): Box => ({
  x: box.x + (i % COLS) * (box.width / COLS),
  y: box.y + Math.floor(i / COLS) * HIGH,
  width: box.width / COLS,
  height: HIGH,
});

function labelsOf({ results, plan }: PaperContext): Label[] {
  const show = shower(plan);
  return results.layout.parts.map((p) => ({
    tag: p.id,
    lines: [
      p.kind === "module"
        ? `module ${partLength(p.length_m, plan)}`
        : `platform ${partLength(p.side_m, plan)}`,
      `branch ${p.branch}, ${show(p.along_m, "m")} along`,
      p.kind === "module" ? `from ${p.from} to ${p.to}` : `entered from ${p.from}`,
    ],
  }));
}

function labelShapes({ plan }: PaperContext, label: Label, cell: Box): Shape[] {
  const code = encode(`${plan.id} ${label.tag}`, { ecc: "M", border: 0 });
  const side = 18;
  const left: Point = [cell.x + 2, cell.y + 4];
  const dot = side / code.size;
  const dark = code.data.flatMap((row, j) =>
    row.flatMap((on, i) => (on ? [square(left[0] + i * dot, left[1] + j * dot, dot)] : [])),
  );
  return [
    boxShape(
      { x: cell.x, y: cell.y, width: cell.width, height: cell.height },
      { stroke: { ink: "rule", width: 0.15, dash: [1, 1] } },
    ),
    area(dark, { fill: "ink" }),
    words(label.tag, [left[0] + side + 2.5, cell.y + 9], { size: 6, weight: "semibold" }),
    ...label.lines.map((text, i) =>
      words(text, [left[0] + side + 2.5, cell.y + 13 + i * 2.9], { size: 2.1 }),
    ),
    words(plan.papers.applicant || plan.site_name, [left[0] + side + 2.5, cell.y + 22.5], {
      size: 1.8,
      ink: "second",
    }),
  ];
}

const square = (x: number, y: number, side: number): readonly Point[] => [
  [x, y],
  [x + side, y],
  [x + side, y + side],
  [x, y + side],
];
