/** A mark of known height that the survey was tied to. */
export interface Benchmark {
  readonly id: string;
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly z_m: number;
  readonly datum: string;
  readonly source: string;
}

/** A height taken on the ground itself, against which the terrain is held. */
export interface CheckShot {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  /** On the plan's vertical datum. */
  readonly z_m: number;
  /** Standard deviation the instrument claims; null = not stated. */
  readonly accuracy_m: number | null;
  readonly date: string | null;
}

/** A place on the line where the ground was looked at: the whole survey, where there is no terrain file. */
export interface Station {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly ground_m: number;
  /** Depth a probe sank before firm ground; null = not probed. */
  readonly probe_m: number | null;
  /** Level of standing water on the plan's datum; null = not read. */
  readonly water_m: number | null;
  readonly date: string | null;
}

/** What was surveyed, apart from the terrain file. */
export interface Survey {
  readonly benchmarks: readonly Benchmark[];
  readonly check_shots: readonly CheckShot[];
  readonly stations: readonly Station[];
  /** Lowers the terrain by the bias that the check shots show, inside habitats (all ground where there is none). */
  readonly correct_terrain: boolean;
  /** Standard deviation of the terrain's heights as its maker states it; null = not stated. */
  readonly accuracy_m: number | null;
  /** Day the terrain was flown or surveyed; null = not stated. */
  readonly date: string | null;
}

/** Names of the columns of a file of survey points. */
export interface PointColumns {
  readonly id: string | null;
  readonly x: string;
  readonly y: string;
  readonly z: string;
  readonly code: string | null;
  readonly accuracy: string | null;
  readonly date: string | null;
}
