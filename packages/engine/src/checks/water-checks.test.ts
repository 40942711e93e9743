import { describe, expect, test } from "vitest";
import fc from "fast-check";
import { crateKit, flooded, found, judged, type Anchor } from "../../test/support/flooded-walkway.ts";
import { levelSite } from "../../test/support/straight-walkway.ts";

/*
 * By hand: a module of 8 ft of southern pine (G 0.55) at 19 %: 1000 x 0.55 x 1.19 / (1 + 0.009 x 0.55 x 19) = 598.2 kg/m3.
 *   2 stringers 38.1 x 184.15 mm, 2.4384 m    0.034 217 m3, from 0 to 184.15 mm over the underside
 *   1 catch board 235 x 38.1 x 482.6 mm       0.004 320 m3, from 107.95 to 146.05 mm
 *   4 cross pieces                            0.007 472 m3, from 146.05 to 184.15 mm
 *   timber 0.046 009 m3, 27.52 kg; mesh 5.20 kg; together 32.73 kg, which 0.032 403 m3 of water of 1010 kg/m3 carry.
 * At 146.05 mm: 0.185 806 x 0.146 05 + 0.004 320 = 0.031 457 m3; what is missing, 0.000 946 m3, over the area of stringers
 * and cross pieces 0.185 806 + 0.196 115 m2 is 2.5 mm: it floats at 148.5 mm over its underside at 1.3 m: 1.4485 m.
 *
 * At a joint between two modules one module and one crate (0.015 691 m3) float, 0.061 700 m3 of timber and 5.20 kg of steel:
 *   lift 1010 x 9.80665 x (0.061 700 + 5.2026 / 7850) = 617.7 N; weight 42.11 kg, 413.0 N
 *   asked of the stakes 1.5 x 617.7 - 0.9 x 413.0 = 554.8 N
 * Current of 0.4 m/s, 0.5 rho V^2 = 80.8 N/m2, on each stringer 2.4384 x 0.18415 m with Cd 2.06 (ratio 0.207, between 1.9 at
 * 0.1 and 2.5 at 0.5): 74.75 N each.
 */
const told = { speed_m_s: 0.4, speed_source: "drifting straw", stakes: "loosened" } as const;

describe("a light module in a flood without anchors", () => {
  const proof = flooded(told);

  test("floats at the level worked by hand", () => {
    expect(proof.flood?.first_floats?.part).toBe("M0");
    expect(proof.flood!.first_floats!.z_m).toBeCloseTo(1.4485, 4);
    const first = judged(proof, "flood.floats-first");
    expect(first.status).toBe("fail");
    expect(first.backwards.carries).toMatch(/M0 floats first, once the water stands at 1\.45 m/);
  });

  test("its anchors are asked for the pull and push worked by hand, and what would hold is named", () => {
    const joint = proof.flood!.anchors.find((a) => a.joint === "J1")!;
    expect(joint.pull_n).toBeCloseTo(554.8, 1);
    const drag = judged(proof, "flood.drag.storm");
    const stringers = drag.working.find((s) => s.id === "flood.drag.force" && s.note === "2 of stringer")!;
    expect(stringers.value).toBeCloseTo(74.75, 1);
    expect(joint.push_n).toBeCloseTo(drag.demand, 6);
    const anchor = judged(proof, "anchor.J1");
    expect(anchor.status).toBe("fail");
    expect(anchor.backwards.change).toMatch(/^Would pass with [2-8] stakes/);
  });
});

/** The first proposal of a result's words, as stakes of a kit: the length in the ground is the length less 300 mm. */
function proposedIn(change: string): NonNullable<Anchor> {
  const match = /with (\d) stakes (\S+) of (\d+) ft/.exec(change)!;
  const length_mm = Number(match[3]) * 304.8;
  return {
    kind: "stake",
    size: match[2]!,
    length_mm,
    embedment_mm: length_mm - 300,
    count: Number(match[1]),
  };
}

const floods = [
  ["current", told],
  [
    "current, wrack and wave",
    { ...told, wrack: { thickness_m: 0.1, clogged_share: 0.5 }, wave: { height_m: 0.15, period_s: 2 } },
  ],
] as const;

