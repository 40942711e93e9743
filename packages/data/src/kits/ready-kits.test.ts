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

test("there are four ready kits, found by their ids", () => {
  expect(readyKits.map((k) => k.id)).toEqual(["meadow-boards", "light-mesh", "salt-grating", "fen-panels"]);
  expect(readyKit("light-mesh")?.name).toContain("mesh");
  expect(readyKit("unknown")).toBeUndefined();
});

for (const kit of readyKits) {
  test(`${kit.id}: is a kit to the reader and has neither errors nor warnings`, () => {
    expect(readKit(JSON.parse(JSON.stringify(kit)))).toEqual({ kit: JSON.parse(JSON.stringify(kit)) });
    expect(validateKit(kit, tables)).toEqual([]);
  });

  test(`${kit.id}: pitches are whole steps of 4 ft, half a platform 3 ft, on a lattice of 1 ft`, () => {
    const g = kitGeometry(kit, sizes);
    expect(kit.lengths_mm.map((l) => g.pitch_m(l) / 0.3048)).toEqual(
      [12, 8, 4].slice(-kit.lengths_mm.length).map((ft) => expect.closeTo(ft, 9)),
    );
    expect(g.platform_pitch_m / 2 / 0.3048).toBeCloseTo(3, 9);
    expect(latticeStep(kit)).toBe(304.8);
  });

  test(`${kit.id}: every support reaches to its height, and what stands on the ground begins there`, () => {
    for (const kind of kit.supports)
      for (const h of supportHeights(kind)) {
        const pieces = supportPieces(kit, kind, h / 1000, sizes).filter((p) => p.role !== "stake");
        const lowest = Math.min(...pieces.map((p) => p.z0));
        if (kind.piles) expect(-lowest).toBeGreaterThanOrEqual(kind.piles.depth_mm / 1000);
        else if (kind.floats) expect(lowest).toBeCloseTo((h - kind.height_min_mm) / 1000, 6);
        else expect(lowest).toBeCloseTo(0, 3);
        expect(Math.max(...pieces.map((p) => p.z1))).toBeCloseTo(h / 1000, 6);
      }
  });

  test(`${kit.id}: only floats stand in pools and channels, screw piles in pools`, () => {
    for (const kind of kit.supports)
      expect(kind.stands.not_in).toEqual(
        kind.form === "float" ? [] : kind.form === "screw-pile" ? ["channel"] : ["channel", "pool"],
      );
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
  const [boards, mesh] = ["meadow-boards", "light-mesh"].map((id) =>
    moduleMasses(readyKit(id)!, sizes).module(3.6449),
  );
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
