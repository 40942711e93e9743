import * as fc from "fast-check";
import { expect, test } from "vitest";
import type { Crs, Plot, Ring, Start, Zone } from "@causey/engine/site";
import { ZONE_USES, readPlaces, readZones, writePlaces, writeZones } from "../src/vector/index.ts";
import { isHelpful, problemsOf, utf8 } from "./support/problems.ts";

const local: Crs = { kind: "local", name: "Site" };
const utm: Crs = {
  kind: "epsg",
  code: 32618,
  name: "WGS 84 / UTM zone 18N",
  proj: "+proj=utm +zone=18 +datum=WGS84 +units=m +no_defs",
};
const LOCAL = { type: "name", properties: { name: "local" } };

const square: Ring = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];
const closedRing = (ring: Ring): number[][] => [...ring, ring[0]!].map(([x, y]) => [x, y]);
const polygon = (...rings: Ring[]): object => ({ type: "Polygon", coordinates: rings.map(closedRing) });
const zone = (properties: object, geometry: object = polygon(square)): object => ({
  type: "Feature",
  properties: { id: "z1", name: "Fen", use: "closed", source: "walked 2026", ...properties },
  geometry,
});
const file = (features: readonly object[], members: object = { crs: LOCAL }): Uint8Array =>
  utf8(JSON.stringify({ type: "FeatureCollection", ...members, features }));
const zones = (features: readonly object[], members?: object): readonly Zone[] =>
  readZones("zones.geojson", file(features, members), local).zones;

test("a zone comes out with its rings open, its properties read, the others left alone", () => {
  const hole: Ring = [
    [2, 2],
    [4, 2],
    [4, 4],
  ];
  const [z] = zones([
    zone(
      { use: "habitat", sensitivity: 3, hidden: "yes", from: null, OBJECTID: 7, constructor: "x" },
      polygon(square, hole),
    ),
  ]);
  expect(z).toEqual({
    id: "z1",
    name: "Fen",
    use: "habitat",
    polygons: [[square, hole]],
    sensitivity: 3,
    hidden: true,
    source: "walked 2026",
  });
});

test("names are text, whatever they look like", () => {
  const name = '<img src=x onerror="alert(1)"> =HYPERLINK("x")';
  expect(zones([zone({ name })])[0]!.name).toBe(name);
});

test("longitude and latitude (RFC 7946) land on the grid: UTM 18N, 75 W on the equator is 500,000 E, 0 N", () => {
  const ring: Ring = [
    [-75, 0],
    [-74.999, 0],
    [-74.999, 0.001],
  ];
  for (const members of [
    {},
    { crs: { type: "name", properties: { name: "urn:ogc:def:crs:OGC:1.3:CRS84" } } },
    { crs: { type: "name", properties: { name: "EPSG:4326" } } },
  ]) {
    const [z] = readZones("z", file([zone({}, polygon(ring))], members), utm).zones;
    const [x, y] = z!.polygons[0]![0]![0]!;
    expect(x).toBeCloseTo(500_000, 3);
    expect(y).toBeCloseTo(0, 3);
  }
});

test("the older member crs may name the site's own system in any of its spellings", () => {
  for (const name of ["EPSG:32618", "urn:ogc:def:crs:EPSG::32618", "urn:ogc:def:crs:EPSG:9.9:32618"])
    expect(
      readZones("z", file([zone({})], { crs: { type: "name", properties: { name } } }), utm).zones[0]!
        .polygons,
    ).toEqual([[square]]);
});

