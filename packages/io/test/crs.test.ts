import { ProblemError } from "@causey/engine/formula";
import * as fc from "fast-check";
import { expect, test } from "vitest";
import {
  comparePrj,
  crsFromEpsg,
  designProj,
  epsgInfo,
  gridScale,
  lonLatAccuracy,
  metreTwin,
  sameCrs,
  toGrid,
  toLonLat,
} from "../src/crs/index.ts";
import { isHelpful, problemsOf } from "./support/problems.ts";

test("British National Grid: the shift grid gives way to a datum shift, and its error of metres is stated", async () => {
  const crs = await crsFromEpsg(27700);
  expect(crs).toMatchObject({ kind: "epsg", code: 27700, name: "OSGB36 / British National Grid" });
  expect(crs.proj).not.toContain("nadgrids");
  expect(crs.proj).toContain("+towgs84=446.448,-125.157,542.06,0.15,0.247,0.842,-20.489");
  expect(lonLatAccuracy(crs)).toMatchObject({ grade: "metres" });
  expect(lonLatAccuracy(crs).note).toContain("5 m");
});

test("Ordnance Survey, A guide to coordinate systems in Great Britain, annexe C worked example (from memory): 52°39'27.2531\"N 1°43'4.5177\"E on the Airy ellipsoid is 651409.903 E, 313177.270 N", async () => {
  const { proj } = await crsFromEpsg(27700);
  const onAiry = {
    kind: "epsg",
    code: 27700,
    name: "",
    proj: proj.replace(/\+towgs84=\S+/, "+towgs84=0,0,0"),
  } as const;
  const { default: proj4 } = await import("proj4");
  const [x, y] = proj4("+proj=longlat +ellps=airy +towgs84=0,0,0 +no_defs", onAiry.proj, [
    1 + 43 / 60 + 4.5177 / 3600,
    52 + 39 / 60 + 27.2531 / 3600,
  ]);
  expect(x).toBeCloseTo(651_409.903, 2);
  expect(y).toBeCloseTo(313_177.27, 2);
});

test("UTM by its definition: on the central meridian the equator is 500,000 E, 0 N, and the scale is 0.9996", async () => {
  const crs = await crsFromEpsg(32618);
  const [x, y] = toGrid(crs)(-75, 0)!;
  expect([x, y].map((v) => Math.abs(v - Math.round(v)) < 1e-6 && Math.round(v))).toEqual([500_000, 0]);
  expect(gridScale(crs, 500_000, 4_500_000)!).toBeCloseTo(0.9996, 5);
  expect(lonLatAccuracy(crs).grade).toBe("good");
});

const CENTRES = [
  [27700, 400_000, 300_000],
  [28992, 155_000, 463_000],
  [2193, 1_600_000, 5_400_000],
  [32118, 300_000, 50_000],
  [32618, 500_000, 4_500_000],
  [25832, 500_000, 5_500_000],
] as const;

test.each(CENTRES)(
  "property: from EPSG:%d to longitude and latitude and back is the same place, to 1 cm through a datum shift, else to 0.1 mm",
  async (code, east, north) => {
    const crs = await crsFromEpsg(code);
    const [there, back] = [toLonLat(crs), toGrid(crs)];
    const slack = lonLatAccuracy(crs).grade === "good" ? 1e-4 : 0.01;
    const off = fc.double({ min: -50_000, max: 50_000, noNaN: true });
    fc.assert(
      fc.property(off, off, (dx, dy) => {
        const [x, y] = back(...there(east + dx, north + dy)!)!;
        expect(Math.hypot(x - east - dx, y - north - dy)).toBeLessThan(slack);
      }),
    );
  },
);

