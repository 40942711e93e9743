import { expect, test } from "vitest";
import { placeLabels, signBox, type LabelWish } from "./place-labels.ts";

const size = { width: 600, height: 400 };
const wish = (id: string, at: [number, number], kind: LabelWish["kind"] = "plot"): LabelWish => ({
  id,
  text: "Plot 1",
  kind,
  at,
  gap: kind === "plot" ? 14 : 0,
  size: 14,
});

test("a label stands to the right of its point when nothing is in the way", () => {
  const [label] = placeLabels([wish("a", [300, 200])], [signBox([300, 200])], [], size);
  expect(label!.middle[0]).toBeGreaterThan(314);
  expect(label!.middle[1]).toBe(200);
});

test("it goes to another side rather than lie on the walkway or leave the picture", () => {
  const walkway = [320, 330, 340, 350].map((x): [number, number] => [x, 200]);
  expect(placeLabels([wish("a", [300, 200])], [], walkway, size)[0]!.middle[0]).toBeLessThan(300);
  expect(placeLabels([wish("a", [590, 200])], [], [], size)[0]!.middle[0]).toBeLessThan(590);
});

const around: readonly (readonly [number, number])[] = [
  [250, 200],
  [350, 200],
  [300, 175],
  [300, 225],
];

test("two plots at one point both keep their label, apart; a zone name without room is left out", () => {
  const both = placeLabels([wish("a", [300, 200]), wish("b", [300, 200])], [], [], size);
  expect(both).toHaveLength(2);
  expect(both[0]!.middle).not.toEqual(both[1]!.middle);
  const crowded = [wish("a", [300, 200], "closed"), wish("z", [305, 200], "habitat")];
  const zone = placeLabels(crowded, around.map(signBox), [], size);
  expect(zone.map((l) => l.id)).toEqual(["a"]);
});
