import { tables } from "@causey/data/tables";
import { readyKit } from "@causey/data/kits";
import { expect, test } from "vitest";
import { takeOff } from "../materials/index.ts";
import type { Joint, Part } from "../layout/index.ts";
import { underPlatformEdge } from "./edge-sill.ts";
import { supportDrawing, supportPieces, validateKit, type Kit } from "./index.ts";

const { sizes } = tables;
const lightMesh = readyKit("light-mesh")!;
const without: Kit = (() => {
  const { edge_sill_mm: _, ...platform } = lightMesh.platform;
  return { ...lightMesh, platform };
})();
const crate = lightMesh.supports[1]!;
const asked = (edge_sill_mm: number): Kit => ({
  ...without,
  platform: { ...without.platform, edge_sill_mm },
});

test("left out, or shorter than the support's own: the support keeps its own sill", () => {
  expect(underPlatformEdge(without, crate)).toBe(crate);
  expect(underPlatformEdge(asked(620), crate)).toBe(crate);
});

test("under an edge the sill is as long as the recipe says, in boxes and drawing; the rest stays", () => {
  const edge = underPlatformEdge(lightMesh, crate);
  const of = (kind: typeof crate) =>
    supportPieces(lightMesh, kind, 0.3048, sizes).filter((p) => p.role !== "stake");
  const [own, longer] = [of(crate), of(edge)];
  expect(longer.find((p) => p.role === "sill")!.length_mm).toBe(1816.1);
  expect(longer.filter((p) => p.role !== "sill")).toEqual(own.filter((p) => p.role !== "sill"));
  const across = supportDrawing(lightMesh, edge, 0.3048, sizes).chains.find((c) => c.id === "across")!;
  expect(across.at_mm).toEqual([-908.05, 908.05]);
});

test("faults: shorter than the module is wide, longer than the platform, not a length", () => {
  for (const [mm, words] of [
    [500, "shorter than the module is wide"],
    [2000, "reach past the platform"],
    [-1, "platform.edge_sill_mm"],
  ] as const) {
    const problems = validateKit(asked(mm), tables).filter((p) => p.place.endsWith("platform.edge_sill_mm"));
    expect(problems, String(mm)).toHaveLength(1);
    expect(`${problems[0]!.place} ${problems[0]!.message}`).toContain(words);
  }
  expect(validateKit(lightMesh, tables)).toEqual([]);
});

test("take-off: the two sills that the stringers end at are long, the two others the support's own", () => {
  const joint = (id: string): Joint => ({
    id,
    x: 0,
    y: 0,
    heading_deg: 0 as Joint["heading_deg"],
    branch: "B1",
    along_m: 0,
    ground_m: 0,
    deck_m: 0.5,
    support: crate.id,
    support_height_m: 0.3048,
    feet: [],
  });
  const platform: Part = {
    id: "P1",
    kind: "platform",
    use: "turning",
    branch: "B1",
    side_m: 1.8161,
    x: 0,
    y: 0,
    heading_deg: 0 as Joint["heading_deg"],
    from: "a",
    exits: { ahead: "b", left: "c", right: "d" },
    along_m: 0,
    outline: [],
    bridges: [],
  };
  const layout = { parts: [platform], joints: ["a", "b", "c", "d"].map(joint) };
  const count = (kit: Kit, mm: number): number =>
    takeOff(kit, layout, sizes)
      .timber.filter((t) => t.size === "2x6" && Math.abs(t.length_mm - mm) < 0.1)
      .reduce((sum, t) => sum + t.count, 0);
  expect(count(without, 660.4) - count(lightMesh, 660.4)).toBe(2);
  expect(count(lightMesh, 1816.1) - count(without, 1816.1)).toBe(2);
});
