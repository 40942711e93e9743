import type { Layout, ModulePart } from "@causey/engine/layout";
import { rectangle } from "@causey/engine/site";
import { expect, test } from "vitest";
import { partAt } from "./part-at.ts";

const module = (id: string, x: number): ModulePart => ({
  id,
  kind: "module",
  branch: "A",
  length_m: 3.6,
  heading_deg: 90,
  from: "",
  to: "",
  along_m: 0,
  outline: [[rectangle(x, 0, 90, 3.6, 0.9)]],
  bridges: [],
});
const layout = { parts: [module("A1", 0), module("A2", 3.7)] } as unknown as Layout;

test("the part under the point, or the nearest within reach; none when the point is farther away", () => {
  expect(partAt(layout, [0, 0], 2)).toBe("A1");
  expect(partAt(layout, [1.7, 0.6], 2)).toBe("A1");
  expect(partAt(layout, [2.1, 0.6], 2)).toBe("A2");
  expect(partAt(layout, [0, 3], 2)).toBeNull();
});
