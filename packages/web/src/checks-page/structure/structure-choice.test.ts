import type { CheckResult, FrameDrawing } from "@causey/engine/checks";
import { expect, test } from "vitest";
import { effectOf, frameOf, frameOfPart } from "./structure-choice.ts";

const frame = (mm: number, parts: string[]): FrameDrawing =>
  ({ id: `module.${mm}mm`, length_m: mm / 1000, parts }) as unknown as FrameDrawing;
const frames = [frame(2426, ["A2", "B1"]), frame(3645, ["A1", "A3"])];
const check = (id: string, kind: CheckResult["kind"], parts: string[] = []): CheckResult =>
  ({ id, kind, parts }) as unknown as CheckResult;

test("a check that names its millimetres shows that length, though its parts are of another", () => {
  expect(frameOf(check("stringer-shear.2426mm", "stringer-shear", ["A1"]), frames)?.id).toBe("module.2426mm");
  expect(frameOf(check("damage.3645mm", "damage"), frames)?.id).toBe("module.3645mm");
});

test("a check of many lengths shows the longest that holds a part of it", () => {
  expect(frameOf(check("deck.bending", "deck", ["A2", "A3"]), frames)?.id).toBe("module.3645mm");
  expect(frameOf(check("deck.bending", "deck", ["B1"]), frames)?.id).toBe("module.2426mm");
});

test("a check of ground or rules shows no length of its own; a part shows the length it is", () => {
  expect(frameOf(check("bearing.J1", "bearing", ["A1"]), frames)).toBeNull();
  expect(frameOf(null, frames)).toBeNull();
  expect(frameOfPart("B1", frames)?.id).toBe("module.2426mm");
  expect(frameOfPart("A9", frames)).toBeNull();
});

test("bending, shear and sag follow the kind of the check", () => {
  expect(
    (["stringer-bending", "stringer-shear", "stringer-deflection", "deck"] as const).map((kind) =>
      effectOf(check(kind, kind)),
    ),
  ).toEqual(["moment", "shear", "sag", null]);
});
