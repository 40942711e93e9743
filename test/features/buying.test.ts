// Rows of the feature table on buying. Yards sell whole stock lengths; dressed sizes: PS 20 as printed in public lumber
// tables (mail.vterrain.org/Hawaii/Ben/lumber.htm, gandalfddi.github.io/woodsize.htm).
import { resultFiles } from "@causey/io/results";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { csvRows } from "../support/csv-rows.ts";
import { deriveLane, sheetTexts, type Derived } from "../support/lane-plan.ts";

const KERF_MM = 3;
const list = readFileSync(resolve(import.meta.dirname, "../../examples/salt-meadow/prices.csv"), "utf8");
const offers = csvRows(new TextEncoder().encode(list));
const fileOf = (d: Derived, name: string) => csvRows(resultFiles(d.results, d.plan).get(name)!);
/** "3 x 1200 + 1 x 600" as lengths, one for each piece. */
const piecesOf = (cuts: string): number[] =>
  cuts.split(" + ").flatMap((c) => {
    const [count, length] = c.split(" x ").map(Number) as [number, number];
    return Array.from({ length: count }, () => length);
  });

let d: Derived;
beforeAll(async () => {
  d = await deriveLane({ wide: 40, long: 40, start: [10, 4], plots: { P1: [10, 34], P2: [32, 22] } });
});

describe("61 a buying list in stock lengths with waste and alternates: cuts and saw cuts fit the stock", () => {
  test("in every stick of cutting.csv pieces, saw cuts between them and the rest make the stock length", () => {
    const patterns = fileOf(d, "cutting.csv");
    expect(patterns.length).toBeGreaterThan(8);
    for (const p of patterns) {
      const pieces = piecesOf(p["cuts_mm"]!);
      const sum = pieces.reduce((s, l) => s + l, 0) + KERF_MM * (pieces.length - 1);
      expect(sum, JSON.stringify(p)).toBeLessThanOrEqual(Number(p["stock_mm"]));
      expect(Number(p["offcut_mm"])).toBeLessThanOrEqual(Number(p["stock_mm"]) - sum);
    }
  });

  test("stock lengths are those of the price list, and the order buys every stick that is sawn", () => {
    const order = fileOf(d, "order.csv").filter((r) => r["line"] === "materials" && r["length_mm"] !== "");
    const sold = new Set(offers.map((o) => `${o["item"]} ${o["length_mm"]}`));
    const sawn = new Map<string, number>();
    for (const p of fileOf(d, "cutting.csv")) {
      const key = `${p["size"]} ${p["stock_mm"]}`;
      sawn.set(key, (sawn.get(key) ?? 0) + Number(p["sticks"]));
    }
    const bought = new Map(order.map((r) => [`${r["item"]} ${r["length_mm"]}`, Number(r["quantity"])]));
    expect([...bought.keys()].every((key) => sold.has(key))).toBe(true);
    expect(bought).toEqual(sawn);
  });

  test("every piece of the take-off is sawn, none more and none less", () => {
    const wanted = new Map<string, number>();
    for (const l of d.results.take_off.timber) {
      const key = `${l.size} ${Math.ceil(l.length_mm - 1e-6)}`;
      wanted.set(key, (wanted.get(key) ?? 0) + l.count);
    }
    const cut = new Map<string, number>();
    for (const p of fileOf(d, "cutting.csv"))
      for (const length of piecesOf(p["cuts_mm"]!)) {
        const key = `${p["size"]} ${length}`;
        cut.set(key, (cut.get(key) ?? 0) + Number(p["sticks"]));
      }
    expect(d.results.cost.unpriced).toEqual([]);
    expect(Object.fromEntries(cut)).toEqual(Object.fromEntries(wanted));
  });

  test("the order list says what of each size is left over or sawdust", () => {
    const texts = sheetTexts(d, "order").join(" ").replaceAll(/\s+/g, " ");
    const shares = new Map<string, [cut: number, stock: number]>();
    for (const p of fileOf(d, "cutting.csv")) {
      const [cut, stock] = shares.get(p["size"]!) ?? [0, 0];
      const pieces = piecesOf(p["cuts_mm"]!).reduce((s, l) => s + l, 0);
      const sticks = Number(p["sticks"]);
      shares.set(p["size"]!, [cut + pieces * sticks, stock + Number(p["stock_mm"]) * sticks]);
    }
    expect(shares.size).toBeGreaterThan(3);
    for (const [size, [cut, stock]] of shares)
      expect(texts).toContain(`${size} ${((1 - cut / stock) * 100).toFixed(1)} %`);
  });

  test("a stock length that the yard does not have is replaced by the others, at no lower cost", async () => {
    const [longest] = fileOf(d, "order.csv").filter((r) => r["item"] === "2x8");
    const without = list
      .split("\n")
      .filter((l) => !(l.startsWith("2x8,") && l.includes(`,${longest!["length_mm"]},`)))
      .join("\n");
    const other = await deriveLane({
      wide: 40,
      long: 40,
      start: [10, 4],
      plots: { P1: [10, 34], P2: [32, 22] },
      prices: without,
    });
    const lines = fileOf(other, "order.csv").filter((r) => r["item"] === "2x8");
    expect(lines.length).toBeGreaterThan(0);
    expect(lines.every((r) => r["length_mm"] !== longest!["length_mm"])).toBe(true);
    expect(other.results.cost.unpriced).toEqual([]);
    const cost = (of: Derived): number => of.results.cutting.find((c) => c.size === "2x8")!.plan.cost;
    expect(cost(other)).toBeGreaterThanOrEqual(cost(d));
  });
});

describe("62 nominal and actual sizes are both shown", () => {
  const rows = [
    ["2x4", "38 x 89 mm", "1.5 x 3.5 in"],
    ["2x6", "38 x 140 mm", "1.5 x 5.5 in"],
    ["2x8", "38 x 184 mm", "1.5 x 7.25 in"],
    ["2x10", "38 x 235 mm", "1.5 x 9.25 in"],
  ] as const;

  test.each(rows)(
    "%s is %s (%s, PS 20) on the order list, in metres and in feet",
    async (size, mm, inches) => {
      const plan = { plots: { P1: [4, 22] } } as const;
      const [metric, us] = [
        sheetTexts(await deriveLane({ ...plan, units: "metric" }), "order"),
        sheetTexts(await deriveLane(plan), "order"),
      ];
      for (const [texts, actual] of [
        [metric, mm],
        [us, inches],
      ] as const) {
        const at = texts.findIndex((t) => t.startsWith(`${size} `));
        expect(at, size).toBeGreaterThan(-1);
        expect(texts.slice(at, at + 3)).toContain(actual);
      }
    },
  );

  test("5/4x6 and 2x12 of the tables are 25 x 140 and 38 x 286 mm (PS 20)", async () => {
    const { tables } = await import("@causey/data/tables");
    const mm = (id: string): number[] => {
      const s = tables.sizes.find((row) => row.id === id)!;
      return [s.thickness_in, s.width_in].map((v) => Math.round(v * 25.4));
    };
    expect(mm("5/4x6")).toEqual([25, 140]);
    expect(mm("2x12")).toEqual([38, 286]);
  });
});
