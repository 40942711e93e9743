import {
  EFFECTS,
  moduleStructure,
  peakWords,
  type Effect,
  type StructureView,
} from "@causey/papers/drawings";
import { ScenePicture } from "./scene-picture.tsx";

/** Measures of the drawing [mm of its own]: on a screen for a desk, and on one for a hand. */
const WIDE = { width: 150, look: { size: 2.9, strip: 23, lines: 2 } };
const HAND = { width: 88, look: { size: 2.9, strip: 27, lines: 5 } };

interface Props {
  readonly view: StructureView;
  readonly shown: Effect;
  readonly chosen: Effect;
  readonly isNarrow: boolean;
  readonly onChoose: (effect: Effect) => void;
  readonly onPoint: (effect: Effect | null) => void;
}

/** The drawing, its peaks to be pointed at by mouse, finger or key, and what the one that is pointed at says. */
export function StructureDrawing({ view, shown, chosen, isNarrow, onChoose, onPoint }: Props) {
  const { width, look } = isNarrow ? HAND : WIDE;
  const picture = moduleStructure(view, shown, { x: 1, y: 0, width: width - 2 }, look);
  const told = peakWords(view, shown);
  return (
    <figure className="structure-figure">
      <div className="structure-picture">
        <ScenePicture
          shapes={picture.shapes}
          width={width}
          height={picture.height}
          label={`${view.frame.name} as a structure: plan with loads, bending moment, shear and sag along it. The table beside it holds the figures.`}
        />
        {EFFECTS.map((effect) => {
          const [x, y] = picture.peaks[effect];
          const words = peakWords(view, effect);
          return (
            <button
              key={effect}
              type="button"
              className="plain-button peak-spot"
              data-peak={effect}
              aria-label={`Peak of ${words.title.toLowerCase()}: ${words.value}`}
              aria-pressed={effect === chosen}
              style={{ left: `${(100 * x) / width}%`, top: `${(100 * y) / picture.height}%` }}
              onClick={() => onChoose(effect)}
              onPointerEnter={() => onPoint(effect)}
              onPointerLeave={() => onPoint(null)}
              onFocus={() => onPoint(effect)}
              onBlur={() => onPoint(null)}
            />
          );
        })}
      </div>
      <figcaption className="structure-told" aria-live="polite">
        <b>
          {told.title} {told.value}
        </b>{" "}
        at {told.place}: {told.load}; {told.ends}.{" "}
        {told.limit ? `${told.limit}.` : "No limit known for this length."}
      </figcaption>
    </figure>
  );
}
