import { expect, test } from "vitest";
import { isHelpful, problemsOf, utf8 } from "../../test/support/problems.ts";
import { gpxFile, kmlFile, kmlOf, utm19 } from "../../test/support/vector-files.ts";
import { placeLayer, readLayers, toZones, type ZoneMapping } from "../layers/index.ts";
import { writeGpx } from "./index.ts";

const gpxOf = (content: string, head = ""): Uint8Array =>
  utf8(
    `<?xml version="1.0"?>\n${head}<gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1">${content}</gpx>`,
  );
const bomb =
  '<!DOCTYPE lolz [<!ENTITY a "lol"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;&b;&b;&b;&b;">]>';

test.each([
  [
    "entities that unfold a thousandfold",
    gpxOf("<wpt lat='1' lon='2'><name>&c;</name></wpt>", bomb),
    "xml-entity",
  ],
  [
    "an entity from another file",
    gpxOf("", '<!DOCTYPE gpx [<!ENTITY x SYSTEM "file:///etc/passwd">]>'),
    "xml-entity",
  ],
  ["a document type alone", gpxOf("", "<!DOCTYPE gpx>"), "xml-doctype"],
  ["a document type in small letters after a comment", gpxOf("", "<!-- > --><!doctype gpx>"), "xml-doctype"],
  ["an entity that nobody declared", gpxOf("<wpt lat='1' lon='2'><name>&x;</name></wpt>"), "xml"],
  [
    "ten thousand elements in one another",
    utf8(`<kml>${"<Folder>".repeat(10_000)}${"</Folder>".repeat(10_000)}</kml>`),
    "xml-shape",
  ],
  [
    "a tag with ten thousand attributes",
    gpxOf(`<wpt ${Array.from({ length: 10_000 }, (_, i) => `a${i}=""`).join(" ")}/>`),
    "xml-shape",
  ],
  ["a file cut off", gpxFile().slice(0, 400), "xml"],
  ["a comment that does not end", gpxOf("<!-- "), "xml"],
  ["elements with a prefix", utf8('<g:gpx xmlns:g="http://www.topografix.com/GPX/1/1"/>'), "xml-root"],
  ["a latitude with a comma", gpxOf('<wpt lat="41,5" lon="2"/>'), "gpx-position"],
  ["a latitude beyond the pole", gpxOf('<wpt lat="95" lon="2"/>'), "gpx-position"],
  ["a waypoint without a longitude", gpxOf('<wpt lat="41.5"/>'), "gpx-position"],
  [
    "words in place of coordinates",
    utf8(kmlOf("<Placemark><Point><coordinates>1,x,2</coordinates></Point></Placemark>")),
    "kml-position",
  ],
] as const)("refused in words that help: %s", async (_title, bytes, code) => {
  const problems = await problemsOf(() => readLayers("given.xml", bytes));
  expect(problems.map((p) => p.code)).toContain(code);
  expect(problems.every(isHelpful)).toBe(true);
});

test("signs of a declaration inside CDATA and comments are text", async () => {
  const text =
    "<Placemark><!-- <!DOCTYPE x> --><name>a</name><description><![CDATA[<!DOCTYPE html><b>wet</b>]]></description><Point><coordinates>1,2</coordinates></Point></Placemark>";
  const { layers } = await readLayers("a.kml", utf8(kmlOf(text)));
  expect(layers[0]!.features[0]!.properties["description"]).toBe("<!DOCTYPE html><b>wet</b>");
});

test("KML: names, ExtendedData, ids, typed fields; pictures and links are left out and said", async () => {
  const text =
    '<Schema name="s" id="s"><SimpleField type="double" name="depth"/></Schema>' +
    '<Placemark id="x"><name>Pool</name><ExtendedData><SchemaData schemaUrl="#s"><SimpleData name="depth">1.5</SimpleData></SchemaData></ExtendedData>' +
    "<MultiGeometry><Point><coordinates>1,2,3</coordinates></Point><Point><coordinates>\n 3 , 4 </coordinates></Point></MultiGeometry></Placemark>" +
    "<GroundOverlay><LatLonBox><north>1</north><south>0</south><east>1</east><west>0</west></LatLonBox></GroundOverlay><NetworkLink><Link><href>http://x</href></Link></NetworkLink>";
  const { layers, warnings } = await readLayers("a.kml", utf8(kmlOf(text)));
  expect(layers[0]).toMatchObject({ name: "a", crs: "lon-lat" });
  expect(layers[0]!.features).toEqual([
    {
      id: "x",
      properties: { name: "Pool", depth: 1.5 },
      geometry: {
        type: "MultiPoint",
        coordinates: [
          [1, 2],
          [3, 4],
        ],
      },
    },
  ]);
  expect(warnings.map((w) => w.place)).toEqual(["GroundOverlay", "NetworkLink"]);
  expect((await readLayers("p.kml", kmlFile())).layers[0]!.features[0]).toMatchObject({
    id: "p1",
    properties: { reach_m: "2.5" },
  });
});

