import { ProblemError } from "@causey/engine/formula";
import type { Crs } from "@causey/engine/site";
import { fault } from "../problem/index.ts";
import { designProj } from "./proj-string.ts";
import { isComputable } from "./transform.ts";

/** What the register says about a coordinate system. */
export interface EpsgInfo {
  readonly code: number;
  readonly name: string;
  readonly kind: "projected" | "geographic" | "vertical" | "compound" | "other";
  /** Length of one unit of its axes in metres; null for degrees and for unknown units. */
  readonly unit_m: number | null;
  readonly unit: string;
  readonly area: string;
  /** West, south, east, north of the area it is made for [degrees]; west is the larger where it spans the 180th meridian. */
  readonly bounds: readonly [number, number, number, number] | null;
  /** PROJ string as registered; null when the register has none. */
  readonly proj: string | null;
}

interface Entry {
  readonly name: string;
  readonly kind: string;
  readonly unit: string | null;
  readonly area: string | null;
  /** North, west, south, east. */
  readonly bbox?: readonly number[] | null;
  readonly proj4: string | null;
}
type Register = Readonly<Record<string, Entry>>;

let register: Promise<Register> | null = null;

/** The register is 7 MB, so it is loaded when the first system is asked for, and once. */
const loadRegister = (): Promise<Register> =>
  (register ??= import("epsg-index/all.json", { with: { type: "json" } }).then(
    (m) => m.default as unknown as Register,
  ));

/** Lengths of the named units in metres, as PROJ defines them. */
const UNIT_M: Readonly<Record<string, number>> = {
  m: 1,
  ft: 0.3048,
  "us-ft": 1200 / 3937,
  link: 0.201168,
  ch: 20.1168,
  "ind-yd": 0.91439523,
};

/** Looks a code up in the register; null when it is not in there. Needs no network. */
export async function epsgInfo(code: number): Promise<EpsgInfo | null> {
  const all = await loadRegister();
  const key = String(code);
  const entry = Object.hasOwn(all, key) ? all[key] : undefined;
  return entry === undefined ? null : info(code, entry);
}

function info(code: number, entry: Entry): EpsgInfo {
  const kind = KINDS[entry.kind] ?? "other";
  return {
    code,
    name: entry.name,
    kind,
    unit_m: kind === "projected" ? unitOf(entry.proj4) : null,
    unit: entry.unit ?? "unknown unit",
    area: entry.area ?? "",
    bounds: boundsOf(entry.bbox),
    proj: entry.proj4,
  };
}

function boundsOf(bbox: Entry["bbox"]): EpsgInfo["bounds"] {
  const [north, west, south, east] = bbox ?? [];
  return north === undefined || west === undefined || south === undefined || east === undefined
    ? null
    : [west, south, east, north];
}

const KINDS: Readonly<Record<string, EpsgInfo["kind"]>> = {
  "CRS-PROJCRS": "projected",
  "CRS-GEOGCRS": "geographic",
  "CRS-GEOG3DCRS": "geographic",
  "CRS-VERTCRS": "vertical",
  "CRS-COMPOUNDCRS": "compound",
};

function unitOf(proj: string | null): number | null {
  if (proj === null) return null;
  const factor = /\+to_meter=(\S+)/.exec(proj)?.[1];
  return factor === undefined ? (UNIT_M[/\+units=(\S+)/.exec(proj)?.[1] ?? "m"] ?? null) : Number(factor);
}

/**
 * A system to design in: projected, in metres, east and north, computable here.
 *
 * code  EPSG code
 * Throws `ProblemError` (file plan.json, place crs.epsg) for everything else, and names what to choose instead: for a
 * system in feet the same zone in metres where the register has it.
 */
export async function crsFromEpsg(code: number): Promise<Crs & { kind: "epsg" }> {
  const found = await epsgInfo(code);
  const answer = found === null ? unknownCode(code) : await judge(found);
  if ("message" in answer)
    throw new ProblemError([fault("plan.json", { code: "crs", place: "crs.epsg", value: code, ...answer })]);
  return answer;
}

type Refusal = { readonly message: string; readonly mend: string };

