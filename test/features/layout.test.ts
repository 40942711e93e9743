// Rows of the feature table on routes. US Access Board, outdoor developed areas (ABA 1017.4 passing spaces, 1017.7.1
// running slope), summary of 2014; 2010 ADA Standards 403.5.3.
import type { Layout, Part } from "@causey/engine/layout";
import { describe, expect, test } from "vitest";
import { boardKit, deriveLane, kitAtHeight, sheetTexts, type Derived } from "../support/lane-plan.ts";

const FT = 0.3048;
const profile = (id: string) => ({ profile: id, overrides: [] });
const statusOf = ({ results }: Derived, id: string): string[] =>
  results.checks.filter((c) => c.id === id || c.id.startsWith(`${id}.`)).map((c) => c.status);

describe("25 slope over the profile's limit is forbidden; ramps with rests, the 30 % rule", () => {
  const kit = kitAtHeight(0.76, { lengths_mm: [10 * FT * 1000 - 12.7] });
  const joint = (n: number): number => 2 + n * 10 * FT;
  /** Level ground that climbs at a grade between two joints of the straight way. */
  const climbing = (grade: number, from: number, to: number) => (_: number, y: number) =>
    1 + grade * Math.min(Math.max(0, y - joint(from)), joint(to) - joint(from));
  const over = (ground: (x: number, y: number) => number, rules: string): Promise<Derived> =>
    deriveLane({
      kit,
      ground,
      rules: profile(rules),
      layout: { max_grade: 0.2 },
      plots: { P1: [4, 30] },
      long: 34,
    });

  test("1:9 for 20 ft fails: 1:10 to 1:8 goes for 10 ft at most (ABA 1017.7.1)", async () => {
    const d = await over(climbing(1 / 9, 2, 4), "aba-trail");
    expect(d.results.layout.reached.map((r) => r.plot)).toEqual(["P1"]);
    const found = d.results.checks.find((c) => c.id === "grade.aba.run-8.broken")!;
    expect(found.status).toBe("fail");
    expect(found.parts).toEqual(["A3", "A4"]);
    expect(found.status === "fail" && found.demand / FT).toBeCloseTo(20, 2);
    expect(found.status === "fail" && found.capacity / FT).toBeCloseTo(10, 6);
    expect(found.status === "fail" && found.backwards.change).toContain("rest after each 10 ft");
  });

  test("1:9 for 10 ft, level before and after, keeps length, rests and the 30 % rule (ABA 1017.7.1, 1017.8)", async () => {
    const d = await over(climbing(1 / 9, 2, 3), "aba-trail");
    for (const id of ["grade.steepest", "grade.aba.run-8", "grade.rests", "grade.share"])
      expect(statusOf(d, id), id).toEqual(["pass"]);
  });

  test("over 30 % of the length at more than 1:12 fails, each run with its rest (ABA 1017.7.1)", async () => {
    const twice = (x: number, y: number): number =>
      climbing(1 / 9, 1, 2)(x, y) + climbing(1 / 9, 3, 4)(x, y) + climbing(1 / 9, 5, 6)(x, y) - 2;
    const d = await over(twice, "aba-trail");
    expect(statusOf(d, "grade.aba.run-8")).toEqual(["pass"]);
    expect(statusOf(d, "grade.rests")).toEqual(["pass"]);
    expect(statusOf(d, "grade.share")).toEqual(["fail"]);
  });

  test("1:7 is laid for staff and never for an accessible trail, whose limit is 1:8 (ABA 1017.7.1)", async () => {
    const steep = climbing(1 / 7, 2, 4);
    const staff = await over(steep, "staff-access");
    expect(staff.results.layout.reached).toHaveLength(1);
    expect(staff.results.evaluation.steepest_grade).toBeGreaterThan(1 / 8);
    const trail = await over(steep, "aba-trail");
    expect(trail.results.layout.unreached.map((u) => u.plot)).toEqual(["P1"]);
    expect(trail.results.layout.notes.join(" ")).toContain("at most 1:8");
    expect(trail.results.evaluation.steepest_grade).toBeLessThanOrEqual(1 / 8);
  });
});

/** Longest way between two places to pass or turn, over the joints as laid: middle of platform to middle of platform. */
function longestWay(layout: Layout): number {
  const at = new Map(layout.joints.map((j) => [j.id, j]));
  const length = (a: string, b: string): number =>
    Math.hypot(at.get(a)!.x - at.get(b)!.x, at.get(a)!.y - at.get(b)!.y);
  let longest = 0;
  const walk = (joint: string, since: number): void => {
    longest = Math.max(longest, since);
    for (const p of layout.parts.filter((part: Part) => part.from === joint)) {
      if (p.kind === "module") walk(p.to, since + length(p.from, p.to));
      else {
        const half = length(p.from, p.exits.ahead) / 2;
        longest = Math.max(longest, since + half);
        for (const exit of Object.values(p.exits)) walk(exit, half);
      }
    }
  };
  walk(layout.joints[0]!.id, 0);
  return longest;
}

