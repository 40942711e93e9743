// Lidar terrain of an English marsh from Goodwin, Mudd and Clubb (2018), Earth Surf. Dynam. 6, 239-255.
import { beforeAll, describe, expect, test } from "vitest";
import { dataBytes, hasData } from "../packages/engine/test/support/open-data.ts";
import { highGround, type HighGround } from "./support/clear-widths.ts";
import { stourHeights } from "./support/stour-terrain.ts";
import { LOW_GROUND_M } from "./support/stour-zones.ts";
import { STOUR_PLACES } from "./support/stour-places.ts";

const SET = "marsh-dem-stour";

describe.skipIf(!hasData(SET))("Goodwin, Mudd and Clubb (2018), ground above 1.5 m", () => {
  let ground: HighGround;
  const partOf = (id: keyof typeof STOUR_PLACES): number => {
    const [x, y] = STOUR_PLACES[id];
    return ground.partAt(x, y);
  };
  beforeAll(async () => {
    ground = highGround(await stourHeights(dataBytes(SET, "dem-1m.tif")), LOW_GROUND_M);
  });

  test("falls into five parts over 100 m2", () => {
    const large = ground.areas.filter((area) => area > 100).map(Math.round);
    expect(large).toHaveLength(5);
    large.forEach((area, i) => expect(Math.abs(area - [8373, 7802, 5883, 657, 182][i]!)).toBeLessThan(5));
  });

  test("start and P1 lie on one part, P2 and P3 each on another", () => {
    expect([partOf("start"), partOf("P1"), partOf("P2"), partOf("P3")]).toEqual([1, 1, 0, 2]);
  });

  test("the least gap on the way to P2 is 2.1 m, at the mouth of the pit gully", () => {
    const gap = ground.hardest(partOf("start"), partOf("P2"))!;
    expect(gap.width_m).toBeCloseTo(2.06, 1);
    expect(Math.hypot(gap.at[0][0] - 621950.6, gap.at[0][1] - 233683.3)).toBeLessThan(2);
  });

  test("the least gap on the way to P3 is 6.9 m, across the middle creek from the small island", () => {
    const gap = ground.hardest(partOf("start"), partOf("P3"))!;
    expect(gap.width_m).toBeCloseTo(6.91, 1);
    expect(new Set([gap.from, gap.to])).toEqual(new Set([2, 4]));
    expect(Math.hypot(gap.at[0][0] - 621899.5, gap.at[0][1] - 233670.5)).toBeLessThan(5);
  });
});
