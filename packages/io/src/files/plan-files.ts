/** The files of a plan folder: name inside the folder (with "/" between folders) -> contents. */
export type PlanFiles = ReadonlyMap<string, Uint8Array>;

/** What a plan folder or archive may hold at most; more is refused before memory is taken. */
export const FILE_LIMITS = {
  entries: 2000,
  file_bytes: 400_000_000,
  total_bytes: 1_000_000_000,
  name_characters: 200,
} as const;
