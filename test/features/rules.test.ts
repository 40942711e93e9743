// Rows of the feature table on rails, openings and engineers.
import { readyKits } from "@causey/data/kits";
import { ruleSources } from "@causey/data/rules";
import { describe, expect, test } from "vitest";
import { boardKit, deriveLane, kitAtHeight, sheetTexts, type Derived } from "../support/lane-plan.ts";

const IN = 0.0254;
const profile = (id: string) => ({ profile: id, overrides: [] });
const bare = { curb: null } as const;

/** The check of one id over a whole plan, met or broken. */
const checkOf = ({ results }: Derived, id: string) =>
  results.checks.find((c) => c.id === id || c.id.startsWith(`${id}.`));

/** A lane whose deck lies exactly so high over level ground, under a profile. */
const atFall = (rules: string, fall_m: number, change = {}): Promise<Derived> =>
  deriveLane({
    kit: kitAtHeight(fall_m, change),
    ground: () => 3 - fall_m,
    rules: profile(rules),
  });

describe("36 rail and curb by the height of the fall and the profile: 30 in, 48 in, 1 m", () => {
  test.each([
    [
      "building-guard",
      30 * IN,
      30 * IN + 0.001,
      "fs-rails",
      "over 30 in a guard, US Forest Service on railings",
    ],
    ["osha-workplace", 48 * IN - 0.001, 48 * IN, "osha-1910-23", "4 ft and more, 29 CFR 1910.23, old text"],
    ["staff-access", 48 * IN - 0.001, 48 * IN, "osha-1910-23", "4 ft, taken over from 29 CFR 1910.23"],
    ["nz-structures", 0.999, 1, "nz-consent", "1 m and more, New Zealand consent guidance"],
  ])("%s: %f m goes without a rail, %f m does not (%s: %s)", async (rules, without, needs, source) => {
    const low = checkOf(await atFall(rules, without), "edge.rail")!;
    expect(low.status).toBe("pass");
    expect(low.status === "pass" && low.demand).toBeCloseTo(without, 6);
    const derived = await atFall(rules, needs);
    const high = checkOf(derived, "edge.rail")!;
    expect(high.status).toBe("fail");
    expect(high.status === "fail" && high.demand).toBeCloseTo(needs, 6);
    expect(high.rule.title).toBe(ruleSources[source]!.title);
    expect(high.status === "fail" && high.backwards.change).toContain("ask an engineer");
    expect(derived.results.engineer.map((e) => e.id)).toContain("rail");
  });

  test("New Zealand: a fall of 1.2 m needs a barrier and no consent, 1.5 m is the last without (consent guidance)", async () => {
    const d = await atFall("nz-structures", 1.2);
    expect([checkOf(d, "edge.rail")!.status, checkOf(d, "edge.consent")!.status]).toEqual(["fail", "pass"]);
    expect(checkOf(await atFall("nz-structures", 1.5), "edge.consent")!.status).toBe("pass");
    expect(checkOf(await atFall("nz-structures", 1.501), "edge.consent")!.status).toBe("fail");
  });

  test("no rail: a trail bridge must have its curb (US Forest Service, trail bridges: curbs)", async () => {
    expect(checkOf(await atFall("trail-structures", 0.5, bare), "edge.curb")!.status).toBe("fail");
    expect(checkOf(await atFall("trail-structures", 0.5), "edge.curb")!.status).toBe("pass");
  });

  test("staff go without a curb up to 12 in of fall (common practice, no source)", async () => {
    expect(checkOf(await atFall("staff-access", 12 * IN, bare), "edge.curb")!.status).toBe("not-applicable");
    expect(checkOf(await atFall("staff-access", 12 * IN + 0.001, bare), "edge.curb")!.status).toBe("fail");
  });
});

