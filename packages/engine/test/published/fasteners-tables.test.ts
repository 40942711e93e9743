// NDS 2018 Table 12K, lag screws with steel side plates (City of Everett file 1614580, page 114); lateral values of nails
// and wood screws worked out apart from this project with the equations of Table 12.3.1A.
import { describe } from "vitest";
import { fastenerRow, jointOf, poundsAcross, throughPlate } from "../support/fastener-joint.ts";
import { publishedRow } from "../support/published-row.ts";

/** The table prints to 10 lb; load along and across the grain for gravity 0.55, 0.50, 0.43, 0.42 and 0.36. */
describe("lag screws with steel side plates, NDS 2018 Table 12K", () => {
  const gravities = [0.55, 0.5, 0.43, 0.42, 0.36];
  const rows = [
    ["lag-1/4x4", 0.075, [160, 150, 140, 140, 130], [120, 110, 100, 100, 90]],
    ["lag-5/16x5", 0.075, [200, 190, 180, 180, 170], [140, 130, 120, 120, 110]],
    ["lag-3/8x6", 0.075, [200, 200, 180, 180, 170], [140, 130, 120, 120, 100]],
    ["lag-1/4x4", 0.105, [170, 160, 150, 150, 140], [130, 120, 110, 110, 100]],
  ] as const;
  for (const [id, plate, along, across] of rows)
    for (const [angle_deg, values] of [
      [0, along],
      [90, across],
    ] as const)
      values.forEach((expected, i) => {
        publishedRow(
          {
            id: "12K",
            source: "NDS 2018 Table 12K (City of Everett file 1614580, page 114)",
            what: `${id}, plate ${plate} in, gravity ${gravities[i]}, ${angle_deg} degrees to the grain`,
            expected,
            unit: "lb",
            tolerance: 5.5,
          },
          () => {
            const joint = throughPlate(jointOf(fastenerRow(id), { gravity: gravities[i]! }, plate, 8), plate);
            return poundsAcross({ ...joint, main: { ...joint.main, angle_deg } });
          },
        );
      });
});

/** Worked out apart from this project, from the yield equations with Fe rounded to 50 psi; nothing of it is print. */
describe("lateral values by wood, worked out apart", () => {
  const woods = [
    ["Southern Pine", 0.55],
    ["Douglas Fir-Larch", 0.5],
    ["Hem-Fir", 0.43],
    ["Spruce-Pine-Fir", 0.42],
    ["Western Cedars", 0.36],
  ] as const;
  const rows = [
    ["nail-8d", 1.5, [106, 97, 84, 82, 72]],
    ["nail-10d", 1.5, [null, 118, 102, null, 87]],
    ["nail-16d", 1.5, [154, null, 122, null, 104]],
    ["nail-8d", 0.75, [104, 90, 73, 71, 58]],
    ["nail-10d", 0.75, [121, 105, 85, 83, 69]],
    ["nail-16d", 0.75, [138, 121, 99, 96, 80]],
  ] as const;
  for (const [id, side, expected] of rows)
    woods.forEach(([wood, gravity], i) => {
      const value = expected[i];
      if (value === null || value === undefined) return;
      publishedRow(
        {
          id: "S-Z",
          source: "yield equations of NDS 2018 Table 12.3.1A, worked out apart",
          what: `${id}, ${wood}, side ${side} in`,
          expected: value,
          unit: "lb",
          tolerance: 1,
        },
        () => {
          const row = fastenerRow(id);
          return poundsAcross(jointOf({ ...row, length_mm: row.length_mm + 25.4 }, { gravity }, side, 6));
        },
      );
    });
});

/** The sheet for screws takes Rd on the root (2.2); decision record 0004 takes it on the shank, which is lower. */
describe("lateral values of screws, worked out apart, brought to the reduction term of decision 0004", () => {
  const rows = [
    ["screw-8x3", 1.5, 2.2, [101, 92, 80, 78, 68]],
    ["screw-10x3", 1.5, 2.4, [128, 117, 102, 99, 87]],
    ["screw-12x3.5", 1.5, 2.66, [161, 147, 128, 125, 109]],
    ["screw-8x3", 0.75, 2.2, [101, 88, 71, 69, 56]],
    ["screw-10x3", 0.75, 2.4, [122, 107, 86, 83, 69]],
  ] as const;
  const gravities = [0.55, 0.5, 0.43, 0.42, 0.36];
  for (const [id, side, Rd, onRoot] of rows)
    onRoot.forEach((root, i) => {
      const expected = Math.round(((root * 2.2) / Rd) * 10) / 10;
      publishedRow(
        {
          id: "S-Z",
          source: `yield equations of NDS 2018, worked out apart as ${root} lb with Rd 2.2 on the root`,
          what: `${id}, gravity ${gravities[i]}, side ${side} in, Rd ${Rd} on the shank`,
          expected,
          unit: "lb",
          tolerance: 1,
        },
        () => {
          const row = fastenerRow(id);
          return poundsAcross(
            jointOf({ ...row, length_mm: row.length_mm + 25.4 }, { gravity: gravities[i]! }, side, 6),
          );
        },
      );
    });
});