const refused: readonly (readonly [code: number, message: RegExp, mend: RegExp])[] = [
  [4326, /not a projected system \(geographic\)/, /Choose a projected one in metres/],
  [5703, /not a projected system \(vertical\)/, /projected/],
  [3901, /compound/, /projected/],
  [2263, /in US survey foot, not in metres/, /EPSG:32118 \(NAD83 \/ New York Long Island\)/],
  [3857, /Mercator/, /UTM zone or the national grid/],
  [2017, /shift grid May76v20.gsb/, /modern datum/],
  [26718, /shift grid NTv2_0.gsb/, /modern datum/],
  [2065, /cannot be computed here/, /UTM zone/],
  [999_999, /not in the register/, /local grid/],
];
test.each(refused)(
  "EPSG:%d cannot be designed in, and the message says what can",
  async (code, message, mend) => {
    const [problem] = await problemsOf(() => crsFromEpsg(code));
    expect(problem).toMatchObject({ file: "plan.json", place: "crs.epsg", value: String(code) });
    expect(problem!.message).toMatch(message);
    expect(problem!.mend).toMatch(mend);
    expect(isHelpful(problem!)).toBe(true);
  },
);

test("every projected system of the register is either usable or refused in words; none throws or gives NaN", async () => {
  const { default: all } = await import("epsg-index/all.json", { with: { type: "json" } });
  const codes = Object.keys(all).filter((_, i) => i % 9 === 0);
  let usable = 0;
  for (const key of codes) {
    const info = await epsgInfo(Number(key));
    if (info?.kind !== "projected") continue;
    try {
      const crs = await crsFromEpsg(Number(key));
      usable += 1;
      expect(crs.proj).not.toMatch(/nadgrids|\+units=(?!m\b)/);
      const spot = toLonLat(crs)(500_000, 500_000);
      if (spot !== null) expect(spot.every(Number.isFinite)).toBe(true);
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      expect(error.problems.every(isHelpful)).toBe(true);
    }
  }
  expect(usable).toBeGreaterThan(300);
});

test("foot systems name the same zone in metres where there is one", async () => {
  expect((await metreTwin(2263))?.code).toBe(32118);
  expect((await metreTwin(2225))?.name).toContain("California zone 1");
  expect(await metreTwin(999_999)).toBe(null);
});

test("a missing shift grid is named, a needless one is left alone", () => {
  expect(designProj("+proj=utm +zone=33 +datum=WGS84")).toEqual({ proj: "+proj=utm +zone=33 +datum=WGS84" });
  expect(designProj('+proj=utm +nadgrids="National 84.gsb" +units=m')).toEqual({
    missingGrid: '"National 84.gsb"',
  });
  expect(designProj("+proj=utm +zone=18 +datum=NAD27 +units=m")).toEqual({
    missingGrid: expect.stringContaining("NAD27") as string,
  });
  const replaced = designProj("+proj=tmerc +ellps=bessel +nadgrids=BETA2007.gsb +units=m");
  expect(replaced).toEqual({ proj: expect.stringContaining("+towgs84=598.1,73.7,418.2") as string });
});

test("a system without a datum shift admits that longitude and latitude are unknown in it", async () => {
  const crs = await crsFromEpsg(2099);
  expect(lonLatAccuracy(crs)).toMatchObject({ grade: "unknown" });
});

test("well-known text is compared by its numbers; nonsense is unreadable, not an exception", async () => {
  const crs = await crsFromEpsg(32618);
  const wkt = (falseEasting: number): string =>
    `PROJCS["x",GEOGCS["y",DATUM["D_WGS_1984",SPHEROID["WGS_1984",6378137,298.257223563]],PRIMEM["Greenwich",0],UNIT["Degree",0.0174532925199433]],PROJECTION["Transverse_Mercator"],PARAMETER["False_Easting",${falseEasting}],PARAMETER["False_Northing",0],PARAMETER["Central_Meridian",-75],PARAMETER["Scale_Factor",0.9996],PARAMETER["Latitude_Of_Origin",0],UNIT["Meter",1]]`;
  expect(comparePrj(wkt(500_000), crs)).toBe("agrees");
  expect(comparePrj(wkt(500_001), crs)).toBe("differs");
  for (const text of ["", "PROJCS[", "hello", "\0".repeat(50), "x".repeat(30_000)])
    expect(comparePrj(text, crs)).toBe("unreadable");
});

test("two systems are one only by code or by the name of the local grid", () => {
  expect(sameCrs({ epsg: 1 }, { epsg: 1 })).toBe(true);
  expect(sameCrs({ epsg: 1 }, { epsg: 2 })).toBe(false);
  expect(sameCrs({ epsg: 1 }, { local: "1" })).toBe(false);
  expect(sameCrs({ local: "a" }, { local: "a" })).toBe(true);
});
