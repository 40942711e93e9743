import { expect, test } from "vitest";
import { withFreeNames } from "./unique-names.ts";

const named = (id: string, name: string) => ({ id, name });
const run = (come: ReturnType<typeof named>[], there: ReturnType<typeof named>[]) =>
  withFreeNames(come, there, "plot", "p.kml");

test("a name of the plan gets the next free number, and each change is said", () => {
  const { items, notes } = run([named("a", "Plot 1")], [named("P1", "Plot 1"), named("P2", "Plot 1 (2)")]);
  expect(items).toEqual([named("a", "Plot 1 (3)")]);
  expect(notes.map((n) => [n.severity, n.message])).toEqual([
    ["warning", 'Another plot is called "Plot 1" already, so this one is called "Plot 1 (3)".'],
  ]);
});

test("names that are equal in the file are numbered, those that are free as they stand are kept", () => {
  const { items } = run([named("a", "Well"), named("b", "Well"), named("c", "Well (2)")], []);
  expect(items.map((i) => i.name)).toEqual(["Well", "Well (3)", "Well (2)"]);
});

test("what is replaced keeps its name", () => {
  const { items, notes } = run([named("P1", "Plot 1")], [named("P1", "Plot 1")]);
  expect([items, notes]).toEqual([[named("P1", "Plot 1")], []]);
});
