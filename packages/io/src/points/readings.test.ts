import { describe, expect, test } from "vitest";
import { shearSummary } from "@causey/engine/survey";
import { hasOpenData, openData } from "../../test/support/open-data.ts";
import { isHelpful, problemsOf, utf8 } from "../../test/support/problems.ts";
import {
  readPenetrometer,
  readProbeStations,
  readShearReadings,
  type ShearOptions,
  type StationOptions,
} from "./index.ts";

const shear: ShearOptions = {
  columns: {
    id: "station",
    x: "x",
    y: "y",
    depth: "depth",
    peak: "peak",
    remoulded: "remoulded",
    vane: "vane",
  },
  unit: "m",
  strength_unit: "kpa",
  decimal: "point",
  correction: 1,
  source: "hand vane, 2026-10-05",
};
const heads = "station,x,y,depth,peak,remoulded,vane\n";

describe("vane readings", () => {
  test("peak, remoulded, vane size and depth; strength and sensitivity by station follow", () => {
    const { readings, left_out, warnings } = readShearReadings(
      "vane.csv",
      utf8(
        `${heads}V1,10,20,0.5,14,7,55x110 mm\nV1,10,20,1.0,6,1.5,55x110\nV2,30,20,0.5,9,,\nV3,40,20,0.5,,,\n`,
      ),
      shear,
    );
    expect(readings[0]).toEqual({
      x: 10,
      y: 20,
      depth_m: 0.5,
      su_kpa: 14,
      remoulded_kpa: 7,
      vane_mm: "55 x 110",
      source: "hand vane, 2026-10-05, V1",
    });
    expect(shearSummary(readings).map((s) => [s.least_su_kpa, s.sensitivity])).toEqual([
      [6, 4],
      [9, null],
    ]);
    expect(left_out.map((l) => [l.line, l.id, l.reason])).toEqual([[5, "V3", "no-reading"]]);
    expect(warnings.map((w) => w.code)).toEqual(["shear-as-read"]);
  });

  test("a correction lowers both strengths and is named in the source; pounds per square foot", () => {
    const file = utf8(`${heads}V1,0,0,1,208.8543423,104.4271712,\n`);
    const { readings, warnings } = readShearReadings("vane.csv", file, {
      ...shear,
      unit: "ft",
      strength_unit: "psf",
      correction: 0.5,
    });
    expect(readings[0]!.su_kpa).toBeCloseTo(5, 6);
    expect(readings[0]!.remoulded_kpa).toBeCloseTo(2.5, 6);
    expect(readings[0]!.depth_m).toBeCloseTo(0.3048, 9);
    expect(readings[0]!.source).toContain("x 0.5");
    expect(warnings).toEqual([]);
  });

  test("every fault is told with its line", async () => {
    const file = utf8(
      `${heads}V1,10,20,-1,14,7,\nV2,10,20,1,14,20,\nV3,10,20,1,14000,,\nV4,,20,1,14,,\nV5,1,2,1,5,,large\nV6,1,2,1,=5,,\n`,
    );
    const problems = await problemsOf(() => readShearReadings("vane.csv", file, shear));
    expect(problems.map((p) => [p.place, p.code])).toEqual([
      ["line 2", "shear-depth"],
      ["line 3", "shear-remoulded"],
      ["line 4", "shear-strength"],
      ["line 5", "shear-place"],
      ["line 6", "shear-vane"],
      ["line 7", "points-formula"],
    ]);
    expect(problems.every(isHelpful)).toBe(true);
    expect(
      (await problemsOf(() => readShearReadings("v.csv", file, { ...shear, correction: 2 })))[0]!.code,
    ).toBe("shear-correction");
  });
});

describe("probe stations", () => {
  const options: StationOptions = {
    columns: {
      id: "station",
      x: "x",
      y: "y",
      ground: "ground",
      probe: "probe",
      water: "water",
      date: "date",
    },
    unit: "ft",
    decimal: "comma",
    date_order: "dmy",
  };

  test("semicolons, decimal commas, feet, dates; empty means not read", () => {
    const { stations, left_out } = readProbeStations(
      "stations.csv",
      utf8(
        "station;x;y;ground;probe;water;date\r\nP 1;100;0;10;2,5;9,5;25/10/2026\r\nP2;200;0;11;;;\r\nP3;300;0;;1;;\r\n",
      ),
      options,
    );
    const ft = 0.3048;
    expect(stations.map((s) => [s.id, s.date])).toEqual([
      ["P-1", "2026-10-25"],
      ["P2", null],
    ]);
    const [first, second] = stations;
    const lengths = [first!.x, first!.y, first!.ground_m, first!.probe_m!, first!.water_m!, second!.x];
    [100, 0, 10, 2.5, 9.5, 200].forEach((v, i) => expect(lengths[i]).toBeCloseTo(v * ft, 9));
    expect(second).toMatchObject({ probe_m: null, water_m: null });
    expect(left_out.map((l) => [l.line, l.reason])).toEqual([[4, "no-height"]]);
  });

  test("a station twice, a negative probe depth, a date of another order, a missing column", async () => {
    const read = (text: string) => problemsOf(() => readProbeStations("s.csv", utf8(text), options));
    const problems = await read(
      "station;x;y;ground;probe;water;date\nA;1;1;1;;;\nA;2;1;1;;;\nB;3;1;1;-2;;\nC;4;1;1;;;10/25/2026\n",
    );
    expect(problems.map((p) => [p.place, p.code])).toEqual([
      ["line 3", "station-twice"],
      ["line 4", "station-probe"],
      ["line 5", "date-order"],
    ]);
    expect((await read("station;x;y;level\nA;1;1;1\n"))[0]!.code).toBe("table-column");
  });
});

describe.skipIf(!hasOpenData("ground-strength-sweden"))(
  "cone penetration in Sweden (Lidberg, MIT licence)",
  () => {
    const columns = {
      id: "Name",
      x: "Easting",
      y: "Northing",
      index: ["Kpa5", "Kpa10", "Kpa15"],
      group: "Soil_class",
    };
    const read = () =>
      readPenetrometer("penetration.csv", openData("ground-strength-sweden/penetration-transects.csv"), {
        columns,
        decimal: "point",
      });

    test("semicolons and CRLF; count and median cone index after 5, 10 and 15 drops by moisture class, as worked out beside the data", () => {
      const published: Readonly<Record<string, readonly number[]>> = {
        "1": [15, 126, 145, 190],
        "2": [83, 135, 180, 204],
        "3": [427, 172, 226, 265],
        "4": [319, 96, 130, 162],
        "5": [219, 73, 98, 118],
      };
      const { groups } = read();
      expect(groups).toHaveLength(5);
      for (const { group, n, median_kpa } of groups)
        [n, ...median_kpa].forEach((v, i) => expect(Math.abs(v! - published[group]![i]!)).toBeLessThan(0.6));
    });

    test("ranks wet ground below mesic ground and never gives a strength", () => {
      const { places, groups, warnings } = read();
      expect(groups[0]!.group).toBe("5");
      expect(groups.at(-1)!.group).toBe("3");
      const weakest = (firmness: string): number[] =>
        places.filter((p) => p.firmness === firmness).map((p) => p.weakest_kpa);
      expect(Math.max(...weakest("soft"))).toBeLessThanOrEqual(Math.min(...weakest("firm")));
      expect(weakest("soft").length / places.length).toBeCloseTo(0.2, 1);
      expect(warnings.map((w) => w.code)).toContain("cone-index");
      expect(warnings[0]!.message).toContain("must not be converted");
      expect(JSON.stringify(places[0])).not.toContain("su_kpa");
    });
  },
);
