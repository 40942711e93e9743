import type { Plot } from "@causey/engine/site";
import { useRef } from "react";
import type { PlotMoves } from "./use-plot-moves.ts";
import type { XY } from "./view.ts";

const NUDGE_M = 0.5;
const STRIDE_M = 5;
const SLOP = 4;
const HALF = 9;

const directions: Readonly<Record<string, XY>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

interface Props {
  readonly plot: Plot;
  readonly at: XY;
  readonly scale: number;
  readonly state: "reached" | "unreached" | "unknown";
  readonly moves: PlotMoves;
  readonly label: string;
  /** From a pointer's place on the screen to ground. */
  readonly groundAt: (clientX: number, clientY: number) => XY;
}

/** A plot as a square that can be dragged by mouse and finger, and moved by arrow keys. */
export function PlotHandle({ plot, at, scale, state, moves, label, groundAt }: Props) {
  const grip = useRef<{ readonly from: XY; readonly offset: XY; moved: boolean } | null>(null);
  const isDrafted = moves.draft?.plot === plot.id;

  const onPointerDown = (event: React.PointerEvent<SVGGElement>): void => {
    if (event.button !== 0 || !event.isPrimary) return;
    event.stopPropagation();
    event.currentTarget.setPointerCapture(event.pointerId);
    const [gx, gy] = groundAt(event.clientX, event.clientY);
    const [px, py] = moves.place(plot);
    grip.current = { from: [event.clientX, event.clientY], offset: [px - gx, py - gy], moved: false };
  };
  const onPointerMove = (event: React.PointerEvent<SVGGElement>): void => {
    const held = grip.current;
    if (!held) return;
    event.stopPropagation();
    if (!held.moved && Math.hypot(event.clientX - held.from[0], event.clientY - held.from[1]) < SLOP) return;
    held.moved = true;
    const [gx, gy] = groundAt(event.clientX, event.clientY);
    moves.draw({ plot: plot.id, by: "pointer", at: [gx + held.offset[0], gy + held.offset[1]] });
  };
  const onPointerUp = (event: React.PointerEvent<SVGGElement>): void => {
    const held = grip.current;
    grip.current = null;
    event.stopPropagation();
    if (held?.moved && isDrafted) moves.commit();
  };
  const onKeyDown = (event: React.KeyboardEvent<SVGGElement>): void => {
    const direction = directions[event.key];
    if (direction) {
      const step = event.shiftKey ? STRIDE_M : NUDGE_M;
      moves.nudge(plot, direction[0] * step, direction[1] * step);
    } else if (event.key === "Enter" && isDrafted) moves.commit();
    else if (event.key === "Escape" && isDrafted) {
      grip.current = null;
      moves.leave();
    } else return;
    event.preventDefault();
    event.stopPropagation();
  };

  return (
    <g
      className={`plot plot-${state}${isDrafted ? " plot-drafted" : ""}`}
      transform={`translate(${at[0]} ${at[1]})`}
      data-plot={plot.id}
      tabIndex={0}
      // There is no button element inside a drawing.
      // oxlint-disable-next-line jsx-a11y/prefer-tag-over-role
      role="button"
      aria-label={label}
      aria-describedby="plot-keys"
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={onPointerUp}
      onPointerCancel={() => {
        grip.current = null;
        moves.leave();
      }}
      onKeyDown={onKeyDown}
    >
      <circle className="plot-ring" r={plot.keep_off_m * scale} />
      <circle className="plot-ring plot-reach" r={(plot.keep_off_m + plot.reach_m) * scale} />
      <rect className="plot-touch" x={-22} y={-22} width={44} height={44} />
      <rect className="plot-square" x={-HALF} y={-HALF} width={2 * HALF} height={2 * HALF} />
      <path
        className="plot-cross"
        d={`M${-HALF} ${-HALF}L${HALF} ${HALF}M${HALF} ${-HALF}L${-HALF} ${HALF}`}
      />
      <circle className="plot-middle" r={1.8} />
    </g>
  );
}
