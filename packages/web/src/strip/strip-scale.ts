import type { StripModel } from "@causey/engine/plan";
import { M_PER_FT, type UnitSystem } from "@causey/engine/units";

/** Where things stand in the drawn strip: pixels from its left and upper edge. */
export interface StripScale {
  readonly width: number;
  readonly height: number;
  readonly x: (along_m: number) => number;
  readonly y: (height_m: number) => number;
  /** How many times heights are drawn larger than distances. */
  readonly exaggeration: number;
}

/** A middling part keeps at least this width; longer walkways scroll [px]. */
const READABLE_CELL_PX = 20;

/** The strip takes the room there is, and more where its cells would become too narrow to read or touch. */
export function stripScale(model: StripModel, room: number, height: number, touch: boolean): StripScale {
  const lengths = model.cells.map((c) => c.length_m).toSorted((a, b) => a - b);
  const middling = lengths[Math.floor(lengths.length / 2)] ?? 1;
  const least = (touch ? 46 : READABLE_CELL_PX) / Math.max(middling, 0.1);
  const length = Math.max(model.length_m, 0.1);
  const perMetre = Math.max((room - 2) / length, least);
  const span = Math.max(model.z_max_m - model.z_min_m, 0.2);
  const [top, bottom] = [10, 12];
  const perHeight = (height - top - bottom) / span;
  return {
    width: perMetre * length + 2,
    height,
    x: (along) => 1 + along * perMetre,
    y: (z) => height - bottom - (z - model.z_min_m) * perHeight,
    exaggeration: perHeight / perMetre,
  };
}

const rounds = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000];
const TICK_ROOM_PX = 64;

export interface Tick {
  readonly at_m: number;
  readonly text: string;
}

/** Round distances along the foot of the strip, in the chosen unit. */
export function ticks(length_m: number, pixelsPerMetre: number, units: UnitSystem): Tick[] {
  const unit = units === "us" ? M_PER_FT : 1;
  const step = rounds.find((r) => r * unit * pixelsPerMetre >= TICK_ROOM_PX) ?? rounds.at(-1)!;
  const all: Tick[] = [];
  for (let k = 0; k * step * unit <= length_m + 1e-9; k++)
    all.push({ at_m: k * step * unit, text: String(k * step) });
  return all;
}

export interface SpreadLabel {
  readonly id: string;
  readonly y: number;
}

/** Moves labels apart until each has its line height, lowest first, within the strip's height. */
export function spread(labels: readonly SpreadLabel[], line: number, bottom: number): SpreadLabel[] {
  let ceiling = bottom;
  return labels
    .toSorted((a, b) => b.y - a.y)
    .map(({ id, y }) => {
      const at = Math.min(y, ceiling);
      ceiling = at - line;
      return { id, y: at };
    });
}