const crsFaults: readonly (readonly [string, Crs, object, string])[] = [
  ["another EPSG code", utm, { crs: { type: "name", properties: { name: "EPSG:27700" } } }, "geojson-crs"],
  ["a crs of null", utm, { crs: null }, "geojson-crs"],
  ["a link", utm, { crs: { type: "link", properties: { href: "x" } } }, "geojson-crs"],
  ["longitude and latitude for a local grid", local, {}, "geojson-crs"],
  [
    "EPSG for a local grid",
    local,
    { crs: { type: "name", properties: { name: "EPSG:32618" } } },
    "geojson-crs",
  ],
  ["grid numbers without a crs", utm, {}, "geojson-degrees"],
  [
    "no known datum shift",
    {
      kind: "epsg",
      code: 2099,
      name: "Qatar",
      proj: "+proj=cass +lat_0=25.4 +lon_0=50.8 +ellps=helmert +units=m",
    },
    {},
    "geojson-datum-shift",
  ],
];
test.each(crsFaults)("refused, never guessed: %s", async (_title, crs, members, code) => {
  const far: Ring = square.map(([x, y]) => [x + 500_000, y + 4_500_000]);
  const problems = await problemsOf(() =>
    readZones("z.geojson", file([zone({}, polygon(far))], members), crs),
  );
  expect(problems).toHaveLength(1);
  expect(problems[0]!.code).toBe(code);
  expect(isHelpful(problems[0]!)).toBe(true);
});

const ringFaults: readonly (readonly [string, object, RegExp])[] = [
  ["a ring that is not closed", { type: "Polygon", coordinates: [square] }, /not closed/],
  [
    "two corners",
    polygon([
      [0, 0],
      [1, 1],
    ]),
    /fewer than three/,
  ],
  [
    "three times the same corner",
    polygon([
      [1, 1],
      [1, 1],
      [1, 1],
    ]),
    /fewer than three/,
  ],
  [
    "a bow tie",
    polygon([
      [0, 0],
      [10, 10],
      [10, 0],
      [0, 10],
    ]),
    /crosses itself/,
  ],
  [
    "no area",
    polygon([
      [0, 0],
      [5, 0],
      [10, 0],
    ]),
    /no ground/,
  ],
  [
    "a line",
    {
      type: "LineString",
      coordinates: [
        [0, 0],
        [1, 1],
      ],
    },
    /how wide/,
  ],
  ["a point", { type: "Point", coordinates: [0, 0] }, /Polygon or a MultiPolygon/],
  ["no rings", { type: "Polygon", coordinates: [] }, /no ring/],
  ["no polygons", { type: "MultiPolygon", coordinates: [] }, /no ring/],
  [
    "text for numbers",
    {
      type: "Polygon",
      coordinates: [
        [
          ["a", 0],
          [1, 0],
          [1, 1],
          ["a", 0],
        ],
      ],
    },
    /not a position/,
  ],
  ["one number", { type: "Polygon", coordinates: [[[0], [1], [2], [0]]] }, /not a position/],
  [
    "beyond the earth",
    polygon([
      [0, 0],
      [1e300, 0],
      [1, 1],
    ]),
    /not a position/,
  ],
];
test.each(ringFaults)("refused with the feature and ring: %s", async (_title, geometry, message) => {
  const problems = await problemsOf(() => zones([zone({}, geometry)]));
  expect(problems.some((p) => message.test(p.message))).toBe(true);
  expect(problems.every((p) => p.place.startsWith('feature 1 ("z1")') && isHelpful(p))).toBe(true);
});

test("the place of a crossing is told, and outlines that only touch themselves are let be", async () => {
  const problems = await problemsOf(() =>
    zones([
      zone(
        {},
        polygon([
          [0, 0],
          [10, 10],
          [10, 0],
          [0, 10],
        ]),
      ),
    ]),
  );
  expect(problems[0]!.value).toBe("near 5.00, 5.00");
  const stairs: Ring = [
    [0, 0],
    [1, 0],
    [1, 1],
    [2, 1],
    [2, 2],
    [1, 2],
    [1, 1],
    [0, 1],
  ];
  expect(zones([zone({}, polygon(stairs))])).toHaveLength(1);
});

