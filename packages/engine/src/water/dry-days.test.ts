import { describe, expect, test } from "vitest";
import { backBefore, dryDays, makeSeries, type Series, type StationDays } from "./index.ts";

const DAY = Date.parse("2027-05-10") / 1000;
const [HOUR, PERIOD] = [3600, 12 * 3600];

/** Highs of +1 at 0, 12, 24 h of every day, lows of -1 between. */
function tide(days: number, leaveOut: (h: number) => boolean = () => false): Series {
  const t = Array.from({ length: days * 240 + 1 }, (_, i) => DAY - 2 * 86_400 + i * 360).filter(
    (s) => !leaveOut((s - DAY) / HOUR),
  );
  const z = t.map((s) => Math.cos((2 * Math.PI * (s - DAY)) / PERIOD));
  return makeSeries({
    kind: "readings",
    basis: "predicted",
    t_s: Float64Array.from(t),
    z_m: Float64Array.from(z),
  });
}
const at = (series: Series, ground_m: number, way_m = ground_m, to = "2027-05-10"): StationDays =>
  dryDays(series, [{ id: "J", ground_m, way_m }], "2027-05-10", to)[0]!;

describe("dry hours and windows of a day", () => {
  test("ground at the mean of the tide: dry 3 to 9 h after each high water, to be back at 8 h", () => {
    expect(backBefore({})).toBe(4 * HOUR);
    const [day] = at(tide(6), 0).days;
    expect(day).toMatchObject({ day: "2027-05-10", covered_h: 24 });
    expect(day!.dry_h).toBeCloseTo(12, 2);
    expect(day!.windows.map((w) => [w.from, w.to, w.ends, w.back_by])).toEqual([
      ["2027-05-10T03:00Z", "2027-05-10T09:00Z", "flood", "2027-05-10T08:00Z"],
      ["2027-05-10T15:00Z", "2027-05-10T21:00Z", "flood", "2027-05-10T20:00Z"],
    ]);
    expect(day!.windows[0]!.safe_h).toBeCloseTo(5, 2);
  });

  test("a lower place on the way shortens the window, not the hours for which the station is dry", () => {
    const [day] = at(tide(6), 0.5, -0.8).days;
    expect(day!.dry_h).toBeCloseTo(16, 2);
    const half = (Math.acos(0.8) / (2 * Math.PI)) * 12;
    expect(day!.windows[0]!.safe_h).toBeCloseTo(2 * half, 1);
    expect(day!.windows[0]!.back_by).toBeNull();
  });

  test("near the height of the tide the water comes minutes before its height: the time to be back lies hours before it", () => {
    const [day] = at(tide(6), 0.98).days;
    expect(day!.windows[0]!.ends).toBe("flood");
    expect(day!.windows[0]!.back_by).toBe("2027-05-10T08:00Z");
  });

  test("ground that no tide reaches is dry all day and has no time to be back within the record", () => {
    const [day] = at(tide(8), 1.5).days;
    expect(day).toMatchObject({ dry_h: 24 });
    expect(day!.windows).toEqual([
      { from: "2027-05-10T00:00Z", to: "2027-05-11T00:00Z", ends: "midnight", back_by: null, safe_h: 24 },
    ]);
  });

  test("a gap ends a window: the water may be there four hours before it, so nobody is promised those", () => {
    const gap = tide(6, (h) => h > 7 && h < 14);
    const [day] = at(gap, 0).days;
    expect(day!.covered_h).toBeCloseTo(17, 2);
    expect(day!.windows[0]).toMatchObject({
      from: "2027-05-10T03:00Z",
      to: "2027-05-10T07:00Z",
      ends: "record",
    });
    expect(day!.windows[0]!.safe_h).toBe(0);
  });

  test("days that the record does not hold are left out; 31 days are the most", () => {
    expect(at(tide(4), 0, 0, "2027-05-14").days.map((d) => d.day)).toEqual(["2027-05-10", "2027-05-11"]);
    expect(at(tide(60), 0, 0, "2027-07-30").days).toHaveLength(31);
    expect(
      dryDays(tide(3), [{ id: "J", ground_m: 0, way_m: 0 }], "2028-01-01", "2028-01-02")[0]!.days,
    ).toEqual([]);
  });
});
