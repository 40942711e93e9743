// A row of cells in place of a list: the pattern of a listbox with one tab stop, which no element of HTML gives.
/* oxlint-disable jsx-a11y/prefer-tag-over-role, jsx-a11y/interactive-supports-focus */
/* oxlint-disable jsx-a11y/click-events-have-key-events */
import type { StripCell } from "@causey/engine/plan";
import { memo, useRef } from "react";
import { showShare } from "../show/show.ts";
import type { StripScale } from "./strip-scale.ts";

interface Props {
  readonly cells: readonly StripCell[];
  readonly scale: StripScale;
  readonly chosen: string | null;
  readonly pointed: readonly string[];
  readonly describe: (cell: StripCell) => string;
  readonly onChoose: (part: string | null) => void;
  readonly onPoint: (parts: readonly string[]) => void;
}

/** One cell per part with its figure. Arrow keys go along the walkway; the chosen cell is the chosen part. */
export function StripCells({ cells, scale, chosen, pointed, describe, onChoose, onPoint }: Props) {
  const row = useRef<HTMLDivElement>(null);
  const at = cells.findIndex((c) => c.part === chosen);
  const tabStop = at < 0 ? 0 : at;

  const goTo = (index: number): void => {
    const cell = cells[index];
    if (!cell) return;
    onChoose(cell.part);
    row.current?.querySelectorAll<HTMLElement>("[role=option]")[index]?.focus();
  };
  const onKeyDown = (event: React.KeyboardEvent): void => {
    const here = at < 0 ? -1 : at;
    const to: Readonly<Record<string, () => void>> = {
      ArrowRight: () => goTo(Math.min(cells.length - 1, here + 1)),
      ArrowLeft: () => goTo(Math.max(0, here - 1)),
      Home: () => goTo(0),
      End: () => goTo(cells.length - 1),
      Enter: () => goTo(tabStop),
      " ": () => goTo(tabStop),
      Escape: () => onChoose(null),
    };
    const act = to[event.key];
    if (!act) return;
    act();
    event.preventDefault();
  };

  return (
    <div
      ref={row}
      className="strip-cells"
      role="listbox"
      aria-label="Parts along the walkway"
      aria-orientation="horizontal"
      onKeyDown={onKeyDown}
      onPointerLeave={() => onPoint([])}
      style={{ width: scale.width }}
    >
      {cells.map((cell, i) => (
        <Cell
          key={cell.part}
          cell={cell}
          left={scale.x(cell.from_m)}
          width={scale.x(cell.to_m) - scale.x(cell.from_m)}
          isChosen={cell.part === chosen}
          isPointed={pointed.includes(cell.part)}
          isTabStop={i === tabStop}
          label={describe(cell)}
          onChoose={onChoose}
          onPoint={onPoint}
        />
      ))}
    </div>
  );
}

interface CellProps {
  readonly cell: StripCell;
  readonly left: number;
  readonly width: number;
  readonly isChosen: boolean;
  readonly isPointed: boolean;
  readonly isTabStop: boolean;
  readonly label: string;
  readonly onChoose: (part: string | null) => void;
  readonly onPoint: (parts: readonly string[]) => void;
}

/** A cell narrower than this shows no figure; the figure stands in its label and in the note above [px]. */
const FIGURE_ROOM_PX = 17;

/** The share of the limit; "!" where a rule that knows no share is broken, "?" where nothing could be checked. */
function figureOf({ state, utilisation }: StripCell): string {
  if (state === "broken") return "!";
  return utilisation === null ? "?" : showShare(utilisation);
}

const Cell = memo(function Cell(props: CellProps) {
  const { cell, left, width, isChosen, isPointed, isTabStop, label, onChoose, onPoint } = props;
  const mark = `${isChosen ? " cell-chosen" : ""}${isPointed ? " cell-pointed" : ""}`;
  const figure = figureOf(cell);
  const fit = width > 26 ? "" : figure.length > 3 ? " cell-slim cell-tight" : " cell-slim";
  return (
    <div
      role="option"
      aria-selected={isChosen}
      aria-label={label}
      tabIndex={isTabStop ? 0 : -1}
      data-part={cell.part}
      className={`cell cell-${cell.state} cell-${cell.kind}${fit}${mark}`}
      style={{ left, width }}
      onClick={() => onChoose(isChosen ? null : cell.part)}
      onPointerEnter={() => onPoint([cell.part])}
      onFocus={() => onPoint([cell.part])}
      onBlur={() => onPoint([])}
    >
      <span className="cell-figure">{width < FIGURE_ROOM_PX ? "" : figure}</span>
    </div>
  );
});