describe("26 turnouts of 60 by 60 in at the rule's interval: none farther apart than the limit", () => {
  const sleeper = boardKit().supports.find((s) => s.form === "sleeper")!;
  const wide = boardKit({
    supports: [
      {
        ...sleeper,
        sill: { ...sleeper.sill, length_mm: 1219.2 },
        pieces: sleeper.pieces.map((p) => ({ ...p, length_mm: 1219.2 })),
        feet: [{ along_mm: 469.9, across_mm: 1219.2, offset_across_mm: 0 }],
      },
    ],
    stringers: { count: 3, size: "2x8", overall_mm: 1168.4 },
    deck: { ...boardKit().deck, width_mm: 1219.2 } as ReturnType<typeof boardKit>["deck"],
  });
  const clear_in = (wide.platform.side_mm - 2 * 38.1) / 25.4;

  test.each([
    ["aba-trail", 1000, 2500, "ABA 1017.4, tread 48 in, a line of 2500 ft"],
    ["ada-route", 200, 700, "2010 ADA 403.5.3"],
  ])("%s: at most every %i ft over %i ft (%s)", async (rules, every, length) => {
    const long = length * FT;
    const plan = { kit: wide, plots: { P1: [4, 2 + long] }, long: long + 6, wide: 10 } as const;
    const d = await deriveLane({ ...plan, rules: profile(rules) });
    const { layout, evaluation } = d.results;
    expect(layout.reached.map((r) => r.plot)).toEqual(["P1"]);
    expect(evaluation.length_m / FT).toBeGreaterThan(length - 20);
    const platforms = layout.parts.filter((p) => p.kind === "platform");
    expect(platforms.length).toBeGreaterThanOrEqual(Math.floor(length / every));
    expect(platforms.every((p) => p.use === "passing")).toBe(true);
    expect(clear_in).toBeGreaterThanOrEqual(60);
    expect(longestWay(layout)).toBeLessThanOrEqual(every * FT + 1e-6);
    expect(statusOf(d, "width.passing")).toEqual(["pass"]);
    expect(layout.notes.join(" ")).toContain(`at least every ${every.toLocaleString("en-US")} ft`);
    const staff = await deriveLane({ ...plan, rules: profile("staff-access") });
    expect(longestWay(staff.results.layout)).toBeGreaterThan(every * FT);
  });

  test("the plan's own interval counts where it is shorter than the rule's (common practice, no source)", async () => {
    const d = await deriveLane({
      kit: wide,
      plots: { P1: [4, 60] },
      long: 66,
      rules: profile("ada-route"),
      layout: { passing_every_m: 20 },
    });
    expect(longestWay(d.results.layout)).toBeLessThanOrEqual(20);
    expect(longestWay(d.results.layout)).toBeGreaterThan(10);
  });
});

describe("27 the last turn-around is marked where a spur is a dead end (ABA 1017.4)", () => {
  test("every dead end has its sign in the results, on the setting-out sheet and on the site plan", async () => {
    const d = await deriveLane({
      wide: 40,
      long: 40,
      start: [10, 4],
      plots: { P1: [10, 34], P2: [32, 22] },
      rules: profile("aba-trail"),
    });
    const { layout, route } = d.results;
    expect(layout.reached.map((r) => r.plot).sort()).toEqual(["P1", "P2"]);
    const left = new Set(layout.parts.map((p) => p.from));
    const tips = layout.parts.flatMap((p) => (p.kind === "module" && !left.has(p.to) ? [p.to] : []));
    expect(tips.length).toBeGreaterThan(0);
    expect(route.dead_ends.map((e) => e.joint)).toEqual(expect.arrayContaining(tips));
    const setting = sheetTexts(d, "setting-out").join("\n");
    const plan = sheetTexts(d, "site-plan");
    for (const tip of tips) {
      const end = route.dead_ends.find((e) => e.joint === tip)!;
      const back = walkBack(layout, tip);
      expect([end.last_turn, end.sign_at]).toEqual([back.platform, back.sign]);
      expect(end.back_m).toBeCloseTo(back.length_m, 6);
      expect(setting).toContain(`joint ${end.sign_at}`);
      expect(setting).toContain(`platform ${end.last_turn}`);
      expect(plan).toContain(`sign at ${end.sign_at}: last turn`);
    }
    expect(setting).toContain("Dead ends: a sign at the last place to turn");
  });

  test("without any platform the last place to turn is the start, and the sign stands there", async () => {
    const d = await deriveLane({ rules: profile("aba-trail") });
    expect(d.results.layout.parts.some((p) => p.kind === "platform")).toBe(false);
    expect(d.results.route.dead_ends).toMatchObject([{ last_turn: null, sign_at: "J1", plots: ["P1"] }]);
    expect(sheetTexts(d, "setting-out")).toContain("the start");
  });
});

/** From a tip back over modules to the joint by which a platform is left. */
function walkBack(layout: Layout, tip: string): { platform: string | null; sign: string; length_m: number } {
  const at = new Map(layout.joints.map((j) => [j.id, j]));
  let [joint, length_m] = [tip, 0];
  for (;;) {
    const module = layout.parts.find((p) => p.kind === "module" && p.to === joint);
    if (!module) break;
    const [a, b] = [at.get(module.from)!, at.get(joint)!];
    length_m += Math.hypot(a.x - b.x, a.y - b.y);
    joint = module.from;
  }
  const platform = layout.parts.find((p) => p.kind === "platform" && Object.values(p.exits).includes(joint));
  return { platform: platform?.id ?? null, sign: joint, length_m };
}
