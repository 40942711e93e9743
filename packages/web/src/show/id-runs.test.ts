import { expect, test } from "vitest";
import { idRuns } from "./id-runs.ts";

test("three or more in a row are joined, two are not, each is named once", () => {
  expect(idRuns(["A50", "A49", "A52", "A51", "A51"])).toBe("A49 to A52");
  expect(idRuns(["A1", "A2"])).toBe("A1, A2");
  expect(idRuns(["A9", "B1", "A10", "A11", "A13"])).toBe("A9 to A11, A13, B1");
});

test("an id without a number stands for itself", () => {
  expect(idRuns(["line-1", "agreed"])).toBe("agreed, line-1");
  expect(idRuns([])).toBe("");
});
