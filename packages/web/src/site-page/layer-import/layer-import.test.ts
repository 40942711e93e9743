import { BLANK_SECTIONS, applyEdit, revertEdit, type Plan, type SectionEdit } from "@causey/engine/plan";
import type { Crs, Plot, Zone } from "@causey/engine/site";
import { PLACEHOLDER_START } from "@causey/io/fresh";
import { placeLayer, readLayers, type PlacedLayer, type VectorLayer } from "@causey/io/layers";
import { describe, expect, test } from "vitest";
import {
  assumed,
  byField,
  guessChoice,
  stillMissing,
  type GivenBy,
  type LayerChoice,
} from "./layer-choice.ts";
import { idFromName } from "./layer-ids.ts";
import type { LayerTarget } from "./layer-kinds.ts";
import { previewLayer } from "./layer-preview.ts";

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const local: Crs = { kind: "local", name: "Fen grid" };
const utm19: Crs = {
  kind: "epsg",
  code: 26919,
  name: "NAD83 / UTM zone 19N",
  proj: "+proj=utm +zone=19 +datum=NAD83 +units=m +no_defs",
};
const plan = {
  ...BLANK_SECTIONS,
  crs: { local: "Fen grid" },
  zones: [
    {
      id: "old",
      name: "Old pool",
      use: "pool",
      polygons: [
        [
          [
            [0, 0],
            [1, 0],
            [1, 1],
          ],
        ],
      ],
      hidden: false,
      source: "x",
    },
  ],
  starts: [{ id: "gate", name: "Gate", x: 0, y: 0 }],
  plots: [{ id: "P1", name: "Plot 1", x: 9, y: 9, keep_off_m: 1, reach_m: 2 }],
  visits: [],
} as unknown as Plan;

const square = (x: number, y: number, size = 10): readonly (readonly [number, number])[] => [
  [x, y],
  [x + size, y],
  [x + size, y + size],
  [x, y + size],
  [x, y],
];
const geojson = (
  crs: string | null,
  ...features: readonly (readonly [object, string, unknown])[]
): Uint8Array =>
  utf8(
    JSON.stringify({
      type: "FeatureCollection",
      name: "reeds",
      ...(crs === null ? {} : { crs: { type: "name", properties: { name: crs } } }),
      features: features.map(([properties, type, coordinates]) => ({
        type: "Feature",
        properties,
        geometry: { type, coordinates },
      })),
    }),
  );
const two = geojson(
  null,
  [{ name: "North reed", art: "reed" }, "Polygon", [square(500, 500)]],
  [{ name: "Bird island", art: "birds" }, "Polygon", [square(520, 500)]],
);

const firstLayer = async (name: string, bytes: Uint8Array): Promise<VectorLayer> =>
  (await readLayers(name, bytes)).layers[0]!;

async function placed(layer: VectorLayer, choice: LayerChoice, crs: Crs): Promise<PlacedLayer> {
  const assume = assumed(layer, choice, crs);
  if (assume === null) throw new Error("the system is still open");
  return (await placeLayer(layer, crs, assume === "declared" ? {} : { assume })).layer;
}

const all = (value: string | number | boolean): GivenBy => ({ by: "all", value });

function choose(
  target: LayerTarget,
  layer: VectorLayer,
  values: Readonly<Record<string, GivenBy>>,
  more: Partial<LayerChoice> = {},
): LayerChoice {
  const guess = guessChoice(target, layer);
  return { ...guess, ...more, values: { ...guess.values, ...values } };
}

const after = (edit: SectionEdit | null): Plan => {
  const outcome = applyEdit(plan, edit!);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.plan;
};

