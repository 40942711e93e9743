import { describe, expect, test } from "vitest";
import { samplePlan } from "../../test/plan/sample-plan.ts";
import { smallSite, plotAt, smallTerrain, zone } from "../../test/support/small-site.ts";
import type { Plan } from "../plan/document.ts";
import type { OptionChoice, WalkwayKind } from "../request/index.ts";
import { footfalls, optionLines, stride, unsettledOptions, walkwayFacts, type OptionLine } from "./index.ts";
import { metres, qty } from "../units/index.ts";

const site = smallSite(
  smallTerrain(100, 60, () => 1),
  [plotAt("p1", 60, 5), plotAt("p2", 80, 45)],
);
const probed = (probe_m: number | null): Partial<Plan> => ({
  survey: {
    ...samplePlan().survey,
    stations: [{ id: "s1", x: 10, y: 5, ground_m: 1, probe_m, water_m: null, date: null }],
  },
});
const lines = (change: Partial<Plan> = {}): OptionLine[] => optionLines(samplePlan(change), site, null);
const line = (kind: WalkwayKind, change: Partial<Plan> = {}): OptionLine =>
  lines(change).find((l) => l.kind === kind)!;
const choose = (options: readonly OptionChoice[]): Partial<Plan> => ({
  request: { ...samplePlan().request, options },
});

test("every kind has one line with a source, whether it can be removed, and why one would not take it", () => {
  const kinds: readonly WalkwayKind[] = [
    "no-structure",
    "another-season",
    "by-boat",
    "ground-laid",
    "sleepers",
    "open-crates",
    "post-pairs",
    "screw-piles",
    "floats",
    "mats",
  ];
  expect(lines().map((l) => l.kind)).toEqual(kinds);
  for (const facts of walkwayFacts) {
    expect(facts.against).not.toBe("");
    expect(facts.source.title).not.toBe("");
  }
});

describe("the user's own decision", () => {
  const change = choose([
    { kind: "by-boat", status: "rejected", reason: "the creek is dry at the hours of work" },
    { kind: "mats", status: "rejected", reason: " " },
    { kind: "floats", status: "open", reason: "" },
  ]);
  test("shows with its reason; a kind without an entry was not looked at", () => {
    expect(line("by-boat", change)).toMatchObject({
      status: "rejected",
      reason: "the creek is dry at the hours of work",
    });
    expect(line("sleepers", change).status).toBe("not looked at");
  });
  test("a decision without a reason and a kind that nobody looked at are unsettled", () => {
    const kinds = unsettledOptions(lines(change)).map((l) => l.kind);
    expect(kinds).toContain("mats");
    expect(kinds).toContain("no-structure");
    expect(kinds).not.toContain("by-boat");
    expect(kinds).not.toContain("floats");
  });
});

describe("no structure", () => {
  test("footfalls by hand: 70 m there and back at 0.7 m, 2 people, 26 visits", () => {
    const f = footfalls({ l: metres(70), s: stride({}), n: qty(2, "1"), v: qty(26, "1") });
    expect(f).toBeCloseTo(200 * 52, 6);
  });
  test("on weak ground feet go in, on firm ground they stay on top, unknown ground is said to be unknown", () => {
    const words = (su_kpa: number | null): string =>
      line("no-structure", { ground: { ...samplePlan().ground, su_kpa } }).notes.join(" ");
    expect(words(5)).toContain("feet go in");
    expect(words(40)).toContain("feet stay on top");
    expect(words(null)).toContain("cannot be said");
  });
  test("the working shows the pressure and what the ground bears", () => {
    const { working } = line("no-structure", { ground: { ...samplePlan().ground, su_kpa: 5 } });
    const pressure = working.find((s) => s.id === "ground.foot-pressure")!.value;
    expect(pressure / 1000).toBeGreaterThan(60);
    expect(pressure / 1000).toBeLessThan(80);
    // 5 su (1 + 0.2 b / a) with b 52, a 250 mm.
    expect(working.find((s) => s.id === "ground.bearing.skempton")!.value).toBeCloseTo(5 * 5000 * 1.0416, 6);
  });
});

describe("warnings of the place", () => {
  test("battens and floats on peat deeper than 1 m are warned of, at 1 m and unprobed they are not", () => {
    for (const kind of ["sleepers", "floats", "ground-laid"] as const) {
      expect(
        line(kind, probed(1.01)).warnings.map((w) => w.source.id),
        kind,
      ).toContain("fen-handbook");
      expect(line(kind, probed(1)).warnings, kind).toEqual([]);
      expect(line(kind, probed(null)).warnings, kind).toEqual([]);
    }
    expect(line("screw-piles", probed(3)).warnings).toEqual([]);
    expect(line("screw-piles", probed(3)).notes[0]).toContain("3.00 m");
  });
  test("what lies low is warned of where the flood stands over the ground; floats where it does not", () => {
    const level = (z_m: number): Partial<Plan> => ({
      flood_level: "f",
      levels: [
        {
          id: "f",
          name: "Spring flood",
          role: "flood",
          basis: "recorded",
          z_m,
          datum: site.datum,
          source: "test",
          epoch: "",
        },
      ],
    });
    expect(line("ground-laid", level(1.4)).warnings[0]!.text).toContain("400 mm");
    expect(line("ground-laid", level(0.9)).warnings).toEqual([]);
    expect(line("floats", level(0.9)).warnings[0]!.text).toContain("dry");
    expect(line("open-crates", level(1.4)).warnings).toEqual([]);
  });
  test("a boat needs a channel or pool; a hidden closure is never named", () => {
    expect(line("by-boat").notes[0]).toContain("no channel");
    const hidden = zone("rare", "seasonal-closure", 0, 0, 1, 1, { hidden: true });
    const shown = zone("nesting", "seasonal-closure", 0, 0, 1, 1);
    const withZones = { ...site, zones: [hidden, shown] };
    const notes = optionLines(samplePlan(), withZones, null)
      .find((l) => l.kind === "another-season")!
      .notes.join(" ");
    expect(notes).toContain("nesting");
    expect(notes).not.toContain("rare");
  });
});
