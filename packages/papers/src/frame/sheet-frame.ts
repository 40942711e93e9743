import type { Plan, Results } from "@causey/engine/plan";
import {
  bold,
  boxShape,
  stroked,
  thin,
  words,
  type Box,
  type Point,
  type Scene,
  type Shape,
} from "../scene/index.ts";
import type { Draft, Room } from "../set/sheet.ts";
import { textWidth, wrap } from "../text/index.ts";

/** Paper sizes in portrait [mm]: ISO 216 A4, and US letter of 8.5 by 11 in. */
const PAPER = { a4: [210, 297], letter: [215.9, 279.4] } as const;
/** Margins that a permit office asks for (drawing checklist of a Corps of Engineers district): 1 in at the top, 1/2 in elsewhere [mm]. */
const TOP = 25.4;
const SIDE = 12.7;
const BLOCK = 25;
const CHECK = 7;

export type PaperSize = keyof typeof PAPER;

const sizeOf = (paper: PaperSize, orientation: Draft["orientation"]): readonly [number, number] => {
  const [w, h] = PAPER[paper];
  return orientation === "portrait" ? [w, h] : [h, w];
};

const frameBox = (paper: PaperSize, orientation: Draft["orientation"]): Box => {
  const [width, height] = sizeOf(paper, orientation);
  return { x: SIDE, y: TOP, width: width - 2 * SIDE, height: height - TOP - SIDE };
};

/** The space for a drawing inside the frame, over the print check and the title block. */
export function roomOf(paper: PaperSize): Room {
  const inside = (orientation: Draft["orientation"]): Box => {
    const frame = frameBox(paper, orientation);
    return {
      x: frame.x + 4,
      y: frame.y + 4,
      width: frame.width - 8,
      height: frame.height - BLOCK - CHECK - 8,
    };
  };
  return { portrait: inside("portrait"), landscape: inside("landscape") };
}

export interface FrameWords {
  /** Letter of the sealed revision that the papers show; null for a draft. */
  readonly revision: string | null;
  readonly plan: Plan;
  readonly results: Results;
  readonly sheet: number;
  readonly sheets: number;
}

/** A page in its frame: drawing, print check, caution and title block. */
export function framed(id: string, draft: Draft, paper: PaperSize, about: FrameWords): Scene {
  const [width, height] = sizeOf(paper, draft.orientation);
  const frame = frameBox(paper, draft.orientation);
  const block: Box = {
    x: frame.x,
    y: frame.y + frame.height - BLOCK,
    width: frame.width,
    height: BLOCK,
  };
  return {
    id,
    title: draft.title,
    width,
    height,
    shapes: [
      ...draft.draw(roomOf(paper)[draft.orientation]),
      ...checkBar({ x: frame.x, y: block.y - CHECK, width: frame.width, height: CHECK }),
      boxShape(frame, { stroke: bold }),
      ...titleBlock(block, draft, about),
    ],
  };
}

/** A bar of exactly 100 mm: a print that was scaled shows it. */
function checkBar(box: Box): Shape[] {
  const x = box.x + 4;
  const y = box.y + 4.4;
  const ticks = Array.from({ length: 11 }, (_, i): Shape =>
    stroked(
      [
        [x + i * 10, y - (i % 5 === 0 ? 1.6 : 0.9)],
        [x + i * 10, y],
      ],
      thin,
    ),
  );
  const from: Point = [x, y];
  const to: Point = [x + 100, y];
  return [
    stroked([from, to], { ink: "ink", width: 0.3 }),
    ...ticks,
    words("100 mm: measure it, a scaled print is not to scale", [x + 103, y], { size: 2, ink: "second" }),
  ];
}

const CAUTION =
  "Causey supports judgement; it does not replace a licensed engineer, the local code or the permit officer. Confirm grades, ground strength and levels on site.";

interface Field {
  readonly label: string;
  readonly value: string;
  /** Share of the row. */
  readonly share: number;
}

function titleBlock(box: Box, draft: Draft, { plan, results, sheet, sheets, revision }: FrameWords): Shape[] {
  const { papers } = plan;
  const told = (text: string): string => (text.trim() === "" ? "not told yet" : text);
  const rows: readonly (readonly Field[])[] = [
    [
      { label: "Activity", value: plan.name, share: 4 },
      { label: "Sheet", value: draft.title, share: 4 },
      { label: "No.", value: `sheet ${sheet} of ${sheets}`, share: 2 },
      { label: "Plan", value: `${plan.id}, ${revision === null ? "draft" : `rev ${revision}`}`, share: 2 },
    ],
    [
      { label: "Applicant", value: applicantWords(plan), share: 3 },
      { label: "Waterbody", value: told(papers.waterbody), share: 3 },
      { label: "File no.", value: told(papers.file_no), share: 2 },
      { label: "Date", value: papers.date ?? "not dated", share: 2 },
    ],
    [
      { label: "Prepared by", value: told(papers.prepared_by), share: 3 },
      { label: "Coordinates", value: results.crs, share: 3 },
      { label: "Vertical datum", value: results.datum, share: 2 },
      { label: "Scale", value: draft.scale, share: 2 },
    ],
  ];
  const high = 6.4;
  return [
    boxShape(box, { stroke: thin, fill: "white" }),
    ...rows.flatMap((fields, i) => fieldRow(fields, { ...box, y: box.y + i * high, height: high })),
    ...wrap(CAUTION, box.width - 4, 1.9)
      .slice(0, 2)
      .map((text, i) =>
        words(text, [box.x + 2, box.y + 3 * high + 2.6 + i * 2.4], { size: 1.9, ink: "second" }),
      ),
  ];
}

/** Who applies; where that is not told yet, who asked for access. */
function applicantWords({ papers, request }: Plan): string {
  if (papers.applicant.trim() !== "") return papers.applicant;
  const asked = [request.requester, request.organisation].map((s) => s.trim()).filter((s) => s !== "");
  return asked.length > 0 ? `asked by ${asked.join(", ")}` : "not told yet";
}

function fieldRow(fields: readonly Field[], box: Box): Shape[] {
  const sum = fields.reduce((s, f) => s + f.share, 0);
  let x = box.x;
  const shapes: Shape[] = [];
  for (const field of fields) {
    const width = (field.share / sum) * box.width;
    shapes.push(
      boxShape({ ...box, x, width }, { stroke: { ink: "ink", width: 0.15 } }),
      words(field.label, [x + 1.2, box.y + 2.1], { size: 1.7, ink: "second" }),
      words(fitted(field.value, width - 2.4), [x + 1.2, box.y + 5.1], { weight: "semibold" }),
    );
    x += width;
  }
  return shapes;
}

/** The text cut with an ellipsis where it would leave its field. */
function fitted(text: string, width: number): string {
  if (textWidth(text, 2.6, "semibold") <= width) return text;
  let cut = text;
  while (cut.length > 1 && textWidth(`${cut}…`, 2.6, "semibold") > width) cut = cut.slice(0, -1);
  return `${cut.trimEnd()}…`;
}
