import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  designCode,
  designCodes,
  type DesignCode,
  type LoadDuration,
  type Member,
  type Situation,
} from "../../src/codes/index.ts";
import type { Trace } from "../../src/formula/index.ts";
import { ordinaryWood } from "../support/ordinary-woods.ts";

const runs = { numRuns: 150, seed: 11 };
const dryAlone = { use: "edge", wet: false, incised: false, repetitive: false } as const;
const woods = [...tables.grades, ...tables.strength_classes];
const STRENGTHS = ["fb", "fv", "fcp", "fc", "e", "emin"] as const;
/** Longest first. */
const DURATIONS: readonly LoadDuration[] = [
  "permanent",
  "ten-years",
  "two-months",
  "seven-days",
  "ten-minutes",
  "impact",
];

/** Every member that a code has values for. */
const membersOf = (code: DesignCode): Member[] =>
  woods.flatMap(({ species, grade }) =>
    tables.sizes.flatMap(({ id }) => {
      const found = code.member(tables, species, grade, id);
      return found.ok ? [found.value] : [];
    }),
  );

const situation: fc.Arbitrary<Situation> = fc.record({
  use: fc.constantFrom("edge" as const, "flat" as const),
  wet: fc.boolean(),
  incised: fc.boolean(),
  repetitive: fc.boolean(),
  duration: fc.constantFrom(...DURATIONS),
  unbraced_m: fc.double({ min: 0.05, max: 3, noNaN: true }),
  column_m: fc.double({ min: 0.1, max: 3, noNaN: true }),
});

test("both codes stand in the registry, with ids of their own", () =>
  expect(designCodes.map((c) => [c.id, c.safety])).toEqual([
    ["us-asd-2018", "allowable-stress"],
    ["ec5-2004", "partial-factors"],
  ]));

