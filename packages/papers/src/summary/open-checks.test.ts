import type { Results } from "@causey/engine/plan";
import { expect, test } from "vitest";
import { openCheckLines } from "./open-checks.ts";

type Check = Results["checks"][number];
const open = (title: string, ...missing: string[]): Check =>
  ({ title, status: "cannot-check", missing }) as unknown as Check;

test("checks that lack the same stand in one line with their number, the most wanted first", () => {
  const checks = [
    open("Turning of the cart", "length of the cart"),
    open("Bearing of J1", "strength of the ground"),
    open("Bearing of J2", "strength of the ground"),
    open("Bearing of J3", "strength of the ground"),
    open("Bearing of J4", "strength of the ground"),
    { title: "Bending", status: "pass" } as unknown as Check,
  ];
  expect(openCheckLines(checks)).toEqual([
    "  cannot be checked, missing strength of the ground: 4 checks (Bearing of J1; Bearing of J2; Bearing of J3; and others)",
    "  cannot be checked, missing length of the cart: 1 check (Turning of the cart)",
  ]);
  expect(openCheckLines([])).toEqual([]);
});
