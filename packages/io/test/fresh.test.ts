import { readyKits } from "@causey/data/kits";
import { expect, test } from "vitest";
import { freshPlanFiles } from "../src/fresh/index.ts";
import { readPlan } from "../src/plan/index.ts";
import { readPrices } from "../src/prices/index.ts";
import { sampleTerrain } from "./support/sample-plan.ts";

const fresh = freshPlanFiles("Lower fen, traps");

test("a fresh folder lacks its terrain and nothing else", async () => {
  const answer = await readPlan(fresh, { readyKits });
  expect(answer.ok ? [] : answer.problems).toMatchObject([{ code: "file-missing", file: "terrain.tif" }]);
});

test("with terrain it is a plan that can be read, on the kit that it names", async () => {
  const rows = Array.from({ length: 60 }, () => Array<string>(80).fill("1.5").join(" ")).join("\n");
  const terrain = new TextEncoder().encode(
    `ncols 80\nnrows 60\nxllcorner 0\nyllcorner 0\ncellsize 1\n${rows}\n`,
  );
  const answer = await readPlan(new Map([...fresh, ["terrain.tif", terrain]]), { readyKits });
  if (!answer.ok) throw new Error(answer.problems.map((p) => p.message).join("\n"));
  expect(answer.warnings).toEqual([]);
  expect(answer.plan).toMatchObject({
    id: "lower-fen-traps",
    name: "Lower fen, traps",
    kit: { id: "meadow-boards" },
  });
});

test("terrain elsewhere is met with the place and the extent, not with silence", async () => {
  const answer = await readPlan(new Map([...fresh, ["terrain.tif", sampleTerrain()]]), { readyKits });
  expect(answer.ok ? [] : answer.problems.map((p) => p.code)).toContain("place-off-terrain");
});

test("its price list names everything that the kit needs, and marks every price as an example", () => {
  const { prices } = readPrices("prices.csv", fresh.get("prices.csv")!);
  const kit = readyKits.find((k) => k.id === "meadow-boards")!;
  const items = new Set(prices.map((p) => p.item));
  const needed = JSON.stringify(kit)
    .match(/"(?:size|screw)":"[^"]+"/g)!
    .map((m) => m.split('"')[3]!);
  expect(needed.filter((n) => !items.has(n))).toEqual([]);
  expect(prices.every((p) => p.source.startsWith("Example"))).toBe(true);
});

test.each([
  ["", "new-plan"],
  ["../../etc", "etc"],
  ["Ås, våtmark №5", "as-vatmark-no5"],
  ["\u0000\n", "new-plan"],
  ["x".repeat(500), "x".repeat(60)],
])("any name makes a folder that can be read: %j", async (name, id) => {
  const files = freshPlanFiles(name);
  const answer = await readPlan(files, { readyKits });
  expect(answer.ok ? [] : answer.problems.map((p) => p.code)).toEqual(["file-missing"]);
  const { id: got } = JSON.parse(new TextDecoder().decode(files.get("plan.json"))) as { id: string };
  expect(got).toBe(id);
});