describe.each(designCodes.map((c) => [c.id, c] as const))("every code: %s", (_, code) => {
  const members = membersOf(code);
  const member = fc.constantFrom(...members);

  test("has values for more than a hundred members, and for each wood that it lists", () => {
    expect(members.length).toBeGreaterThan(100);
    const listed = code.woods(tables).map((w) => `${w.species} ${w.grade}`);
    expect(new Set(members.map((m) => `${m.grade.species} ${m.grade.grade}`))).toEqual(new Set(listed));
  });

  const never = (change: (s: Situation) => Situation, name: string): void => {
    fc.assert(
      fc.property(member, situation, (m, s) => {
        const before = code.strength(m, s);
        const after = code.strength(m, change(s));
        for (const k of STRENGTHS)
          expect(after[k], `${name}: ${k}`).toBeLessThanOrEqual(before[k] * (1 + 1e-12));
      }),
      runs,
    );
  };

  test("wet never beats dry", () => never((s) => ({ ...s, wet: true }), "wet"));
  test("incised never beats plain", () => never((s) => ({ ...s, incised: true }), "incised"));
  test("a piece alone never beats one that shares", () =>
    never((s) => ({ ...s, repetitive: false }), "alone"));
  test("a longer load never beats a shorter one, over every pair of durations", () => {
    for (const [i, longer] of DURATIONS.entries())
      for (const shorter of DURATIONS.slice(i + 1))
        fc.assert(
          fc.property(member, situation, (m, s) => {
            const long = code.strength(m, { ...s, duration: longer });
            const short = code.strength(m, { ...s, duration: shorter });
            for (const k of STRENGTHS)
              expect(long[k], `${longer}, ${shorter}: ${k}`).toBeLessThanOrEqual(short[k] * (1 + 1e-12));
          }),
          { numRuns: 20, seed: 7 },
        );
  });
  test("more free length never makes a beam or a post stronger", () => {
    never((s) => ({ ...s, unbraced_m: s.unbraced_m! * 1.5 }), "beam");
    never((s) => ({ ...s, column_m: s.column_m! * 1.5 }), "post");
  });

  test("a deeper piece of the same wood and thickness never bends earlier, free or held", () => {
    const pairs = members.flatMap((a) =>
      members
        .filter((b) => b.grade === a.grade && b.size.thickness_in === a.size.thickness_in)
        .filter((b) => b.size.width_in > a.size.width_in)
        .map((b) => [a, b] as const),
    );
    expect(pairs.length).toBeGreaterThan(100);
    const moment = (m: Member, s: Situation): number => code.strength(m, s).fb * m.size.width_in ** 2;
    fc.assert(
      fc.property(fc.constantFrom(...pairs), situation, fc.boolean(), ([a, b], s, isHeld) => {
        const { unbraced_m: _, ...held } = s;
        const edge: Situation = { ...(isHeld ? held : s), use: "edge" };
        expect(moment(b, edge)).toBeGreaterThanOrEqual(moment(a, edge) * (1 - 1e-12));
      }),
      { numRuns: 400, seed: 13 },
    );
  });

  test("every strength is finite and not negative; every step of every working names a clause or a table", () => {
    const contact = { length_m: 0.04, to_end_m: 0.2, to_next_m: 2, support: "discrete" } as const;
    fc.assert(
      fc.property(member, situation, (m, s) => {
        const trace: Trace = [];
        const found = code.strength(m, s, trace);
        for (const k of STRENGTHS) expect(found[k]).toBeGreaterThanOrEqual(0);
        const depth = m.size.width_in * 0.0254;
        code.bearing(m, s, contact, trace);
        code.notchedShear(m, s, { left_m: 0.8 * depth, reaction_to_corner_m: 0.05 }, trace);
        code.creep(s.wet, trace);
        expect(trace.length).toBeGreaterThan(15);
        for (const { id, source } of trace) {
          expect(source.title, id).not.toBe("");
          expect(source.at ?? "", id).toMatch(source.status === "project" ? /\w/ : /\d/);
        }
      }),
      runs,
    );
  });

  test("a notch never helps, a deeper one helps less, and a bearing grows with its length", () => {
    fc.assert(
      fc.property(member, situation, fc.double({ min: 0.76, max: 1, noNaN: true }), (m, s, alpha) => {
        const d = m.size.width_in * 0.0254;
        const [b, edge] = [m.size.thickness_in * 0.0254, { ...s, use: "edge" } as const];
        const at = (part: number): number =>
          code.notchedShear(m, edge, { left_m: part * d, reaction_to_corner_m: 0.05 });
        expect(at(alpha)).toBeLessThanOrEqual(
          ((2 / 3) * code.strength(m, edge).fv * b * d + 1e-9) * (1 + 1e-9),
        );
        expect(at(alpha - 0.01)).toBeLessThanOrEqual(at(alpha) * (1 + 1e-12));
        const bears = (length_m: number): number => {
          const contact = { length_m, to_end_m: 0, to_next_m: 3, support: "discrete" } as const;
          const { strength, length } = code.bearing(m, edge, contact);
          return strength * length;
        };
        expect(bears(0.08)).toBeGreaterThanOrEqual(bears(0.04));
      }),
      runs,
    );
  });

  test("combinations: plain under allowable stress, more than the load under partial factors, each with its clause", () => {
    const strength = code.combinations.filter((c) => c.state === "strength");
    const withLive = strength.filter((c) => c.live > 0);
    expect(withLive.length).toBeGreaterThan(0);
    expect(strength.some((c) => c.live === 0 && c.duration === "permanent")).toBe(true);
    expect(code.combinations.some((c) => c.state === "service" && c.dead === 1 && c.live === 1)).toBe(true);
    for (const c of withLive)
      if (code.safety === "allowable-stress") expect([c.dead, c.live]).toEqual([1, 1]);
      else expect(Math.min(c.dead, c.live)).toBeGreaterThan(1.2);
    for (const c of code.combinations) expect(c.source.at).toMatch(/\d/);
    for (const limit of code.deflection_limits) expect(limit.is_preference).toBe(true);
  });

  test("creep: what lasts bends more, wet wood more than dry", () => {
    const [wet, dry] = [code.creep(true), code.creep(false)];
    expect(dry.dead).toBeGreaterThan(1);
    expect(wet.dead).toBeGreaterThan(dry.dead);
    expect(wet.live).toBeGreaterThanOrEqual(1);
    expect(wet.live).toBeLessThanOrEqual(wet.dead);
  });

  test("unknown words are problems that name the field and the known ids, all at once", () => {
    const { species, grade, sizes } = ordinaryWood(code);
    const problemsOf = (...words: readonly [string, string, string]) => {
      const found = code.member(tables, ...words);
      return found.ok ? [] : found.problems;
    };
    const size = sizes[0];
    expect(problemsOf(species, grade, size)).toEqual([]);
    const all = problemsOf("balsa", "best", "2x9");
    expect(all.map((p) => p.place)).toEqual(["species", "grade", "size"]);
    expect(all[0]!.mend).toContain(species);
    expect(all[1]!.mend).toContain(grade);
    expect(all[2]!.mend).toContain(size);
    expect(problemsOf(species, "best", size).map((p) => p.place)).toEqual(["grade"]);
  });

  test("wood graded for another code is refused by name, never converted", () => {
    for (const other of designCodes.filter((c) => c.id !== code.id)) {
      const { species, grade } = ordinaryWood(other);
      const found = code.member(tables, species, grade, ordinaryWood(code).sizes[0]);
      const problems = found.ok ? [] : found.problems;
      expect(problems.map((p) => p.place)).toEqual(["species", "grade"]);
      for (const p of problems) {
        expect(p.message).toContain(`graded for another design code than "${code.id}"`);
        expect(p.mend).toContain(
          p.place === "species" ? ordinaryWood(code).species : ordinaryWood(code).grade,
        );
      }
      const foreign = membersOf(other)[0]!;
      expect(() => code.strength(foreign, { ...dryAlone, duration: "ten-years" })).toThrow(
        "member-of-another-code",
      );
    }
  });
});

test("an unknown code is a problem that lists both", () => {
  const found = designCode("ec5-2010");
  expect(found).toMatchObject({ ok: false, problems: [{ place: "code", value: "ec5-2010" }] });
  expect(found.ok ? "" : found.problems[0]!.mend).toBe("Use one of: us-asd-2018, ec5-2004.");
});
