import type { FrameDrawing } from "@causey/engine/checks";
import {
  EFFECTS,
  governingEffect,
  moduleStructure,
  peakWords,
  structureView,
  type StructureView,
} from "../drawings/index.ts";
import type { Box, Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import type { Draft } from "../set/sheet.ts";
import { flow, type Block } from "../text/index.ts";
import { partWords } from "./working-blocks.ts";

/** Column of words at the right, and the gap before it [mm]. */
const WORDS = 66;
const GAP = 6;
const LOOK = { size: 2.4, lines: 2 };
/** Lower than this a strip shows no shape [mm]. */
const LEAST_STRIP = 18;

/** Each length of module as a structure, one page a length. */
export const structurePages = (context: PaperContext): Draft[] =>
  context.results.proof.frames.map((frame) => ({
    title: `Structure: ${frame.name}`,
    orientation: "landscape",
    scale: "not to scale",
    draw: (box) => pageShapes(context, frame, box),
  }));

function pageShapes(context: PaperContext, frame: FrameDrawing, box: Box): Shape[] {
  const view = structureView(context, frame);
  const words = { ...box, x: box.x + box.width - WORDS, width: WORDS };
  return [...fittedPicture(view, box), ...(flow(peakBlocks(view), words, 2.5)[0] ?? [])];
}

/** The drawing as wide as the page allows without pressing the strips flat: a wide deck takes height. */
function fittedPicture(view: StructureView, box: Box): readonly Shape[] {
  const loaded = governingEffect(view);
  const heightOf = (width: number): number =>
    moduleStructure(view, loaded, { ...box, width }, { ...LOOK, strip: 0 }).height;
  let width = box.width - WORDS - GAP;
  while (width > 80 && (box.height - heightOf(width)) / EFFECTS.length < LEAST_STRIP) width -= 5;
  const strip = Math.min(30, (box.height - heightOf(width)) / EFFECTS.length);
  return moduleStructure(view, loaded, { ...box, width }, { ...LOOK, strip }).shapes;
}

/** The three peaks in words, beside the drawing. */
function peakBlocks(view: StructureView): Block[] {
  const { frame } = view;
  return [
    { kind: "head", text: "Peaks" },
    ...EFFECTS.flatMap((effect): Block[] => {
      const peak = peakWords(view, effect);
      return [
        { kind: "rows", rows: [[peak.title, peak.value]] },
        { kind: "text", text: `At ${peak.place}.` },
        { kind: "text", text: `${peak.load}; ${peak.ends}.` },
        {
          kind: "text",
          quiet: true,
          text: peak.limit === null ? "No limit known for this length." : `${peak.limit}.`,
        },
        { kind: "space", height: 2 },
      ];
    }),
    {
      kind: "text",
      quiet: true,
      text: "Moment and shear hold own weight too; sag is that of the load. Solid: the stringer that governs; dashed: the others. Ovals: feet; bars: wheels.",
    },
    { kind: "text", text: `Parts: ${partWords(frame.parts)}.` },
  ];
}
