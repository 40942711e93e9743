/** What a level is. Predicted and recorded extremes never stand in for each other. */
export type LevelRole =
  | "mhhw"
  | "mhw"
  | "mhws"
  | "mhwn"
  | "msl"
  | "mlw"
  | "mllw"
  | "highest-predicted"
  | "lowest-predicted"
  | "highest-recorded"
  | "lowest-recorded"
  | "high-tide-line"
  | "ordinary-high-water"
  | "groundwater"
  | "flood"
  | "other";

/** How a level came about: a mean over an epoch, a prediction, a record, or an assumption. */
export type LevelBasis = "mean" | "predicted" | "recorded" | "assumed";

/** A named water level on the site datum. */
export interface WaterLevel {
  readonly id: string;
  readonly name: string;
  readonly role: LevelRole;
  readonly basis: LevelBasis;
  readonly z_m: number;
  readonly datum: string;
  readonly source: string;
  /** Years it holds for; empty = unknown, which is flagged. */
  readonly epoch: string;
}

/** A file of readings or of predicted high and low waters. */
export interface SeriesFile {
  readonly file: string;
  readonly kind: "readings" | "high-low";
  readonly basis: "predicted" | "recorded";
  readonly columns: { readonly time: string; readonly level: string; readonly flag: string | null };
  readonly unit: "m" | "ft";
  /** Zone of times that carry none: "UTC", an offset such as "-05:00", or an IANA name. */
  readonly zone: string;
  /** Datum of the file's heights, and what is added to bring them onto the plan's. */
  readonly datum: string;
  readonly offset_m: number;
  readonly offset_source: string;
  readonly attribution: string;
}

export interface WaterChoice {
  readonly exposure: "fresh" | "brackish" | "salt";
  readonly series: SeriesFile | null;
  /** The other basis beside it, to compare: a prediction for a record, a record for a prediction. */
  readonly compare?: SeriesFile | null;
}
