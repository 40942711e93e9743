import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { PointColumns } from "@causey/engine/survey";
import { hasOpenData, openData } from "../../test/support/open-data.ts";
import { isHelpful, problemsOf, utf8 } from "../../test/support/problems.ts";
import { M_PER_US_FT, PointReader, readPoints, type PointOptions, type PointsRead } from "./index.ts";

const columns: PointColumns = { id: "id", x: "x", y: "y", z: "z", code: null, accuracy: null, date: null };
const METRES: PointOptions = { columns, unit: "m", decimal: "point", date_order: "ymd" };
const read = (text: string, more: Partial<PointOptions> = {}): PointsRead =>
  readPoints("points.csv", utf8(text), { ...METRES, ...more });
const codes = (r: PointsRead): readonly string[] => r.warnings.map((w) => w.code);
const faults = async (text: string, more: Partial<PointOptions> = {}) => problemsOf(() => read(text, more));
const withDate: Partial<PointOptions> = { columns: { ...columns, date: "date" } };

describe("form of the file", () => {
  const rows = [
    ["A1", "100.5", "200.25", "1.125"],
    ["A2", "110.5", "200.25", "1.5"],
    ["A3", "100.5", "230.75", "-0.25"],
  ];
  const text = (delimiter: string, end: string, comma = false): string =>
    [["id", "x", "y", "z"], ...rows]
      .map((r) =>
        r
          .map((c) =>
            comma && delimiter === "," ? `"${c.replace(".", ",")}"` : comma ? c.replace(".", ",") : c,
          )
          .join(delimiter),
      )
      .join(end);

  test.each([",", ";", "\t"])("delimiter %j, any line end, with and without byte order mark", (delimiter) => {
    for (const end of ["\n", "\r\n", "\r"])
      for (const mark of ["", "\ufeff"])
        for (const comma of [false, true]) {
          const { points } = read(mark + text(delimiter, end, comma), { decimal: comma ? "comma" : "point" });
          expect([...points.x]).toEqual([100.5, 110.5, 100.5]);
          expect([...points.y]).toEqual([200.25, 200.25, 230.75]);
          expect([...points.z]).toEqual([1.125, 1.5, -0.25]);
          expect([0, 1, 2].map((i) => points.ids!.at(i))).toEqual(["A1", "A2", "A3"]);
          expect([...points.lines]).toEqual([2, 3, 4]);
        }
  });

  test("UTF-16 as spreadsheets write it", () => {
    const s = "\ufeff" + text("\t", "\r\n");
    const bytes = new Uint8Array(new Uint16Array(Array.from(s, (c) => c.charCodeAt(0))).buffer);
    expect([...readPoints("p.csv", bytes, METRES).points.z]).toEqual([1.125, 1.5, -0.25]);
  });

  test("quoted names with delimiters, quotes and line ends; heads in any case; short rows", () => {
    const { points } = read('ID,X,Y,Z,note\n"a, ""b""\nc",0,10,1,\nd,30,40,2\n');
    expect(points.ids!.at(0)).toBe('a, "b"\nc');
    expect([...points.lines]).toEqual([2, 4]);
  });

  test("a file without heads: columns by number", () => {
    const { points } = read("1,200.5,100.5,2.25,GS\n2,240.5,130.5,2.5,GS\n", {
      columns: { id: "#1", x: "#3", y: "#2", z: "#4", code: "#5", accuracy: null, date: null },
    });
    expect([...points.x]).toEqual([100.5, 130.5]);
    expect(points.codes!.at(1)).toBe("GS");
  });

  test("property: a file in pieces of any size gives the same points", () => {
    const file = utf8(text(",", "\r\n", true));
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 20 }), (sizes) => {
        const reader = new PointReader("p.csv", { ...METRES, decimal: "comma" });
        let at = 0;
        for (let i = 0; at < file.length; i++)
          reader.push(file.subarray(at, (at += sizes[i % sizes.length]!)));
        expect([...reader.finish().points.z]).toEqual([1.125, 1.5, -0.25]);
      }),
    );
  });

  test("property: numbers come back to the last digit, whatever their length", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.double({ min: -9e6, max: 9e6, noNaN: true }), fc.nat(11)), {
          minLength: 2,
          maxLength: 20,
        }),
        (list) => {
          const words = list.map(([v, digits], i) => `${i},${i * 7},${i * 5},${v.toFixed(digits)}`);
          const { points } = read(`id,x,y,z\n${words.join("\n")}\n`, { heights: "as-read", unit: "m" });
          const byLine = new Map([...points.lines].map((line, i) => [line, points.z[i]]));
          list.forEach(([v, digits], i) => {
            const there = byLine.get(i + 2);
            if (there !== undefined) expect(there === Number(v.toFixed(digits))).toBe(true);
          });
          expect(byLine.size).toBeGreaterThan(0);
        },
      ),
    );
  });
});

