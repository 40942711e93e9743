import type { FrameDrawing } from "@causey/engine/checks";
import { showQuantity, type UnitSystem } from "@causey/engine/units";
import { EFFECTS, effectUnits, showSmall, type Effect } from "@causey/papers/drawings";

/** The least is told beside the most only where it is more than this share of the peak: rounding is no load. */
const COUNTS = 1e-3;

export interface StationRow {
  readonly at: string;
  readonly values: Readonly<Record<Effect, string>>;
}

/** Each station with moment, shear and sag of the stringers that govern them, in words of the plan's units. */
export function stationRows(frame: FrameDrawing, units: UnitSystem): StationRow[] {
  return frame.stations_m.map((x, i) => ({
    at: showQuantity(x, "m", units),
    values: Object.fromEntries(EFFECTS.map((e) => [e, rangeWords(frame, e, i, units)])) as Record<
      Effect,
      string
    >,
  }));
}

function rangeWords(frame: FrameDrawing, effect: Effect, station: number, units: UnitSystem): string {
  const { stringer, value } = frame.peaks[effect];
  const most = frame[effect].most[stringer]![station]!;
  const least = frame[effect].least[stringer]![station]!;
  const show = (v: number): string => showSmall(v, effectUnits[effect], units);
  return Math.abs(least) > COUNTS * value ? `${show(most)} to ${show(least)}` : show(most);
}
