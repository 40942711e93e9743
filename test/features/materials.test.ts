// Rows of the feature table on materials. Management of small docks and piers (public slides): no creosote, no penta, CCA
// to be limited. FEMA P-499: copper treatments want hot-dip zinc, stainless, silicon bronze or copper. Salt use of
// preservatives and stainless near salt from memory, and marked so in the product.
import { tables } from "@causey/data/tables";
import { fastenerChoices, preservativeChoices } from "@causey/engine/kit";
import { describe, expect, test } from "vitest";
import { boardKit, deriveLane, sheetTexts, type Derived } from "../support/lane-plan.ts";

const treated = (preservative: string | null, change: Parameters<typeof boardKit>[0] = {}) =>
  boardKit({ lumber: { ...boardKit().lumber, treatment: "treated", preservative }, ...change });
const checkOf = ({ results }: Derived, id: string) =>
  results.checks.find((c) => c.id === id || c.id.startsWith(`${id}.`))!;
const barred = (exposure: "fresh" | "salt"): Map<string, string> =>
  new Map(
    preservativeChoices(tables.preservatives, exposure).flatMap((c) =>
      c.barred === null ? [] : [[c.id, c.barred] as const],
    ),
  );

describe("41 materials are filtered by the permit's rules: a banned item cannot be chosen and says why", () => {
  test("creosote and penta are barred everywhere with their reason, CCA as limited (small docks guidance)", () => {
    const fresh = barred("fresh");
    expect([...fresh.keys()].sort()).toEqual(["cca", "creosote", "penta"]);
    expect(fresh.get("creosote")).toContain("not for small docks, by public guidance");
    expect(fresh.get("penta")).toContain("not for small docks, by public guidance");
    expect(fresh.get("cca")).toContain("limited in poorly flushed water");
  });

  test("salt water bars what does not stand it (from memory, confirm)", () => {
    const salt = barred("salt");
    for (const id of ["acq", "ca-c", "mca", "borate"])
      expect(salt.get(id), id).toBe("not for timber in salt water");
    expect(salt.has("acza")).toBe(false);
  });

  test("the least treatment comes first: no metal before copper, copper before arsenic (store and saw practice, NPIC)", () => {
    const rows = preservativeChoices(tables.preservatives, "fresh").filter((c) => c.barred === null);
    const metals = rows.map(({ id }) => {
      const p = tables.preservatives.find((row) => row.id === id)!;
      return (p.has_copper ? 1 : 0) + (p.has_arsenic ? 2 : 0);
    });
    expect(metals).toEqual(metals.toSorted((a, b) => a - b));
    expect(new Set(metals).size).toBeGreaterThan(2);
  });

  test.each(["creosote", "penta", "cca"])(
    "a plan file that names %s is warned of, and its check does not meet the rule, with the reason",
    async (id) => {
      const d = await deriveLane({ kit: treated(id) });
      const name = tables.preservatives.find((p) => p.id === id)!.name;
      expect(d.warnings.some((w) => w.code === "kit-preservative" && w.message.includes(name))).toBe(true);
      const check = checkOf(d, "pairing.preservative");
      expect(check.status).toBe("fail");
      expect(check.status === "fail" && check.backwards.carries).toContain(barred("fresh").get(id));
      expect(sheetTexts(d, "checks").join(" ")).toContain("Preservative in a wetland");
    },
  );

  test("untreated spruce and copper azole in fresh water are not barred", async () => {
    expect(checkOf(await deriveLane({}), "pairing.preservative").status).toBe("not-applicable");
    expect(checkOf(await deriveLane({ kit: treated("ca-c") }), "pairing.preservative").status).toBe("pass");
  });
});

describe("42 fasteners are paired with treatment and salt: zinc plate with copper-treated wood is rejected", () => {
  const screwed = (screw: string, preservative: string | null) => {
    const kit = boardKit();
    const change = {
      cross_pieces: { ...kit.cross_pieces, screw },
      platform: { ...kit.platform, screw },
      curb: kit.curb && { ...kit.curb, screw },
      deck: { ...kit.deck, screw } as typeof kit.deck,
      supports: kit.supports.map((s) => ({ ...s, screws: [{ screw, count: 12 }] })),
    };
    return preservative === null ? boardKit(change) : treated(preservative, change);
  };

  test("zinc plate in copper azole: warned on reading, not met in the check, with what would pass (FEMA P-499)", async () => {
    const d = await deriveLane({ kit: screwed("screw-10x3-zinc", "ca-c") });
    const warned = d.warnings.find((w) => w.code === "kit-preservative")!;
    expect(warned.message).toContain("eats");
    const check = checkOf(d, "pairing.treatment");
    expect(check.status).toBe("fail");
    expect(check.rule.title).toContain("FEMA P-499");
    expect(check.status === "fail" && check.backwards.carries).toContain("zinc plate");
    expect(check.status === "fail" && check.backwards.change).toContain("hot-dip zinc or stainless");
  });

  test.each([
    { screw: "screw-10x3", preservative: "ca-c", status: "pass", why: "hot-dip zinc" },
    { screw: "screw-10x3-316", preservative: "ca-c", status: "pass", why: "stainless" },
    { screw: "screw-10x3-zinc", preservative: null, status: "not-applicable", why: "untreated wood" },
    { screw: "screw-10x3-zinc", preservative: "borate", status: "not-applicable", why: "no copper" },
  ])("$screw with $preservative: $status ($why, FEMA P-499)", async ({ screw, preservative, status }) => {
    expect(checkOf(await deriveLane({ kit: screwed(screw, preservative) }), "pairing.treatment").status).toBe(
      status,
    );
  });

  test.each([
    ["screw-10x3-zinc", "fail"],
    ["screw-10x3-304", "fail"],
    ["screw-10x3-316", "pass"],
    ["screw-10x3", "pass"],
  ])("near salt water %s: %s (stainless 316 or hot-dip zinc, from memory)", async (screw, status) => {
    const d = await deriveLane({ kit: screwed(screw, null), water: { exposure: "salt" } });
    const check = checkOf(d, "pairing.salt");
    expect(check.status).toBe(status);
    expect(check.rule.status).toBe("memory");
  });

  test("the choice itself bars it: plain zinc cannot be chosen for copper-treated wood, and can for untreated", () => {
    const of = (preservative: string | null, exposure: "fresh" | "salt") =>
      fastenerChoices(
        tables.fasteners,
        "wood-screw",
        treated(preservative).lumber,
        tables.preservatives,
        exposure,
      );
    const zinc = (choices: ReturnType<typeof of>) => choices.find((c) => c.id === "screw-10x3-zinc")!;
    expect(zinc(of("ca-c", "fresh")).barred).toContain("copper in Copper azole");
    expect(zinc(of("borate", "fresh")).barred).toBeNull();
    expect(zinc(of("borate", "salt")).barred).toBe("salt water eats it");
  });
});