describe("units", () => {
  const metres: readonly (readonly [number, number, number])[] = [
    [373_764.147, 4_798_456.386, 1.783],
    [373_846.727, 4_798_458.012, 2.268],
    [373_706.365, 4_798_553.141, 1.962],
  ];
  const fileIn = (per: number): string =>
    `id,x,y,z\n${metres.map((r, i) => `${i},${r.map((v) => (v / per).toFixed(4)).join(",")}`).join("\n")}`;

  test.each([
    ["ft", 0.3048],
    ["us-ft", 1200 / 3937],
  ] as const)("a file in %s and one in metres give the same points within 1 mm", (unit, per) => {
    const [a, b] = [read(fileIn(1)).points, read(fileIn(per), { unit }).points];
    for (const key of ["x", "y", "z"] as const)
      a[key].forEach((v, i) => expect(Math.abs(b[key][i]! - v)).toBeLessThan(0.001));
  });

  test("the US survey foot is 1200/3937 m: 2 mm in a kilometre longer than the international foot", () => {
    expect(M_PER_US_FT / 0.3048 - 1).toBeCloseTo(2e-6, 8);
  });

  test("heads that name the other unit", async () => {
    const problems = await faults("id,x_ft,y_ft,z_ft\n1,0,0,1\n2,50,60,2\n", {
      columns: { ...columns, x: "x_ft", y: "y_ft", z: "z_ft" },
    });
    expect(problems.map((p) => p.code)).toEqual(["points-unit", "points-unit", "points-unit"]);
  });

  test("heights in feet among metres are listed by line", () => {
    const z = (i: number): number => 2 + 0.01 * (i % 7);
    const rows = Array.from(
      { length: 60 },
      (_, i) =>
        `${i},${(i % 10) * 3},${Math.floor(i / 10) * 3},${(i === 17 || i === 40 ? z(i) / 0.3048 : z(i)).toFixed(3)}`,
    );
    const feet = read(`id,x,y,z\n${rows.join("\n")}`).warnings.find((w) => w.code === "points-feet-rows")!;
    expect(feet.place).toContain("19 (17)");
    expect(feet.place).toContain("42 (40)");
    expect(feet.value).toBe("2 heights");
  });

  test("all heights in feet are found out by a known height", async () => {
    const text = "id,x,y,z\n1,0,9,6.1\n2,30,9,6.4\n3,30,50,6.2\n";
    expect((await faults(text, { known_heights_m: [1.9] })).map((p) => p.code)).toContain("points-feet");
    expect(read(text, { known_heights_m: [6] }).points.z).toHaveLength(3);
  });
});

