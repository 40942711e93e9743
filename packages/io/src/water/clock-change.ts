import type { Series } from "@causey/engine/water";
import type { Findings } from "../problem/index.ts";
import type { Rows } from "./read-rows.ts";
import type { Zone } from "./zone.ts";

const [HOUR_S, DAY_S] = [3600, 86_400];
/** 1 January 1970 was a Thursday: 3 days on is a Sunday. */
const SUNDAY = 3;
const ADVICE =
  'Look whether the logger followed summer time: then name the place as zone, such as "America/New_York"; if it did not, nothing is wrong.';

/**
 * A logger that is said to keep one time all year, but skips an hour on a Sunday night, or writes one twice: its clock
 * may have followed summer time, and half a year is then an hour off. Only named, never shifted.
 */
export function reportClockChange(found: Findings, rows: Rows, series: Series, zone: Zone): void {
  if (zone.offset_s === null || rows.zoned > 0 || series.step_s === null || series.step_s >= HOUR_S * 2)
    return;
  const local = (t: number): number => t + zone.offset_s!;
  const skip = series.gaps.find(
    (g) =>
      Math.abs(g.to_s - g.from_s - series.step_s! - HOUR_S) <= 1 &&
      isChangeNight(local(g.to_s), CHANGES_FORWARD),
  );
  if (skip)
    found.warn({
      code: "series-clock-change",
      place: wallMinute(local(skip.from_s)),
      message: `Just one hour is missing after ${wallMinute(local(skip.from_s))}, on a night on which clocks go forward.`,
      mend: ADVICE,
    });
  const back = rows.hourBack;
  if (back && isChangeNight(local(back.t), CHANGES_BACK))
    found.warn({
      code: "series-clock-change",
      place: `line ${back.line}`,
      message: `The clock goes back at ${wallMinute(local(back.t))}, on a night on which clocks do: an hour stands twice.`,
      mend: ADVICE,
    });
}

/** Months in which clocks change, on both halves of the earth. */
const CHANGES_FORWARD = [3, 4, 9, 10];
const CHANGES_BACK = [10, 11, 3, 4];

/** A Sunday between midnight and four o'clock, in a month of clock changes. */
function isChangeNight(local_s: number, months: readonly number[]): boolean {
  const day = Math.floor(local_s / DAY_S);
  const isNight = local_s - day * DAY_S < 4 * HOUR_S;
  return isNight && day % 7 === SUNDAY && months.includes(new Date(local_s * 1000).getUTCMonth() + 1);
}

const wallMinute = (local_s: number): string =>
  new Date(local_s * 1000).toISOString().slice(0, 16).replace("T", " ");
