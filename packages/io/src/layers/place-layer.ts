import type { Problem } from "@causey/engine/formula";
import type { Crs } from "@causey/engine/site";
import proj4 from "proj4";
import { crsName, lonLatAccuracy } from "../crs/index.ts";
import {
  mapPositions,
  type LayerCrs,
  type Position,
  type VectorFeature,
  type VectorLayer,
} from "../layer-form/index.ts";
import { Findings, quote } from "../problem/index.ts";
import { isSameDatum, layerSystem, systemTitle, type LayerSystem } from "./layer-system.ts";

/** A layer whose coordinates stand in the site's system, east and north in metres. */
export interface PlacedLayer extends Omit<VectorLayer, "crs"> {
  readonly crs: Crs;
}

export interface LayerPlaced {
  readonly layer: PlacedLayer;
  readonly warnings: readonly Problem[];
}

export interface PlaceOptions {
  /** The user's word for the system of a layer whose file does not say it. */
  readonly assume?: Exclude<LayerCrs, null | { readonly wkt: string }>;
}

/** Beyond this, distances computed in doubles lose their millimetres; no grid on earth reaches it [m]. */
const FARTHEST_M = 1e8;

/**
 * Brings a layer into the site's grid. A layer in the site's own system stays as it is to the last digit; one in
 * another declared system is reprojected, and a warning states how far off that may be. A layer without a system,
 * a system that cannot be tied to the site's, and an assumption that contradicts the file are errors: nothing is
 * guessed. Throws `ProblemError`.
 */
export async function placeLayer(
  layer: VectorLayer,
  crs: Crs,
  { assume }: PlaceOptions = {},
): Promise<LayerPlaced> {
  const found = new Findings(layer.file);
  const declared = declaredSystem(found, layer, crs, assume);
  const move =
    crs.kind === "local"
      ? localMove(found, layer, declared, crs)
      : await epsgMove(found, layer, declared, crs);
  const features = layer.features.flatMap((f, i) => place(found, layer, f, i, move) ?? []);
  found.throwIfErrors();
  return { layer: { ...layer, crs, features }, warnings: found.warnings };
}

const sayHow = (crs: Crs): string =>
  crs.kind === "epsg"
    ? `Export it again with its coordinate system, or state the system: EPSG:${crs.code} if it is the site's own, else its own code.`
    : `If its coordinates are in the site's own grid, ${quote(crs.name)}, say so.`;

function declaredSystem(
  found: Findings,
  layer: VectorLayer,
  crs: Crs,
  assume: PlaceOptions["assume"],
): Exclude<LayerCrs, null> {
  const place = `layer ${quote(layer.name)}`;
  if (layer.crs === null)
    return (
      assume ??
      found.stop({
        code: "layer-crs",
        place,
        message: `The layer ${quote(layer.name)} does not say in which coordinate system it is (a shapefile says so in its .prj file).`,
        mend: sayHow(crs),
      })
    );
  if (assume !== undefined && JSON.stringify(assume) !== JSON.stringify(layer.crs))
    found.stop({
      code: "layer-crs-twice",
      place,
      value: systemTitle(assume),
      message: `The file says that the layer ${quote(layer.name)} is in ${systemTitle(layer.crs)}; you state ${systemTitle(assume)}.`,
      mend: "Leave your statement out, or export the layer again with the right system.",
    });
  return layer.crs;
}

/** Turns one position into the site's grid; null when it has no place there. */
type Move = (p: Position) => Position | null;

const isNear = ([x, y]: readonly [number, number]): boolean =>
  Number.isFinite(x) && Number.isFinite(y) && Math.hypot(x, y) <= FARTHEST_M;

const stay: Move = (p) => (isNear(p) ? p : null);

