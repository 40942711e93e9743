import type { Kysely } from "kysely";
import type { Blobs } from "./blobs.ts";
import type { Clock } from "./port.ts";
import type { Tables } from "./tables.ts";

/** What the store is made of; the same for every database. */
export interface StoreParts {
  readonly db: Kysely<Tables>;
  readonly blobs: Blobs;
  readonly clock: Clock;
  /** A fresh id for a plan whose own id is taken. */
  readonly newId: () => string;
}
