import { expect, test } from "vitest";
import { isHelpful, utf8, valueOrRefusal } from "../../test/support/problems.ts";
import { readLayers } from "../layers/index.ts";

const GPX = '<?xml version="1.0"?><gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1">';
const KML = '<?xml version="1.0"?><kml xmlns="http://www.opengis.net/kml/2.2"><Document>';
const gpx = (content: string): string => `${GPX}${content}</gpx>`;
const kml = (content: string): string => `${KML}${content}</Document></kml>`;

/** So much of the same that anything that grows with its square takes minutes [characters]. */
const SIZE = 2_500_000;
function over(part: (i: number) => string): string {
  const parts: string[] = [];
  for (let length = 0; length < SIZE; length += parts.at(-1)!.length) parts.push(part(parts.length));
  return parts.join("");
}
const attributes = (n: number, value: number): string =>
  Array.from({ length: n }, (_, k) => `a${k}="${value}"`).join(" ");
const ring = "<LinearRing><coordinates>-70,41 -70.1,41 -70.1,41.1 -70,41</coordinates></LinearRing>";

/** Files that kept the former reader busy for seconds or took all its memory, and their kin. */
const hostile: readonly (readonly [string, () => string])[] = [
  ["GPX of empty elements", () => gpx(over(() => "<a/>"))],
  ["GPX with one waypoint of many names", () => gpx(`<wpt lat="1" lon="1">${over(() => "<name/>")}</wpt>`)],
  ["GPX of tracks", () => gpx(over(() => '<trk><trkseg><trkpt lat="1" lon="1"/></trkseg></trk>'))],
  [
    "GPX of one track in many segments",
    () =>
      gpx(`<trk>${over(() => '<trkseg><trkpt lat="1" lon="1"/><trkpt lat="1" lon="2"/></trkseg>')}</trk>`),
  ],
  [
    "GPX with another extension at every position",
    () =>
      gpx(
        `<trk><trkseg>${over((i) => `<trkpt lat="1" lon="1"><extensions><x${i}>1</x${i}></extensions></trkpt>`)}</trkseg></trk>`,
      ),
  ],
  ["GPX of many name spaces", () => gpx(over((i) => `<x${i}:e xmlns:x${i}="u${i}"/>`))],
  ["GPX of many attributes", () => gpx(over((i) => `<e ${attributes(59, i)}/>`))],
  ["GPX of references", () => gpx(`<wpt lat="1" lon="1"><name>${over(() => "&amp;")}</name></wpt>`)],
  ["GPX of angle brackets", () => `${GPX}${over(() => "<")}`],
  ["GPX of blanks in a tag", () => gpx(`<wpt${over(() => " ")}`)],
  ["GPX of comments", () => gpx(over(() => "<!---->"))],
  ["GPX of tracks in one another", () => gpx(over(() => "<trk>".repeat(45) + "</trk>".repeat(45)))],
  ["GPX cut off", () => `${GPX}${over(() => '<wpt lat="1" lon="1"><ele>1</ele></wpt>\n')}`],
  ["GPX of positions that are none", () => gpx(over(() => '<wpt lat="x" lon="1"/>'))],
  [
    "KML of one line",
    () =>
      kml(
        `<Placemark><LineString><coordinates>${over(() => "-70.1,41.2 ")}</coordinates></LineString></Placemark>`,
      ),
  ],
  [
    "KML of blanks about commas",
    () =>
      kml(
        `<Placemark><LineString><coordinates>1,2${over(() => " ")}3,4</coordinates></LineString></Placemark>`,
      ),
  ],
  [
    "KML of one placemark of many points",
    () =>
      kml(
        `<Placemark>${over(() => "<MultiGeometry><Point><coordinates>-70,41</coordinates></Point></MultiGeometry>")}</Placemark>`,
      ),
  ],
  [
    "KML of one area with many holes",
    () =>
      kml(
        `<Placemark><Polygon>${over(() => `<innerBoundaryIs>${ring}</innerBoundaryIs>`)}</Polygon></Placemark>`,
      ),
  ],
  [
    "KML of many fields",
    () =>
      kml(
        `<Placemark><ExtendedData>${over((i) => `<Data name="d${i}"><value>1</value></Data>`)}</ExtendedData></Placemark>`,
      ),
  ],
  [
    "KML of placemarks in one another",
    () => kml(over(() => "<Placemark>".repeat(45) + "</Placemark>".repeat(45))),
  ],
  [
    "KML of styles",
    () =>
      kml(
        over(
          (i) =>
            `<StyleMap id="s${i}"><Pair><key>normal</key><styleUrl>#s${i + 1}</styleUrl></Pair></StyleMap>`,
        ),
      ),
  ],
  [
    "KML of positions that are none",
    () => kml(over(() => "<Placemark><Point><coordinates>x</coordinates></Point></Placemark>")),
  ],
];

