import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkedPlan, checksInput, stoutKit, straightLayout } from "../../test/support/straight-walkway.ts";
import { ec52004, usAsd2018 } from "../codes/index.ts";
import { M_PER_IN, N_PER_LBF, qty } from "../units/index.ts";
import { checkCatchBoard, checkJointScrews, type JointPiece } from "./catch-board.ts";
import { checkBoardHold, type BoardHold } from "./deck-pull.ts";
import { runChecks } from "./index.ts";
import type { BeamPattern } from "./support-beam.ts";
import type { CheckResult } from "./types.ts";

/*
 * Southern Pine No.2, wet, by hand in inches and pounds.
 * Catch board 2x8 flat over a bay of 20 in; the next module's end brings 300 lb of people and 20 lb of own weight by
 *   each of two stringers. Moment 640 x 20 / 8 = 1600 lb in. Fb 925 x Cfu 1.15 = 1063.75 psi (925 <= 1150: CM 1);
 *   S 7.25 x 1.5^2 / 6 = 2.71875; 2892.1 lb in: 0.5532. Shear 320 lb; 2/3 x 169.75 x 10.875 = 1230.7 lb: 0.2600.
 * Deck boards 2x6, someone of 300 lb 3 in beyond the outer stringer, the next 20 in away: 300 x 3 / 20 = 45 lb.
 *   Two smooth 8d nails, 0.131 x 2.5: 1 in in the stringer; 1380 x 0.55^2.5 x 0.131 = 40.556 lb/in, 0.25 as the wood
 *   wets and dries: 2 x 10.139 = 20.28 lb, 2.219 times used; five hold 50.7 lb.
 *   Two #10 x 3 screws: thread 1.5 in in the stringer, 2850 x 0.55^2 x 0.190 x 1.5 x 0.7 = 171.99 lb each, but the head
 *   pulls through: 1725 pi 0.362^2 x 0.55^2 x 0.7 = 150.4 lb each: 300.8 lb, used 0.1496.
 * Flood over the boards: 30 x 5.5 x 1.5 in = 4055.9 cm3 at 1000 x 0.55 x 1.19 / (1 + 0.009 x 0.55 x 19) = 598.2 kg/m3
 *   (62.4 pcf gives 598.5) in water of 1010: 411.6 x 0.0040559 x 9.80665 = 16.37 N, half of it on each of two bearings.
 */
const lumber = { species: "southern-pine", grade: "no2", incised: false };
const us = { tables, code: usAsd2018, units: "us" } as const;
const base = {
  id: "fastening.asked",
  kind: "fastening",
  title: "Asked",
  parts: [],
  rule: usAsd2018.rule("screws"),
  caution: "",
} as const;
type Judged = Extract<CheckResult, { status: "pass" | "fail" }>;
function judged(result: CheckResult | undefined): Judged {
  if (!result || (result.status !== "pass" && result.status !== "fail"))
    throw new Error(JSON.stringify(result));
  return result;
}
const near = (value: number, expected: number, within = 0.001): void =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThan(within);

const end = (live_lb: number): BeamPattern => ({
  name: "by hand",
  explain: () => undefined,
  loads: [-11, 11].map((at) => ({
    at_m: at * M_PER_IN,
    dead_n: 20 * N_PER_LBF,
    live_n: live_lb * N_PER_LBF,
  })),
});
const board: JointPiece = {
  name: "catch board",
  size: "2x8",
  lumber,
  bay_m: 20 * M_PER_IN,
  screw: "screw-10x3",
  screws_per_end: 2,
  side_m: 1.5 * M_PER_IN,
};

describe("catch board 2x8 by hand (NDS 2018)", () => {
  const [bending, shear] = checkCatchBoard(board, [end(300)], () => base, us);
  test("bending flat across the bay: 1600 of 2892.1 lb in", () =>
    near(judged(bending).utilisation, 1600 / 2892.1));
  test("shear: 320 of 1230.7 lb", () => near(judged(shear).utilisation, 320 / 1230.7));
  test("screws in end grain: the count that is named passes", () => {
    const r = judged(checkJointScrews(board, [end(100)], base, us));
    expect(r.status).toBe("fail");
    const count = Number(/Would pass with (\d+) screws/.exec(r.backwards.change ?? "")?.[1]);
    expect(checkJointScrews({ ...board, screws_per_end: count }, [end(100)], base, us).status).toBe("pass");
    expect(checkJointScrews({ ...board, screws_per_end: count - 1 }, [end(100)], base, us).status).toBe(
      "fail",
    );
  });
  test("Eurocode 5 counts on nothing in wet end grain, and says why (8.3.1.2, service class 3)", () => {
    const wood = { species: "softwood", grade: "c24", incised: false };
    const r = judged(
      checkJointScrews({ ...board, lumber: wood }, [end(100)], base, {
        tables,
        code: ec52004,
        units: "metric",
      }),
    );
    expect(r.capacity).toBe(0);
    expect(r.backwards.carries).toContain("end grain");
  });
});