test.each(floods)("with the proposed stakes it holds as promised: %s", (_, flood) => {
  const bare = flooded(flood);
  const anchor = proposedIn(judged(bare, "anchor.J1").backwards.change!);
  const staked = flooded(flood, anchor);
  for (const id of ["anchor.J0", "anchor.J1", "flood.floats-first"])
    expect(judged(staked, id).status, id).toBe("pass");
  for (const check of staked.checks.filter((c) => c.kind === "uplift"))
    expect(check.status, check.id).toBe("pass");
  expect(judged(staked, "anchor.J1").backwards.carries).toMatch(
    /Proof test: pull one stake straight up with/,
  );
  const fewer = flooded(flood, { ...anchor, count: anchor.count - 1 });
  expect(judged(fewer, "anchor.J1").utilisation).toBeGreaterThan(judged(staked, "anchor.J1").utilisation);
});

const stakes: Anchor = { kind: "stake", size: "2x4", length_mm: 2000, embedment_mm: 1700, count: 4 };

test("more speed never lowers a demand of current, log or anchors", () => {
  const speed = fc.double({ min: 0, max: 2.5, noNaN: true });
  fc.assert(
    fc.property(speed, speed, (a, b) => {
      const [slow, fast] = [Math.min(a, b), Math.max(a, b)].map((speed_m_s) =>
        flooded({ ...told, speed_m_s, log_kg: 20 }, stakes),
      );
      for (const { joint, push_n, utilisation } of slow!.flood!.anchors) {
        const more = fast!.flood!.anchors.find((f) => f.joint === joint)!;
        expect(more.push_n).toBeGreaterThanOrEqual(push_n * (1 - 1e-9));
        expect(more.utilisation).toBeGreaterThanOrEqual(utilisation * (1 - 1e-9));
      }
      expect(judged(fast!, "flood.log").demand).toBeGreaterThanOrEqual(judged(slow!, "flood.log").demand);
    }),
    { numRuns: 8 },
  );
});

test("loosened stakes are never better than set ones, and fresh ones hold least of all when pulled", () => {
  const [set, loosened, fresh] = (["set", "loosened", "fresh"] as const).map((state) =>
    flooded({ ...told, stakes: state }, stakes),
  );
  for (const id of ["anchor.J0", "anchor.J1"])
    expect(judged(loosened!, id).utilisation).toBeGreaterThan(judged(set!, id).utilisation);
  const hold = (p: typeof set): number => judged(p!, "uplift.M0").capacity;
  expect(hold(loosened)).toBeLessThan(hold(set));
  expect(hold(fresh)).toBeLessThan(hold(loosened));
});

test("a wave and wrack only add to the push, and the wave closes the walkway earlier", () => {
  const [calm, rough] = floods.map(([, flood]) => flooded(flood, stakes));
  const push = (p: typeof calm): number => p!.flood!.anchors.find((a) => a.joint === "J1")!.push_n;
  expect(push(rough)).toBeGreaterThan(push(calm));
  expect(judged(rough!, "flood.wave.storm").demand).toBeGreaterThan(0);
  expect(calm!.flood!.closes_at.z_m).toBeCloseTo(1.49, 9);
  expect(rough!.flood!.closes_at.z_m).toBeCloseTo(1.49 - 0.075, 9);
});

