import { boxShape, disc, stroked, words, area, type Box, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import { wrap } from "../text/index.ts";
import { levelText } from "./show.ts";
import { WORK_BESIDE_M } from "./site-plan-constants.ts";
import { zoneLooks, zoneOrder, zoneShapes } from "./zone-look.ts";

export const LEGEND_WIDTH = 52;
const LINE = 6;
const SAMPLE = 9;

interface Entry {
  readonly words: string;
  readonly sample: (x: number, y: number) => Shape[];
}

/** The legend: every symbol that the plan uses, then the water lines with their sources. */
export function legendShapes(context: PaperContext, contour_step_m: number, box: Box): Shape[] {
  const { plan } = context;
  const uses = zoneOrder.filter((use) => plan.zones.some((z) => z.use === use));
  const entries: Entry[] = [
    { words: "module, platform; dot: joint over a support", sample: partSample },
    {
      words: `limit of work, ${levelText(WORK_BESIDE_M, plan)} beside the walkway`,
      sample: (x, y) => lineSample(x, y, "warning", [1.6, 1], 0.25),
    },
    { words: "start, on firm ground", sample: startSample },
    { words: "plot with its keep-off circle", sample: plotSample },
    ...uses.map((use): Entry => ({
      words: zoneLooks[use].words,
      sample: (x, y) =>
        zoneShapes(use, [
          [
            [x, y],
            [x + SAMPLE, y],
            [x + SAMPLE, y + 4],
            [x, y + 4],
          ],
        ]),
    })),
    {
      words: `contours, ${levelText(contour_step_m, plan)} apart, every fifth stronger`,
      sample: (x, y) => lineSample(x, y, "earth", undefined, 0.2),
    },
    ...(plan.levels.length > 0
      ? [
          {
            words: "water level where it meets the ground",
            sample: (x: number, y: number) => lineSample(x, y, "water", [3, 1], 0.35),
          },
        ]
      : []),
  ];
  let y = box.y + 5;
  const shapes: Shape[] = [words("Legend", [box.x, box.y + 2.6], { weight: "semibold", size: 3 })];
  for (const entry of entries) {
    const lines = wrap(entry.words, box.width - SAMPLE - 3, 2.2);
    shapes.push(
      ...entry.sample(box.x, y),
      ...lines.map((text, i) => words(text, [box.x + SAMPLE + 2.5, y + 2.6 + i * 2.8], { size: 2.2 })),
    );
    y += Math.max(LINE, lines.length * 2.8 + 2);
  }
  return [...shapes, ...levelNotes(context, { ...box, y: y + 2 })];
}

/** Levels with value, basis, years and source, and the datum that all of them stand on. */
function levelNotes({ plan, results }: PaperContext, box: Box): Shape[] {
  const notes = [
    `Heights on ${results.datum}.`,
    ...plan.levels.map(
      (l) =>
        `${l.name} ${levelText(l.z_m, plan)}: ${l.basis === "predicted" ? "predicted, no wind" : l.basis}, ${l.epoch.trim() === "" ? "years not known" : l.epoch}; ${l.source}.`,
    ),
  ];
  let y = box.y;
  return [
    words("Water levels", [box.x, y], { weight: "semibold" }),
    ...notes.flatMap((note) => {
      y += 1;
      return wrap(note, box.width, 2).map((text) => {
        y += 2.6;
        return words(text, [box.x, y], { size: 2, ink: "second" });
      });
    }),
  ];
}

const lineSample = (
  x: number,
  y: number,
  ink: "warning" | "earth" | "water",
  dash: readonly number[] | undefined,
  width: number,
): Shape[] => [
  stroked(
    [
      [x, y + 2],
      [x + SAMPLE, y + 2],
    ],
    { ink, width, ...(dash ? { dash } : {}) },
  ),
];

const partSample = (x: number, y: number): Shape[] => [
  boxShape(
    { x, y: y + 1, width: SAMPLE, height: 2.4 },
    { stroke: { ink: "ink", width: 0.25 }, fill: "white" },
  ),
  disc([x, y + 2.2], 0.4, { fill: "ink" }),
  disc([x + SAMPLE, y + 2.2], 0.4, { fill: "ink" }),
];

const startSample = (x: number, y: number): Shape[] => [
  area(
    [
      [
        [x + 4.5, y + 0.4],
        [x + 6.1, y + 3.4],
        [x + 2.9, y + 3.4],
      ],
    ],
    { fill: "ink" },
  ),
];

const plotSample = (x: number, y: number): Shape[] => [
  disc([x + 4.5, y + 2], 2, { stroke: { ink: "plants", width: 0.25, dash: [1, 0.6] } }),
  boxShape(
    { x: x + 3.6, y: y + 1.1, width: 1.8, height: 1.8 },
    { stroke: { ink: "plants", width: 0.45 }, fill: "white" },
  ),
];
