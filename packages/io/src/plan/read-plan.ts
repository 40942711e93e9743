import { ProblemError, type Problem } from "@causey/engine/formula";
import type { Kit } from "@causey/engine/kit";
import type { Price } from "@causey/engine/materials";
import { BLANK_SECTIONS, type Plan } from "@causey/engine/plan";
import type { Crs, Site } from "@causey/engine/site";
import { crsOf } from "../crs/index.ts";
import type { PlanFiles } from "../files/index.ts";
import { readPrices, type PricesRead } from "../prices/index.ts";
import { Findings } from "../problem/index.ts";
import { groundFile, siteGround, uncorrectedGround, type SiteGround } from "../ground/index.ts";
import { readSeries } from "../water/index.ts";
import type { Series, SeriesFile } from "@causey/engine/water";
import type { Terrain } from "../terrain/index.ts";
import { readPlaces, readZones, type PlacesRead, type ZonesRead } from "../vector/index.ts";
import { checkDatums } from "./datum-checks.ts";
import { checkCurrency, checkDocument, checkVisits } from "./document-checks.ts";
import { checkAnyPlace, checkInZones, checkOnTerrain, checkZonesOnTerrain } from "./place-checks.ts";
import { readDocument, type DocumentRead, type SiteEntries } from "./read-document.ts";
import { readPhoto } from "../photo/index.ts";
import { checkPhotoOnSite } from "./photo-checks.ts";
import { checkArea, checkFileDatum, checkStretch, checkTerrainCrs } from "./terrain-checks.ts";

export const PLAN_FILE = "plan.json";
export const ZONES_FILE = "zones.geojson";
export const PLACES_FILE = "places.geojson";

export interface ReadPlanOptions {
  /** Kits that a plan may name instead of carrying a recipe. */
  readonly readyKits: readonly Kit[];
  /** The kit's own checks; left out where the kit is judged elsewhere. */
  readonly validateKit?: (kit: Kit) => readonly Problem[];
  /** Whether the tables have what the plan's proof names; left out where it is judged elsewhere. */
  readonly validateProof?: (proof: Plan["proof"]) => readonly Problem[];
}

