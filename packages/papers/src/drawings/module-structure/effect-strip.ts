import { disc, hatched, stroked, words, type Point, type Shape } from "../../scene/index.ts";
import { textWidth } from "../../text/index.ts";
import {
  effectTitles,
  effectUnits,
  peakWords,
  showSmall,
  signedPeak,
  type Effect,
  type StructureView,
} from "./view.ts";

/** A limit this far over the peak would press the lines flat: it is told in words alone. */
const FARTHEST_LIMIT = 2.4;

/** One strip on the sheet: the module's start, millimetres for one metre, and the heights it may use. */
export interface StripPlace {
  readonly x: number;
  readonly per_m: number;
  readonly top: number;
  readonly height: number;
  readonly size: number;
  /** Right edge of the room for words. */
  readonly right: number;
}

export interface Strip {
  readonly shapes: readonly Shape[];
  readonly peak: Point;
}

interface Scale {
  readonly at: (along: number, value: number) => Point;
  readonly zero: number;
}

/** Envelope of one effect along the module; moments and sags hang down, as the module bends. */
export function effectStrip(view: StructureView, effect: Effect, place: StripPlace): Strip {
  const { frame } = view;
  const { stringer } = frame.peaks[effect];
  const lines = frame[effect];
  const scale = scaleOf(view, effect, place);
  const line = (values: readonly number[]): Point[] =>
    values.map((v, i) => scale.at(frame.stations_m[i]!, v));
  const others = frame.stringers_y_m.flatMap((_, i) => (i === stringer ? [] : [i]));
  const [most, least] = [line(lines.most[stringer]!), line(lines.least[stringer]!)];
  const ring = [...most, ...least.toReversed()];
  const value = signedPeak(frame, effect);
  const peak = scale.at(frame.peaks[effect].at_m, value);
  return {
    peak,
    shapes: [
      ...hatched([ring], { ink: "rule", angle_deg: 45, gap: 1.6, width: 0.12 }),
      ...others.flatMap((i) =>
        [lines.most[i]!, lines.least[i]!].map((l) =>
          stroked(line(l), { ink: "second", width: 0.15, dash: [1, 0.7] }),
        ),
      ),
      stroked([scale.at(0, 0), scale.at(frame.length_m, 0)], { ink: "ink", width: 0.2 }),
      stroked(most, { ink: "ink", width: 0.4 }),
      stroked(least, { ink: "ink", width: 0.4 }),
      ...limitShapes(view, effect, place, scale),
      ...peakShapes(view, effect, place, peak),
      ...headShapes(view, effect, place, scale),
    ],
  };
}

function scaleOf(view: StructureView, effect: Effect, place: StripPlace): Scale {
  const { frame } = view;
  const values = [
    0,
    ...frame[effect].most.flat(),
    ...frame[effect].least.flat(),
    signedPeak(frame, effect),
    ...drawnLimits(view, effect),
  ];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const head = place.size * 2;
  const room = place.height - head - place.size * 1.4;
  const down = effect === "shear" ? -1 : 1;
  const top = place.top + head;
  const ratio = room / (high - low || 1);
  const y = (v: number): number => (down > 0 ? top + (v - low) * ratio : top + (high - v) * ratio);
  return { at: (along, v) => [place.x + along * place.per_m, y(v)], zero: y(0) };
}

/** Heights of the limit on the strip: a shear has one on either side. None where it lies far off. */
function drawnLimits({ frame, limits }: StructureView, effect: Effect): number[] {
  const limit = limits[effect]?.value;
  if (limit === undefined || limit > FARTHEST_LIMIT * frame.peaks[effect].value) return [];
  return effect === "shear" ? [limit, -limit] : [limit];
}

function limitShapes(view: StructureView, effect: Effect, place: StripPlace, { at }: Scale): Shape[] {
  return drawnLimits(view, effect).map((v) =>
    stroked([at(0, v), at(view.frame.length_m, v)], { ink: "ink", width: 0.3, dash: [3, 0.8, 0.5, 0.8] }),
  );
}

/** A dot and the figure, on the side of the peak where there is room for it. */
function peakShapes(view: StructureView, effect: Effect, place: StripPlace, [x, y]: Point): Shape[] {
  const { value } = peakWords(view, effect);
  const { size } = place;
  const fits = x + 2 + textWidth(value, size, "semibold") < place.right;
  // Inside the envelope, where neither title nor limit stands; under it where the peak lies beyond the lines.
  const isBelow =
    effect === "sag"
      ? view.frame.peaks.sag.ends === "hinged"
      : signedPeak(view.frame, effect) > 0 && effect === "shear";
  const under = isBelow ? y + size * 1.2 : y - size * 0.6;
  return [
    disc([x, y], size * 0.36, { fill: "closed" }),
    words(value, [fits ? x + 1.8 : x - 1.8, under], {
      size,
      weight: "semibold",
      ink: "closed",
      anchor: fits ? "start" : "end",
      halo: true,
    }),
  ];
}

/** Title and limit over the strip, the zero beside it. */
function headShapes(view: StructureView, effect: Effect, place: StripPlace, { zero }: Scale): Shape[] {
  const { size, x, top } = place;
  const title = effectTitles[effect];
  const from = x + textWidth(title, size, "semibold") + 2.5;
  const notes = notesOf(view, effect);
  const note = notes.find((n) => from + textWidth(n, size * 0.9) <= place.right) ?? notes.at(-1)!;
  return [
    words(title, [x, top + size], { size, weight: "semibold" }),
    words(note, [from, top + size], { size: size * 0.9, ink: "second" }),
    words("0", [x - 1.6, zero + size * 0.35], { size: size * 0.9, anchor: "end", ink: "second" }),
  ];
}

/** What is said beside the title, from the longest to the shortest: the first that fits is taken. */
function notesOf(view: StructureView, effect: Effect): readonly string[] {
  const limit = view.limits[effect];
  if (limit === null) return ["no limit known for this length", "no limit known"];
  const short = `limit ${showSmall(limit.value, effectUnits[effect], view.units)}`;
  const isDrawn = drawnLimits(view, effect).length > 0;
  const told = `${short}${isDrawn ? " (dash and dot)" : ", beyond this strip"}`;
  const isMixed = effect !== "moment" && view.frame.peaks[effect].ends === "hinged";
  return [...(isMixed ? [`${told}; lines: stiff cross pieces, mark: hinged`] : []), told, short];
}
