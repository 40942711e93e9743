import { describe, expect, test } from "vitest";
import {
  checkedPlan,
  checksInput,
  levelSite,
  roundMasses,
  stoutKit,
  straightLayout,
  visitOf,
} from "../../test/support/straight-walkway.ts";
import type { PlatformPart } from "../layout/index.ts";
import { runChecks } from "./index.ts";
import type { CheckKind, CheckResult } from "./types.ts";

const ofKind = (results: readonly CheckResult[], kind: CheckKind): CheckResult[] =>
  results.filter((r) => r.kind === kind);

describe("all checks of a straight walkway", () => {
  const input = checksInput();
  const results = runChecks(input);

  test("every kind but the platform is there, each id once, every result with a rule and a caution", () => {
    const kinds = new Set(results.map((r) => r.kind));
    for (const kind of [
      "stringer-bending",
      "stringer-shear",
      "stringer-deflection",
      "cross-piece",
      "deck",
      "seat",
      "bearing",
      "uplift",
      "lifting",
    ] as const)
      expect(kinds).toContain(kind);
    expect(kinds.has("platform")).toBe(false);
    expect(new Set(results.map((r) => r.id)).size).toBe(results.length);
    for (const r of results) {
      expect(r.rule.title).not.toBe("");
      expect(r.caution).not.toBe("");
      expect(r.parts.length).toBeGreaterThan(0);
    }
  });

  test("one result per distinct length, shared by the modules of that length", () => {
    expect(ofKind(results, "stringer-bending").map((r) => r.parts)).toEqual([["M3"], ["M2"], ["M0", "M1"]]);
  });

  test("the same input gives the same bytes", () => {
    expect(JSON.stringify(runChecks(checksInput()))).toBe(JSON.stringify(results));
  });

  test("every failure says what is carried and what would change it; every pass names no change", () => {
    for (const r of results)
      if (r.status === "fail") expect(r.backwards.change, r.id).toMatch(/Would pass|Needs|No /);
      else if (r.status === "pass") expect(r.backwards.change, r.id).toBeNull();
  });

  test("no result speaks of safe or approved, and none holds a number that is not finite", () => {
    expect(JSON.stringify(results)).not.toMatch(/\bsafe\b|\bapproved\b|null,"unit"/);
    for (const r of results)
      if ("working" in r)
        for (const step of r.working) expect(Number.isFinite(step.value), `${r.id} ${step.id}`).toBe(true);
  });

  test("every joint is held by its own ground and every module by the flood", () => {
    expect(
      ofKind(results, "bearing")
        .flatMap((r) => r.parts)
        .sort(),
    ).toEqual(["J0", "J1", "J2", "J3", "J4"]);
    expect(
      ofKind(results, "uplift")
        .flatMap((r) => r.parts)
        .sort(),
    ).toEqual(["M0", "M1", "M2", "M3"]);
  });

  test("with a catch board, joints between parts seat on it; the ends of the walkway seat on the sill", () => {
    const seats = ofKind(results, "seat").filter((r) => r.id.startsWith("seat.length"));
    expect(seats.map((r) => [r.id, r.parts])).toEqual([
      ["seat.length.sill.open-crate", ["J0", "J4"]],
      ["seat.length.catch-board", ["J1", "J2", "J3"]],
    ]);
  });
});

test("identical joints share one result", () => {
  const layout = straightLayout([2.4384, 2.4384, 2.4384, 2.4384]);
  const bearing = ofKind(runChecks(checksInput({ layout })), "bearing");
  expect(bearing.map((r) => r.parts)).toEqual([
    ["J0", "J4"],
    ["J1", "J2", "J3"],
  ]);
});

test("unknown strength: bearing and uplift cannot be checked, and no such result is a pass", () => {
  const plan = checkedPlan({ ground: { su_kpa: null, source: "not measured", readings: [], safety: 2 } });
  const results = runChecks(checksInput({ plan }));
  for (const kind of ["bearing", "uplift"] as const)
    expect(new Set(ofKind(results, kind).map((r) => r.status))).toEqual(new Set(["cannot-check"]));
});

test("a reading near one joint counts for it alone", () => {
  const site = levelSite({ readings: [{ x: -10, y: 0, depth_m: 0.3, su_kpa: 30, source: "vane" }] });
  const bearing = ofKind(runChecks(checksInput({ site })), "bearing");
  const capacity = (id: string): number => {
    const r = bearing.find((b) => b.parts.includes(id))!;
    return r.status === "pass" || r.status === "fail" ? r.capacity : NaN;
  };
  expect(capacity("J0") / capacity("J4")).toBeCloseTo(30 / 8, 9);
});

