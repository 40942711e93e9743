import { readFileSync } from "node:fs";
import { join } from "node:path";
import { geoTags, writeTiff } from "../../packages/io/test/support/tiff.ts";
import { demoFolder } from "./shell.ts";

export type Files = Map<string, string | Uint8Array>;

export interface BadPlan {
  readonly title: string;
  readonly files: () => Files;
  readonly file: string;
  /** What the message must name: the place and the value that stand wrong. */
  readonly says: RegExp;
  readonly mends: RegExp;
}

const names = ["plan.json", "terrain.asc", "zones.geojson", "places.geojson", "prices.csv"];

function demo(change: (files: Files, text: (name: string) => string) => void): Files {
  const files: Files = new Map(names.map((n) => [n, readFileSync(join(demoFolder, n), "utf8")]));
  change(files, (name) => files.get(name) as string);
  return files;
}

function changePlan(files: Files, change: (plan: Record<string, object>) => void): void {
  const plan = JSON.parse(files.get("plan.json") as string) as Record<string, object>;
  change(plan);
  files.set("plan.json", JSON.stringify(plan));
}

/** Terrain of the demo's extent as a small GeoTIFF of 4 m cells, without any coordinate system. */
function tiffWithoutCrs(): Uint8Array {
  const [cols, rows] = [65, 50];
  const heights = Float32Array.from({ length: cols * rows }, (_, k) => 1.5 + 0.1 * Math.sin(k / 9));
  return writeTiff(cols, rows, heights, { tags: geoTags(1000, 2200, 4, 4, null) });
}

const useTerrain = (files: Files, file: string, bytes: string | Uint8Array): void => {
  files.delete("terrain.asc");
  files.set(file, bytes);
  changePlan(files, (plan) => Object.assign(plan["terrain"]!, { file }));
};

/** A GeoTIFF of about 1 kB whose header claims 23,000 x 23,000 cells of four bytes: 2 GB. */
function tiffThatClaimsTwoGigabytes(): Uint8Array {
  const claim = (tag: number) => ({ tag, type: 4, values: [23_000] }) as const;
  const tags = [...geoTags(1000, 2200, 4, 4, null), claim(256), claim(257)];
  return writeTiff(14, 14, new Float32Array(196).fill(1.5), { tags });
}

/** The ten rows of bad input that a steward is most likely to meet. */
export const badPlans: readonly BadPlan[] = [
  {
    title: "GeoTIFF without a coordinate system on a plan in an EPSG system",
    files: () =>
      demo((f) => {
        useTerrain(f, "terrain.tif", tiffWithoutCrs());
        changePlan(f, (p) => Object.assign(p, { crs: { epsg: 26918 } }));
      }),
    file: "terrain.tif",
    says: /coordinate system/i,
    mends: /crs_confirmed|EPSG/,
  },
  {
    title: "terrain that misses a plot",
    files: () =>
      demo((f, t) => f.set("places.geojson", t("places.geojson").replace("[1213,2080]", "[1400,2080]"))),
    file: "places.geojson",
    says: /P3|plot 3/i,
    mends: /./,
  },
  {
    title: "plot in a closed zone",
    files: () =>
      demo((f, t) => f.set("places.geojson", t("places.geojson").replace("[1130,2118]", "[1133,2143]"))),
    file: "places.geojson",
    says: /Tern colony/,
    mends: /[Mm]ove|closure|laying/,
  },
  {
    title: "no-data +999 that the file does not declare",
    files: () =>
      demo((f, t) => {
        const rows = t("terrain.asc")
          .split("\n")
          .filter((l) => !/^nodata/i.test(l));
        const first = rows.findIndex((l) => /^\s*-?\d/.test(l));
        for (let k = first; k < first + 3; k++)
          rows[k] = rows[k]!.trim()
            .split(/\s+/)
            .map(() => "999")
            .join(" ");
        f.set("terrain.asc", rows.join("\n"));
      }),
    file: "terrain.asc",
    says: /999/,
    mends: /NODATA_value 999/i,
  },
  {
    title: "truncated terrain file",
    files: () => demo((f, t) => f.set("terrain.asc", t("terrain.asc").slice(0, 100_000))),
    file: "terrain.asc",
    says: /line \d+/,
    mends: /./,
  },
  {
    title: "1 kB file that claims 2 GB",
    files: () => demo((f) => useTerrain(f, "terrain.tif", tiffThatClaimsTwoGigabytes())),
    file: "terrain.tif",
    says: /23,?000|cells|bytes/,
    mends: /./,
  },
  {
    title: "vertical datums that clash",
    files: () => demo((f) => changePlan(f, (p) => Object.assign(p["terrain"]!, { datum: "NAVD88" }))),
    file: "plan.json",
    says: /NAVD88.*Tarrowmere datum|Tarrowmere datum.*NAVD88/s,
    mends: /./,
  },
  {
    title: "newer schema",
    files: () => demo((f) => changePlan(f, (p) => Object.assign(p, { schema: 99 }))),
    file: "plan.json",
    says: /newer/,
    mends: /[Uu]pdate/,
  },
  {
    title: "two plots of one name",
    files: () =>
      demo((f, t) =>
        f.set(
          "places.geojson",
          t("places.geojson").replace("Trap plot 2, beyond Quillet Creek", "Trap plot 1, high meadow"),
        ),
      ),
    file: "places.geojson",
    says: /Trap plot 1, high meadow/,
    mends: /name/,
  },
  {
    title: "price list without currency",
    files: () => demo((f, t) => f.set("prices.csv", t("prices.csv").replaceAll("USD", ""))),
    file: "prices.csv",
    says: /currency/i,
    mends: /USD|currency|ISO/i,
  },
];
