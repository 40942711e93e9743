import { describe, expect, test } from "vitest";
import { tideStationsApi } from "../src/tide-stations/index.ts";
import type { StationAnswer } from "../src/tide-stations/station.ts";
import { levelsFromStation } from "@causey/engine/water";
import { answerOf, isFree } from "../src/tide-stations/station.ts";

const ask = async (query: string): Promise<{ status: number; stations: StationAnswer[] }> => {
  const answer = await tideStationsApi().request(`/?${query}`);
  const body = (await answer.json()) as { stations?: StationAnswer[] };
  return { status: answer.status, stations: body.stations ?? [] };
};

describe("tide stations around a place", () => {
  test("Charleston, South Carolina: MHHW is 0.800 m above NAVD88 (published datums 2.600 and 1.800)", async () => {
    const { stations } = await ask("lon=-79.925&lat=32.782");
    const [first] = stations;
    expect(first!.name).toMatch(/Charleston/);
    expect(first!.land_datum).toBe("NAVD88");
    expect(first!.levels.find((l) => l.role === "mhhw")!.z_m).toBeCloseTo(0.8, 2);
    expect(first!.epoch).toBe("1983 to 2001");
    expect(first!.attribution.length).toBeGreaterThan(10);
    expect(first!.distance_km).toBeLessThan(5);
  });

  test("Key West's levels are not handed out as Cuba's: stations that borrow another's levels are left out", async () => {
    // La Isabela, Cuba, is subordinate to Key West, Florida, and the database gives it NAVD88 and Key West's datums.
    const { stations } = await ask("lon=-80.02&lat=22.93");
    expect(stations.filter((s) => s.land_datum === "NAVD88")).toEqual([]);
    expect(stations.map((s) => s.name)).not.toContain("La Isabela");
  });

  test("Norway: levels on NN2000, as its mapping authority ties them, with licence and credit", async () => {
    const { stations } = await ask("lon=6.15&lat=62.47");
    const found = stations.find((s) => s.land_datum === "NN2000")!;
    expect(found.licence).toMatch(/cc-by-4.0/);
    expect(found.attribution).toMatch(/Kartverket/);
    // The database holds MSL 1.255 m and NN2000 1.302 m above the station's zero.
    expect(found.levels.find((l) => l.role === "msl")!.z_m).toBeCloseTo(-0.047, 3);
  });

  test("levels above the station's own chart datum are told apart from those above the land's", async () => {
    const [first] = (await ask("lon=-79.925&lat=32.782")).stations;
    expect(first!.chart_datum).toBe("MLLW");
    expect(first!.chart_levels.find((l) => l.role === "mllw")!.z_m).toBe(0);
    // Published: MHHW 2.600 and MLLW 0.843 m.
    expect(first!.chart_levels.find((l) => l.role === "mhhw")!.z_m).toBeCloseTo(1.757, 3);
  });

  test("nearest first, none that may not be used freely, and a place far from any sea has none", async () => {
    const { stations } = await ask("lon=-8.6&lat=37.0");
    expect(stations.map((s) => s.distance_km)).toEqual(
      stations.map((s) => s.distance_km).toSorted((a, b) => a - b),
    );
    expect(stations.every((s) => !/-nc|by-nc/i.test(s.licence))).toBe(true);
    expect((await ask("lon=90&lat=45")).stations).toEqual([]);
  });

  test.each(["", "lon=a&lat=1", "lon=200&lat=10", "lon=1"])("%s is no place", async (query) => {
    expect((await ask(query)).status).toBe(422);
  });
});

describe("one station", () => {
  const station = { id: "x", name: "X", latitude: 0, longitude: 0 };

  test("without a land datum no level is given: nothing is converted by guess", () => {
    const a = answerOf({ ...station, datums: { MHW: 2, MLW: 1, STND: 0 } }, 3);
    expect(a).toMatchObject({ land_datum: null, levels: [] });
  });

  test("levels go into a plan on the station's own land datum only; otherwise the answer says why not", () => {
    const a = answerOf({ ...station, datums: { MHW: 2, NAVD88: 1.5 }, type: "reference" }, 3);
    const taken = levelsFromStation(a, "NAVD88");
    expect("levels" in taken && taken.levels).toMatchObject([
      { id: "x-mhw", role: "mhw", z_m: 0.5, datum: "NAVD88", basis: "mean", epoch: "" },
    ]);
    expect(levelsFromStation(a, "NGVD29")).toMatchObject({ why: /NGVD29.*NAVD88/ });
    const none = answerOf({ ...station, datums: { MHW: 2, STND: 0 } }, 3);
    expect(levelsFromStation(none, "NAVD88")).toMatchObject({ why: /no land datum/ });
  });

  test("a subordinate station has no levels, whatever the database answers for it", () => {
    const a = answerOf(
      { ...station, type: "subordinate", chart_datum: "MLLW", datums: { MLLW: 0, MHW: 2, NAVD88: 1 } },
      3,
    );
    expect(a).toMatchObject({ land_datum: null, levels: [], chart_datum: null, chart_levels: [] });
    expect(a.notes[0]).toMatch(/another station/);
  });

  test("a licence that forbids use for money is not free, nor is one that says nothing", () => {
    expect(isFree({ ...station, license: { type: "cc-by-nc-4.0", commercial_use: true } })).toBe(false);
    expect(isFree({ ...station, license: { type: "cc-by-4.0", commercial_use: false } })).toBe(false);
    expect(isFree(station)).toBe(false);
    expect(isFree({ ...station, license: { type: "public domain", commercial_use: true } })).toBe(true);
  });
});
