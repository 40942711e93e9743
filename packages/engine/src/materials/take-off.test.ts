import { describe, expect, test } from "vitest";
import { layChain } from "../../test/support/chain.ts";
import { commonPracticeKit as kit } from "../../test/support/common-practice-kit.ts";
import { yardTables } from "../../test/support/yard-tables.ts";
import type { Kit } from "../kit/index.ts";
import { moduleMasses } from "./part-masses.ts";
import { takeOff } from "./take-off.ts";

const { sizes, fasteners } = yardTables;
const FT = 304.8;
const height = 0.254;

describe("takeOff", () => {
  test("names counted things from the fastener table", () => {
    const run = layChain(kit, [8 * FT], "open-crate", height, sizes);
    const off = takeOff(kit, run, sizes, fasteners);
    expect(off.counted.find((c) => c.item === "mesh-clip")?.name).toBe("Mesh clip");
    expect(off.counted.find((c) => c.item === "mesh 1219x762")?.name).toBe("Welded wire mesh 2 in");
  });

  test("lists sizes in the table's order, longest first, and says what each length becomes", () => {
    const off = takeOff(kit, layChain(kit, [8 * FT, 4 * FT], "open-crate", height, sizes), sizes);
    const order = off.timber.map((t) => sizes.findIndex((s) => s.id === t.size));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    const fours = off.timber.filter((t) => t.size === "2x4").map((t) => t.length_mm);
    expect(fours).toEqual([...fours].sort((a, b) => b - a));
    for (const t of off.timber) expect(t.uses.reduce((n, u) => n + u.count, 0)).toBe(t.count);
  });

  test("supports of different heights are counted by their own leg lengths", () => {
    const run = layChain(kit, [8 * FT], "open-crate", height, sizes);
    const joints = run.joints.map((j, i) => ({ ...j, support_height_m: 0.254 + i * 0.0254 }));
    const legs = takeOff(kit, { ...run, joints }, sizes).timber.filter((t) =>
      t.uses.some((u) => u.use === "leg"),
    );
    expect(legs.map((l) => [l.length_mm, l.count])).toEqual([
      [114.3, 4],
      [88.9, 4],
    ]);
  });

  test("an edge that nothing leaves from gets its curb", () => {
    const curbed: Kit = { ...kit, curb: { size: "2x2", screw: "screw-10x3", screw_spacing_mm: 600 } };
    const curbs = (links: Parameters<typeof layChain>[1]): number =>
      takeOff(curbed, layChain(curbed, links, "open-crate", height, sizes), sizes)
        .timber.flatMap((t) => t.uses)
        .filter((u) => u.use === "curb")
        .reduce((n, u) => n + u.count, 0);
    expect(curbs(["platform-left", 8 * FT])).toBe(6 + 2);
    expect(curbs(["platform-left"])).toBe(5);
  });

  test("a length or a support that is not the kit's is a broken promise", () => {
    const run = layChain(kit, [8 * FT], "open-crate", height, sizes);
    const odd = run.parts.map((p) => (p.kind === "module" ? { ...p, length_m: 2 } : p));
    expect(() => takeOff(kit, { ...run, parts: odd }, sizes)).toThrow("not-a-kit-length");
    const raft = run.joints.map((j) => ({ ...j, support: "raft" }));
    expect(() => takeOff(kit, { ...run, joints: raft }, sizes)).toThrow("unknown-support-kind");
  });
});

describe("moduleMasses", () => {
  const masses = moduleMasses(kit, sizes);
  const IN3 = 0.0254 ** 3;

  test("8 ft module: timber by hand from actual sizes, mesh by its flat sheet", () => {
    const { timber_m3, other_kg } = masses.module(2.4384);
    expect(timber_m3).toBeCloseTo((2 * 1.5 * 3.5 * 96 + 19 * 1.5 * (3 * 3.5 + 5.5 + 9.25)) * IN3, 9);
    expect(other_kg).toBeCloseTo(2.4384 * 0.762 * 2.8, 9);
  });

  test("platform and support by hand", () => {
    const frame = 4 * 1.5 * 3.5 * 72 + 9 * 1.5 * 3.5 * 22;
    expect(masses.platform.timber_m3).toBeCloseTo(frame * IN3, 9);
    expect(masses.platform.other_kg).toBeCloseTo(1.8288 ** 2 * 2.8, 9);
    const crate =
      2 * 1.5 * 5.5 * 24 + 4 * 1.5 * 3.5 * 3.5 + 2 * 1.5 * 3.5 * 24 + 1.5 * 3.5 * 24 + 1.5 ** 2 * 48;
    expect(masses.support("open-crate", 0.254).timber_m3).toBeCloseTo(crate * IN3, 9);
    expect(masses.support("open-crate", 0.254).other_kg).toBe(0);
  });

  test("screws left out are below 2 % of the module (steel cylinders of shank size, 7850 kg/m3 from memory)", () => {
    const screw = fasteners.find((f) => f.id === "screw-10x3")!;
    const kg = 20 * (Math.PI / 4) * screw.diameter_mm ** 2 * screw.length_mm * 1e-9 * 7850;
    const { timber_m3, other_kg } = masses.module(2.4384);
    expect(kg / (timber_m3 * 500 + other_kg)).toBeLessThan(0.02);
  });
});