const propertyFaults: readonly (readonly [string, object, RegExp])[] = [
  ["no name", { name: undefined }, /needs "name"/],
  ["a name of two lines", { name: "a\nb" }, /one line/],
  ["an unknown use", { use: "swamp" }, /known words/],
  ["a use from the prototype", { use: "toString" }, /known words/],
  ["no source", { source: " " }, /needs "source"/],
  ["a sensitivity below zero", { sensitivity: -1 }, /at least 0/],
  ["a sensitivity in words", { sensitivity: "high" }, /not a number/],
  ["hidden as a guess", { hidden: "maybe" }, /neither true nor false/],
  ["half of the days", { use: "seasonal-closure", from: "04-15" }, /only one of its two days/],
  ["30 February", { use: "seasonal-closure", from: "02-30", to: "08-31" }, /day of the year/],
  ["no id", { id: null }, /needs an id/],
];
test.each(propertyFaults)("refused with the property: %s", async (_title, properties, message) => {
  const problems = await problemsOf(() => zones([zone(properties)]));
  expect(problems).toHaveLength(1);
  expect(problems[0]!.message).toMatch(message);
  expect(isHelpful(problems[0]!)).toBe(true);
});

test("all faults of all features are listed at once, twins with both places", async () => {
  const problems = await problemsOf(() =>
    zones([
      zone({ name: null }),
      zone({ use: "x", source: null }),
      { type: "Feature", properties: {}, geometry: null },
    ]),
  );
  expect(problems.map((p) => p.code).sort()).toEqual([
    "feature-property",
    "feature-property",
    "feature-property",
    "geojson-feature",
    "zone-twins",
  ]);
});

test("a habitat without sensitivity and a closure without days are told, for they act in silence", () => {
  const { warnings } = readZones(
    "z",
    file([zone({ use: "habitat" }), zone({ id: "z2", use: "seasonal-closure" })], { crs: LOCAL }),
    local,
  );
  expect(warnings.map((w) => w.code)).toEqual(["zone-sensitivity", "zone-days"]);
});

test("a ring made to cost hours is refused in about a second", async () => {
  const comb: Ring = Array.from({ length: 40_000 }, (_, i) => [
    i % 2 === 0 ? i * 1e-4 : i * 1e-4 + 1000,
    i % 2 === 0 ? i * 1e-4 : i * 1e-4 + 1000 + i * 0.1,
  ]);
  const start = performance.now();
  await problemsOf(() => zones([zone({}, polygon(comb))]));
  expect(performance.now() - start).toBeLessThan(20_000);
});

const place = (properties: object, coordinates: unknown = [5, 6]): object => ({
  type: "Feature",
  properties: { kind: "plot", id: "P1", name: "Trap 1", keep_off_m: 1, reach_m: 2, ...properties },
  geometry: { type: "Point", coordinates },
});
const start = place({ kind: "start", id: "S1", name: "Gate" }, [1, 2]);
const places = (features: readonly object[], defaults = {}) =>
  readPlaces("places.geojson", file(features), local, defaults);

test("starts and plots come out apart, heights of points left alone", () => {
  const { starts, plots } = places([start, place({}, [5, 6, 1.5])]);
  expect(starts).toEqual([{ id: "S1", name: "Gate", x: 1, y: 2 }]);
  expect(plots).toEqual([{ id: "P1", name: "Trap 1", x: 5, y: 6, keep_off_m: 1, reach_m: 2 }]);
});

test("distances of a plot are its own, or those stated for all plots, or a problem; never assumed", async () => {
  const bare = place({ keep_off_m: null, reach_m: undefined });
  expect(places([bare], { keep_off_m: 3, reach_m: 4 }).plots[0]).toMatchObject({ keep_off_m: 3, reach_m: 4 });
  const problems = await problemsOf(() => places([bare]));
  expect(problems.map((p) => p.mend)).toEqual([
    expect.stringContaining('"plot_defaults": {"keep_off_m"'),
    expect.stringContaining('"plot_defaults": {"reach_m"'),
  ]);
});