const hold: BoardHold = {
  size: "2x6",
  stringer: "2x8",
  lumber,
  length_m: 30 * M_PER_IN,
  bearings: 2,
  screw: "nail-8d",
  screws_per_bearing: 2,
  beyond_m: 3 * M_PER_IN,
  next_m: 20 * M_PER_IN,
  flood_m: 0,
  water_kg_m3: 1010,
  gravity: qty(0.55, "1"),
};

describe("boards held down by hand (NDS 2018 12.2)", () => {
  test("two 8d nails under 45 lb hold 20.28 lb; five that are named hold it", () => {
    const r = judged(checkBoardHold(hold, [], base, us));
    near(r.demand / N_PER_LBF, 45);
    near(r.capacity / N_PER_LBF, 20.28);
    expect(r.backwards.change).toBe("Would pass with 5 such screws at each bearing.");
    expect(checkBoardHold({ ...hold, screws_per_bearing: 5 }, [], base, us).status).toBe("pass");
  });
  test("two #10 x 3 screws: the heads pull through at 300.8 lb", () => {
    const r = judged(checkBoardHold({ ...hold, screw: "screw-10x3" }, [], base, us));
    near(r.capacity / N_PER_LBF, 300.8);
    expect(r.governs).toContain("head pulls through");
  });
  test("a flood over the boards adds 8.19 N on each bearing", () => {
    const wet = judged(checkBoardHold({ ...hold, flood_m: 1, beyond_m: 0 }, [], base, us));
    near(wet.demand, 8.19, 0.002);
    const both = judged(checkBoardHold({ ...hold, flood_m: 1 }, [], base, us));
    near(both.demand, 8.19 + 45 * N_PER_LBF);
    const half = judged(checkBoardHold({ ...hold, flood_m: 0.75 * M_PER_IN, beyond_m: 0 }, [], base, us));
    near(half.demand, 8.19 / 2, 0.002);
  });
  test("nobody outside and no flood: nothing pulls", () =>
    expect(checkBoardHold({ ...hold, beyond_m: 0 }, [], base, us).status).toBe("not-applicable"));
  test("a clip has no known pull: cannot be checked, never a pass", () =>
    expect(checkBoardHold({ ...hold, screw: "mesh-clip" }, [], base, us).status).toBe("cannot-check"));
  test("standing farther out, or deeper water, never lowers the utilisation; one screw more never raises it", () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.3, noNaN: true }),
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        fc.integer({ min: 1, max: 5 }),
        (beyond_m, more, flood_m, screws_per_bearing) => {
          const use = (change: Partial<BoardHold>): number =>
            judged(
              checkBoardHold({ ...hold, beyond_m, flood_m, screws_per_bearing, ...change }, [], base, us),
            ).utilisation;
          expect(use({ beyond_m: beyond_m + more })).toBeGreaterThanOrEqual(use({}) - 1e-12);
          expect(use({ flood_m: flood_m + more })).toBeGreaterThanOrEqual(use({}) - 1e-12);
          expect(use({ screws_per_bearing: screws_per_bearing + 1 })).toBeLessThanOrEqual(use({}) + 1e-12);
        },
      ),
    ));
});

describe("in a plan", () => {
  const results = runChecks(checksInput());
  const ids = (kind: string): string[] => results.filter((r) => r.kind === kind).map((r) => r.id);
  test("supports and fastening of the walkway are judged, each id once, both for all parts", () => {
    expect(ids("supports")).toContain("supports.sill-bending.open-crate");
    expect(ids("supports")).toContain("supports.post.open-crate");
    expect(ids("fastening")).toEqual([
      "fastening.catch-board",
      "fastening.catch-board-shear",
      "fastening.catch-board-screws",
      "fastening.start-screws",
      "fastening.deck-uplift",
    ]);
  });
  test("a plain end has no catch board; one module alone meets nothing", () => {
    const plain = checkedPlan({ kit: { ...stoutKit, end: { kind: "plain" } } });
    const without = runChecks(checksInput({ plan: plain })).filter((r) => r.kind === "fastening");
    expect(without.map((r) => r.id)).toEqual(["fastening.deck-uplift"]);
    const alone = runChecks(checksInput({ layout: straightLayout([3.6576]) }));
    expect(alone.find((r) => r.id === "fastening.catch-board")?.status).toBe("not-applicable");
  });
});
