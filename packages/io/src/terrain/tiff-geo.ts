import type { Findings } from "../problem/index.ts";
import { checkCellSize } from "./grid.ts";
import { TAG, type TiffDirectory } from "./tiff-directory.ts";
import type { TiffLayout } from "./tiff-layout.ts";

/** Keys of OGC GeoTIFF 1.1, section 7. */
const KEY = {
  model_type: 1024,
  raster_type: 1025,
  projected: 3072,
  linear_units: 3076,
  vertical: 4096,
  vertical_units: 4099,
} as const;

/** Codes of lengths that the keys use. */
const METRE = 9001;
const FOOT = 9002;
const US_FOOT = 9003;

const USER_DEFINED = 32767;

export interface TiffPlace {
  /** Centre of the south-west cell. */
  readonly x0: number;
  readonly y0: number;
  readonly dx: number;
  readonly dy: number;
  /** EPSG codes; null when the file names none. */
  readonly crs: number | null;
  readonly vertical: number | null;
}

type Keys = ReadonlyMap<number, number>;

/**
 * Where the grid lies. North must be up: a rotated, skewed or south-up grid is refused. When the file says that a
 * pixel is a point (GTRasterTypeGeoKey 2), its tie point is a cell centre, otherwise a cell corner.
 */
export function readPlace(
  found: Findings,
  directory: TiffDirectory,
  layout: TiffLayout,
  unit: "m" | "ft",
): TiffPlace {
  const keys = readKeys(directory);
  const { left, top, dx, dy } = readCorner(found, directory);
  checkCellSize(found, "cell size", dx, dy);
  const toCentre = keys.get(KEY.raster_type) === 2 ? 0 : 0.5;
  checkUnits(found, keys, unit);
  return {
    x0: left + toCentre * dx,
    y0: top - (layout.rows - 1 + toCentre) * dy,
    dx,
    dy,
    crs: readCrs(found, keys),
    vertical: codeOf(keys, KEY.vertical),
  };
}

/** Keys with their value in the directory itself; the others (citations, user-defined numbers) are not needed. */
function readKeys(directory: TiffDirectory): Keys {
  const words = directory.numbers(TAG.geo_keys, 4096) ?? [];
  const keys = new Map<number, number>();
  for (let i = 4; i + 3 < words.length; i += 4) if (words[i + 1] === 0) keys.set(words[i]!, words[i + 3]!);
  return keys;
}

const codeOf = (keys: Keys, key: number): number | null => {
  const code = keys.get(key) ?? 0;
  return code === 0 || code === USER_DEFINED ? null : code;
};

interface Corner {
  /** Place of the raster's point (0, 0). */
  readonly left: number;
  readonly top: number;
  readonly dx: number;
  readonly dy: number;
}

function readCorner(found: Findings, directory: TiffDirectory): Corner {
  const matrix = directory.numbers(TAG.transformation, 16);
  if (matrix !== null) return fromMatrix(found, matrix);
  const scale = directory.numbers(TAG.pixel_scale, 3);
  const tie = directory.numbers(TAG.tiepoints, 6 * 1000);
  if (scale === null || tie === null || scale.length < 2 || tie.length < 6)
    return notPlaced(found, tie !== null && tie.length > 6);
  if (tie.length > 6) return notPlaced(found, true);
  const [dx, dy] = [scale[0]!, scale[1]!];
  if (dy < 0) return notNorthUp(found, `cell height ${dy}`);
  const corner = { left: tie[3]! - tie[0]! * dx, top: tie[4]! + tie[1]! * dy, dx, dy };
  return Number.isFinite(corner.left) && Number.isFinite(corner.top) ? corner : notPlaced(found, false);
}

function fromMatrix(found: Findings, m: readonly number[]): Corner {
  const [a, b, , left, e, f, , top] = m;
  if (m.length !== 16 || ![a, b, left, e, f, top].every((v) => Number.isFinite(v)))
    return notPlaced(found, false);
  const isSquare = Math.abs(b!) <= 1e-9 * Math.abs(a!) && Math.abs(e!) <= 1e-9 * Math.abs(f!);
  if (!isSquare || a! <= 0 || f! >= 0) return notNorthUp(found, [a, b, e, f].join(", "));
  return { left: left!, top: top!, dx: a!, dy: -f! };
}

const notNorthUp = (found: Findings, value: string): never =>
  found.stop({
    code: "terrain-rotated",
    place: "georeference",
    value,
    message: "The grid is rotated, skewed or stored with south at the top.",
    mend: "Export it again with north up (warp it into its own system).",
  });

const notPlaced = (found: Findings, hasControlPoints: boolean): never =>
  found.stop({
    code: "terrain-not-placed",
    place: "georeference",
    value: hasControlPoints ? "control points" : "no cell size or no tie point",
    message: hasControlPoints
      ? "The grid is tied to the ground by control points only, so its cells have no regular place."
      : "The file does not say where its cells lie.",
    mend: "Export it again as a GeoTIFF with its position (a world file beside it is not read).",
  });

function readCrs(found: Findings, keys: Keys): number | null {
  const model = keys.get(KEY.model_type);
  if (model === 2 || model === 3)
    found.stop({
      code: "crs-geographic",
      place: "coordinate system",
      value: model === 2 ? "geographic" : "geocentric",
      message:
        "The terrain is in degrees of longitude and latitude, or in another system that is not projected.",
      mend: "Bring it into a projected system in metres, such as the UTM zone of the site.",
    });
  const code = codeOf(keys, KEY.projected);
  if (code === null && keys.get(KEY.projected) === USER_DEFINED)
    found.warn({
      code: "crs-user-defined",
      place: "coordinate system",
      value: "user-defined",
      message: "The file describes its coordinate system in its own words, without an EPSG code.",
      mend: 'Export it with an EPSG code, or state in plan.json that you have checked it: "terrain": {"crs_confirmed": true}.',
    });
  return code;
}

function checkUnits(found: Findings, keys: Keys, unit: "m" | "ft"): void {
  const across = keys.get(KEY.linear_units);
  if (across === FOOT || across === US_FOOT)
    found.error({
      code: "terrain-feet-grid",
      place: "coordinate system",
      value: across === FOOT ? "foot" : "US survey foot",
      message: "The cells of the terrain lie on a grid in feet; the plan is laid out in metres.",
      mend: "Bring the terrain into a projected system in metres.",
    });
  const up = keys.get(KEY.vertical_units);
  const says = up === METRE ? "m" : up === FOOT || up === US_FOOT ? "ft" : unit;
  if (says !== unit)
    found.error({
      code: "terrain-unit",
      place: "vertical unit",
      value: says,
      message: `The file says that its heights are in ${says === "m" ? "metres" : "feet"}, plan.json says ${unit}.`,
      mend: `Set "terrain": {"unit": "${says}"} in plan.json, or correct the file.`,
    });
}
