import { expect, test } from "vitest";
import {
  buoyantForce,
  dragForce,
  floatLevel,
  flotationSafety,
  freshWater,
  selfWeightFactor,
  timberDensity,
  weightOfPieces,
  type FloodPiece,
} from "../flood/index.ts";
import { metres, pascals, qty } from "../units/index.ts";
import { pullOut, stakesNeeded, type StakeDemand } from "./index.ts";

/*
 * A light module by hand. Softwood of gravity 0.42 at 19 %: 1000 x 0.42 x 1.19 / (1 + 0.009 x 0.42 x 19) = 466.3 kg/m3.
 *   2 stringers 38 x 140 mm, 2.4 m, from 300 to 440 mm over the ground    0.025 536 m3
 *   15 boards 25 x 140 mm, 0.6 m, from 440 to 465 mm                      0.031 500 m3
 *   together 0.057 036 m3, 26.596 kg, 260.8 N
 * It floats when 26.596 kg of water are displaced: all of the stringers (25.536) and 1.060 of the 31.500 of the boards,
 * 440 + 25 x 1.060 / 31.500 = 440.8 mm.
 * Wholly under: lift 57.036 x 9.80665 = 559.3 N; asked for 1.5 x 559.3 = 839.0, of it 0.9 x 260.8 = 234.7 by weight,
 * so 604.3 N by stakes, which is 1.5 x 402.9.
 * Flow of 0.5 m/s on a side of 2.4 x 0.165 m: 0.5 x 1000 x 1.98 x 0.396 x 0.25 = 98.0 N at 382.5 mm.
 * Round stakes of 50 mm in ground of 8 kPa, loosened, 350 mm left over the ground, ratio 2 sideways:
 *   1.5 m: grip 0.95 m, 8000 x pi x 0.05 x 0.95 / 2 = 596.9 N, 604.3 / 596.9 = 1.012 stakes;
 *          q 9 x 4000 x 0.05 = 1800 N/m, f = 0.2036 m, 366.4 N, 2 x 98.0 / 366.4 = 0.535 stakes; 1.547: two
 *   1.2 m: 408.4 N, 1.480; f = 0.1129 m, 203.2 N, 0.965; 2.445: three, with more timber
 *   0.9 m: 219.9 N, 2.748; f = 0.0399 m, 71.8 N, 2.729; 5.477: six
 */
const rho = timberDensity(qty(0.42, "1"), "dry-19");
const solid = (name: string, bottom_m: number, top_m: number, volume_m3: number): FloodPiece => ({
  name,
  bottom_m,
  top_m,
  volume_m3,
  density_kg_m3: rho,
});
const module = [solid("stringers", 0.3, 0.44, 0.025_536), solid("boards", 0.44, 0.465, 0.0315)];
const rho_w = freshWater({});
const weight = weightOfPieces(module);
const FLOOD_M = 0.8;

test("hand case: without anchors the module floats at 440.8 mm over the ground", () => {
  expect(rho).toBeCloseTo(466.3, 1);
  expect(weight).toBeCloseTo(260.8, 1);
  expect(floatLevel(module, rho_w)! * 1000).toBeCloseTo(440.8, 1);
});

const lift = buoyantForce(module, FLOOD_M, rho_w);
const byStakes = flotationSafety({}) * lift - selfWeightFactor({}) * weight;
const drag = dragForce({ rho_w, C_d: qty(1.98, "1"), A: qty(2.4 * 0.165, "m2"), V: qty(0.5, "m/s") });
const demand: StakeDemand = {
  uplift_n: byStakes / flotationSafety({}),
  horizontal_n: drag,
  e_m: 0.3825,
  above_m: 0.35,
  su: pascals(8000),
  state: "loosened",
  sway: true,
  safety_pull: flotationSafety({}),
  safety_lateral: 2,
};
const section = { shape: "round", diameter: metres(0.05) } as const;
const stakes = { name: "round 50", section, lengths_m: [0.9, 1.2, 1.5], bending_pa: pascals(10e6) };

test("hand case: two stakes of 1.5 m are proposed, with the utilisations worked by hand", () => {
  expect(lift).toBeCloseTo(559.3, 1);
  expect(byStakes).toBeCloseTo(604.3, 1);
  expect(drag).toBeCloseTo(98, 1);
  const { sets } = stakesNeeded([stakes], demand, 12);
  expect(sets.map((s) => [s.length_m, s.count])).toEqual([[1.5, 2]]);
  expect(sets[0]!.pull).toBeCloseTo(1.012 / 2, 3);
  expect(sets[0]!.lateral).toBeCloseTo(0.535 / 2, 3);
});

test.each([
  [1.2, 3, 2.445],
  [0.9, 6, 5.477],
] as const)("hand case: of stakes of %f m it takes %i", (length, count, whole) => {
  const { sets } = stakesNeeded([{ ...stakes, lengths_m: [length] }], demand, 12);
  expect(sets[0]!.count).toBe(count);
  expect(sets[0]!.combined * count).toBeCloseTo(whole, 2);
});

test("hand case: with the proposed stakes the module stays down, with the ratio of the rule", () => {
  const one = pullOut({ section, embedment: metres(1.5 - 0.35), su: pascals(8000), state: "loosened" });
  const hold = { weight_share: selfWeightFactor({}), hold_n: 2 * one };
  expect(floatLevel(module, rho_w, hold)).toBeNull();
  expect((hold.hold_n + hold.weight_share * weight) / lift).toBeGreaterThanOrEqual(flotationSafety({}));
  const single = { ...hold, hold_n: one };
  expect((single.hold_n + single.weight_share * weight) / lift).toBeLessThan(flotationSafety({}));
});
