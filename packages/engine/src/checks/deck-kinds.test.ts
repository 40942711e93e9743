import { describe, expect, test } from "vitest";
import { readyKit } from "@causey/data/kits";
import { tables } from "@causey/data/tables";
import { layChain, type Link } from "../../test/support/chain.ts";
import { checkedPlan, checksInput, levelSite, visitOf } from "../../test/support/straight-walkway.ts";
import type { Kit } from "../kit/index.ts";
import { moduleMasses } from "../materials/index.ts";
import type { Plan } from "../plan/document.ts";
import type { Site } from "../site/index.ts";
import { runChecks, type CheckResult } from "./index.ts";

const FT = 304.8;
const gap = 12.7;
const eight: Link = 8 * FT - gap;

/** Checks of a straight chain of a kit, one person a visit, every joint on one kind of support. */
function checksOf(
  kit: Kit,
  support: string,
  height_m: number,
  links: readonly Link[] = [eight, eight],
  plan: Partial<Plan> = {},
  site: Partial<Site> = {},
): readonly CheckResult[] {
  const chain = layChain(kit, links, support, height_m, tables.sizes);
  const base = checksInput();
  return runChecks({
    ...base,
    layout: { ...base.layout, ...chain },
    plan: checkedPlan({ kit, visits: [visitOf({ people: 1, cart: null })], ...plan }),
    site: levelSite(site),
    masses: moduleMasses(kit, tables.sizes),
  });
}
const one = (results: readonly CheckResult[], id: string): CheckResult => {
  const found = results.filter((r) => r.id === id);
  if (found.length !== 1)
    throw new Error(`${found.length} results "${id}" of ${results.map((r) => r.id).join()}`);
  return found[0]!;
};

const salt = readyKit("salt-grating")!;
const fen = readyKit("fen-panels")!;

describe("every check of the ready kit with grating", () => {
  const results = checksOf(salt, "post-pair", 0.6, [eight, "platform-ahead", eight]);

  test("its deck carries one person, its cross pieces carry the deck, and its fasteners cannot be checked", () => {
    expect(one(results, "deck.bending").status).toBe("pass");
    expect(one(results, "deck.deflection").status).toBe("pass");
    expect(one(results, "deck.anchorage").status).toBe("cannot-check");
    expect(one(results, "cross-piece.bending").status).toMatch(/pass|fail/);
    expect(one(results, "platform.deck.bending").status).toBe("pass");
  });

  test("each half of the platform is lifted by itself, new and soaked", () => {
    for (const state of ["new", "soaked"])
      for (const side of ["right", "left"]) {
        const r = one(results, `lifting.${state}.platform.${side}`);
        if (r.status !== "pass" && r.status !== "fail") throw new Error(r.status);
        const half = moduleMasses(salt, tables.sizes).platform_parts[side === "right" ? 0 : 1]!;
        expect(r.demand).toBeGreaterThan(half.other_kg);
      }
    expect(new Set(results.map((r) => r.id)).size).toBe(results.length);
  });
});

describe("every check of the fen kit with three stringers", () => {
  test("the middle stringer and two bays: cross pieces span half of what two stringers leave", () => {
    const [two, three] = [2, 3].map((count) => {
      const kit = { ...fen, stringers: { ...fen.stringers, count: count as 2 | 3 } };
      const r = one(checksOf(kit, "broad-sleeper", 0.1524), "cross-piece.bending");
      if (r.status !== "pass" && r.status !== "fail") throw new Error(r.status);
      return r.demand;
    });
    const bay = (n: number): number => (711.2 - n * 38.1) / (n - 1);
    expect(three! / two!).toBeCloseTo(bay(3) / bay(2), 6);
  });

  test("on sleepers: no screw pile or float is spoken of", () => {
    const ids = checksOf(fen, "broad-sleeper", 0.1524).map((r) => r.id);
    expect(ids.some((id) => /screw-pile|bearing\.float/.test(id))).toBe(false);
    expect(ids.some((id) => id.startsWith("bearing."))).toBe(true);
  });

  test("on screw piles: pressed, pulled and deep enough, no bearing of feet on the surface", () => {
    const results = checksOf(fen, "screw-piles", 0.3048);
    for (const part of ["screw-pile", "screw-pile.pull", "screw-pile.depth"]) {
      const found = results.filter((r) => r.id.startsWith(`bearing.${part}.j`));
      expect(found.length, part).toBeGreaterThan(0);
      for (const r of found) expect(r.caution).toMatch(/engineer/);
    }
    expect(results.some((r) => r.kind === "bearing" && r.title.includes("Bearing of the ground"))).toBe(
      false,
    );
  });

  test("screw piles hold a part down in a flood, and their steel and the panels displace by their own volume", () => {
    const level = levelSite().levels[0]!;
    const flooded = { levels: [{ ...level, z_m: 3 }] };
    const r = checksOf(fen, "screw-piles", 0.3048, [eight], { flood_level: level.id }, flooded).find(
      (c) => c.kind === "uplift",
    )!;
    if (r.status !== "pass" && r.status !== "fail") throw new Error(r.status);
    expect(r.working.some((s) => s.id === "ground.screw-pile.capacity")).toBe(true);
    const masses = moduleMasses(fen, tables.sizes);
    const [module, support] = [masses.module((8 * FT - gap) / 1000), masses.support("screw-piles", 0.3048)];
    const volume = module.timber_m3 + module.bulk_m3 + support.timber_m3 + support.other_kg / 7850;
    const water = checkedPlan().water_kg_m3;
    expect(r.demand).toBeCloseTo(1.5 * water * 9.80665 * volume, 3);
  });

  test("on floats: freeboard and stability pass for one person, anchors cannot be checked, low water is asked for", () => {
    const results = checksOf(fen, "float-pair", 0.8);
    const of = (part: string): CheckResult[] =>
      results.filter((r) => r.id.startsWith(`bearing.float.${part}.`));
    expect(of("freeboard").map((r) => r.status)).toEqual(of("freeboard").map(() => "pass"));
    expect(of("stability").map((r) => r.status)).toEqual(of("stability").map(() => "pass"));
    expect(of("anchor").every((r) => r.status === "cannot-check")).toBe(true);
    expect(of("aground").every((r) => r.status === "cannot-check")).toBe(true);
    const level = levelSite().levels[0]!;
    const low = { ...level, id: "low", name: "Low", role: "mlw", z_m: 0.9 } as const;
    const tidal = checksOf(fen, "float-pair", 0.8, [eight], {}, { levels: [level, low] });
    expect(tidal.find((r) => r.id.startsWith("bearing.float.aground"))?.status).toBe("pass");
  });

  test("a part on floats rises with a flood: staying put does not apply to it", () => {
    const level = levelSite().levels[0]!;
    const r = checksOf(fen, "float-pair", 0.8, [eight], { flood_level: level.id }).filter(
      (c) => c.kind === "uplift",
    );
    expect(r.map((c) => c.status)).toEqual(["not-applicable"]);
  });
});
