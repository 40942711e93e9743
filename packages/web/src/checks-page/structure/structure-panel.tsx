import { useMediaQuery } from "@mantine/hooks";
import type { CheckResult } from "@causey/engine/checks";
import type { Plan, Results } from "@causey/engine/plan";
import { governingEffect, structureView, type Effect } from "@causey/papers/drawings";
import { useState } from "react";
import { narrow } from "../../show/screen.ts";
import { effectOf, frameOf, frameOfPart, longest } from "./structure-choice.ts";
import { StationTable } from "./station-table.tsx";
import { StructureDrawing } from "./structure-drawing.tsx";

interface Props {
  readonly plan: Plan;
  readonly results: Results;
  readonly check: CheckResult | null;
  readonly part: string | null;
}

/** What the reader picked by hand; it holds until another check or part is chosen. */
interface Picked {
  readonly under: string;
  readonly frame: string | null;
  readonly effect: Effect | null;
}

/** One length of module as a structure: it follows the chosen check or part, unless another is picked. */
export default function StructurePanel({ plan, results, check, part }: Props) {
  // On paper the drawing stays the one of a desk: one that grows while pages are counted pushes the last off.
  const isNarrow = useMediaQuery(`screen and ${narrow}`) ?? false;
  const { frames } = results.proof;
  const under = `${check?.id ?? ""} ${part ?? ""}`;
  const [kept, setPicked] = useState<Picked>({ under, frame: null, effect: null });
  const [pointed, setPointed] = useState<Effect | null>(null);
  const picked = kept.under === under ? kept : { under, frame: null, effect: null };
  const frame =
    frames.find((f) => f.id === picked.frame) ??
    frameOf(check, frames) ??
    frameOfPart(part, frames) ??
    longest(frames);
  if (!frame) return null;
  const view = structureView({ plan, results }, frame);
  const chosen = picked.effect ?? effectOf(check) ?? governingEffect(view);
  return (
    <>
      <fieldset className="structure-choice">
        <legend>Module</legend>
        {frames.map((f) => (
          <button
            key={f.id}
            type="button"
            className="plain-button tool"
            data-frame={f.id}
            aria-pressed={f.id === frame.id}
            onClick={() => setPicked({ ...picked, frame: f.id })}
          >
            {f.name}
          </button>
        ))}
      </fieldset>
      <div className="structure-sheet">
        <StructureDrawing
          view={view}
          shown={pointed ?? chosen}
          chosen={chosen}
          isNarrow={isNarrow}
          onChoose={(effect) => setPicked({ ...picked, effect })}
          onPoint={setPointed}
        />
        <StationTable frame={frame} units={plan.units} />
      </div>
    </>
  );
}
