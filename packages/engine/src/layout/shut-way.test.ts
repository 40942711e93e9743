import { describe, expect, test } from "vitest";
import { plotAt, smallSite, smallTerrain, zone } from "../../test/support/small-site.ts";
import { shutOnWay, shutWords } from "./shut-way.ts";

const terrain = smallTerrain(40, 20, () => 1);
const plot = plotAt("p", 35, 10);
const start = { id: "s", name: "s", x: 5, y: 10 };
const laying = { from: "2027-05-01", to: "2027-05-07" };
const season = { from: "04-01", to: "09-15" };
const ids = (zones: Parameters<typeof smallSite>[2], days = laying): string[] =>
  shutOnWay(smallSite(terrain, [plot], zones, start), days, start, plot).map((z) => z.id);

describe("shut areas between a start and a plot", () => {
  test("a closure right across is named in its season, and not outside it", () => {
    const nests = zone("nests", "seasonal-closure", 18, -1, 22, 21, season);
    expect(ids([nests])).toEqual(["nests"]);
    expect(ids([nests], { from: "2027-10-01", to: "2027-10-07" })).toEqual([]);
  });

  test("one that leaves a way round is not", () =>
    expect(ids([zone("nests", "closed", 18, -1, 22, 15)])).toEqual([]));

  test("two that bar it together are both named, a third behind them is not", () => {
    const [a, b] = [zone("a", "closed", 18, -1, 22, 12), zone("b", "closed", 18, 12, 22, 21)];
    expect(ids([a, b])).toEqual(["a", "b"]);
    expect(ids([a, b, zone("far", "closed", 28, 0, 30, 2)])).toEqual(["a", "b"]);
  });

  test("a buffer can close the last gap", () => {
    const near = zone("a", "closed", 18, -1, 22, 17);
    expect(ids([near])).toEqual([]);
    expect(ids([{ ...near, buffer_m: 4 }])).toEqual(["a"]);
  });

  test("the words name the closure with its days and what to do", () => {
    const words = shutWords([zone("Nests", "seasonal-closure", 0, 0, 1, 1, season)], laying);
    expect(words).toContain("Nests (closed from 04-01 to 09-15, month and day)");
    expect(words).toContain("outside the days of the closure");
    expect(shutWords([zone("Fort", "closed", 0, 0, 1, 1)], laying)).not.toContain("season");
  });
});