describe("37 openings by profile, and the clash of the gap rules: the message names both rules", () => {
  const gapOf = (gap_mm: number) => ({ ...boardKit().deck, gap_mm }) as ReturnType<typeof boardKit>["deck"];

  test.each([
    [
      "aba-trail",
      "Deck openings",
      "at most 1/2 in",
      "Gap between deck boards",
      "at least 3/4 in",
      "Trail bridges and puncheon, foot trails",
    ],
    [
      "trail-structures",
      "Gap between deck boards",
      "at least 3/4 in",
      "Gap between deck boards",
      "about 3/8 in (10 mm)",
      "Path guidance, UK",
    ],
    [
      "uk-paths",
      "Gap between deck boards",
      "about 3/8 in (10 mm)",
      "Gap between deck boards",
      "at least 3/4 in",
      "Trail bridges and puncheon, foot trails",
    ],
    [
      "aba-trail",
      "Deck openings",
      "at most 1/2 in",
      "Deck as open as possible",
      "as large as can be",
      "Light under the deck",
    ],
  ])(
    '%s: "%s" %s against "%s" %s of %s (ABA 302.3; puncheon, page 26; Paths for All)',
    async (rules, a, asksA, b, asksB, other) => {
      const d = await deriveLane({ rules: profile(rules) });
      const named = d.results.clashes.filter(
        (m) =>
          m.includes(`"${a}"`) && m.includes(`"${b}" (${other})`) && m.includes(asksA) && m.includes(asksB),
      );
      expect(named, d.results.clashes.join("\n")).toHaveLength(1);
      expect(named[0]).toContain("cannot both be met");
      expect(sheetTexts(d, "checks").join(" ").replaceAll(/\s+/g, " ")).toContain(named[0]);
    },
  );

  test("one deck of 1/2 in gaps meets the accessible trail and breaks the puncheon's rule, and 13 mm the other way", async () => {
    const half = boardKit();
    expect(half.deck.kind === "boards" && half.deck.gap_mm).toBe(12.7);
    const status = async (rules: string, id: string, kit = half): Promise<string> =>
      checkOf(await deriveLane({ kit, rules: profile(rules) }), id)!.status;
    expect(await status("aba-trail", "opening.ball")).toBe("pass");
    expect(await status("trail-structures", "opening.gap")).toBe("fail");
    // 22 boards of 139.7 mm with 13 mm between: a body of 3346.4 mm; no wider gap than 1/2 in may be.
    const wider = boardKit({
      deck: gapOf(13),
      joint_gap_mm: 13,
      lengths_mm: [22 * 139.7 + 21 * 13],
      platform: { ...half.platform, side_mm: 12 * 139.7 + 11 * 13 },
    });
    expect(await status("aba-trail", "opening.ball", wider)).toBe("fail");
  });
});

describe("40 an engineer is asked for past set limits: a span over the limit flags", () => {
  const FT_MM = 304.8;
  const lengthKit = (pitch_ft: number) => boardKit({ lengths_mm: [pitch_ft * FT_MM - 12.7] });

  test("a module over 16 ft flags, one of 16 ft does not (limit: common practice, no source)", async () => {
    const ids = async (ft: number): Promise<string[]> =>
      (await deriveLane({ kit: lengthKit(ft), plots: { P1: [4, 23] } })).results.engineer.map((e) => e.id);
    expect(await ids(16)).not.toContain("span");
    expect(await ids(17)).toContain("span");
  });

  test("the flag names limit, parts and source, and stands on the check sheets", async () => {
    const d = await deriveLane({ kit: lengthKit(17), plots: { P1: [4, 23] } });
    const flag = d.results.engineer.find((e) => e.id === "span")!;
    expect(flag.because).toContain("the limit is 16 ft");
    const long = d.results.layout.parts.flatMap((p) => (p.kind === "module" ? [p.id] : []));
    expect(long.length).toBeGreaterThan(0);
    expect(flag.parts).toEqual(long);
    expect(flag.source.title).toContain("Common practice, no source");
    expect(sheetTexts(d, "checks").join(" ")).toContain("Long span");
  });

  test("a deck over 30 in flags (US Forest Service, railings of trail bridges); a low one on sleepers does not", async () => {
    const high = await deriveLane({ kit: kitAtHeight(0.77), ground: () => 1.23 });
    expect(high.results.engineer.map((e) => e.id)).toContain("height");
    const low = await deriveLane({});
    expect(low.results.engineer).toEqual([]);
  });

  test("floats always go to an engineer (US Forest Service, Wetland Trail Design and Construction, 2007)", async () => {
    const floating = readyKits.find((k) => k.supports.some((s) => s.form === "float"))!;
    const kit = { ...floating, supports: floating.supports.filter((s) => s.form === "float") };
    const { results } = await deriveLane({ kit, plots: { P1: [4, 22] } });
    const flag = results.engineer.find((e) => e.id.startsWith("support."))!;
    expect(flag.source.title).toContain("US Forest Service, Wetland Trail Design");
    expect(flag.parts).toEqual(results.layout.joints.map((j) => j.id));
  });
});