describe("what is not told", () => {
  test("no speed: one result of the flood and one of the anchors say so, with both bounds of the flood rule", () => {
    const proof = flooded({ speed_m_s: null });
    const speed = found(proof, "flood.speed");
    expect(speed.status === "cannot-check" && speed.missing).toHaveLength(1);
    expect(speed.status === "cannot-check" && speed.missing[0]).toMatch(
      /speed of the water.*between 1\.00 and 3\.13 m\/s/,
    );
    expect(found(proof, "anchor.all").status).toBe("cannot-check");
    expect(proof.checks.some((c) => c.id.startsWith("flood.drag"))).toBe(false);
    expect(proof.flood!.cases[0]!.speeds_m_s[1]).toBeCloseTo(Math.sqrt(9.80665), 9);
    expect(found(proof, "flood.dammed").status).not.toBe("cannot-check");
  });

  test("wave, wrack and log: not applicable, in words", () => {
    const proof = flooded(told);
    for (const id of ["flood.wave", "flood.wrack", "flood.log"]) {
      const result = found(proof, id);
      expect(result.status === "not-applicable" && result.because, id).toMatch(/^not told; /);
    }
  });

  test("no flood level: a dry site, and nothing to draw", () => {
    const proof = flooded(told, null, { flood_level: null });
    expect(proof.flood).toBeNull();
    expect(found(proof, "flood.all").status).toBe("not-applicable");
    expect(found(proof, "anchor.all").status).toBe("not-applicable");
  });

  test("no strength of the ground: stakes cannot be checked against the push", () => {
    const ground = { su_kpa: null, source: "not measured", readings: [], safety: 2 };
    const proof = flooded(told, stakes, { ground });
    for (const id of ["flood.drag.storm", "anchor.J0", "flood.floats-first", "handling.removal.open-crate"])
      expect(found(proof, id).status, id).toBe("cannot-check");
  });

  test("a level on another datum is named, and the others are checked all the same", () => {
    const [storm] = levelSite().levels;
    const levels = [storm!, { ...storm!, id: "old", name: "Old flood", datum: "another" }];
    const proof = flooded({ ...told, levels: ["old"] }, stakes, {}, levels);
    const lost = found(proof, "flood.level.old");
    expect(lost.status === "cannot-check" && lost.missing[0]).toMatch(
      /site's datum "site benchmark".*"another"/,
    );
    expect(judged(proof, "flood.drag.storm").status).toBe("pass");
  });
});

test("a lower level asks no more of the anchors, and stays under the deck without a push on it", () => {
  const [storm] = levelSite().levels;
  const levels = [storm!, { ...storm!, id: "spring", name: "Spring tide", z_m: 1.2 }];
  const both = flooded({ ...told, levels: ["spring"] }, stakes, {}, levels);
  expect(both.flood!.cases.map((c) => c.id)).toEqual(["storm", "spring"]);
  expect(judged(both, "flood.drag.spring").demand).toBeLessThan(judged(both, "flood.drag.storm").demand);
  const high = flooded(told, stakes, {}, levels);
  expect(judged(both, "anchor.J1").utilisation).toBeCloseTo(judged(high, "anchor.J1").utilisation, 12);
});

test("a crest adds to the pull while its trough lies under the deck, and no more once all of the wave runs over it", () => {
  const [storm] = levelSite().levels;
  const pull = (z_m: number, wave: { height_m: number; period_s: number } | null): number =>
    flooded({ ...told, wave }, stakes, {}, [{ ...storm!, z_m }]).flood!.anchors.find((a) => a.joint === "J1")!
      .pull_n;
  const wave = { height_m: 0.15, period_s: 2 };
  expect(pull(1.45, wave)).toBeGreaterThan(pull(1.45, null));
  expect(pull(2, wave)).toBe(pull(2, null));
});

test("the dammed share is that of the boxes: stringers, deck, projecting catch boards and crates over the section of the water", () => {
  const proof = flooded(told);
  const { modules, line } = { modules: 3, line: 3 * 2.4384 };
  const upturn = 0.0694 * 2.4384 * (1 - 0.87);
  const catchBoard = 0.1016 * 0.0381;
  const edge = 2.4384 * 0.19095 + upturn + catchBoard;
  const crate = 0.6096 * 0.0381 + 0.6096 * 0.0889 + 2 * 0.0889 * 0.1349 + 0.1397 * 0.0381;
  expect(proof.flood!.dammed_share!).toBeCloseTo((modules * edge + 4 * crate) / (line * 1), 3);
});

test("the same input gives the same bytes, and no number in it is lost", () => {
  const text = JSON.stringify(flooded(floods[1][1], stakes));
  expect(JSON.stringify(flooded(floods[1][1], stakes))).toBe(text);
  expect(text).not.toMatch(/NaN|Infinity/);
  expect(crateKit(stakes).supports[0]!.anchor).toEqual(stakes);
});
