import { guessHeads, type WantedHead } from "@causey/io/csv";

/** What can be brought in from a file of readings. */
export type ImportKind = "stations" | "check-shots" | "shear";

export interface WantedColumn extends WantedHead {
  readonly label: string;
  readonly required: boolean;
}

interface KindWords {
  readonly title: string;
  /** What one row is. */
  readonly noun: string;
  readonly columns: readonly WantedColumn[];
  readonly hasDates: boolean;
}

const column = (
  key: string,
  label: string,
  required: boolean,
  ...heads: readonly string[]
): WantedColumn => ({ key, label, required, heads: [key, ...heads] });

const place = [
  column("x", "East", true, "e", "east", "easting", "x_m", "easting_m"),
  column("y", "North", true, "n", "north", "northing", "y_m", "northing_m"),
];
/** The heads of the printed field sheet are among the names of each column, so that its rows come back unmapped. */
const names = ["code", "name", "point", "point id", "station", "pt", "no", "nr"];
const date = column("date", "Day", false, "day", "taken", "measured");

export const importKinds: Readonly<Record<ImportKind, KindWords>> = {
  stations: {
    title: "Stations from a file",
    noun: "station",
    columns: [
      column("id", "Name", true, ...names),
      ...place,
      column(
        "ground",
        "Ground level",
        true,
        "ground level",
        "ground_m",
        "z",
        "h",
        "height",
        "elevation",
        "level",
        "z_m",
      ),
      column(
        "probe",
        "Probe sank",
        false,
        "probe sank",
        "probe_m",
        "probe depth",
        "depth",
        "refusal",
        "peat",
      ),
      column("water", "Water level", false, "water_m", "water level", "wl"),
      date,
    ],
    hasDates: true,
  },
  "check-shots": {
    title: "Check shots from a file",
    noun: "check shot",
    columns: [
      column("id", "Name", false, ...names),
      ...place,
      column("z", "Height", true, "z_m", "h", "height", "elevation", "ground", "level"),
      column("accuracy", "Accuracy claimed", false, "accuracy_m", "acc", "sigma", "vrms", "sd"),
      date,
    ],
    hasDates: true,
  },
  shear: {
    title: "Strength readings from a file",
    noun: "reading",
    columns: [
      column("id", "Name", false, ...names),
      ...place,
      column("depth", "Depth", true, "depth_m", "d"),
      column("peak", "Peak strength", true, "su", "su_kpa", "peak_kpa", "strength", "cu"),
      column("remoulded", "Remoulded strength", false, "remoulded_kpa", "remolded", "residual", "sur"),
      column("vane", "Vane (mm x mm)", false, "vane_mm", "vane size"),
    ],
    hasDates: false,
  },
};

export type Columns = Readonly<Record<string, string | null>>;

/** The columns that a file's heads seem to name; null for one that none does. */
export const guessColumns = (kind: ImportKind, heads: readonly string[]): Columns =>
  guessHeads(importKinds[kind].columns, heads);
