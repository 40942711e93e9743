import { readdirSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import type { Problem } from "@causey/engine/formula";
import { causey, temporaryFolder } from "../support/shell.ts";
import { surveyCsv, surveyPlan, type Shot } from "../support/survey-plan.ts";
import { contentsOf } from "../support/unchanged.ts";

const FT = 0.3048;
const line = (s: Shot, z: string | number = s.z, more = ""): string =>
  `P${s.i},${s.x},${s.y},${typeof z === "number" ? z.toFixed(3) : z}${more}`;
const dated = (date: (s: Shot) => string): string =>
  surveyCsv("id,x,y,z,date", (s) => line(s, s.z, `,${date(s)}`));

interface Case {
  readonly title: string;
  readonly plan: () => string;
  readonly code: string;
  readonly place: RegExp;
  readonly value: RegExp;
  readonly message: RegExp;
  readonly mend: RegExp;
}

/** Files that would make a wrong plan: refused. */
const refused: readonly Case[] = [
  {
    title: "X = Y = 0 in every row",
    plan: () => surveyPlan(surveyCsv("id,x,y,z", (s) => `P${s.i},0,0,${s.z}`)),
    code: "points-none",
    place: /file/,
    value: /./,
    message: /No row .* is a point with a position/,
    mend: /columns that are named for x, y/,
  },
  {
    title: "feet in a column of metres, which its head says",
    plan: () =>
      surveyPlan(
        surveyCsv("id,x,y,elev_ft", (s) => line(s, s.z / FT)),
        { z: "elev_ft" },
      ),
    code: "points-unit",
    place: /line 1/,
    value: /elev_ft/,
    message: /names feet; the file is read in metres/,
    mend: /Choose feet/,
  },
  {
    title: "feet in a column of metres, which only the check shots show",
    plan: () => surveyPlan(surveyCsv("id,x,y,z", (s) => line(s, s.z / FT))),
    code: "terrain-other-unit",
    place: /heights/,
    value: /off by [3-5]\.\d\d m in metres, 0\.\d\d m in feet/,
    message: /most likely in feet/,
    mend: /Choose feet as the unit of the terrain/,
  },
  {
    title: "metres in a file that is read in feet",
    plan: () =>
      surveyPlan(
        surveyCsv("id,x,y,z", (s) => `P${s.i},${s.x / FT},${s.y / FT},${s.z.toFixed(3)}`),
        {},
        { unit: "ft" },
      ),
    code: "terrain-other-unit",
    place: /heights/,
    value: /in feet, 0\.\d\d m in metres/,
    message: /most likely in metres/,
    mend: /Choose metres as the unit/,
  },
  ...[-27, 27].map((off): Case => ({
    title: `ellipsoid heights, ${off} m off`,
    plan: () => surveyPlan(surveyCsv("id,x,y,z", (s) => line(s, s.z + off))),
    code: "ellipsoid-heights",
    place: /column "z"/,
    value: off < 0 ? /median -2\d\.\d+ m/ : /median 2\d\.\d+ m/,
    message: /above the ellipsoid.*not above the plan's datum/,
    mend: /geoid model/,
  })),
  {
    title: "degrees in columns of metres",
    plan: () =>
      surveyPlan(surveyCsv("id,x,y,z", (s) => `P${s.i},${-70 + s.x / 1e5},${41 + s.y / 1e5},${s.z}`)),
    code: "points-degrees",
    place: /columns "x" and "y"/,
    value: /-69\.9/,
    message: /most likely hold degrees/,
    mend: /plan's own system/,
  },
  {
    title: "mixed date orders, where a row shows it",
    plan: () =>
      surveyPlan(
        dated((s) => (s.i === 40 ? "10/25/2026" : "05/10/2026")),
        { date: "date" },
        { date_order: "dmy" },
      ),
    code: "date-order",
    place: /line 42/,
    value: /10\/25\/2026/,
    message: /cannot be a date in the order day-month-year; it reads as month-day-year/,
    mend: /if orders are mixed, mend the file/,
  },
  {
    title: "semicolons and decimal commas, read with points",
    plan: () => surveyPlan(surveyCsv("id;x;y;z", (s) => line(s).replaceAll(",", ";").replaceAll(".", ","))),
    code: "points-decimal",
    place: /line 2/,
    value: /\d,\d{3}/,
    message: /has a decimal comma; the file is read with decimal points/,
    mend: /Choose decimal comma/,
  },
  {
    title: "decimal commas in a file parted by commas",
    plan: () => surveyPlan(surveyCsv("id,x,y,z", (s) => line(s, s.z.toFixed(3).replace(".", ",")))),
    code: "csv-cells",
    place: /line 2/,
    value: /\d{3}/,
    message: /5 cells, the heads are 4: its values may stand in the wrong columns/,
    mend: /decimal commas.*semicolons/,
  },
  {
    title: "a formula in a cell of heights",
    plan: () => surveyPlan(surveyCsv("id,x,y,z", (s) => line(s, s.i === 7 ? "=B2+1" : s.z))),
    code: "points-formula",
    place: /line 9/,
    value: /=B2\+1/,
    message: /is a formula or its fault, not a value/,
    mend: /values in place of formulas/,
  },
];

const checked = (plan: string): { readonly code: number | null; readonly problems: readonly Problem[] } => {
  const ran = causey(["check", plan, "--json"]);
  return { code: ran.code, problems: (JSON.parse(ran.out) as { problems: Problem[] }).problems };
};
const matching = (problems: readonly Problem[], c: Omit<Case, "title" | "plan">): readonly Problem[] =>
  problems.filter(
    (p) =>
      p.file === "survey.csv" &&
      p.code === c.code &&
      c.place.test(p.place) &&
      c.value.test(p.value) &&
      c.message.test(p.message) &&
      c.mend.test(p.mend),
  );

test.each(refused.map((c) => [c.title, c] as const))(
  "%s: refused with file, place, value and mend; nothing is written",
  (_title, c) => {
    const plan = c.plan();
    const before = contentsOf(plan);
    const { code, problems } = checked(plan);
    expect(code).toBe(2);
    const mine = matching(problems, c);
    expect(mine.length, JSON.stringify(problems.slice(0, 5), null, 1)).toBeGreaterThan(0);
    expect(mine[0]!.severity).toBe("error");
    const parent = temporaryFolder();
    const ran = causey(["plan", plan, "--out", join(parent, "out"), "--quiet"]);
    expect(ran.code).toBe(2);
    expect(ran.error).toMatch(c.message);
    expect(ran.error).toContain("nothing was written");
    expect(readdirSync(parent)).toEqual([]);
    expect(contentsOf(plan)).toEqual(before);
  },
);

/** Files that can be read in one way only, or where nobody but the user can tell: read, and said. */
const noted: readonly Case[] = [
  {
    title: "X = Y = 0 in some rows: left out and listed by line and name",
    plan: () => surveyPlan(surveyCsv("id,x,y,z", (s) => (s.i % 90 === 4 ? `P${s.i},0,0,${s.z}` : line(s)))),
    code: "points-position-zero",
    place: /6 \(P4\), 96 \(P94\)/,
    value: /7 rows/,
    message: /coordinates are missing\. Left out/,
    mend: /field book/,
  },
  {
    title: "feet in some rows of a column of metres: listed",
    plan: () => surveyPlan(surveyCsv("id,x,y,z", (s) => line(s, s.i === 300 ? s.z / FT : s.z))),
    code: "points-feet-rows",
    place: /302 \(P300\)/,
    value: /1 height/,
    message: /about 3\.28 times larger than those around/,
    mend: /field book/,
  },
  {
    title: "columns of latitude and longitude that hold metres: taken as lengths, and said",
    plan: () =>
      surveyPlan(
        surveyCsv("id,lon,lat,z", (s) => line(s)),
        { x: "lon", y: "lat" },
      ),
    code: "points-heads-degrees",
    place: /"lon" and "lat"/,
    value: /1000, 2000/,
    message: /named as degrees but hold lengths/,
    mend: /not exchanged/,
  },
  {
    title: "two ways of writing dates, each of which reads either way: said, with the order that was taken",
    plan: () =>
      surveyPlan(
        dated((s) => (s.i % 2 ? "05/10/2026" : "10-05-2026")),
        { date: "date" },
        { date_order: "dmy" },
      ),
    code: "date-mix",
    place: /line 2/,
    value: /567 dates/,
    message: /two orders may be mixed/,
    mend: /day-month-year/,
  },
];

test.each(noted.map((c) => [c.title, c] as const))("%s", (_title, c) => {
  const plan = c.plan();
  const before = contentsOf(plan);
  const { code, problems } = checked(plan);
  expect(problems.filter((p) => p.severity === "error")).toEqual([]);
  expect(code).toBe(0);
  expect(matching(problems, c).length, JSON.stringify(problems.slice(0, 5), null, 1)).toBe(1);
  expect(contentsOf(plan)).toEqual(before);
});

test("the same survey without a fault is read without a word, with points or with semicolons and decimal commas", () => {
  expect(checked(surveyPlan(surveyCsv()))).toEqual({ code: 0, problems: [] });
  const german = surveyCsv("id;x;y;z", (s) => line(s).replaceAll(",", ";").replaceAll(".", ","));
  expect(checked(surveyPlan(german, {}, { decimal: "comma" }))).toEqual({ code: 0, problems: [] });
});
