import type { CalcOutcome, Field, JsonObject, Problem, Source } from "@causey/engine/formula";
import type { Edit, Plan } from "@causey/engine/plan";
import type { PlanFiles } from "@causey/io/files";
import type { Store } from "@causey/runtime/store";

export type PlanReading =
  | { readonly ok: true; readonly plan: Plan; readonly warnings: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The files that lie beside a stored document. */
export interface FilesBeside {
  /** SHA-256 of a file's contents; null when there is no such file. */
  readonly hashOf: (name: string) => string | null;
  readonly read: (name: string) => Promise<Uint8Array | null>;
}

/** How a plan folder is read and written. `planFormat` makes it of the readers of `io`. */
export interface PlanFormat {
  readonly read: (files: PlanFiles) => Promise<PlanReading>;
  /**
   * Every fault that an edit put into a plan, as the reader of plan folders would name it: what is saved can always be
   * given out and read back.
   *
   * plan  the document after the edit
   */
  readonly check: (plan: Plan, edit: Edit, beside: FilesBeside) => Promise<readonly Problem[]>;
  /** Whether the document takes in the file of this name whole, so that none may lie beside it. */
  readonly takesIn: (name: string) => boolean;
  /** Of the files of a folder those that lie beside the document; the rest is inside it. */
  readonly beside: (plan: Plan, files: PlanFiles) => PlanFiles;
  /** The document as files of a plan folder, without those beside it. */
  readonly write: (plan: Plan) => PlanFiles;
  /** Throws `ProblemError` for an archive that is refused. */
  readonly readArchive: (bytes: Uint8Array) => PlanFiles;
  readonly writeArchive: (files: PlanFiles) => Uint8Array;
}

export interface CalcSummary {
  readonly id: string;
  readonly title: string;
  readonly kind: "formula" | "method";
  readonly inputs: readonly Field[];
  readonly outputs: readonly Field[];
  readonly sources: readonly Source[];
}

/** The registered calculations. `run` answers null for an id that is not registered. */
export interface CalcDesk {
  readonly list: () => readonly CalcSummary[];
  readonly run: (id: string, input: JsonObject) => CalcOutcome | null | Promise<CalcOutcome | null>;
}

/** Who may come in. */
export interface Access {
  /** The port on which the server listens at 127.0.0.1. */
  readonly port: number;
  /** In the address that is printed at the start; good while this server runs. */
  readonly token: string;
  /** In the cookie of a browser that came by that address. */
  readonly session: string;
}

export interface AppOptions {
  readonly store: Store;
  readonly access: Access;
  readonly plans: PlanFormat;
  readonly calc: CalcDesk;
  /** Folder of the built pages. */
  readonly staticFolder: string;
  /** Hears of every error that is the server's own fault. */
  readonly report: (error: unknown) => void;
}