test("no flood level: uplift does not apply; a flood level of another datum or an unknown one cannot be checked", () => {
  const dry = ofKind(runChecks(checksInput({ plan: checkedPlan({ flood_level: null }) })), "uplift");
  expect(new Set(dry.map((r) => r.status))).toEqual(new Set(["not-applicable"]));
  const lost = ofKind(runChecks(checksInput({ plan: checkedPlan({ flood_level: "spring" }) })), "uplift");
  expect(lost.map((r) => r.status)).toEqual(["cannot-check"]);
  const level = {
    id: "storm",
    name: "Storm",
    role: "flood",
    basis: "recorded",
    z_m: 2,
    datum: "another",
    source: "x",
    epoch: "x",
  } as const;
  const other = ofKind(runChecks(checksInput({ site: levelSite({ levels: [level] }) })), "uplift");
  expect(other[0]?.status === "cannot-check" && other[0].missing[0]).toMatch(
    /site's datum "site benchmark".*"another"/,
  );
});

test("timber that the tables lack: each kind says so, none passes", () => {
  const kit = { ...stoutKit, lumber: { ...stoutKit.lumber, species: "balsa" } };
  const results = runChecks(checksInput({ plan: checkedPlan({ kit }) }));
  expect(results.map((r) => r.kind)).toHaveLength(30);
  expect(new Set(results.map((r) => r.status))).toEqual(new Set(["cannot-check"]));
  expect(results[0]!.status === "cannot-check" && results[0]!.missing[0]).toMatch(/balsa.*southern-pine/);
});

test("a rated support is held against its rating by its heaviest joint", () => {
  const supports = stoutKit.supports.map((s) => ({ ...s, rating_n: 2000 }));
  const results = runChecks(checksInput({ plan: checkedPlan({ kit: { ...stoutKit, supports } }) }));
  const rating = results.find((r) => r.id === "bearing.rating.open-crate")!;
  expect(rating.status).toBe("fail");
  expect(rating.parts).toEqual(["J0", "J1", "J2", "J3", "J4"]);
});

test("a platform brings its own checks: stringers, cross pieces, deck", () => {
  const layout = straightLayout([2.4384, 2.4384]);
  const platform: PlatformPart = {
    id: "P1",
    kind: "platform",
    use: "turning",
    branch: "B1",
    side_m: 1.8288,
    x: 5.8,
    y: 0,
    heading_deg: 90,
    from: "J2",
    exits: { ahead: "J3", left: "J4", right: "J5" },
    along_m: 4.8768,
    outline: [],
    bridges: [],
  };
  const joints = ["J3", "J4", "J5"].map((id) => ({ ...layout.joints[2]!, id }));
  const withPlatform = {
    ...layout,
    joints: [...layout.joints, ...joints],
    parts: [...layout.parts, platform],
  };
  const results = runChecks(checksInput({ layout: withPlatform }));
  const ids = ofKind(results, "platform").map((r) => r.id);
  expect(ids).toEqual(
    expect.arrayContaining([
      "platform.stringer-bending",
      "platform.stringer-shear",
      "platform.stringer-deflection",
      "platform.cross-piece.bending",
      "platform.cross-piece.screws",
      "platform.deck.strand",
    ]),
  );
  expect(results.find((r) => r.kind === "uplift" && r.parts.includes("P1"))!.status).toBe("pass");
  const atPlatform = ofKind(results, "bearing").find((r) => r.parts.includes("J2"))!;
  expect(atPlatform.status).not.toBe("cannot-check");
});

test("heavier visits never lower a utilisation of stringers, seats or ground", () => {
  const use = (person_kg: number, people: number): Map<string, number> => {
    const plan = checkedPlan({ visits: [visitOf({ person_kg, people })] });
    const judged = runChecks(checksInput({ plan, masses: roundMasses }));
    return new Map(judged.flatMap((r) => ("utilisation" in r ? [[r.id, r.utilisation] as const] : [])));
  };
  const light = use(70, 2);
  for (const heavy of [use(120, 2), use(70, 5), use(180, 4)])
    for (const [id, u] of light) expect(heavy.get(id)!, id).toBeGreaterThanOrEqual(u * (1 - 1e-9));
});
