import { describe, expect, test } from "vitest";
import { tideStationsApi } from "../src/tide-stations/index.ts";
import type { StationAnswer } from "../src/tide-stations/station.ts";
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

  test("a licence that forbids use for money is not free, nor is one that says nothing", () => {
    expect(isFree({ ...station, license: { type: "cc-by-nc-4.0", commercial_use: true } })).toBe(false);
    expect(isFree({ ...station, license: { type: "cc-by-4.0", commercial_use: false } })).toBe(false);
    expect(isFree(station)).toBe(false);
    expect(isFree({ ...station, license: { type: "public domain", commercial_use: true } })).toBe(true);
  });
});
