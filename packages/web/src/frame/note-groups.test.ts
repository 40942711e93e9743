import { expect, test } from "vitest";
import type { Problem } from "@causey/engine/formula";
import { groupNotes } from "./note-groups.ts";

const note = (change: Partial<Problem>): Problem => ({
  code: "terrain-unchecked-habitat",
  severity: "warning",
  file: "terrain.asc",
  place: "zone 1",
  value: "0 check shots",
  message: "No check shot lies in the habitat 1.",
  mend: "Take three heights.",
  ...change,
});

test("notes that differ only in their place become one with all places; others stand alone, in their order", () => {
  const notes = [
    note({}),
    note({ code: "terrain-bias", place: "survey", value: "0.12 m", mend: "Take the bias off." }),
    note({ place: "zone 2", message: "No check shot lies in the habitat 2." }),
    note({ place: "zone 3", message: "No check shot lies in the habitat 3." }),
  ];
  const groups = groupNotes(notes);
  expect(groups.map((g) => [g.code, g.places])).toEqual([
    ["terrain-unchecked-habitat", ["zone 1", "zone 2", "zone 3"]],
    ["terrain-bias", ["survey"]],
  ]);
  expect(groups[0]!.first).toBe(notes[0]);
});

test("no notes, no groups", () => {
  expect(groupNotes([])).toEqual([]);
});