const placeFaults: readonly (readonly [string, readonly object[], string])[] = [
  ["two plots of one name", [place({}), place({ id: "P2" })], "plot-names"],
  ["two places of one id", [start, place({ id: "S1" })], "place-twins"],
  ["an unknown kind", [place({ kind: "gate" })], "feature-property"],
  [
    "a plot that is a line",
    [
      {
        ...place({}),
        geometry: {
          type: "LineString",
          coordinates: [
            [0, 0],
            [1, 1],
          ],
        },
      },
    ],
    "feature-property",
  ],
  ["a reach of nothing", [place({ reach_m: 0 })], "feature-property"],
  ["a keep-off distance below zero", [place({ keep_off_m: -1 })], "feature-property"],
  ["no position", [place({}, [])], "geojson-position"],
];
test.each(placeFaults)("refused: %s", async (_title, features, code) => {
  const problems = await problemsOf(() => places(features));
  expect(problems.map((p) => p.code)).toContain(code);
  expect(problems.every((p) => p.file === "places.geojson" && isHelpful(p))).toBe(true);
});

test.each([
  ["no FeatureCollection", '{"type": "Feature"}'],
  ["a list", "[]"],
  ["features that are no list", '{"type": "FeatureCollection", "features": {}}'],
  ["a __proto__ key", '{"type": "FeatureCollection", "features": [], "__proto__": {}}'],
])("refused: %s", async (_title, text) => {
  await problemsOf(() => readZones("z", utf8(text), local));
});

const coordinate = fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((v) => v + 0);
const name = fc
  .string({ minLength: 1, maxLength: 30 })
  .map((s) => s.replaceAll(/\p{Cc}/gu, "").trim())
  .filter((s) => s !== "");
/** Corners around a middle at rising angles: such a ring never crosses itself. */
const ring = fc
  .tuple(
    coordinate,
    coordinate,
    fc.array(fc.double({ min: 1, max: 50, noNaN: true }), { minLength: 4, maxLength: 12 }),
  )
  .map(([x, y, radii]): Ring =>
    radii.map((r, i) => [
      x + r * Math.cos((i * 2 * Math.PI) / radii.length),
      y + r * Math.sin((i * 2 * Math.PI) / radii.length),
    ]),
  );

test("property: written zones are read back the same, to the last digit", () => {
  const anyZone = fc.record({
    name,
    use: fc.constantFrom(...ZONE_USES),
    polygons: fc.array(fc.tuple(ring), { minLength: 1, maxLength: 3 }),
    sensitivity: fc.option(
      fc.double({ min: 0, max: 100, noNaN: true }).map((v) => v + 0),
      { nil: undefined },
    ),
    days: fc.option(fc.constant({ from: "11-01", to: "02-29" }), { nil: undefined }),
    hidden: fc.boolean(),
    source: name,
  });
  fc.assert(
    fc.property(fc.array(anyZone, { maxLength: 5 }), fc.boolean(), (drawn, isLocal) => {
      const all: Zone[] = drawn.map(({ days, sensitivity, ...z }, i) => ({
        id: `z${i}`,
        ...z,
        ...(sensitivity === undefined ? {} : { sensitivity }),
        ...days,
      }));
      const bytes = writeZones(all, isLocal ? { local: "Site" } : { epsg: 32618 });
      expect(readZones("z", bytes, isLocal ? local : utm).zones).toEqual(all);
    }),
  );
});

test("property: written places are read back the same, to the last digit", () => {
  const spot = fc.record({ name, x: coordinate, y: coordinate });
  const plot = fc.record({
    name,
    x: coordinate,
    y: coordinate,
    keep_off_m: fc.double({ min: 0, max: 50, noNaN: true }).map((v) => v + 0),
    reach_m: fc.double({ min: 0.1, max: 50, noNaN: true }),
  });
  fc.assert(
    fc.property(
      fc.uniqueArray(spot, { selector: (s) => s.name, maxLength: 4 }),
      fc.uniqueArray(plot, { selector: (s) => s.name, maxLength: 6 }),
      (a, b) => {
        const starts: Start[] = a.map((s, i) => ({ id: `S${i}`, ...s }));
        const plots: Plot[] = b.map((p, i) => ({ id: `P${i}`, ...p }));
        const read = readPlaces("p", writePlaces(starts, plots, { local: "Site" }), local, {});
        expect(read).toEqual({ starts, plots, warnings: [] });
      },
    ),
  );
});