test.each(hostile)("%s: layers or problems that help, and soon", async (_title, make) => {
  const bytes = utf8(make());
  const start = performance.now();
  const read = await valueOrRefusal(() => readLayers("hostile.xml", bytes));
  expect(performance.now() - start).toBeLessThan(2000);
  expect(read?.warnings.every(isHelpful) ?? true).toBe(true);
});

test("an honest track of 100,000 positions with heights and times is read whole, in its order", async () => {
  const count = 100_000;
  const points = Array.from(
    { length: count },
    (_, i) =>
      `<trkpt lat="41.${String(i).padStart(6, "0")}" lon="-70.123456"><ele>1.25</ele><time>2026-06-01T08:00:00Z</time></trkpt>`,
  );
  const bytes = utf8(gpx(`<trk><name>Creek bank</name><trkseg>${points.join("\n")}</trkseg></trk>`));
  const { layers, warnings } = await readLayers("bank.gpx", bytes);
  expect(warnings).toEqual([]);
  const [track] = layers[0]!.features;
  expect(track!.properties).toEqual({ name: "Creek bank" });
  const positions = track!.geometry.coordinates as readonly (readonly [number, number])[];
  expect(positions).toHaveLength(count);
  expect(
    positions.every(
      ([lon], i) => lon === -70.123456 && positions[i]![1] === Number(`41.${String(i).padStart(6, "0")}`),
    ),
  ).toBe(true);
});

test.each([
  ["a file larger than is read", `${GPX}${" ".repeat(12_000_001)}</gpx>`, "too-large", /12000000 bytes/],
  ["more elements than are read", gpx("<a/>".repeat(500_001)), "xml-shape", /At most 500000 elements/],
  ["a tag with 61 attributes", gpx(`<e ${attributes(61, 1)}/>`), "xml-shape", /60 attributes/],
  ["an attribute twice", gpx('<wpt lat="1" lat="2" lon="3"/>'), "xml", /"lat" stands twice/],
  ["an end tag of another name", gpx("<wpt></rte>"), "xml", /"rte" stands where "wpt" should end/],
  ["a second root", `${gpx("")}<gpx/>`, "xml", /second element/],
  ["text behind the root", `${gpx("")}x`, "xml", /outside the first element/],
  [
    "a control character",
    gpx("<wpt lat='1' lon='2'><name>a\u0001</name></wpt>"),
    "xml",
    /cannot stand in XML/,
  ],
  ["a reference to no character", gpx("<wpt lat='1' lon='2'><name>&#0;</name></wpt>"), "xml", /"&"/],
  ["an attribute without quotes", gpx("<wpt lat=1 lon=2/>"), "xml", /"wpt" does not end/],
  [
    "a track's position outside of a segment",
    gpx('<trk><trkpt lat="1" lon="2"/></trk>'),
    "gpx-stray",
    /no place/,
  ],
  [
    "a point with a blank in its position",
    kml("<Placemark><Point><coordinates>1,2 3,4</coordinates></Point></Placemark>"),
    "kml-position",
    /more than one position/,
  ],
  [
    "a ring outside of its border",
    kml(`<Placemark><Polygon>${ring}</Polygon></Placemark>`),
    "kml-area",
    /no place/,
  ],
] as const)("refused in words that help: %s", async (_title, text, code, message) => {
  const read = readLayers("given.xml", utf8(text)).then(
    () => [],
    (error: { problems: readonly { code: string; message: string }[] }) => error.problems,
  );
  const mine = (await read).filter((p) => p.code === code);
  expect(mine[0]?.message).toMatch(message);
  expect((await read).every((p) => isHelpful(p as never))).toBe(true);
});
