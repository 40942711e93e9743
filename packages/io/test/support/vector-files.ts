import type { Crs } from "@causey/engine/site";
import { toLonLat } from "../../src/crs/index.ts";
import { writeGeoPackage } from "../../src/geopackage/index.ts";
import { writeGpx } from "../../src/markup/index.ts";
import { utf8 } from "./problems.ts";
import { writeDbf, writeShp, zipOf } from "./shapefile.ts";

/** UTM zone 19 on NAD83, as the register gives it. */
export const utm19: Crs & { kind: "epsg" } = {
  kind: "epsg",
  code: 26919,
  name: "NAD83 / UTM zone 19N",
  proj: "+proj=utm +zone=19 +ellps=GRS80 +towgs84=0,0,0,0,0,0,0 +units=m +no_defs +type=crs",
};

/** The same system as the .prj files of mapping programs put it. */
export const utm19Prj =
  'PROJCS["NAD_1983_UTM_Zone_19N",GEOGCS["GCS_North_American_1983",DATUM["D_North_American_1983",' +
  'SPHEROID["GRS_1980",6378137.0,298.257222101]],PRIMEM["Greenwich",0.0],UNIT["Degree",0.0174532925199433]],' +
  'PROJECTION["Transverse_Mercator"],PARAMETER["False_Easting",500000.0],PARAMETER["False_Northing",0.0],' +
  'PARAMETER["Central_Meridian",-69.0],PARAMETER["Scale_Factor",0.9996],PARAMETER["Latitude_Of_Origin",0.0],UNIT["Meter",1.0]]';

export const fivePoints = [
  { name: "Gate", at: [412_345.678, 4_612_345.123] },
  { name: "Creek & pool", at: [412_401.004, 4_612_380.5] },
  { name: "Dünenrand", at: [412_500, 4_612_299.999] },
  { name: "Plot <4>", at: [412_555.555, 4_612_444.444] },
  { name: "Plot 5", at: [412_611.25, 4_612_500.75] },
] as const;

const degrees = fivePoints.map(({ name, at }) => {
  const [lon, lat] = toLonLat(utm19)(at[0], at[1])!;
  return { name, lon, lat };
});

export const gpxFile = (): Uint8Array => writeGpx(degrees, []);

const xml = (text: string): string => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");

export const kmlOf = (placemarks: string): string =>
  '<?xml version="1.0" encoding="UTF-8"?>\n<kml xmlns="http://www.opengis.net/kml/2.2"><Document><Folder>\n' +
  `${placemarks}\n</Folder></Document></kml>\n`;

export const kmlFile = (): Uint8Array =>
  utf8(
    kmlOf(
      degrees
        .map(
          (p, i) =>
            `<Placemark id="p${i + 1}"><name>${xml(p.name)}</name><ExtendedData><Data name="reach_m"><value>2.5</value></Data>` +
            `</ExtendedData><Point><coordinates> ${p.lon},${p.lat},3 </coordinates></Point></Placemark>`,
        )
        .join("\n"),
    ),
  );

export const geoJsonFile = (): Uint8Array =>
  utf8(
    JSON.stringify({
      type: "FeatureCollection",
      features: degrees.map((p) => ({
        type: "Feature",
        properties: { name: p.name },
        geometry: { type: "Point", coordinates: [p.lon, p.lat] },
      })),
    }),
  );

export const shapefileParts = (): Record<string, Uint8Array> => {
  const { shp, shx } = writeShp(
    1,
    fivePoints.map((p) => [p.at[0], p.at[1]] as const),
  );
  const dbf = writeDbf(
    [{ name: "name", type: "C", length: 40 }],
    fivePoints.map((p) => [p.name]),
  );
  return {
    "points.shp": shp,
    "points.shx": shx,
    "points.dbf": dbf,
    "points.prj": utf8(utm19Prj),
    "points.cpg": utf8("UTF-8"),
  };
};

export const shapefileZip = (): Uint8Array => zipOf(shapefileParts());

export const geoPackageFile = (): Promise<Uint8Array> =>
  writeGeoPackage([
    {
      name: "points",
      crs: { epsg: 26919 },
      features: fivePoints.map((p) => ({
        id: null,
        properties: { name: p.name },
        geometry: { type: "Point", coordinates: [p.at[0], p.at[1]] },
      })),
    },
  ]);