describe("rows that are no points", () => {
  const near = "1,5100,200,0.7\n2,5140,230,0.9\n3,5120,260,0.8\n";

  test("position 0, 0 far from all others; blanks; customary values; each listed with line and reason", () => {
    const r = read(
      `id,x,y,z\n${near}4,0,0,0.8\n5,,230,0.8\n6,5110,220,\n7,5111,221,-9999\n8,5112,222,n/a\n9,5113,223,-99\n,,,\n`,
    );
    expect([...r.points.z]).toEqual([0.7, 0.9, 0.8]);
    expect(r.left_out.map((l) => [l.line, l.id, l.reason])).toEqual([
      [5, "4", "position-zero"],
      [6, "5", "no-position"],
      [7, "6", "no-height"],
      [8, "7", "no-data-value"],
      [9, "8", "no-height"],
      [10, "9", "no-data-value"],
    ]);
    expect(r.left_out_count).toBe(6);
    expect(r.warnings.every(isHelpful)).toBe(true);
  });

  test("on a local grid 0, 0 is a place", () => {
    expect(read("id,x,y,z\n1,0,0,0.7\n2,40,30,0.9\n3,20,60,0.8\n").left_out).toEqual([]);
    const apart = "id,x,y,z\n1,0,0,0.7\n2,140,130,0.9\n3,120,160,0.8\n4,130,150,0.8\n";
    expect(read(apart).left_out).toEqual([]);
    expect(codes(read(apart))).toEqual(["points-origin"]);
    expect(read(`${apart}5,0,0,0.9\n`).left_out.map((l) => l.line)).toEqual([2, 6]);
  });

  test("a height of 0 far from the others is missing, near them it is ground", () => {
    expect(read(`id,x,y,z\n${near}4,5150,250,0.00\n5,5160,250,0.00\n`).left_out.map((l) => l.reason)).toEqual(
      ["height-zero", "height-zero"],
    );
    const tidal = read("id,x,y,z\n1,0,9,0.00\n2,30,9,-0.2\n3,30,50,0.4\n4,30,80,0.00\n");
    expect(tidal.left_out).toEqual([]);
    expect(codes(tidal)).toContain("heights-zero");
  });

  test("the same point twice is left out, another height on the spot is warned of, and so is a name that returns", () => {
    const r = read(`id,x,y,z\n${near}4,5100,200,0.7\n5,5140,230,1.2\n3,5180,290,0.8\n`);
    expect(r.left_out.map((l) => [l.line, l.reason, l.value])).toEqual([[5, "same-point", "as line 2"]]);
    expect(codes(r)).toEqual(expect.arrayContaining(["points-two-heights", "points-same-name"]));
  });
});

describe("cells that are wrong", () => {
  test.each([
    ["=A1*2", "points-formula"],
    ["#REF!", "points-formula"],
    ["-cmd|'/c calc'!A0", "points-formula"],
    ["1.234.5", "points-number"],
    ["12 m", "points-number"],
    ["1e400", "points-number"],
    ["99999999999", "points-number"],
  ])("%s is refused as %s, with its line", async (cell, code) => {
    const problems = await faults(`id,x,y,z\n1,0,9,1\n2,30,9,${cell}\n`);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ code, place: "line 3" });
    expect(isHelpful(problems[0]!)).toBe(true);
  });

  test("the other decimal sign is named, in a semicolon file and in quotes", async () => {
    expect((await faults("id;x;y;z\n1;0;9;1,5\n"))[0]).toMatchObject({
      code: "points-decimal",
      place: "line 2",
    });
    expect((await faults("id;x;y;z\n1;0;9;1.5\n", { decimal: "comma" }))[0]!.code).toBe("points-decimal");
  });

  test("decimal commas in a file parted by commas shift the columns: refused", async () => {
    expect((await faults("id,x,y,z\n1,100,5,200,5,1,25\n", { decimal: "comma" }))[0]!.code).toBe("csv-cells");
  });

  test("a column that is not there: the message names those that are", async () => {
    const [problem] = await faults("name,east,north,height\n1,0,0,1\n");
    expect(problem!.message).toContain('"id"');
    expect(problem!.mend).toContain('"east"');
  });

  test("a quote that does not close, an empty file, heads alone", async () => {
    expect((await faults('id,x,y,z\n"1,0,0,1\n'))[0]!.code).toBe("csv-quotes");
    expect((await faults(""))[0]!.code).toBe("points-empty");
    expect((await faults("id,x,y,z\n"))[0]!.code).toBe("points-none");
  });

  test("a fault in every one of many rows ends after a hundred", async () => {
    const problems = await faults(`id,x,y,z\n${"1,a,b,c\n".repeat(50_000)}`);
    expect(problems.length).toBeLessThan(120);
  });
});

