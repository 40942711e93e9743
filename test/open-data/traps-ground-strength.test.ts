import { crsFromEpsg, toLonLat } from "@causey/io/crs";
import { readPenetrometer, readPoints, readShearReadings, type PenetrometerOptions } from "@causey/io/points";
import { describe, expect, test } from "vitest";
import { hasOpenData, openData } from "../../packages/io/test/support/open-data.ts";
import { refusal, said } from "./said.ts";

const set = "ground-strength-sweden";
const source = "williamlidberg/Penetration (671a8c8), 1,063 plots; figures as worked out beside the data";
const NAME = "penetration-transects.csv";
const file = (): Uint8Array => openData(`${set}/${NAME}`);
const text = (): string => new TextDecoder().decode(file());
const bytes = (words: string): Uint8Array => new TextEncoder().encode(words);
const columns = {
  id: "Name",
  x: "Easting",
  y: "Northing",
  index: ["Kpa5", "Kpa10", "Kpa15"],
  group: "Soil_class",
};
const options: PenetrometerOptions = { columns, decimal: "point" };
/** Medians of the index after 5, 10 and 15 drops, from dry (1) to wet (5). */
const worked_out: Readonly<Record<string, readonly number[]>> = {
  "1": [15, 126, 145, 190],
  "2": [83, 135, 180, 204],
  "3": [427, 172, 226, 265],
  "4": [319, 96, 130, 162],
  "5": [219, 73, 98, 118],
};

function expectWorkedOut(contents: Uint8Array): void {
  const { groups, places } = readPenetrometer(NAME, contents, options);
  expect(places).toHaveLength(1063);
  expect(groups.map((g) => g.group).toSorted()).toEqual(Object.keys(worked_out));
  for (const { group, n, median_kpa } of groups)
    [n, ...median_kpa].forEach((v, i) => expect(Math.abs(v! - worked_out[group]![i]!)).toBeLessThan(0.6));
}

describe.skipIf(!hasOpenData(set))(source, () => {
  test("ground-strength-sweden: semicolons and CRLF: read as they are, and with commas and LF the same medians come out", () => {
    expect(text().split("\r\n").length).toBeGreaterThan(1063);
    expect(text().split("\n", 1)[0]).toContain(";Northing;");
    expectWorkedOut(file());
    expectWorkedOut(bytes(text().replaceAll("\r\n", "\n").replaceAll(";", ",")));
  });

  test("ground-strength-sweden: read with decimal commas the points in it are named by line; with points it is read", async () => {
    const problems = await refusal(() => readPenetrometer(NAME, file(), { ...options, decimal: "comma" }));
    expect(problems[0]!.place).toBe("line 2");
    expect(problems[0]!.message).toMatch(/decimal|point|comma/);
    expect(problems[0]!.mend).not.toBe("");
    expectWorkedOut(file());
  });

  test("ground-strength-sweden: a cone index is no strength: said on every import, and refused in the place of vane strengths", async () => {
    const { warnings, places } = readPenetrometer(NAME, file(), options);
    said(warnings, "cone-index", {
      severity: "warning",
      value: "1063 places",
      message: "not a shear strength and not a bearing capacity",
      mend: "take vane readings where supports will stand",
    });
    expect(JSON.stringify(places)).not.toContain("su_kpa");
    const shear = {
      columns: {
        id: "Name",
        x: "Easting",
        y: "Northing",
        depth: "O_horizon",
        peak: "Kpa5",
        remoulded: null,
        vane: null,
      },
      unit: "m",
      strength_unit: "kpa",
      decimal: "point",
      correction: 1,
      source: "transects",
    } as const;
    said(await refusal(() => readShearReadings(NAME, file(), shear)), "shear-cone-index", {
      severity: "error",
      place: 'column "Kpa5"',
      value: "Kpa5",
      mend: "Take vane readings",
    });
    // The mend: a table of vane strengths, named so, is taken.
    const vane = bytes("Name,Easting,Northing,depth_m,su_kpa\n1610,485406.8,6331030.7,0.5,7.5\n");
    const columnsOfVane = { ...shear.columns, depth: "depth_m", peak: "su_kpa" };
    const { readings } = readShearReadings("vane.csv", vane, { ...shear, columns: columnsOfVane });
    expect(readings.map((r) => r.su_kpa)).toEqual([7.5]);
  });

  test("ground-strength-sweden: the northing stands first: named for east it is refused; in their columns the plots lie in Sweden (EPSG:3006)", async () => {
    const exchanged = { ...options, columns: { ...columns, x: "Northing", y: "Easting" } };
    said(await refusal(() => readPenetrometer(NAME, file(), exchanged)), "points-exchanged", {
      severity: "error",
      place: 'columns "Northing" and "Easting"',
      message: "east and north are exchanged",
      mend: "Name the column of eastings for x",
    });
    const asPoints = {
      id: "Name",
      x: "Northing",
      y: "Easting",
      z: "Elevation",
      code: null,
      accuracy: null,
      date: null,
    };
    const how = { columns: asPoints, unit: "m", decimal: "point", date_order: "ymd" } as const;
    expect((await refusal(() => readPoints(NAME, file(), how))).map((p) => p.code)).toContain(
      "points-exchanged",
    );
    const { places } = readPenetrometer(NAME, file(), options);
    const [lon, lat] = toLonLat(await crsFromEpsg(3006))(places[0]!.x, places[0]!.y)!;
    expect([lon > 11 && lon < 24, lat > 55 && lat < 69]).toEqual([true, true]);
  });
});
