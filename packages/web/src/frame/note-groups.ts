import type { Problem } from "@causey/engine/formula";

/** Notes that say the same of several places. */
export interface NoteGroup {
  readonly code: string;
  readonly first: Problem;
  /** All places, the first one's with them, in the order of the notes; blank ones left out. */
  readonly places: readonly string[];
}

/** Folds notes of one code, file and mend, that differ in their place, into one, in the order of their first. */
export function groupNotes(notes: readonly Problem[]): readonly NoteGroup[] {
  const groups = new Map<string, { code: string; first: Problem; places: string[] }>();
  for (const note of notes) {
    const key = JSON.stringify([note.severity, note.code, note.file, note.mend, note.value]);
    const group = groups.get(key) ?? { code: note.code, first: note, places: [] };
    if (note.place && !group.places.includes(note.place)) group.places.push(note.place);
    groups.set(key, group);
  }
  return [...groups.values()];
}
