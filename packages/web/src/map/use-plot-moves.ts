import type { Plot } from "@causey/engine/site";
import { useState } from "react";
import type { Change } from "../api/types.ts";
import type { XY } from "./view.ts";

/** A plot on its way to another place, by hand or by keys. */
export interface PlotDraft {
  readonly plot: string;
  readonly at: XY;
  readonly by: "pointer" | "keys";
}

export interface PlotMoves {
  readonly draft: PlotDraft | null;
  /** Where a plot is drawn now: its draft, else a move that waits to be saved, else the plan. */
  readonly place: (plot: Plot) => XY;
  readonly draw: (draft: PlotDraft) => void;
  /** Moves the draft by metres east and north, beginning at the plot. */
  readonly nudge: (plot: Plot, east: number, north: number) => void;
  readonly commit: () => void;
  readonly leave: () => void;
}

const toCentimetre = (v: number): number => Math.round(v * 100) / 100;

export function usePlotMoves(
  waiting: readonly Change[],
  move: (plot: string, x: number, y: number) => void,
): PlotMoves {
  const [draft, setDraft] = useState<PlotDraft | null>(null);
  const place = (plot: Plot): XY => {
    if (draft?.plot === plot.id) return draft.at;
    const last = waiting.findLast(
      (c) => c.kind === "edit" && c.edit.type === "move-plot" && c.edit.plot === plot.id,
    );
    return last?.kind === "edit" && last.edit.type === "move-plot"
      ? [last.edit.x, last.edit.y]
      : [plot.x, plot.y];
  };
  return {
    draft,
    place,
    draw: setDraft,
    nudge: (plot, east, north) => {
      const [x, y] = place(plot);
      setDraft({ plot: plot.id, by: "keys", at: [x + east, y + north] });
    },
    commit: () => {
      if (draft) move(draft.plot, toCentimetre(draft.at[0]), toCentimetre(draft.at[1]));
      setDraft(null);
    },
    leave: () => setDraft(null),
  };
}