describe("two areas of a site on a local grid", () => {
  test("the system is asked for, then the rule and the source; then both come in, and one step takes them back", async () => {
    const layer = await firstLayer("reeds.geojson", two);
    const guess = guessChoice("zones", layer);
    expect(guess.name).toEqual({ field: "name" });
    expect(stillMissing("zones", layer, guess, local)).toMatch(/does not say in which coordinate system/);
    const onSite = { ...guess, system: "site" as const };
    expect(stillMissing("zones", layer, onSite, local)).toBe("Still to be given: Rule, Source.");
    const values = { use: all("closed"), source: all("survey 2024"), buffer_m: all(3) };
    const choice = choose("zones", layer, values, { system: "site" });
    expect(stillMissing("zones", layer, choice, local)).toBeNull();

    const preview = previewLayer("zones", await placed(layer, choice, local), choice, plan);
    expect([preview.count, preview.known, preview.problems]).toEqual([2, 0, []]);
    const changed = after(preview.edit);
    expect(changed.zones.map((z) => [z.id, z.use, z.buffer_m, z.hidden])).toEqual([
      ["old", "pool", undefined, false],
      ["north-reed", "closed", 3, false],
      ["bird-island", "closed", 3, false],
    ]);
    expect(changed.zones[1]!.polygons).toEqual([[square(500, 500).slice(0, 4)]]);
    const outcome = applyEdit(plan, preview.edit!);
    expect(outcome.ok && revertEdit(outcome.plan, outcome.inverse)).toEqual(plan);
  });

  test("rules by the words of a field: each word must be told, and an entry of another rule is left out", async () => {
    const layer = await firstLayer("reeds.geojson", two);
    const use = byField(layer, "art", "use");
    expect(use).toEqual({ by: "field", field: "art", words: { reed: null, birds: null } });
    const open = choose("zones", layer, { use, source: all("survey") }, { system: "site" });
    expect(stillMissing("zones", layer, open, local)).toMatch(/each word of the field "art"/);
    const told = choose(
      "zones",
      layer,
      {
        use: { by: "field", field: "art", words: { reed: "habitat", birds: "seasonal-closure" } },
        source: { by: "field", field: "art", words: {} },
        sensitivity: all(6),
        from: all("04-15"),
        to: all("08-01"),
      },
      { system: "site" },
    );
    const { edit, problems } = previewLayer("zones", await placed(layer, told, local), told, plan);
    expect(problems).toEqual([]);
    const [reed, birds] = after(edit).zones.slice(1) as [Zone, Zone];
    expect(reed).toMatchObject({ use: "habitat", sensitivity: 6, source: "reed" });
    expect(reed).not.toHaveProperty("from");
    expect(birds).toMatchObject({ use: "seasonal-closure", from: "04-15", to: "08-01" });
    expect(birds).not.toHaveProperty("sensitivity");
  });

  test("longitude and latitude cannot be brought onto a local grid, and the refusal says what to do", async () => {
    const layer = await firstLayer(
      "reeds.geojson",
      geojson(null, [{ name: "A" }, "Polygon", [square(1, 1, 2)]]),
    );
    expect(layer.crs).toBe("lon-lat");
    await expect(placed(layer, guessChoice("zones", layer), local)).rejects.toThrow(/not known/);
  });
});

test("an area without a name stops all of them, and every problem is told at once", async () => {
  const layer = await firstLayer(
    "areas.geojson",
    geojson(
      "local",
      [{ name: "Good" }, "Polygon", [square(0, 0)]],
      [{ name: null }, "Polygon", [square(20, 0)]],
      [
        { name: "Crossed" },
        "Polygon",
        [
          [
            [0, 0],
            [9, 9],
            [9, 0],
            [0, 9],
            [0, 0],
          ],
        ],
      ],
    ),
  );
  const choice = choose("zones", layer, { use: all("closed"), source: all("survey") });
  const { edit, count, problems } = previewLayer("zones", await placed(layer, choice, local), choice, plan);
  expect([edit, count]).toEqual([null, 0]);
  const told = problems.filter((p) => p.severity === "error").map((p) => p.place);
  expect(told.some((place) => place.startsWith('feature 2 ("area-2")'))).toBe(true);
  expect(told.some((place) => place.includes('"crossed"'))).toBe(true);
});

test("the same file once more is never doubled: refused by name, or put in the place of what is there", async () => {
  const layer = await firstLayer("reeds.geojson", two);
  const values = { use: all("closed"), source: all("survey") };
  const choice = choose("zones", layer, values, { system: "site" });
  const ground = await placed(layer, choice, local);
  const once = after(previewLayer("zones", ground, choice, plan).edit);
  const twice = previewLayer("zones", ground, choice, once);
  expect([twice.count, twice.known, twice.edit]).toEqual([2, 2, null]);
  expect(twice.problems.map((p) => [p.code, p.value])).toEqual([
    ["layer-clash", "North reed"],
    ["layer-clash", "Bird island"],
  ]);
  const other = choose("zones", layer, { ...values, use: all("pool") }, { system: "site", replace: true });
  const replaced = previewLayer("zones", ground, other, once);
  expect(after(replaced.edit).zones.map((z) => [z.id, z.use])).toEqual([
    ["old", "pool"],
    ["north-reed", "pool"],
    ["bird-island", "pool"],
  ]);
});

test("an area of a name that is there under another id comes in with a warning", async () => {
  const bytes = geojson("local", [{ name: "Old pool" }, "Polygon", [square(40, 0)]]);
  const layer = await firstLayer("pool.geojson", bytes);
  const choice = choose("zones", layer, { use: all("pool"), source: all("survey") });
  const { edit, problems } = previewLayer("zones", await placed(layer, choice, local), choice, plan);
  expect(problems.map((p) => [p.severity, p.place])).toEqual([["warning", 'id "old-pool"']]);
  expect(after(edit).zones).toHaveLength(2);
});

