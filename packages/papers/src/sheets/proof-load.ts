import type { DrawnLoad, FrameDrawing } from "@causey/engine/checks";
import { showQuantity, STANDARD_GRAVITY, type UnitSystem } from "@causey/engine/units";
import { EFFECTS, peakWords, showSmall, structureView } from "../drawings/index.ts";
import type { PaperContext } from "../set/context.ts";
import type { Block } from "../text/index.ts";

/** Minutes that the load stands: common practice, no source. */
const MINUTES = 15;

const line = (text: string): Block => ({ kind: "text", bullet: true, text });

/**
 * How one module is proof-loaded: the case that bends the longest one down most, once over, in the places that the
 * results give, and the sag they expect. The laid walkway is then proven as the cautions of the results say.
 */
export function proofBlocks(context: PaperContext): Block[] {
  const { plan, results } = context;
  const longest = longestFrame(results.proof.frames);
  return [
    { kind: "head", text: "Proof load before use" },
    ...(longest === null
      ? [line("Load and sag: not worked out yet: ask.")]
      : loadingBlocks(context, longest, plan.units)),
    line("Listen and look: cracks, creaking, slipping seats, sinking supports, screws that draw."),
    line(
      "Stop, and ask an engineer, if it sags clearly more than this, goes on sagging, or does not come back when the load is off.",
    ),
    ...results.cautions
      .filter((c) => c.startsWith("Before use, prove the walkway"))
      .map((c) => line(`Then: ${c}`)),
  ];
}

export const longestFrame = (frames: readonly FrameDrawing[]): FrameDrawing | null =>
  frames.reduce<FrameDrawing | null>((best, f) => (best && best.length_m >= f.length_m ? best : f), null);

function loadingBlocks(context: PaperContext, frame: FrameDrawing, units: UnitSystem): Block[] {
  const peak = frame.peaks.sag;
  const view = structureView(context, frame);
  const { place } = peakWords(view, "sag");
  const isOver = EFFECTS.some((effect) => (view.limits[effect]?.utilisation ?? 0) > 1);
  return [
    ...(isOver
      ? [line("This module does not meet what is asked: do not load it before that is settled.")]
      : []),
    line(`Take the longest module: ${frame.name}. Put it on its two ends, on firm ground.`),
    line(
      `Load it as asked, once over (${peak.load}): ${peak.loads.map((l) => loadWords(l, units)).join("; ")}.`,
    ),
    line(
      `Put half on first: ${showSmall(peak.value / 2, "m", units)} of sag. All of it: ${showSmall(peak.value, "m", units)}, at ${place}. Leave it ${MINUTES} minutes (common practice, no source).`,
    ),
  ];
}

/** One load with its place on the module; weights as masses, for sandbags and cans are filled by the scale. */
function loadWords({ x_m, y_m, weight_n }: DrawnLoad, units: UnitSystem): string {
  const side = y_m < 0 ? "right" : "left";
  const off =
    Math.abs(y_m) < 5e-4
      ? "on the middle line"
      : `${showQuantity(Math.abs(y_m), "m", units)} ${side} of the middle`;
  return `${showQuantity(weight_n / STANDARD_GRAVITY, "kg", units)} at ${showQuantity(x_m, "m", units)} from the start, ${off}`;
}