describe("dates", () => {
  const file = (...dates: string[]): string =>
    `id,x,y,z,date\n${dates.map((d, i) => `${i},${i * 9},${i * 4},1.${i},${d}`).join("\n")}`;

  test("read in the stated order, with a time of day", () => {
    const r = read(file("05/10/2026", "25/10/2026 14:03", ""), { ...withDate, date_order: "dmy" });
    expect([...r.points.days!]).toEqual([Date.UTC(2026, 9, 5) / 864e5, Date.UTC(2026, 9, 25) / 864e5, NaN]);
    expect(r.warnings).toEqual([]);
  });

  test("a date that cannot be of the order names its row, its value and the order that fits", async () => {
    const [problem] = await faults(file("05/10/2026", "10/25/2026"), { ...withDate, date_order: "dmy" });
    expect(problem).toMatchObject({ code: "date-order", place: "line 3", value: "10/25/2026" });
    expect(problem!.message).toContain("month-day-year");
    expect((await faults(file("31/02/2026"), { ...withDate, date_order: "dmy" }))[0]!.code).toBe(
      "date-order",
    );
    expect((await faults(file("5.10.26"), { ...withDate, date_order: "dmy" }))[0]!.code).toBe("date-order");
  });

  test("two ways of writing with days that read either way are flagged; so is a file of nothing else", () => {
    const dmy = { ...withDate, date_order: "dmy" } as const;
    expect(codes(read(file("05/10/2026", "25.10.2026"), dmy))).toContain("date-mix");
    expect(codes(read(file("05/10/2026", "06/10/2026"), dmy))).toContain("date-either-way");
    expect(codes(read(file("05/10/2026", "26/10/2026"), dmy))).toEqual([]);
  });
});

describe("positions and heights of another kind", () => {
  test("degrees where metres should stand are refused; metres under the heads of degrees are said", async () => {
    const named = { columns: { ...columns, x: "longitude", y: "latitude" } };
    const degrees = "id,longitude,latitude,z\n1,-70.5571,43.3281,1\n2,-70.5573,43.3284,1.1\n";
    expect((await faults(degrees, named)).map((p) => p.code)).toContain("points-degrees");
    const metres = read("id,longitude,latitude,z\n1,373764,4798456,1\n2,373746,4798458,1.1\n", named);
    expect(codes(metres)).toEqual(["points-heads-degrees"]);
  });

  test("heights above the ellipsoid are refused as ground, and may be looked at", async () => {
    const text = "id,x,y,z\n1,0,9,-26.1\n2,30,9,-26.4\n3,30,50,-25.9\n";
    expect((await faults(text))[0]!.code).toBe("ellipsoid-heights");
    expect(codes(read(text, { heights: "as-read" }))).toEqual(["ellipsoid-heights"]);
    expect(read(text, { known_heights_m: [-24] }).warnings).toEqual([]);
    const high = "id,x,y,z\n1,0,9,47.1\n2,30,9,47.4\n3,30,50,46.9\n";
    expect((await faults(high, { known_heights_m: [1.2, 0.4] }))[0]!.code).toBe("ellipsoid-heights");
  });
});

