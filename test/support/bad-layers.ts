import { zipSync } from "fflate";
import { writeDbf, writeShp, zipOf } from "../../packages/io/test/support/shapefile.ts";
import { utf8 } from "../../packages/io/test/support/problems.ts";
import { geoTags, writeTiff } from "../../packages/io/test/support/tiff.ts";

type XY = [number, number];

/** A file of areas as a user might choose it; the demo's site is on a local grid, 1000 to 1260 by 2000 to 2200. */
export interface BadLayer {
  readonly title: string;
  readonly name: string;
  readonly bytes: () => string | Uint8Array;
  /** Code of the problem, and what it must say. */
  readonly code: string;
  readonly place: RegExp;
  readonly value: RegExp;
  readonly message: RegExp;
  readonly mend: RegExp;
}

const ring: readonly XY[] = [
  [1010, 2010],
  [1020, 2010],
  [1020, 2020],
  [1010, 2010],
];
export const areaGeoJson = (
  corners: readonly XY[] = ring,
  crs: string | null = "local",
  name = "Salt pan",
): string =>
  JSON.stringify({
    type: "FeatureCollection",
    ...(crs === null ? {} : { crs: { type: "name", properties: { name: crs } } }),
    features: [
      {
        type: "Feature",
        id: "pan",
        properties: { name, kind: "wet" },
        geometry: { type: "Polygon", coordinates: [corners] },
      },
    ],
  });

/** A zipped shapefile of one area, without a .prj file. */
export function shapefileWithoutPrj(): Uint8Array {
  const { shp, shx } = writeShp(5, [[[...ring]]]);
  const dbf = writeDbf(
    [
      { name: "id", type: "C", length: 12 },
      { name: "name", type: "C", length: 12 },
    ],
    [["pan", "Salt pan"]],
  );
  return zipOf({ "pans.shp": shp, "pans.shx": shx, "pans.dbf": dbf });
}

/** A mask as mapping programs write it: ones and zeros in cells, its origin 3 mm off the terrain's. */
export const maskTiff = (): Uint8Array =>
  writeTiff(
    26,
    20,
    Float32Array.from({ length: 520 }, (_, i) => Number(i % 26 < 9)),
    {
      tags: geoTags(1000.003, 2200.003, 10, 10, null),
    },
  );

const entities = (declared: string): string =>
  `<?xml version="1.0"?>\n<!DOCTYPE kml [${declared}]>\n<kml xmlns="http://www.opengis.net/kml/2.2"><Placemark><name>&a;</name></Placemark></kml>`;

export const badLayers: readonly BadLayer[] = [
  {
    title: "zones in another coordinate system than the local grid",
    name: "pans.geojson",
    bytes: () => areaGeoJson(ring, "urn:ogc:def:crs:EPSG::27700"),
    code: "layer-local",
    place: /layer "pans"/,
    value: /EPSG:27700/,
    message: /in EPSG:27700, but the site is on the local grid/,
    mend: /Bring it into the local grid/,
  },
  {
    title: "an unclosed polygon",
    name: "pans.geojson",
    bytes: () => areaGeoJson(ring.slice(0, 3)),
    code: "ring-open",
    place: /feature 1 \("[\w-]+"\), ring 1/,
    value: /gap of 14\.14 m/,
    message: /outline is not closed: its end lies 14\.14 m/,
    mend: /last corner must be its first/,
  },
  {
    title: "a shapefile without .prj",
    name: "pans.zip",
    bytes: shapefileWithoutPrj,
    code: "layer-crs",
    place: /layer "pans"/,
    value: /./,
    message: /does not say in which coordinate system.*\.prj/,
    mend: /site's own grid, "Saltern local grid", say so/,
  },
  {
    title: "a .shp file alone",
    name: "pans.shp",
    bytes: () => writeShp(5, [[[...ring]]]).shp,
    code: "shp-alone",
    place: /pans\.shp/,
    value: /./,
    message: /neither names nor a coordinate system/,
    mend: /\.dbf, \.shx and \.prj files into one \.zip/,
  },
  {
    title: "a mask of cells in the place of outlines",
    name: "platform-mask.tif",
    bytes: maskTiff,
    code: "vector-format",
    place: /platform-mask\.tif/,
    value: /./,
    message: /grid of cells.*not outlines/,
    mend: /raster to polygons/,
  },
  {
    title: "a zip bomb: 100 kB that unpack to 100 MB",
    name: "pans.zip",
    bytes: () => zipSync({ "pans.kml": new Uint8Array(100_000_000) }, { level: 9 }),
    code: "archive-entry",
    place: /pans\.kml/,
    value: /pans\.kml/,
    message: /claim to unpack to 100000000/,
    mend: /ordinary \.zip/,
  },
  {
    title: "a path that climbs out of the archive",
    name: "pans.zip",
    bytes: () => zipOf({ "../../pans.geojson": utf8(areaGeoJson()) }),
    code: "archive-entry",
    place: /\.\.\/\.\.\/pans\.geojson/,
    value: /\.\.\/\.\.\/pans\.geojson/,
    message: /climbs out of the folder with "\.\."/,
    mend: /ordinary \.zip/,
  },
  {
    title: "an absolute path in an archive",
    name: "pans.zip",
    bytes: () => zipOf({ "/etc/pans.geojson": utf8(areaGeoJson()) }),
    code: "archive-entry",
    place: /\/etc\/pans\.geojson/,
    value: /\/etc/,
    message: /absolute path/,
    mend: /ordinary \.zip/,
  },
  {
    title: "XML entities that unfold",
    name: "pans.kml",
    bytes: () => entities('<!ENTITY b "lol"><!ENTITY a "&b;&b;&b;&b;&b;&b;&b;&b;">'),
    code: "xml-entity",
    place: /line 2/,
    value: /<!DOCTYPE kml \[<!ENTITY/,
    message: /declares a document type or entities/,
    mend: /Take the lines .* out/,
  },
  {
    title: "an XML entity that names another file",
    name: "pans.kml",
    bytes: () => entities('<!ENTITY a SYSTEM "file:///etc/hostname">'),
    code: "xml-entity",
    place: /line 2/,
    value: /<!DOCTYPE kml/,
    message: /declares a document type or entities/,
    mend: /export the file again/,
  },
];