describe("places out of KML", () => {
  const kml = utf8(`<?xml version="1.0" encoding="UTF-8"?>
<kml xmlns="http://www.opengis.net/kml/2.2"><Document>
  <Placemark><name>Trap 1</name><ExtendedData><Data name="keep"><value>1.5</value></Data></ExtendedData>
    <Point><coordinates>-69,43.25,0</coordinates></Point></Placemark>
  <Placemark><name>Trap 2</name><ExtendedData><Data name="keep"><value>2</value></Data></ExtendedData>
    <Point><coordinates>-69,43.251,0</coordinates></Point></Placemark>
  <Placemark><name>Path</name>
    <LineString><coordinates>-69,43.25 -69.01,43.26</coordinates></LineString></Placemark>
</Document></kml>`);

  test("points become plots with their own keep-off distance; the line is left out with a warning", async () => {
    const layer = await firstLayer("traps.kml", kml);
    const choice = choose("plots", layer, { keep_off_m: byField(layer, "keep", "length"), reach_m: all(2) });
    expect(stillMissing("plots", layer, choice, utm19)).toBeNull();
    const ground = await placed(layer, choice, utm19);
    const { edit, count, problems } = previewLayer("plots", ground, choice, plan);
    expect([count, problems.map((p) => [p.code, p.value])]).toEqual([2, [["layer-shapes", "1 line"]]]);
    const [, one, two] = after(edit).plots as readonly [Plot, Plot, Plot];
    expect(one).toMatchObject({ id: "trap-1", name: "Trap 1", keep_off_m: 1.5, reach_m: 2 });
    expect(two).toMatchObject({ id: "trap-2", keep_off_m: 2 });
    // On the zone's middle meridian: x = 500 km, and 0.001 degrees north are 111.099 m x 0.9996.
    expect([one.x, two.x].map((x) => x.toFixed(3))).toEqual(["500000.000", "500000.000"]);
    expect(two.y - one.y).toBeCloseTo(111.05, 1);

    const strict = { ...choice, leave_out: false };
    expect(previewLayer("plots", ground, strict, plan).problems.some((p) => /geometry/.test(p.place))).toBe(
      true,
    );
  });

  test("a real start takes the place of the one that only stood in for it; others stay", async () => {
    const layer = await firstLayer("traps.kml", kml);
    const choice = choose("starts", layer, {});
    const ground = await placed(layer, choice, utm19);
    const standIn = { id: "S1", name: PLACEHOLDER_START, x: 1, y: 2 };
    const names = (starts: Plan["starts"]) => {
      const { edit } = previewLayer("starts", ground, choice, { ...plan, starts });
      return after(edit).starts.map((s) => s.name);
    };
    expect(names([standIn])).toEqual(["Trap 1", "Trap 2"]);
    expect(names([...plan.starts, standIn])).toEqual(["Gate", "Trap 1", "Trap 2"]);
  });

  test("a distance that is missing is asked for; an id that is taken is refused, a name numbered", async () => {
    const layer = await firstLayer("traps.kml", kml);
    expect(stillMissing("plots", layer, guessChoice("plots", layer), utm19)).toBe(
      "Still to be given: Keep off, all round, Reached from.",
    );
    const places = await firstLayer(
      "p.geojson",
      geojson(
        "local",
        [{ name: "Plot 1", id: "new" }, "Point", [5, 5]],
        [{ name: "Another", id: "gate" }, "Point", [6, 6]],
      ),
    );
    const choice = choose("plots", places, { keep_off_m: all(1), reach_m: all(2) });
    expect(choice.id).toEqual({ field: "id" });
    const { edit, problems } = previewLayer("plots", await placed(places, choice, local), choice, plan);
    expect(edit).toBeNull();
    expect(problems.map((p) => p.message)).toEqual([
      'The id "gate" belongs to a start of the plan.',
      'Another plot is called "Plot 1" already, so this one is called "Plot 1 (2)".',
    ]);
    const free = choose("plots", places, { keep_off_m: all(1), reach_m: all(2) }, { id: "names" });
    const preview = previewLayer("plots", await placed(places, free, local), free, plan);
    expect(preview.problems.map((p) => p.severity)).toEqual(["warning"]);
    expect(after(preview.edit).plots.map((p) => p.name)).toEqual(["Plot 1", "Plot 1 (2)", "Another"]);
  });
});

test("features without any field get names by number; ids are words of any script", async () => {
  const layer = await firstLayer("s.geojson", geojson("local", [{}, "Point", [1, 2]], [{}, "Point", [3, 4]]));
  const choice = choose("starts", layer, {}, { name: "numbered" });
  const { edit } = previewLayer("starts", await placed(layer, choice, local), choice, plan);
  expect(after(edit).starts.slice(1)).toEqual([
    { id: "reeds-1", name: "reeds 1", x: 1, y: 2 },
    { id: "reeds-2", name: "reeds 2", x: 3, y: 4 },
  ]);
  expect(["Nördliches Ried!", "Топь 3", "---"].map(idFromName)).toEqual(["nordliches-ried", "топь-3", ""]);
});