function localMove(found: Findings, layer: VectorLayer, declared: Exclude<LayerCrs, null>, crs: Crs): Move {
  if (
    typeof declared === "object" &&
    "local" in declared &&
    (declared.local === "" || declared.local === crs.name)
  )
    return stay;
  return found.stop({
    code: "layer-local",
    place: `layer ${quote(layer.name)}`,
    value: systemTitle(declared),
    message: `The layer is in ${systemTitle(declared)}, but the site is on ${crsName(crs)}, whose place on the earth is not known.`,
    mend: `Bring it into the local grid in your mapping program and save it without a coordinate system, then say that its coordinates are in the site's own grid, ${quote(crs.name)}.`,
  });
}

async function epsgMove(
  found: Findings,
  layer: VectorLayer,
  declared: Exclude<LayerCrs, null>,
  crs: Crs & { kind: "epsg" },
): Promise<Move> {
  const place = `layer ${quote(layer.name)}`;
  const system = await layerSystem(declared, crs);
  if (system === "site") return stay;
  const mend = `Export the layer in ${crsName(crs)}.`;
  if ("unusable" in system)
    return found.stop({
      code: "layer-crs",
      place,
      value: systemTitle(declared),
      message: `The layer cannot be placed: ${system.unusable}.`,
      mend,
    });
  const accuracy = accuracyBetween(system, crs);
  if (accuracy === null)
    found.stop({
      code: "datum-shift",
      place,
      value: system.title,
      message: `No datum shift is known between ${system.title} and ${crsName(crs)}: positions could be hundreds of metres off.`,
      mend,
    });
  found.warn({
    code: "layer-reprojected",
    place,
    value: system.title,
    message: `The layer was brought from ${system.title} into ${crsName(crs)}: ${accuracy}.`,
    mend: `For exact places export it in ${crsName(crs)}.`,
  });
  return mover(system, crs);
}

/** How far off a reprojected position may be, in words (from memory, as in `lonLatAccuracy`); null when unknown. */
function accuracyBetween(system: LayerSystem, crs: Crs & { kind: "epsg" }): string | null {
  if (isSameDatum(system, crs)) return "both stand on one datum, so it is exact to a millimetre";
  const grades = [system.accuracy, lonLatAccuracy(crs).grade];
  if (grades.includes("unknown")) return null;
  return grades.includes("metres")
    ? "one datum shift stands for the whole country, so positions may be about 5 m off"
    : "the two agree to about a metre or two";
}

/** On one datum there is no shift to make; there and back again it would cost a millimetre. */
const withoutShift = (definition: string): string => definition.replace(/\+towgs84=\S+/, "");

function mover(system: LayerSystem, crs: Crs & { kind: "epsg" }): Move {
  const [from, to] = isSameDatum(system, crs)
    ? [withoutShift(system.definition), withoutShift(crs.proj)]
    : [system.definition, crs.proj];
  const converter = proj4(from, to);
  return ([a, b]) => {
    if (system.isInDegrees && (Math.abs(a) > 180 || Math.abs(b) > 90)) return null;
    try {
      const [x, y] = converter.forward([a, b]) as [number, number];
      return isNear([x, y]) ? [x, y] : null;
    } catch {
      return null;
    }
  };
}

function place(
  found: Findings,
  layer: VectorLayer,
  feature: VectorFeature,
  index: number,
  move: Move,
): VectorFeature | null {
  const lost: Position[] = [];
  const geometry = mapPositions(feature.geometry, (p) => {
    const at = move(p);
    if (at === null) lost.push(p);
    return at ?? p;
  });
  if (lost.length === 0) return { ...feature, geometry };
  const [x, y] = lost[0]!;
  found.error({
    code: "layer-position",
    place: `layer ${quote(layer.name)}, feature ${index + 1}${feature.id === null ? "" : ` (${quote(feature.id)})`}`,
    value: `${x}, ${y}`,
    message: "This position has no place in the site's grid: it does not fit the system of the layer.",
    mend: "Check that the layer is in the system that was stated, or take the feature out.",
  });
  return null;
}