export type ReadPlan =
  | {
      readonly ok: true;
      readonly plan: Plan;
      readonly site: Site;
      readonly prices: readonly Price[];
      readonly warnings: readonly Problem[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Reads a plan folder: plan.json, zones.geojson, places.geojson, the terrain and the price list that it names, and
 * holds them against each other. Works in browser and Node.
 *
 * files  name -> bytes, as `readFolder` or `readArchive` give them
 * Returns the plan with its site, or every problem of every file at once. Never guesses a coordinate system, a datum,
 * a no-data value or a currency.
 */
export async function readPlan(files: PlanFiles, options: ReadPlanOptions): Promise<ReadPlan> {
  const reading = new Reading(files, options);
  await reading.all();
  return reading.answer();
}

/** In the place of a plan.json with faults, so that the terrain's own faults are told beside them. */
const UNREAD: Pick<Plan, "survey" | "levels" | "vertical_datum"> = {
  survey: BLANK_SECTIONS.survey,
  levels: [],
  vertical_datum: "",
};

/** The state of one reading: what has been read so far, and everything that was found wrong. */
class Reading {
  readonly #files: PlanFiles;
  readonly #options: ReadPlanOptions;
  readonly #problems: Problem[] = [];
  #document: DocumentRead | null = null;
  #crs: Crs | null = null;
  #zones: ZonesRead | null = null;
  #places: PlacesRead | null = null;
  #prices: PricesRead | null = null;
  #terrain: Terrain | null = null;
  #ground: Pick<SiteGround, "height_band_m" | "evidence"> | null = null;
  #series: Series | null = null;
  #compare: Series | null = null;

  constructor(files: PlanFiles, options: ReadPlanOptions) {
    this.#files = files;
    this.#options = options;
  }

  async all(): Promise<void> {
    const plan = this.#file(PLAN_FILE, "the plan itself", 'Start from a fresh folder ("causey new").');
    if (plan === null) return;
    await this.#check(PLAN_FILE, (found) => {
      this.#document = readDocument(found, plan, this.#options.readyKits);
    });
    const read = this.#document as DocumentRead | null;
    if (read !== null) await this.#readOthers(read.entries);
    if (read?.document) {
      await this.#readSeries(read.document);
      await this.#readPhoto(read.document);
      await this.#hold(read.document);
    }
  }

  answer(): ReadPlan {
    const problems = this.#problems;
    if (problems.some((p) => p.severity === "error")) return { ok: false, problems };
    const document = this.#document!.document!;
    const { starts, plots } = this.#places!;
    const { zones } = this.#zones!;
    const plan: Plan = { ...document, starts, plots, zones };
    const site: Site = {
      crs: this.#crs!,
      datum: plan.vertical_datum,
      terrain: this.#terrain!.raster,
      zones,
      starts,
      plots,
      levels: plan.levels,
      readings: plan.ground.readings,
      height_band_m: this.#ground!.height_band_m,
      ground: this.#ground!.evidence(),
      series: this.#series,
      ...(this.#compare === null ? {} : { compare: this.#compare }),
    };
    return { ok: true, plan, site, prices: this.#prices!.prices, warnings: problems };
  }

  async #readOthers(entries: SiteEntries): Promise<void> {
    const { crs } = entries;
    if (crs !== null)
      await this.#check(PLAN_FILE, async () => {
        this.#crs = await crsOf(crs);
      });
    await this.#readVectors(entries);
    const prices =
      entries.prices &&
      this.#file(entries.prices.file, "the price list", "Add it, with at least its line of heads.");
    if (prices)
      await this.#check(entries.prices!.file, () => {
        this.#prices = this.#keep(readPrices(entries.prices!.file, prices));
      });
    if (entries.terrain) await this.#readTerrain(entries.terrain, entries.crs);
  }

  async #readVectors(entries: SiteEntries): Promise<void> {
    const empty = 'Add it; a file without features is {"type": "FeatureCollection", "features": []}.';
    const zones = this.#file(ZONES_FILE, "the zones", empty);
    const places = this.#file(PLACES_FILE, "starts and plots", empty);
    const crs = this.#crs;
    if (crs === null) return;
    if (zones)
      await this.#check(ZONES_FILE, () => (this.#zones = this.#keep(readZones(ZONES_FILE, zones, crs))));
    if (places)
      await this.#check(PLACES_FILE, () => {
        this.#places = this.#keep(readPlaces(PLACES_FILE, places, crs, entries.plot_defaults));
      });
  }

  async #readTerrain(entry: Plan["terrain"], crs: Plan["crs"] | null): Promise<void> {
    const file = groundFile(entry);
    const bytes =
      file === null
        ? null
        : this.#file(
            file,
            "the terrain",
            "Put the terrain into the folder as GeoTIFF (.tif), ESRI ASCII grid (.asc) or survey points (.csv).",
          );
    const document = this.#document?.document ?? null;
    const isThere = file === null ? document !== null : bytes !== null;
    if (!isThere) return;
    const { survey, levels, vertical_datum } = document ?? UNREAD;
    const plan = { terrain: entry, survey, levels, vertical_datum };
    const zones = this.#zones?.zones ?? null;
    await this.#check(file ?? PLAN_FILE, async () => {
      this.#terrain = this.#keep(
        zones === null
          ? await uncorrectedGround(plan, bytes, crs ?? undefined)
          : (this.#ground = await siteGround({ ...plan, zones }, bytes, crs ?? undefined)),
      );
    });
  }

  async #readSeries({ water, vertical_datum }: Pick<Plan, "water" | "vertical_datum">): Promise<void> {
    this.#series = await this.#readOneSeries("series", water.series, vertical_datum);
    this.#compare = await this.#readOneSeries("compare", water.compare ?? null, vertical_datum);
  }

  async #readOneSeries(
    key: "series" | "compare",
    choice: SeriesFile | null,
    datum: string,
  ): Promise<Series | null> {
    if (choice === null) return null;
    const bytes = this.#file(
      choice.file,
      "the water record",
      `Put it into the folder, or leave the record out (water.${key}: null).`,
    );
    let series: Series | null = null;
    if (bytes)
      await this.#check(choice.file, () => {
        series = this.#keep(readSeries(bytes, choice, datum, `water.${key}`)).series;
      });
    return series;
  }

  async #readPhoto({ photo, crs }: Pick<Plan, "photo" | "crs">): Promise<void> {
    if (photo === null) return;
    const bytes = this.#file(
      photo.file,
      "the photo",
      "Put it into the folder, or leave the photo out (photo: null).",
    );
    if (bytes)
      await this.#check(photo.file, (found) => {
        const { extent } = this.#keep(readPhoto(photo, bytes, crs));
        if (this.#terrain) checkPhotoOnSite(found, extent, this.#terrain.raster);
      });
  }

  /** Holds the files against each other, as far as they could be read. */
  async #hold(document: NonNullable<DocumentRead["document"]>): Promise<void> {
    const [terrain, crs, places, zones] = [this.#terrain, this.#crs, this.#places, this.#zones];
    const ground = groundFile(document.terrain) ?? PLAN_FILE;
    await this.#check(PLAN_FILE, (found) => {
      checkDocument(found, document);
      checkDatums(found, document);
      if (places) checkVisits(found, document, places.plots);
    });
    this.#problems.push(...(this.#options.validateKit?.(document.kit) ?? []));
    for (const problem of this.#options.validateProof?.(document.proof) ?? [])
      this.#problems.push({
        ...problem,
        code: "plan-unknown-id",
        file: PLAN_FILE,
        message: `${problem.message}.`,
      });
    if (this.#prices) {
      const { currency } = this.#prices;
      await this.#check(document.prices.file, (found) => checkCurrency(found, document, currency));
    }
    if (terrain && crs)
      await this.#check(ground, async (found) => {
        checkTerrainCrs(found, terrain, document.terrain, crs, this.#files);
        checkStretch(found, terrain.raster, crs);
        checkFileDatum(found, terrain, document.terrain);
        await checkArea(found, terrain.raster, crs);
      });
    if (places)
      await this.#check(PLACES_FILE, (found) => {
        checkAnyPlace(found, places);
        if (terrain) checkOnTerrain(found, places, terrain.raster, ground);
        if (zones) checkInZones(found, places, zones.zones, document.laying);
      });
    if (zones && terrain)
      await this.#check(ZONES_FILE, (found) => checkZonesOnTerrain(found, zones.zones, terrain.raster));
  }

  /** Runs one step and keeps everything it found, whether it threw or not. */
  async #check(file: string, step: (found: Findings) => unknown): Promise<void> {
    const found = new Findings(file);
    try {
      await step(found);
      this.#problems.push(...found.all);
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      this.#problems.push(...error.problems);
    }
  }

  #keep<T extends { readonly warnings: readonly Problem[] }>(read: T): T {
    this.#problems.push(...read.warnings);
    return read;
  }

  #file(name: string, what: string, mend: string): Uint8Array | null {
    const bytes = this.#files.get(name);
    if (bytes !== undefined) return bytes;
    const twin = [...this.#files.keys()].find((n) => n.toLowerCase() === name.toLowerCase());
    this.#problems.push({
      code: "file-missing",
      severity: "error",
      file: name,
      place: "folder",
      value: twin ?? "(nothing)",
      message: `The file ${name} (${what}) is not in the folder.`,
      mend: twin === undefined ? mend : `Rename ${twin} to ${name}.`,
    });
    return null;
  }
}
