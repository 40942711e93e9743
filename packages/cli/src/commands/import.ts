import { planCrsOf } from "@causey/io/crs";
import { withoutPlaceholder } from "@causey/io/fresh";
import { readFolder } from "@causey/io/folder";
import {
  placeLayer,
  readLayers,
  toPlaces,
  toZones,
  type PlacedLayer,
  type ZoneMapping,
} from "@causey/io/layers";
import { PLACES_FILE, PLAN_FILE, ZONES_FILE } from "@causey/io/plan";
import { readPlaces, readZones, writePlaces, writeZones } from "@causey/io/vector";
import { basename, resolve } from "node:path";
import { chooseLayer } from "../import/choose-layer.ts";
import { FEATURE_OPTIONS, placeMapping, zoneMapping } from "../import/mapping.ts";
import { mergeAsTold } from "../import/merge.ts";
import { withPhoto } from "../import/photo.ts";
import { assumedSystem, sitePart, type SitePart } from "../import/site-part.ts";
import {
  problemLines,
  readArgs,
  readGiven,
  UsageError,
  word,
  writeOut,
  type Shell,
  type Values,
} from "../shell/index.ts";

const form =
  "causey import DIR FILE --as areas|starts|plots --out OUT [--use USE] [--name-field FIELD] [--id-field FIELD] [--layer NAME] [--system site|lon-lat|EPSG:CODE] [--hidden] [--replace] [--force]\n" +
  "causey import DIR PICTURE --as photo --out OUT [--world FILE] [--system site|EPSG:CODE] [--opacity SHARE] [--force]\n" +
  `Also, for all features or from a field of each: ${FEATURE_OPTIONS.map((o) => `--${o}, --${o}-field`).join("; ")}.`;

const text = { type: "string" } as const;
const flag = { type: "boolean" } as const;
const options = {
  as: text,
  out: text,
  layer: text,
  world: text,
  opacity: text,
  system: text,
  "name-field": text,
  "id-field": text,
  hidden: flag,
  replace: flag,
  force: flag,
  ...Object.fromEntries(FEATURE_OPTIONS.flatMap((o) => [o, `${o}-field`]).map((o) => [o, text])),
};

const KINDS = { areas: "area", starts: "start", plots: "plot" } as const;

/**
 * `causey import DIR FILE --as areas --out OUT`: the plan folder with the features of a shapefile (zipped), KML, GPX,
 * GeoPackage or GeoJSON added, or with a picture from above under its map, written as a new folder. The old one stays as it is.
 */
export async function runImport(args: readonly string[], shell: Shell): Promise<number> {
  const { values, places } = readArgs(args, options, ["DIR", "FILE"], form);
  const as = values["as"];
  if (as !== "areas" && as !== "starts" && as !== "plots" && as !== "photo")
    throw new UsageError(
      `Say what comes in with --as areas, --as starts, --as plots or --as photo.\nForm: ${form}`,
    );
  const out = word(values, "out");
  if (out === undefined) throw new UsageError(`Say where the new folder goes with --out OUT.\nForm: ${form}`);
  if (as === "photo") return importPhoto(places, out, values, shell);
  const name = basename(places[1]!);
  const mapping = as === "areas" ? zoneMapping(values, name) : null;
  const files = await readFolder(places[0]!);
  const site = await sitePart(files.get(PLAN_FILE));
  const { crs } = site;
  const read = await readLayers(name, await readGiven(places[1]!));
  const chosen = chooseLayer(read.layers, word(values, "layer"));
  const assume = assumedSystem(word(values, "system"), crs);
  const placed = await placeLayer(chosen, crs, assume === undefined ? {} : { assume });
  const added =
    mapping !== null
      ? addZones(files, placed.layer, mapping, values)
      : addPlaces(files, placed.layer, as === "starts" ? "start" : "plot", site, values);
  const notes = [...read.warnings, ...placed.warnings, ...added.warnings];
  if (notes.length > 0) shell.error(problemLines(notes));
  await writeOut(out, new Map([...files, [added.file, added.bytes]]), values["force"] === true);
  shell.out(
    `${out} holds the plan with ${added.count} ${KINDS[as]}${added.count === 1 ? "" : "s"} from ${name}. Next: causey check ${out}`,
  );
  return 0;
}

async function importPhoto(
  places: readonly string[],
  out: string,
  values: Values,
  shell: Shell,
): Promise<number> {
  const files = await readFolder(places[0]!);
  const { crs } = await sitePart(files.get(PLAN_FILE));
  const told = {
    world: word(values, "world"),
    system: word(values, "system"),
    opacity: word(values, "opacity"),
  };
  const laid = await withPhoto(files, resolve(places[1]!), crs, told);
  if (laid.notes.warnings.length > 0) shell.error(problemLines(laid.notes.warnings));
  await writeOut(resolve(out), laid.files, values["force"] === true);
  const [wide, tall] = [laid.notes.cols, laid.notes.rows];
  shell.out(
    `${out} holds the plan with ${laid.photo.file} (${wide} x ${tall} pixels) under its map. Next: causey check ${out}`,
  );
  return 0;
}

function addZones(
  files: ReadonlyMap<string, Uint8Array>,
  layer: PlacedLayer,
  mapping: ZoneMapping,
  values: Values,
) {
  const incoming = toZones(layer, mapping);
  const old = files.get(ZONES_FILE);
  const standing = old ? readZones(ZONES_FILE, old, layer.crs).zones : [];
  const merged = mergeAsTold(standing, incoming.zones, {
    file: layer.file,
    isReplacing: values["replace"] === true,
  });
  return {
    file: ZONES_FILE,
    bytes: writeZones(merged, planCrsOf(layer.crs)),
    count: incoming.zones.length,
    warnings: incoming.warnings,
  };
}

function addPlaces(
  files: ReadonlyMap<string, Uint8Array>,
  layer: PlacedLayer,
  kind: "start" | "plot",
  { plot_defaults }: SitePart,
  values: Values,
) {
  const incoming = toPlaces(layer, placeMapping(values, kind));
  const old = files.get(PLACES_FILE);
  const standing = old ? readPlaces(PLACES_FILE, old, layer.crs, plot_defaults) : { starts: [], plots: [] };
  const rules = { file: layer.file, isReplacing: values["replace"] === true };
  const starts = mergeAsTold(
    incoming.starts.length > 0 ? withoutPlaceholder(standing.starts) : standing.starts,
    incoming.starts,
    rules,
  );
  const plots = mergeAsTold(standing.plots, incoming.plots, rules);
  const bytes = writePlaces(starts, plots, planCrsOf(layer.crs));
  // Starts and plots share their ids: what clashes across the two is told before anything is written.
  readPlaces(PLACES_FILE, bytes, layer.crs, plot_defaults);
  return {
    file: PLACES_FILE,
    bytes,
    count: incoming.starts.length + incoming.plots.length,
    warnings: incoming.warnings,
  };
}