test("KML: an outline that is not closed stays open, so that its gap is told and not bridged in silence", async () => {
  const ring = (name: string, text: string): string =>
    `<Placemark><name>${name}</name><Polygon><outerBoundaryIs><LinearRing><coordinates>${text}</coordinates></LinearRing></outerBoundaryIs></Polygon></Placemark>`;
  const closed = "-70,41,1 -70.001,41,1 -70.001,41.001,1 -70,41,2";
  const open = "-70,41 -70.001,41 -70.001,41.001 -70,41.0001";
  const { layers } = await readLayers("a.kml", utf8(kmlOf(ring("shut", closed) + ring("gap", open))));
  const { layer } = await placeLayer(layers[0]!, utm19);
  const mapping: ZoneMapping = {
    idField: "name",
    nameField: "name",
    use: "pool",
    source: "s",
    hidden: false,
  };
  const problems = await problemsOf(() => toZones(layer, mapping));
  expect(problems.filter((p) => p.severity === "error").map((p) => [p.code, p.place])).toEqual([
    ["ring-open", "feature 2, ring 1"],
  ]);
  expect(problems[0]!.value).toMatch(/^gap of 11\.\d\d m$/);
  expect(layers[0]!.features[1]!.geometry.coordinates[0]).toHaveLength(4);
});

test("GPX: waypoints, tracks in segments and routes are layers of their own; what is too short is said", async () => {
  const points = (tag: string): string =>
    `<${tag} lat="1" lon="2"><ele>5</ele></${tag}><${tag} lat="3" lon="4"/>`;
  const { layers, warnings } = await readLayers(
    "walk.gpx",
    gpxOf(
      '<wpt lat="+41.5" lon="-70.25"><ele>3</ele><name>Gate</name><sym>Flag</sym></wpt>' +
        `<rte><name>R</name>${points("rtept")}</rte>` +
        `<trk><name>T</name><trkseg>${points("trkpt")}</trkseg><trkseg>${points("trkpt")}</trkseg></trk>` +
        '<trk><name>short</name><trkseg><trkpt lat="1" lon="2"/></trkseg></trk>',
    ),
  );
  const line = [
    [2, 1],
    [4, 3],
  ];
  expect(layers.map((l) => [l.name, l.features.map((f) => [f.properties["name"], f.geometry])])).toEqual([
    ["walk waypoints", [["Gate", { type: "Point", coordinates: [-70.25, 41.5] }]]],
    ["walk tracks", [["T", { type: "MultiLineString", coordinates: [line, line] }]]],
    ["walk routes", [["R", { type: "LineString", coordinates: line }]]],
  ]);
  expect(warnings.map((w) => w.code)).toEqual(["gpx-short"]);
});

test("writeGpx and back: names with any sign, positions to a tenth of a millimetre, equal bytes", async () => {
  const waypoints = [
    { name: '<&>"\u0007 é \ud83d\udc1f', lon: -70.123_456_789, lat: 41.987_654_321, note: "a & b" },
  ];
  const bytes = writeGpx(
    waypoints,
    [
      {
        name: "T",
        points: [
          [1, 2],
          [3, 4],
        ],
      },
    ],
    "Salt meadow",
  );
  expect(
    writeGpx(
      waypoints,
      [
        {
          name: "T",
          points: [
            [1, 2],
            [3, 4],
          ],
        },
      ],
      "Salt meadow",
    ),
  ).toEqual(bytes);
  const { layers } = await readLayers("a.gpx", bytes);
  expect(layers[0]!.features[0]).toEqual({
    id: null,
    properties: { name: '<&>"  é \ud83d\udc1f', desc: "a & b" },
    geometry: { type: "Point", coordinates: [-70.123_456_789, 41.987_654_321] },
  });
  expect(() => writeGpx([{ name: "x", lon: NaN, lat: 0 }], [])).toThrow(/not-lon-lat/);
});
