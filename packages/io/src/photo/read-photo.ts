import type { Problem } from "@causey/engine/formula";
import type { Photo } from "@causey/engine/plan";
import { crsName, type PlanCrs } from "../crs/index.ts";
import type { Findings } from "../problem/index.ts";
import { PhotoFindings } from "./photo-findings.ts";
import { pictureSize } from "./picture-size.ts";
import {
  isTiff,
  MAX_PIXELS,
  readTiffPicture,
  tiffPixels,
  type Pixels,
  type TiffPicture,
} from "./tiff-picture.ts";
import type { World } from "./world-file.ts";

/** West, south, east, north [m]. */
export type PhotoExtent = readonly [number, number, number, number];

export interface PhotoRead {
  readonly kind: "tiff" | "jpeg" | "png";
  readonly cols: number;
  readonly rows: number;
  readonly world: World;
  readonly extent: PhotoExtent;
  readonly warnings: readonly Problem[];
}

/** What a picture says of itself: its size, and where it lies and in which system when it says so. */
export interface PhotoHead {
  readonly kind: PhotoRead["kind"];
  readonly cols: number;
  readonly rows: number;
  readonly world: World | null;
  readonly crs: number | null;
}

/** Reads the head of a GeoTIFF, JPEG or PNG. Throws `ProblemError` for what is no such picture or is too large. */
export const photoHead = (file: string, bytes: Uint8Array): PhotoHead => {
  const found = new PhotoFindings(file);
  const { tiff: _, ...head } = headOf(found, bytes);
  found.throwIfErrors();
  return head;
};

/**
 * Holds a picture of the ground against the plan: it must say, or its user must say, where it lies, and that it lies
 * in the plan's system. Nothing of that is guessed. Throws `ProblemError`. The pixels are not unpacked.
 */
export function readPhoto(photo: Photo, bytes: Uint8Array, crs: PlanCrs): PhotoRead {
  const found = new PhotoFindings(photo.file);
  const { tiff: _, ...head } = headOf(found, bytes);
  const world = photo.world ?? head.world;
  checkCrs(found, photo, head.crs, crs);
  if (world === null)
    found.error({
      code: "photo-not-placed",
      place: "georeference",
      value: "no position",
      message: "The picture does not say where it lies.",
      mend: "Give its world file (.jgw, .pgw, .tfw) with it, or export it as a GeoTIFF.",
    });
  else checkWorld(found, world);
  found.throwIfErrors();
  return { ...head, world: world!, extent: extentOf(world!, head), warnings: found.warnings };
}

/** The picture unpacked to at most `most` pixels a side, for a GeoTIFF; others are unpacked by the browser. */
export async function photoPixels(file: string, bytes: Uint8Array, most: number): Promise<Pixels | null> {
  const found = new PhotoFindings(file);
  const { tiff } = headOf(found, bytes);
  return tiff === null ? null : tiffPixels(found, bytes, tiff, most);
}

function headOf(found: Findings, bytes: Uint8Array): PhotoHead & { readonly tiff: TiffPicture | null } {
  if (isTiff(bytes)) {
    const tiff = readTiffPicture(found, bytes);
    const { cols, rows } = tiff.layout;
    return { kind: "tiff", cols, rows, world: tiff.world, crs: tiff.crs, tiff };
  }
  const size = pictureSize(bytes);
  if (size === null)
    return found.stop({
      code: "photo-kind",
      place: "byte 0",
      value: `${bytes.length} bytes`,
      message: "The file is not a picture that is read here, or it is cut off.",
      mend: "Give a GeoTIFF, or a JPEG or PNG with its world file.",
    });
  if (size.cols * size.rows > MAX_PIXELS || size.cols === 0 || size.rows === 0)
    found.stop({
      code: "photo-too-large",
      place: "image size",
      value: `${size.cols} x ${size.rows} pixels`,
      message: `The picture has ${size.cols * size.rows} pixels; 1 to ${MAX_PIXELS} are read.`,
      mend: "Cut it to the site, or make its pixels larger.",
    });
  return { ...size, world: null, crs: null, tiff: null };
}

function checkCrs(found: Findings, photo: Photo, code: number | null, crs: PlanCrs): void {
  if (code !== null && !("epsg" in crs && crs.epsg === code))
    found.error({
      code: "crs-mismatch",
      place: "coordinate system",
      value: `EPSG:${code}`,
      message: `The picture is in EPSG:${code}, the plan in ${crsName(crs)}.`,
      mend: `Bring the picture into ${crsName(crs)} in a mapping program and give it again.`,
    });
  if (code !== null || photo.crs_confirmed === true) return;
  found.error({
    code: "photo-no-crs",
    place: "coordinate system",
    value: "no system",
    message: `The picture does not say which coordinate system it lies in; the plan is in ${crsName(crs)}.`,
    mend: `When you have checked that it lies in ${crsName(crs)}, say so ("crs_confirmed": true in "photo"); otherwise bring it into that system.`,
  });
}

function checkWorld(found: Findings, [a, d, b, e, c, f]: World): void {
  const isUp = a > 0 && e < 0 && Math.abs(d) <= 1e-9 * a && Math.abs(b) <= 1e-9 * -e;
  if (!isUp || ![a, e, c, f].every((v) => Number.isFinite(v)))
    found.error({
      code: "photo-rotated",
      place: "georeference",
      value: [a, d, b, e].join(", "),
      message: "The picture is rotated, skewed or mirrored: north is not at its top.",
      mend: "Export it again with north up.",
    });
  else if (a < 1e-3 || -e < 1e-3)
    found.error({
      code: "photo-degrees",
      place: "georeference",
      value: `${a} x ${-e}`,
      message: "A pixel is smaller than a millimetre: the world file is most likely in degrees.",
      mend: "Bring the picture into the plan's system, in metres.",
    });
}

function extentOf([a, , , e, c, f]: World, { cols, rows }: Pick<PhotoHead, "cols" | "rows">): PhotoExtent {
  const [west, north] = [c - a / 2, f - e / 2];
  return [west, north + rows * e, west + cols * a, north];
}
