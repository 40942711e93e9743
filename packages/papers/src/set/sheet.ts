import type { Box, Shape } from "../scene/index.ts";
import type { PaperContext } from "./context.ts";

/** One page before it stands in its frame: what is drawn into the space that the frame leaves. */
export interface Draft {
  readonly title: string;
  readonly orientation: "portrait" | "landscape";
  /** "1 : 250", "1 in = 20 ft", or "not to scale". */
  readonly scale: string;
  readonly draw: (box: Box) => readonly Shape[];
}

/** A kind of sheet: some pages made of the plan and its results. */
export interface Sheet {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  /** `room`: the space that the frame leaves, by orientation. */
  readonly drafts: (context: PaperContext, room: Room) => readonly Draft[];
}

export type Room = Readonly<Record<Draft["orientation"], Box>>;
