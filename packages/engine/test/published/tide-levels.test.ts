// Published tidal datums of NOAA stations (public domain) and the modified-range ratio method.
import { expect, test } from "vitest";
import { metres } from "../../src/units/index.ts";
import {
  diurnalTideLevel,
  greatRange,
  highFromRange,
  highInequality,
  lowFromRange,
  lowInequality,
  meanRange,
  meanTideLevel,
} from "../../src/water/index.ts";

test("NOAA 9414290 San Francisco: MTL 2.792 and MN 1.248 from MHW 3.416 and MLW 2.168", () => {
  const means = { MHW: metres(3.416), MLW: metres(2.168) };
  expect(meanTideLevel(means)).toBeCloseTo(2.792, 3);
  expect(meanRange(means)).toBeCloseTo(1.248, 3);
});

test("NOAA 9414290 San Francisco: DTL 2.712 and GT 1.780 from MHHW 3.602 and MLLW 1.822", () => {
  const means = { MHHW: metres(3.602), MLLW: metres(1.822) };
  expect(diurnalTideLevel(means)).toBeCloseTo(2.712, 3);
  expect(greatRange(means)).toBeCloseTo(1.78, 3);
});

test("NOAA 8518750 The Battery: DHQ 0.099 and DLQ 0.063 from MHHW 2.543, MHW 2.445, MLW 1.065, MLLW 1.002", () => {
  const DHQ = highInequality({ MHHW: metres(2.543), MHW: metres(2.445) });
  const DLQ = lowInequality({ MLW: metres(1.065), MLLW: metres(1.002) });
  expect(Math.abs(DHQ - 0.099)).toBeLessThanOrEqual(0.0015);
  expect(Math.abs(DLQ - 0.063)).toBeLessThanOrEqual(0.0015);
});

test("modified-range ratio method (glossary), NOAA 8534720 Atlantic City: MLW 1.563, MHW 2.787, MLLW 1.511, MHHW 2.914", () => {
  const [MN, GT] = [metres(1.224), metres(1.403)];
  const MLW = lowFromRange({ M: metres(2.175), R: MN });
  const MLLW = lowFromRange({ M: metres(2.213), R: GT });
  expect(Math.abs(MLW - 1.563)).toBeLessThanOrEqual(0.001);
  expect(Math.abs(highFromRange({ L: MLW, R: MN }) - 2.787)).toBeLessThanOrEqual(0.001);
  expect(Math.abs(MLLW - 1.511)).toBeLessThanOrEqual(0.001);
  expect(Math.abs(highFromRange({ L: MLLW, R: GT }) - 2.914)).toBeLessThanOrEqual(0.001);
});
