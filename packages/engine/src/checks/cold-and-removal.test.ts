import { expect, test } from "vitest";
import { flooded, found, judged, type Anchor } from "../../test/support/flooded-walkway.ts";

const stakes: Anchor = { kind: "stake", size: "2x4", length_mm: 2000, embedment_mm: 1700, count: 4 };
const winter = {
  laying: { from: "2027-04-05", to: "2027-04-16", carry_m: 60, carriers: 2 },
  removal: { by: "2028-04-01" },
};

test("ice: not told cannot be checked; none, or only months it does not stand in, is not applicable", () => {
  expect(found(flooded({ ice_months: null }, stakes, winter), "cold.ice").status).toBe("cannot-check");
  expect(found(flooded({ ice_months: [] }, stakes, winter), "cold.ice").status).toBe("not-applicable");
  expect(found(flooded({ ice_months: [1, 2], ice_m: 0.1 }, stakes), "cold.ice").status).toBe(
    "not-applicable",
  );
});

/*
 * By hand: a 2x4 stake, girth 2 x (88.9 + 38.1) = 254 mm, is a round post of 80.85 mm; D / h 0.8085,
 * stress 420 - 320 x (0.8085 - 0.5) / 6 = 403.5 kPa, times 254 mm x 100 mm: 10.25 kN each, four of them 41.0 kN.
 */
test("ice in a month it stands in: frozen in, fails, with the lift by hand and the latest day to lift it out", () => {
  const ice = judged(flooded({ ice_months: [1, 2], ice_m: 0.1 }, stakes, winter), "cold.ice");
  expect(ice.status).toBe("fail");
  expect(ice.demand / 1000).toBeCloseTo(41, 1);
  expect(ice.backwards.carries).toMatch(/Frozen in from 2028-01-01: fails/);
  expect(ice.backwards.change).toMatch(/lifted out by 2027-12-31/);
  const thin = found(flooded({ ice_months: [1], ice_m: null }, stakes, winter), "cold.ice");
  expect(thin.status === "cannot-check" && thin.missing[0]).toMatch(/thickness of the ice/);
});

/* By hand: frost of 0.5 m on that stake 65 kPa x 0.254 x 0.5 = 8255 N; under it 8 kPa x 0.254 x 1.2 = 2438 N. */
test("frost: the stake heaves by hand, and cannot be checked without a depth", () => {
  const told = { ice_months: [1], ice_m: 0.1 };
  const frost = judged(flooded({ ...told, frost_m: 0.5 }, stakes, winter), "cold.frost.open-crate");
  expect(frost.demand).toBeCloseTo(8255, 0);
  expect(frost.capacity).toBeCloseTo(2438, 0);
  expect(frost.backwards.carries).toMatch(/heaves/);
  expect(found(flooded({ ...told, frost_m: null }, stakes, winter), "cold.frost").status).toBe(
    "cannot-check",
  );
  expect(found(flooded({ ...told, frost_m: 0 }, stakes, winter), "cold.frost").status).toBe("not-applicable");
  const crates = found(flooded({ ...told, frost_m: 0.5 }, null, winter), "cold.frost.open-crate");
  expect(crates.status).toBe("not-applicable");
});

test("a foot deeper in the ground than the frost by enough passes as the failing result promised", () => {
  const told = { ice_months: [1], ice_m: 0.1, frost_m: 0.1 };
  const short: Anchor = { ...stakes, length_mm: 900, embedment_mm: 600 };
  expect(judged(flooded(told, short, winter), "cold.frost.open-crate").status).toBe("fail");
  expect(judged(flooded(told, stakes, winter), "cold.frost.open-crate").status).toBe("pass");
});

/*
 * By hand: two feet of 609.6 x 139.7 mm, 0.17032 m2; silt 50 mm of 1500 kg/m3 12.8 kg; suction 8 kPa on them 1362.6 N, 138.9 kg.
 * A stake: 8 kPa x 0.254 m x (1.7 - 0.2) m = 3048 N, 310.8 kg.
 */
test("taking out: silt, suction and stakes by hand, and what to do where carriers cannot", () => {
  const proof = flooded({}, stakes);
  const out = judged(proof, "handling.removal.open-crate");
  const soaked = out.working.find((s) => s.id === "check.part-mass")!.value;
  expect(out.demand - soaked).toBeCloseTo(12.8 + 138.9, 0);
  expect(out.status).toBe("fail");
  expect(out.backwards.change).toMatch(/lever with arms 1 to \d+.*tackle.*wait for water/);
  expect(judged(proof, "handling.removal.open-crate.stakes").demand).toBeCloseTo(310.8, 0);
  expect(out.from_memory).toBe(true);
});

test("a dry site is taken out all the same, and more carriers lift more", () => {
  const dry = { flood_level: null };
  const two = judged(flooded({}, stakes, dry), "handling.removal.open-crate");
  const ten = judged(
    flooded({}, stakes, { ...dry, laying: { ...winter.laying, carriers: 10 } }),
    "handling.removal.open-crate",
  );
  expect(ten.capacity).toBeCloseTo(5 * two.capacity, 6);
  expect(ten.demand).toBe(two.demand);
});
