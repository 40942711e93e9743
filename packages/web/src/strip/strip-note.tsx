import type { StripCell } from "@causey/engine/plan";
import { useLayoutEffect, useRef } from "react";
import type { StripScale } from "./strip-scale.ts";

interface Props {
  readonly cell: StripCell | null;
  readonly scale: StripScale;
  readonly view: React.RefObject<HTMLDivElement | null>;
  readonly head: string;
  readonly line: string;
  /** Said while no part is pointed at, where the names of the levels have no room beside the strip. */
  readonly rest: string;
}

/** The note beside the pointed part, kept inside the strip. On a phone it stands in a line of its own. */
export function StripNote({ cell, scale, view, head, line, rest }: Props) {
  const note = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const [element, roll] = [note.current, view.current];
    if (!element || !roll || !cell) return;
    const at = roll.offsetLeft + scale.x((cell.from_m + cell.to_m) / 2) - roll.scrollLeft;
    const fitsRight = at + 10 + element.offsetWidth < roll.offsetLeft + roll.clientWidth;
    const left = fitsRight ? at + 10 : at - 10 - element.offsetWidth;
    element.style.setProperty("--left", `${Math.max(4, left)}px`);
  });
  return (
    <div ref={note} className={`strip-note${cell ? "" : " strip-note-empty"}`} aria-live="off">
      {cell ? (
        <>
          <b>{head}</b>
          <span className={`note-${cell.state}`}>{line}</span>
        </>
      ) : (
        <span className="strip-note-rest">{rest}</span>
      )}
    </div>
  );
}
