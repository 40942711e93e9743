import { describe, expect, test } from "vitest";
import { isHelpful, problemsOf, utf8 } from "../../test/support/problems.ts";
import { M_PER_US_FT } from "./units.ts";
import { columnHeads, readCheckShots, type PointOptions } from "./index.ts";

const options: PointOptions = {
  columns: { id: "name", x: "e", y: "n", z: "h", code: null, accuracy: "acc", date: "day" },
  unit: "m",
  decimal: "point",
  date_order: "dmy",
};
const heads = "name,e,n,h,acc,day\n";

describe("check shots from a file", () => {
  test("name, place, height, accuracy and day; what is not stated stays unknown", () => {
    const { shots, left_out } = readCheckShots(
      "shots.csv",
      utf8(`${heads}C 1,1000.5,2000.25,1.234,0.015,03/09/2026\nC2,1010,2004,1.3,,\nC3,1011,2004,,0.01,\n`),
      options,
    );
    expect(shots).toEqual([
      { id: "C-1", x: 1000.5, y: 2000.25, z_m: 1.234, accuracy_m: 0.015, date: "2026-09-03" },
      { id: "C2", x: 1010, y: 2004, z_m: 1.3, accuracy_m: null, date: null },
    ]);
    expect(left_out.map((row) => [row.line, row.id, row.reason])).toEqual([[4, "C3", "no-height"]]);
  });

  test("US survey feet in every length; a file without names goes by its lines", () => {
    const columns = { ...options.columns, id: null, accuracy: null, date: null };
    const { shots } = readCheckShots("shots.csv", utf8("e,n,h\n100,200,4\n110,200,4.5\n"), {
      ...options,
      columns,
      unit: "us-ft",
    });
    expect(shots.map((s) => s.id)).toEqual(["L2", "L3"]);
    expect(shots[0]!.z_m).toBeCloseTo(4 * M_PER_US_FT, 12);
    expect(shots[1]!.x).toBeCloseTo(110 * M_PER_US_FT, 9);
  });

  test("a name that stands twice is refused with both lines", async () => {
    const problems = await problemsOf(() =>
      readCheckShots("shots.csv", utf8(`${heads}C1,1,2,1.2,,\nC1,5,9,1.4,,\n`), options),
    );
    expect(problems.map((p) => [p.code, p.place])).toEqual([["shot-twice", "line 3"]]);
    expect(problems[0]!.message).toContain("Line 2");
    expect(problems.every(isHelpful)).toBe(true);
  });

  test("heights above the ellipsoid are refused where a height of the site is known", async () => {
    const problems = await problemsOf(() =>
      readCheckShots("shots.csv", utf8(`${heads}C1,1,2,48.2,,\nC2,5,9,48.4,,\nC3,8,9,48.3,,\n`), {
        ...options,
        known_heights_m: [1.9],
      }),
    );
    expect(problems.map((p) => p.code)).toContain("ellipsoid-heights");
  });
});

describe("heads to choose columns from", () => {
  test("in lower case, without blank ones, by any delimiter", () => {
    expect(columnHeads("a.csv", utf8("Name;East;;North\nA;1;;2\n"))).toEqual(["name", "east", "north"]);
  });

  test("the start of a large file is enough", () => {
    const row = "12345.678,23456.789,1.234\n";
    const bytes = utf8(`x,y,z\n${row.repeat(60_000)}`);
    expect(bytes.length).toBeGreaterThan(1_000_000);
    expect(columnHeads("big.csv", bytes)).toEqual(["x", "y", "z"]);
  });

  test("an empty file is refused with a mend", async () => {
    const problems = await problemsOf(() => columnHeads("none.csv", utf8("\n\n")));
    expect(problems.map((p) => p.code)).toEqual(["csv-no-heads"]);
    expect(problems.every(isHelpful)).toBe(true);
  });
});