test("200,000 rows in pieces: every point there, sums exact, nothing left out", () => {
  const n = 200_000;
  const reader = new PointReader("big.csv", METRES);
  reader.push(utf8("id,x,y,z\n"));
  for (let i = 0; i < n; i += 1000)
    reader.push(
      utf8(
        Array.from(
          { length: 1000 },
          (_, k) => `P${i + k},${(i + k) % 500},${Math.floor((i + k) / 500)},${1 + ((i + k) % 8) / 8}\n`,
        ).join(""),
      ),
    );
  const { points, left_out_count } = reader.finish();
  expect(points.z).toHaveLength(n);
  expect(left_out_count).toBe(0);
  expect(points.z.reduce((a, b) => a + b, 0)).toBe(n * (1 + 3.5 / 8));
  expect(points.ids!.at(n - 1)).toBe("P199999");
  expect(points.lines[n - 1]).toBe(n + 1);
});

describe.skipIf(!hasOpenData("marsh-survey-points"))(
  "salt marsh points by van Ardenne and others (2018), Data in Brief",
  () => {
    const wells = {
      columns: { id: "Flag_Trans", x: "X", y: "Y", z: "Z", code: "Transect", accuracy: null, date: null },
    };
    const bytes = (name: string): Uint8Array => openData(`marsh-survey-points/${name}`);

    test("Wells: 16 rows with X = Y = 0 are named, the others are refused as heights above the ellipsoid", async () => {
      const problems = await problemsOf(() =>
        readPoints("wells_int-points.csv", bytes("wells_int-points.csv"), { ...METRES, ...wells }),
      );
      expect(problems.filter((p) => p.severity === "error").map((p) => p.code)).toEqual([
        "ellipsoid-heights",
      ]);
      const zero = problems.find((p) => p.code === "points-position-zero")!;
      expect(zero.message).toContain("16 rows");
      expect(zero.message).toContain("MR_Transect_1");
      expect(zero.message).toContain("LL_Transect_12");
    });

    test("Wells as read: 46 points, heights -26.50 to -25.77", () => {
      const r = readPoints("wells_int-points.csv", bytes("wells_int-points.csv"), {
        ...METRES,
        ...wells,
        heights: "as-read",
      });
      expect(r.points.z).toHaveLength(46);
      expect(r.left_out.filter((l) => l.reason === "position-zero")).toHaveLength(16);
      expect([Math.min(...r.points.z).toFixed(2), Math.max(...r.points.z).toFixed(2)]).toEqual([
        "-26.50",
        "-25.77",
      ]);
      expect(r.points.x[0]).toBe(373_764.147);
    });

    test("Grants Beach: 18 heights of 0.00 are listed, 33 points from 0.42 to 0.95 remain", () => {
      const r = readPoints("grants_beach-points.csv", bytes("grants_beach-points.csv"), {
        ...METRES,
        columns: { id: "OBJECTID_1", x: "x", y: "y", z: "z", code: "Flag", accuracy: null, date: null },
      });
      expect(r.left_out.filter((l) => l.reason === "height-zero")).toHaveLength(18);
      expect(r.points.z).toHaveLength(33);
      expect([Math.min(...r.points.z).toFixed(2), Math.max(...r.points.z).toFixed(2)]).toEqual([
        "0.42",
        "0.95",
      ]);
    });
  },
);

test.skipIf(!hasOpenData("hydroperiod-ria-formosa"))(
  "Ria Formosa (Santos, CC0): 40 points whose columns latitude and longitude hold metres",
  () => {
    const r = readPoints("data_points.csv", openData("hydroperiod-ria-formosa/data_points.csv"), {
      ...METRES,
      columns: {
        id: "point",
        x: "latitude",
        y: "longitude",
        z: "elevation",
        code: "habitat",
        accuracy: null,
        date: null,
      },
    });
    expect(r.points.z).toHaveLength(40);
    expect(codes(r)).toContain("points-heads-degrees");
    expect(r.points.ids!.at(0)).toBe("Zn1_0");
    expect([r.points.x[0], r.points.y[0], r.points.z[0]]).toEqual([21_781.889, -298_079.316, 0.304]);
  },
);
