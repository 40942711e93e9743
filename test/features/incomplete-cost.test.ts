// A sum of money never passes for the whole: what has no price stands beside it, and with nothing laid there is none.
import { summary } from "@causey/papers/summary";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { expect, test } from "vitest";
import { deriveLane, type Derived } from "../support/lane-plan.ts";

const list = readFileSync(resolve(import.meta.dirname, "../../examples/salt-meadow/prices.csv"), "utf8");
const without = (item: string): string =>
  list
    .split("\n")
    .filter((line) => !line.startsWith(`${item},`))
    .join("\n");
const moneyIds = ["cost", "cost-per-length", "budget", "cost-per-visit", "cost-per-year"];
const figuresOf = ({ results }: Derived) => results.figures.filter((f) => moneyIds.includes(f.id));

test("a list without a price for the screws: each sum says how many items it leaves out, the shell's summary too", async () => {
  const d = await deriveLane({ prices: without("screw-10x3") });
  expect(d.results.cost.unpriced.map((u) => u.item)).toEqual(["screw-10x3"]);
  expect(figuresOf(d).map((f) => [f.id, f.incomplete])).toEqual(
    moneyIds.map((id) => [id, "incomplete: 1 item without a price"]),
  );
  const text = summary(d.results, d.plan);
  expect(text).toMatch(/^Cost \.+ USD [\d,.]+ \(incomplete: 1 item without a price\)$/m);
  expect(text.split("\n").at(-1)).toContain("(incomplete: 1 item without a price)");
  expect(d.results.cautions).toContain("The cost is incomplete: 1 item without a price.");
});

test("a list that prices everything: no sum is called incomplete", async () => {
  const d = await deriveLane({});
  expect(figuresOf(d)).toHaveLength(moneyIds.length);
  expect(d.results.figures.filter((f) => f.incomplete !== undefined)).toEqual([]);
  expect(summary(d.results, d.plan)).not.toContain("incomplete");
});

test("with nothing laid there is no cost and no budget per visit, although delivery is planned", async () => {
  const d = await deriveLane({ plots: {}, visits: [], money: { delivery: 250 } });
  expect(d.results.layout.parts).toEqual([]);
  expect(d.results.cost.total).toBeGreaterThan(0);
  expect(d.results.figures.filter((f) => f.unit === "money")).toEqual([]);
  const text = summary(d.results, d.plan);
  expect(text).toMatch(/^Cost \.+ none, nothing is laid$/m);
  expect(text).not.toContain("USD 250");
});
