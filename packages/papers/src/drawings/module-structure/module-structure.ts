import { M_PER_FT } from "@causey/engine/units";
import { stroked, words, type Box, type Point, type Shape } from "../../scene/index.ts";
import { wrap } from "../../text/index.ts";
import { niceTicks } from "../../chart/index.ts";
import { effectStrip } from "./effect-strip.ts";
import { modulePlan } from "./module-plan.ts";
import { EFFECTS, effectTitles, peakWords, type Effect, type StructureView } from "./view.ts";

/** The drawing with the places of its peaks, for a page that lets the reader point at them. */
export interface StructurePicture {
  readonly shapes: readonly Shape[];
  readonly peaks: Readonly<Record<Effect, Point>>;
  /** Height that it takes [mm]. */
  readonly height: number;
}

export interface PictureLook {
  /** Height of the type [mm]. */
  readonly size: number;
  /** Height of one strip [mm]. */
  readonly strip: number;
  /** Lines kept for the words over the plan, so that nothing moves when they change. */
  readonly lines: number;
}

const SHEET_LOOK: PictureLook = { size: 2.5, strip: 26, lines: 2 };

/**
 * One length of module as a structure: plan with the loads that make the peak of `loaded`, and under it, along the same
 * length, the envelopes of bending moment, shear and sag with their peaks and limits.
 *
 * box  upper left corner and width are taken; `height` tells what it took
 */
export function moduleStructure(
  view: StructureView,
  loaded: Effect,
  box: Pick<Box, "x" | "y" | "width">,
  look: PictureLook = SHEET_LOOK,
): StructurePicture {
  const { size, strip, lines } = look;
  const left = size * 5.2;
  const x = box.x + left;
  const per_m = (box.width - left - 3) / view.widest_m;
  const head = lines * size * 1.35 + size;
  const deck = view.deck_width_m * per_m;
  const middle = box.y + head + deck / 2;
  const first = middle + deck / 2 + size;
  const right = box.x + box.width;
  const strips = EFFECTS.map((effect, i) =>
    effectStrip(view, effect, { x, per_m, top: first + i * strip, height: strip, size, right }),
  );
  const foot = first + EFFECTS.length * strip + size * 0.6;
  const peaks = Object.fromEntries(EFFECTS.map((effect, i) => [effect, strips[i]!.peak] as const)) as Record<
    Effect,
    Point
  >;
  const rows = view.frame.rows_x_m.map((row) =>
    stroked(
      [
        [x + row * per_m, first],
        [x + row * per_m, foot],
      ],
      { ink: "rule", width: 0.12 },
    ),
  );
  return {
    peaks,
    height: foot + size * 3 - box.y,
    shapes: [
      ...headShapes(view, loaded, box, look),
      ...rows,
      stroked([[peaks[loaded][0], middle + deck / 2], peaks[loaded]], {
        ink: "closed",
        width: 0.2,
        dash: [0.8, 0.8],
      }),
      ...strips.flatMap((s) => s.shapes),
      ...modulePlan(view, loaded, { x, middle, per_m, size }),
      ...distanceScale(view, { x, foot, per_m, size }),
    ],
  };
}

function headShapes(
  view: StructureView,
  loaded: Effect,
  box: Pick<Box, "x" | "y" | "width">,
  { size, lines }: PictureLook,
): Shape[] {
  const { value, load, ends } = peakWords(view, loaded);
  const text = `Loads where they make the largest ${effectTitles[loaded].toLowerCase()}, ${value}: ${load}; ${ends}.`;
  return wrap(text, box.width, size)
    .slice(0, lines)
    .map((line, i) => words(line, [box.x, box.y + size + i * size * 1.35], { size }));
}

/** Distance from the module's start, in whole feet or in parts of a metre. */
function distanceScale(
  { frame, units }: StructureView,
  {
    x,
    foot,
    per_m,
    size,
  }: { readonly x: number; readonly foot: number; readonly per_m: number; readonly size: number },
): Shape[] {
  const unit_m = units === "us" ? M_PER_FT : 1;
  const long = frame.length_m / unit_m;
  const about = Math.max(2, (frame.length_m * per_m) / (size * 9));
  return [
    stroked(
      [
        [x, foot],
        [x + frame.length_m * per_m, foot],
      ],
      { ink: "ink", width: 0.2 },
    ),
    ...niceTicks(0, long, about).flatMap((v): Shape[] => {
      const at = x + v * unit_m * per_m;
      return [
        stroked(
          [
            [at, foot],
            [at, foot + size * 0.5],
          ],
          { ink: "ink", width: 0.2 },
        ),
        words(v === 0 ? `0 ${units === "us" ? "ft" : "m"}` : String(v), [at, foot + size * 1.7], {
          size: size * 0.9,
          anchor: "middle",
          ink: "second",
        }),
      ];
    }),
  ];
}
