import type { Layout } from "@causey/engine/layout";
import type { StripCell, StripModel } from "@causey/engine/plan";
import type { Plot } from "@causey/engine/site";
import type { UnitSystem } from "@causey/engine/units";
import { useMediaQuery } from "@mantine/hooks";
import { useCallback, useEffect, useMemo, useRef } from "react";
import type { Freshness } from "../desk/derive-session.ts";
import { useDesk } from "../desk/desk.ts";
import { useStore } from "../desk/store.ts";
import { narrow } from "../show/screen.ts";
import { useSize } from "../show/use-size.ts";
import { partWords } from "./part-words.ts";
import { StripCells } from "./strip-cells.tsx";
import { levelHeight, StripGutter } from "./strip-gutter.tsx";
import { StripNote } from "./strip-note.tsx";
import { Axis, BranchNames, Marker, Pointer } from "./strip-rows.tsx";
import { stripScale, type StripScale } from "./strip-scale.ts";
import { StripSection } from "./strip-section.tsx";
import "./strip.css";

interface Props {
  readonly model: StripModel;
  readonly layout: Layout;
  readonly plots: readonly Plot[];
  readonly units: UnitSystem;
  readonly freshness: Freshness;
}

const SECTION_PX = { wide: 118, narrow: 56 } as const;

/** The long section along the foot of every page: one cell per part, one state with map and tables. */
export function Strip({ model, layout, plots, units, freshness }: Props) {
  const { selection } = useDesk();
  const { part, pointed } = useStore(selection, (s) => ({ part: s.part, pointed: s.pointed }));
  const isNarrow = useMediaQuery(narrow) ?? false;
  const { measure, width } = useSize();
  const scale = useMemo(
    () => stripScale(model, width, isNarrow ? SECTION_PX.narrow : SECTION_PX.wide, isNarrow),
    [model, width, isNarrow],
  );
  const describe = useMemo(() => partWords(layout, units), [layout, units]);
  const view = useRef<HTMLDivElement | null>(null);
  const attach = useCallback(
    (element: HTMLDivElement | null) => {
      view.current = element;
      measure(element);
    },
    [measure],
  );
  const tag = pointed.length === 1 ? pointed[0] : pointed.length > 1 ? null : part;
  const shown = model.cells.find((c) => c.part === tag) ?? null;
  const chosen = model.cells.find((c) => c.part === part) ?? null;
  useScrollTo(view, chosen, scale);

  return (
    <section className={`strip ${freshness}`} aria-label="Long section of the walkway">
      <StripGutter model={model} scale={scale} units={units} />
      <div className="strip-view" ref={attach}>
        <div className="strip-roll" style={{ width: scale.width }}>
          <BranchNames model={model} scale={scale} plots={plots} />
          <StripSection model={model} scale={scale} />
          <Pointer model={model} scale={scale} />
          <StripCells
            cells={model.cells}
            scale={scale}
            chosen={part}
            pointed={pointed}
            describe={describe.whole}
            onChoose={selection.choosePart}
            onPoint={selection.point}
          />
          <Axis model={model} scale={scale} units={units} />
          {shown && <Marker cell={shown} scale={scale} />}
        </div>
      </div>
      <StripNote
        cell={shown}
        scale={scale}
        view={view}
        head={shown ? describe.head(shown) : ""}
        line={shown ? describe.line(shown) : ""}
        rest={model.levels.map((l) => `${l.name} ${levelHeight(l.z_m, units)}`).join(" · ")}
      />
    </section>
  );
}

/** Scrolls a long strip so that the chosen part is in sight. */
function useScrollTo(
  view: React.RefObject<HTMLDivElement | null>,
  cell: StripCell | null,
  scale: StripScale,
): void {
  useEffect(() => {
    const element = view.current;
    if (!element || !cell) return;
    const [from, to] = [scale.x(cell.from_m), scale.x(cell.to_m)];
    const isInSight = from >= element.scrollLeft && to <= element.scrollLeft + element.clientWidth;
    if (!isInSight) element.scrollTo({ left: (from + to) / 2 - element.clientWidth / 2 });
  }, [view, cell, scale]);
}
