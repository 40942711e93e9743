import {
  cartProblems,
  kitGeometry,
  latticeStep,
  modulePieces,
  readKit,
  supportHeights,
  supportPieces,
  validateKit,
} from "@causey/engine/kit";
import { moduleMasses } from "@causey/engine/materials";
import { expect, test } from "vitest";
import { tables } from "../tables/index.ts";
import { readyKit, readyKits } from "./index.ts";

const { sizes } = tables;

test("there are two ready kits, found by their ids", () => {
  expect(readyKits.map((k) => k.id)).toEqual(["meadow-boards", "light-mesh"]);
  expect(readyKit("light-mesh")?.name).toContain("mesh");
  expect(readyKit("unknown")).toBeUndefined();
});

for (const kit of readyKits) {
  test(`${kit.id}: is a kit to the reader and has neither errors nor warnings`, () => {
    expect(readKit(JSON.parse(JSON.stringify(kit)))).toEqual({ kit: JSON.parse(JSON.stringify(kit)) });
    expect(validateKit(kit, tables)).toEqual([]);
  });

  test(`${kit.id}: pitches are 12, 8 and 4 ft, half a platform 3 ft, on a lattice of 1 ft`, () => {
    const g = kitGeometry(kit, sizes);
    expect(kit.lengths_mm.map((l) => g.pitch_m(l) / 0.3048)).toEqual([
      expect.closeTo(12, 9),
      expect.closeTo(8, 9),
      expect.closeTo(4, 9),
    ]);
    expect(g.platform_pitch_m / 2 / 0.3048).toBeCloseTo(3, 9);
    expect(latticeStep(kit)).toBe(304.8);
  });

  test(`${kit.id}: every support reaches from the ground to its height, and none stands in water`, () => {
    for (const kind of kit.supports) {
      expect(kind.stands.not_in).toEqual(["channel", "pool"]);
      for (const h of supportHeights(kind)) {
        const timber = supportPieces(kit, kind, h / 1000, sizes).filter((p) => p.role !== "stake");
        expect(Math.min(...timber.map((p) => p.z0))).toBeCloseTo(0, 3);
        expect(Math.max(...timber.map((p) => p.z1))).toBeCloseTo(h / 1000, 6);
      }
    }
  });

  test(`${kit.id}: a module end keeps a seat of at least 1 1/2 in on every sill`, () => {
    const g = kitGeometry(kit, sizes);
    for (const kind of kit.supports) expect(g.seat_m(kind)).toBeGreaterThanOrEqual(0.0381);
  });

  test(`${kit.id}: no piece is longer than lumber is sold, 16 ft`, () => {
    const lengths = kit.lengths_mm.flatMap((l) => modulePieces(kit, l, sizes).map((p) => p.length_mm));
    expect(Math.max(...lengths)).toBeLessThanOrEqual(4876.8);
  });
}

test("the light kit's 12 ft module weighs less than the board kit's", () => {
  const [boards, mesh] = readyKits.map((kit) => moduleMasses(kit, sizes).module(3.6449));
  const kg = (m: { timber_m3: number; other_kg: number }): number => m.timber_m3 * 600 + m.other_kg;
  expect(kg(mesh!)).toBeLessThan(0.75 * kg(boards!));
});

test("a cart with wheels 24 in apart runs on the boards and not between the mesh's upturned edges", () => {
  const cart = { name: "Garden cart", track_mm: 609.6, wheel_width_mm: 60 };
  expect(cartProblems(readyKit("meadow-boards")!, cart, sizes)).toEqual([]);
  const [problem] = cartProblems(readyKit("light-mesh")!, cart, sizes);
  expect(problem?.code).toBe("kit-cart");
  expect(problem?.mend).toContain("wider deck");
});