const unknownCode = (code: number): Refusal => ({
  message: `EPSG:${code} is not in the register of coordinate systems.`,
  mend: 'Give the code of a projected system in metres, such as the UTM zone of the site, or a local grid: {"local": "..."}.',
});

async function judge(found: EpsgInfo): Promise<(Crs & { kind: "epsg" }) | Refusal> {
  const name = `EPSG:${found.code} (${found.name})`;
  if (found.kind !== "projected")
    return {
      message: `${name} is not a projected system (${found.kind}): lengths on the ground cannot be laid out in it.`,
      mend: "Choose a projected one in metres, such as the UTM zone or the national grid of the site, and bring the terrain into it.",
    };
  if (found.unit_m !== 1) return inFeet(name, found);
  if (found.proj === null || /\+axis=/.test(found.proj)) return notComputable(name);
  if (/\+proj=merc\b/.test(found.proj))
    return {
      message: `${name} is a Mercator system: away from the equator its metres are longer than metres on the ground.`,
      mend: "Choose the UTM zone or the national grid of the site, and bring the terrain into it.",
    };
  const clean = designProj(found.proj);
  if ("missingGrid" in clean)
    return {
      message: `${name} needs the shift grid ${clean.missingGrid}, which this program does not carry.`,
      mend: "Choose a system on a modern datum (such as a UTM zone on WGS 84, NAD83 or ETRS89), or state a local grid.",
    };
  if (!isComputable(clean.proj)) return notComputable(name);
  return { kind: "epsg", code: found.code, name: found.name, proj: clean.proj };
}

const notComputable = (name: string): Refusal => ({
  message: `${name} cannot be computed here: the register gives no usable projection with east and north axes for it.`,
  mend: "Choose the UTM zone of the site, or state a local grid.",
});

async function inFeet(name: string, found: EpsgInfo): Promise<Refusal> {
  const twin = await metreTwin(found.code);
  return {
    message: `${name} is in ${found.unit}, not in metres.`,
    mend:
      twin === null
        ? "Choose a system in metres, such as the UTM zone of the site, and bring the terrain into it."
        : `The same zone in metres is EPSG:${twin.code} (${twin.name}): give that code and bring the terrain into it.`,
  };
}

/** The system in metres on the same datum with the same projection and origin; null when the register has none. */
export async function metreTwin(code: number): Promise<EpsgInfo | null> {
  const all = await loadRegister();
  const own = all[String(code)];
  if (own === undefined || own.proj4 === null) return null;
  const wanted = projection(own.proj4);
  const twin = Object.entries(all).find(
    ([, e]) =>
      e.kind === own.kind &&
      e.proj4 !== null &&
      datumName(e) === datumName(own) &&
      unitOf(e.proj4) === 1 &&
      alike(wanted, projection(e.proj4)),
  );
  return twin === undefined ? null : info(Number(twin[0]), twin[1]);
}

/** "NAD83 / New York Long Island (ftUS)" is on "NAD83". */
const datumName = (entry: Entry): string => entry.name.split(" / ")[0]!;

const PROJECTION_KEYS = [
  "proj",
  "zone",
  "lat_0",
  "lon_0",
  "lat_1",
  "lat_2",
  "lat_ts",
  "k",
  "k_0",
  "alpha",
  "x_0",
  "y_0",
];

const projection = (proj: string): ReadonlyMap<string, string> =>
  new Map(
    PROJECTION_KEYS.flatMap((key) => {
      const value = new RegExp(`\\+${key}=(\\S+)`).exec(proj)?.[1];
      return value === undefined ? [] : [[key, value] as const];
    }),
  );

/** Equal to the last printed digits: a millionth of a degree, a centimetre of false origin. */
const alike = (a: ReadonlyMap<string, string>, b: ReadonlyMap<string, string>): boolean =>
  a.size === b.size &&
  [...a].every(([key, value]) => {
    const other = b.get(key);
    if (other === undefined || other === value) return other === value;
    return Math.abs(Number(other) - Number(value)) < (/^[xy]_0$/.test(key) ? 0.01 : 1e-6);
  });
