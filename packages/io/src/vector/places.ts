import type { Problem } from "@causey/engine/formula";
import type { Crs, Plot, Start } from "@causey/engine/site";
import { Findings } from "../problem/index.ts";
import { readCollection, type RawFeature } from "./features.ts";
import type { Placement } from "./placement.ts";
import { Properties, reportTwins } from "./properties.ts";

/** Distances for plots that do not state their own; stated in plan.json ("plot_defaults"), never assumed [m]. */
export interface PlaceDefaults {
  readonly keep_off_m?: number;
  readonly reach_m?: number;
}

export interface PlacesRead {
  readonly starts: readonly Start[];
  readonly plots: readonly Plot[];
  readonly warnings: readonly Problem[];
}

/**
 * Reads `places.geojson`: Point features with the properties kind ("start" or "plot"), id and name, and for plots
 * keep_off_m and reach_m. Two plots of one name are a problem, for a crew would not know which is meant.
 *
 * crs  the site's system: coordinates come out in it
 * Throws `ProblemError` with every fault of the file.
 */
export function readPlaces(file: string, bytes: Uint8Array, crs: Crs, defaults: PlaceDefaults): PlacesRead {
  const found = new Findings(file);
  const { features, placement } = readCollection(found, bytes, crs);
  const starts: Start[] = [];
  const plots: Plot[] = [];
  for (const feature of features) {
    const p = new Properties(found, feature);
    const kind = p.choice("kind", ["start", "plot"]);
    const place = readPoint(p, feature, placement);
    const distances = kind === "plot" ? { ...readDistances(p, defaults), ...readSide(p) } : null;
    if (!p.isSound || place === null) continue;
    if (distances === null) starts.push(place);
    else plots.push({ ...place, ...distances });
  }
  reportAllTwins(found, features);
  found.throwIfErrors();
  return { starts, plots, warnings: found.warnings };
}

function readPoint(p: Properties, feature: RawFeature, placement: Placement): Start | null {
  const id = p.id();
  const name = p.text("name", 'Give the place a name ("name").');
  const { geometry } = feature;
  if (geometry["type"] !== "Point") {
    p.fault("geometry", geometry["type"], "is not a Point", "Mark the place with one point.");
    return null;
  }
  const at = placement(`${feature.place}, position`, geometry["coordinates"]);
  return at === null ? null : { id, name, x: at[0], y: at[1] };
}

function readDistances(
  p: Properties,
  defaults: PlaceDefaults,
): { readonly keep_off_m: number; readonly reach_m: number } {
  const read = (key: "keep_off_m" | "reach_m", what: string): number => {
    const given = p.value(key) === undefined ? defaults[key] : p.number(key, 0);
    if (given === undefined && p.value(key) === undefined)
      p.fault(
        key,
        undefined,
        `needs ${what}`,
        `Give "${key}" here, or for all plots in plan.json: "plot_defaults": {"${key}": ...}.`,
      );
    return given ?? 0;
  };
  const keep_off_m = read("keep_off_m", "its keep-off distance");
  const reach_m = read("reach_m", "how far beyond the keep-off line a joint still reaches it");
  if (reach_m === 0 && p.isSound)
    p.fault("reach_m", reach_m, "can never be reached with a reach of 0", 'Give "reach_m" above 0.');
  return { keep_off_m, reach_m };
}

/** The side to arrive from, when one is wanted. */
const readSide = (p: Properties): Pick<Plot, "arrive_from"> =>
  p.value("arrive_from") === undefined
    ? {}
    : { arrive_from: p.choice("arrive_from", ["north", "east", "south", "west"]) };

function reportAllTwins(found: Findings, features: readonly RawFeature[]): void {
  const ids = features.flatMap((f) => (f.id === null ? [] : [{ key: f.id, place: f.place }]));
  reportTwins(found, ids, "id", "place-twins");
  for (const kind of ["start", "plot"] as const) {
    const names = features.flatMap((f) => {
      const name = f.properties["name"];
      return f.properties["kind"] === kind && typeof name === "string"
        ? [{ key: name.trim(), place: f.place }]
        : [];
    });
    reportTwins(found, names, "name", `${kind}-names`);
  }
}
