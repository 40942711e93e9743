import type { Crs } from "@causey/engine/site";
import proj4 from "proj4";
import { comparePrj, designProj, epsgInfo, lonLatAccuracy, type LonLatAccuracy } from "../crs/index.ts";
import type { LayerCrs } from "../layer-form/index.ts";
import { quote } from "../problem/index.ts";

/** A declared system that can be computed. */
export interface LayerSystem {
  readonly title: string;
  /** PROJ string or well-known text, as the package proj4 takes it. */
  readonly definition: string;
  readonly isInDegrees: boolean;
  /** How well it is tied to longitude and latitude on WGS 84. */
  readonly accuracy: LonLatAccuracy["grade"];
  /** Name of the datum in the register; null when only numbers are known. */
  readonly datum: string | null;
}

/** "site" when the layer lies in the site's own system, or why it cannot be placed. */
export type SystemAnswer = "site" | LayerSystem | { readonly unusable: string };

type Declared = Exclude<LayerCrs, null>;
type EpsgCrs = Crs & { kind: "epsg" };

const LON_LAT: LayerSystem = {
  title: "longitude and latitude (WGS 84)",
  definition: "+proj=longlat +datum=WGS84 +no_defs",
  isInDegrees: true,
  accuracy: "good",
  datum: "WGS 84",
};

/** A declared system in words for a message. */
export const systemTitle = (crs: Declared): string =>
  crs === "lon-lat"
    ? LON_LAT.title
    : "epsg" in crs
      ? `EPSG:${crs.epsg}`
      : "wkt" in crs
        ? wktTitle(crs.wkt)
        : crs.local === ""
          ? "a local grid"
          : `the local grid ${quote(crs.local)}`;

const wktTitle = (wkt: string): string => quote(/^\s*\w+\s*\[\s*"([^"]*)"/.exec(wkt)?.[1] ?? wkt);

/** What a declared system is, seen from a site in an EPSG system. */
export async function layerSystem(declared: Declared, site: EpsgCrs): Promise<SystemAnswer> {
  if (declared === "lon-lat") return LON_LAT;
  if ("local" in declared)
    return {
      unusable: `${systemTitle(declared)} has no known place on the earth, so it cannot be brought into EPSG:${site.code}`,
    };
  return "epsg" in declared ? epsgSystem(declared.epsg, site) : wktSystem(declared.wkt, site);
}

async function epsgSystem(code: number, site: EpsgCrs): Promise<SystemAnswer> {
  if (code === site.code) return "site";
  const info = await epsgInfo(code);
  if (info === null) return { unusable: `EPSG:${code} is not in the register of coordinate systems` };
  const title = `EPSG:${code} (${info.name})`;
  if (info.kind !== "projected" && info.kind !== "geographic")
    return { unusable: `${title} is not a system for places on a map (${info.kind})` };
  if (info.proj === null || /\+axis=/.test(info.proj))
    return { unusable: `${title} cannot be computed here: the register gives no usable projection for it` };
  const clean = designProj(info.proj);
  if ("missingGrid" in clean)
    return {
      unusable: `${title} needs the shift grid ${clean.missingGrid}, which this program does not carry`,
    };
  const known: EpsgCrs = { kind: "epsg", code, name: info.name, proj: clean.proj };
  return {
    title,
    definition: clean.proj,
    isInDegrees: info.kind === "geographic",
    accuracy: lonLatAccuracy(known).grade,
    datum: info.name.split(" / ")[0]!,
  };
}

/** Longest well-known text that is read: real ones hold a few hundred characters. */
const WKT_CHARACTERS = 20_000;
const WKT_START =
  /^\s*(PROJCS|GEOGCS|PROJCRS|GEOGCRS|GEODCRS|PROJECTEDCRS|GEOGRAPHICCRS|GEODETICCRS|COMPD_CS|COMPOUNDCRS|BOUNDCRS)\s*\[/i;
/** The code that some programs write at the very end: `AUTHORITY["EPSG","27700"]]` or `ID["EPSG",27700]]`. */
const WKT_CODE = /(?:AUTHORITY|ID)\s*\[\s*"EPSG"\s*,\s*"?(\d{4,6})"?\s*\]\s*\]\s*$/i;

function wktSystem(wkt: string, site: EpsgCrs): Promise<SystemAnswer> | SystemAnswer {
  const unusable = {
    unusable: `the system ${wktTitle(wkt)} is described in words that are not understood here`,
  };
  if (wkt.length > WKT_CHARACTERS || !WKT_START.test(wkt)) return unusable;
  if (comparePrj(wkt, site) === "agrees") return "site";
  const code = WKT_CODE.exec(wkt)?.[1];
  if (code !== undefined) return epsgSystem(Number(code), site);
  const read = definitionOf(wkt);
  if (read === null || read.datum === undefined) return unusable;
  const accuracy = accuracyOf(read);
  if (accuracy === null) return unusable;
  const isInDegrees = read.projName === "longlat";
  return { title: wktTitle(wkt), definition: wkt, isInDegrees, accuracy, datum: null };
}

/** What the package proj4 makes of a definition. */
interface Definition {
  readonly projName?: string;
  readonly a?: number;
  readonly b?: number;
  readonly datum?: { readonly datum_type?: number; readonly datum_params?: readonly number[] };
}

function definitionOf(text: string): Definition | null {
  try {
    return new proj4.Proj(text) as unknown as Definition;
  } catch {
    return null;
  }
}

/** Kinds of datum in the package proj4: three or seven parameters, a shift grid, WGS 84 itself, none. */
const [THREE, SEVEN, GRID, SAME] = [1, 2, 3, 4];

function accuracyOf(d: Definition): LonLatAccuracy["grade"] | null {
  const kind = d.datum?.datum_type;
  if (kind === GRID) return null;
  if (kind === SAME) return "good";
  if (kind === THREE || kind === SEVEN)
    return (d.datum?.datum_params ?? []).every((v, i) => v === (i === 6 ? 1 : 0)) ? "good" : "metres";
  const isModern = Math.abs((d.a ?? 0) - 6_378_137) < 1e-3 && Math.abs((d.b ?? 0) - 6_356_752.314_2) < 1e-3;
  return isModern ? "good" : "unknown";
}

/** Whether two systems stand on one datum, so that no shift lies between them. */
export function isSameDatum(layer: LayerSystem, site: EpsgCrs): boolean {
  if (layer.datum !== null && layer.datum === site.name.split(" / ")[0]) return true;
  const [p, q] = [definitionOf(layer.definition), definitionOf(site.proj)].map((d) => d?.datum);
  if (p?.datum_params === undefined || q?.datum_params === undefined) return false;
  const [a, b] = [p.datum_params, q.datum_params];
  return a.length === b.length && a.some((v) => v !== 0) && a.every((v, i) => Math.abs(v - b[i]!) < 1e-9);
}
