import type { Raster } from "@causey/engine/site";
import { area, boxShape, disc, stroked, words, type Box, type Shape, type Stroke } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import { wrap } from "../text/index.ts";
import { waterStroke, type PlanGround } from "./plan-ground.ts";
import { signMark } from "./plan-walkway.ts";
import { levelText, partLength, shower } from "./show.ts";
import { WORK_BESIDE_M } from "./site-plan-constants.ts";
import { zoneShapes, zoneSymbols, type ZoneLook, type ZoneSymbol } from "./zone-look.ts";

export const LEGEND_WIDTH = 54;
const LINE = 5.4;
export const SAMPLE = 9;
const SIZE = 2.1;

export interface Entry {
  readonly words: string;
  readonly sample: (x: number, y: number) => Shape[];
}

/**
 * The legend: every symbol that the plan uses, the water lines with their values, and, where asked for, the
 * walkway's figures.
 */
export function legendShapes(
  context: PaperContext,
  ground: Pick<PlanGround, "step_m" | "water_notes">,
  box: Box,
  hasFigures: boolean,
): Shape[] {
  let y = box.y + 4.6;
  const shapes: Shape[] = [words("Legend", [box.x, box.y + 2.4], { weight: "semibold", size: 2.8 })];
  for (const entry of entriesOf(context, ground)) {
    const lines = wrap(entry.words, box.width - SAMPLE - 2.5, SIZE);
    shapes.push(
      ...entry.sample(box.x, y),
      ...lines.map((text, i) => words(text, [box.x + SAMPLE + 2.5, y + 2.6 + i * 2.6], { size: SIZE })),
    );
    y += Math.max(LINE, lines.length * 2.6 + 1.4);
  }
  const notes = [
    { title: "Heights", lines: [`on ${context.results.datum}; water predicted or read without waves.`] },
    ...(hasFigures ? [{ title: "The walkway", lines: figureLines(context) }] : []),
  ];
  for (const { title, lines } of notes) {
    y += 2.6;
    shapes.push(words(title, [box.x, y], { weight: "semibold", size: 2.4 }));
    for (const text of lines.flatMap((line) => wrap(line, box.width, SIZE))) {
      y += 2.75;
      shapes.push(words(text, [box.x, y], { size: SIZE }));
    }
    y += 1.4;
  }
  return shapes;
}

function entriesOf(
  { plan, site, results }: PaperContext,
  { step_m, water_notes }: Pick<PlanGround, "step_m" | "water_notes">,
): Entry[] {
  const noteOf = (id: string): string => (water_notes.has(id) ? `; ${water_notes.get(id)}` : "");
  return [
    { words: "module or platform; dot: joint over a support", sample: partSample },
    {
      words: `limit of work, ${levelText(WORK_BESIDE_M, plan)} beside walkway and supports`,
      sample: (x, y) => lineSample(x, y, { ink: "warning", width: 0.25, dash: [1.6, 1] }),
    },
    { words: "start, on firm ground", sample: startSample },
    { words: "plot with its keep-off circle", sample: plotSample },
    ...(results.route.dead_ends.some((e) => e.back_m > 0)
      ? [
          {
            words: "sign: last place to turn before a dead end",
            sample: (x: number, y: number) => signMark([x + SAMPLE / 2, y + 3]),
          },
        ]
      : []),
    ...zoneSymbols(plan.zones).map(zoneEntry),
    {
      words: `contours, ${levelText(step_m, plan)} apart, every fifth stronger`,
      sample: (x, y) => lineSample(x, y, { ink: "earth", width: 0.22 }),
    },
    ...plan.levels.map((level, n): Entry => ({
      words: `${level.name} ${levelText(level.z_m, plan)}, ${level.basis === "predicted" ? "predicted, no wind" : level.basis}, ${level.epoch.trim() === "" ? "years not known" : level.epoch}${meetsGround(site.terrain, level.z_m) ? "" : "; does not meet the ground shown"}${noteOf(level.id)}`,
      sample: (x, y) => lineSample(x, y, waterStroke(n)),
    })),
  ];
}

/** What the symbol of an area means. */
export const zoneEntry = (symbol: ZoneSymbol): Entry => ({
  words: symbol.words,
  sample: (x, y) => zoneShapes(dense(symbol.look), [sampleRing(x, y)]),
});

/** Whether a level lies between the lowest and the highest known ground. */
function meetsGround({ values }: Raster, z_m: number): boolean {
  let [hasLower, hasHigher] = [false, false];
  for (const z of values) {
    hasLower ||= z <= z_m;
    hasHigher ||= z >= z_m;
  }
  return hasLower && hasHigher;
}

/** The same figures as in the summary and the permit form: one value each. */
function figureLines({ plan, results }: PaperContext): string[] {
  const { evaluation: e } = results;
  const show = shower(plan);
  return [
    `Length ${show(e.length_m, "m")}; deck ${partLength(plan.kit.deck.width_mm / 1000, plan)} wide.`,
    `Least height of the underside over ground ${show(e.lowest_deck_clear_m, "m")}.`,
    `Shaded ${show(e.shaded_m2, "m2")}; touched by ${e.joints} supports ${show(e.contact_m2, "m2")}.`,
    `Laid ${plan.laying.from} to ${plan.laying.to}; taken out by ${plan.removal.by}.`,
  ];
}

/** A wide hatch drawn closer, so that a small sample shows it. */
const dense = (look: ZoneLook): ZoneLook =>
  look.hatch && look.hatch.gap > 2
    ? {
        ...look,
        hatch: {
          ...look.hatch,
          gap: look.hatch.gap / 2.6,
          ...(look.hatch.dash ? { dash: look.hatch.dash.map((d, i) => (i % 2 === 0 ? d : d / 2)) } : {}),
        },
      }
    : look;

const sampleRing = (x: number, y: number) =>
  [
    [x, y],
    [x + SAMPLE, y],
    [x + SAMPLE, y + 3.8],
    [x, y + 3.8],
  ] as const;

export const lineSample = (x: number, y: number, stroke: Stroke): Shape[] => [
  stroked(
    [
      [x, y + 1.9],
      [x + SAMPLE, y + 1.9],
    ],
    stroke,
  ),
];

const partSample = (x: number, y: number): Shape[] => [
  boxShape(
    { x, y: y + 0.7, width: SAMPLE, height: 2.4 },
    { stroke: { ink: "ink", width: 0.25 }, fill: "white" },
  ),
  disc([x, y + 1.9], 0.4, { fill: "ink" }),
  disc([x + SAMPLE, y + 1.9], 0.4, { fill: "ink" }),
];

export const startSample = (x: number, y: number): Shape[] => [
  area(
    [
      [
        [x + 4.5, y + 3.4],
        [x + 6.2, y + 0.5],
        [x + 2.8, y + 0.5],
      ],
    ],
    { fill: "ink" },
  ),
];

export const plotSample = (x: number, y: number): Shape[] => [
  disc([x + 4.5, y + 1.9], 1.8, { stroke: { ink: "plants", width: 0.25, dash: [1, 0.6] } }),
  boxShape(
    { x: x + 3.6, y: y + 1, width: 1.8, height: 1.8 },
    { stroke: { ink: "plants", width: 0.45 }, fill: "white" },
  ),
];
