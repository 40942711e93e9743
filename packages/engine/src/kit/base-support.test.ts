import { describe, expect, test } from "vitest";
import { gratingKit, onFloats, onPiles } from "../../test/support/deck-kits.ts";
import { yardTables } from "../../test/support/yard-tables.ts";
import { pileDepth } from "./base-pieces.ts";
import { supportCounts } from "./counts.ts";
import { supportDrawing } from "./drawing.ts";
import { engineerBecause } from "./engineer.ts";
import { readKit } from "./kit-shape.ts";
import { overlaps } from "./piece.ts";
import { supportPieces } from "./support-pieces.ts";
import { supportHeights } from "./support-tiers.ts";
import type { Kit, SupportKind } from "./types.ts";
import { validateKit } from "./validate.ts";

const { sizes } = yardTables;
const kit: Kit = { ...gratingKit, supports: [onPiles, onFloats] };
const faults = (kind: SupportKind): string =>
  validateKit({ ...gratingKit, supports: [kind] }, yardTables)
    .filter((p) => p.place.startsWith("kit.supports"))
    .map((p) => `${p.severity} ${p.place} ${p.message}`)
    .join("\n");

test("both kinds are read and have no fault", () => {
  expect(readKit(JSON.parse(JSON.stringify(kit)))).toHaveProperty("kit");
  expect(faults(onPiles)).toBe("");
  expect(faults(onFloats)).toBe("");
});

describe("screw piles", () => {
  test("two shafts under the bearers, heads at 4x4 + sill under the module, tips as deep as their length reaches", () => {
    for (const h of supportHeights(onPiles)) {
      const pieces = supportPieces(kit, onPiles, h / 1000, sizes);
      const piles = pieces.filter((p) => p.role === "screw pile");
      expect(piles.map((p) => Math.round(((p.y0 + p.y1) / 2) * 1e4))).toEqual([-3048, 3048]);
      for (const p of piles) {
        expect(p.z1 * 1000).toBeCloseTo(h - 38.1 - 88.9, 6);
        expect(p.z1 - p.z0).toBeCloseTo(2.4, 9);
        expect(-p.z0 * 1000).toBeCloseTo(pileDepth(onPiles.piles!, h - 127), 6);
      }
      expect(overlaps(pieces)).toEqual([]);
    }
  });

  test("counted with the screws, and their helices are drawn under the ground", () => {
    expect(supportCounts(onPiles).map((c) => [c.item, c.count])).toEqual([
      ["screw-10x3", 24],
      ["pile", 2],
    ]);
    const drawing = supportDrawing(kit, "piles", 0.3048, sizes);
    const helices = drawing.end.filter((p) => p.role === "helix");
    expect(helices).toHaveLength(2);
    for (const p of helices) {
      expect(p.u1 - p.u0).toBeCloseTo(200, 6);
      expect(p.v0).toBeLessThan(-1800);
    }
  });

  test("faults: too short, no piles, one foot for two, uprights, a helix no wider than its shaft", () => {
    const piles = onPiles.piles!;
    expect(faults({ ...onPiles, piles: { ...piles, length_mm: 2000 } })).toMatch(
      /error .*piles are .* too short/,
    );
    const { piles: _, ...without } = onPiles;
    expect(faults(without)).toMatch(/error kit.supports\[0\].piles .*does not say/);
    expect(faults({ ...onPiles, feet: onPiles.feet.slice(1) })).toMatch(
      /error kit.supports\[0\].feet .*2 piles/,
    );
    const post = { name: "post", size: "4x4", count: 2, length_mm: 0, per_height: 1 };
    expect(faults({ ...onPiles, pieces: [post] })).toMatch(/error .*stands upright/);
    expect(faults({ ...onPiles, piles: { ...piles, helix_mm: 60 } })).toMatch(/error .*helix is no wider/);
    const square = onPiles.feet.map((f) => ({ ...f, along_mm: 60.3, across_mm: 60.3 }));
    expect(faults({ ...onPiles, feet: square })).toMatch(
      /warning kit.supports\[0\].feet .*touches the ground/,
    );
  });
});

describe("floats", () => {
  test("aground at the least height, lifted above it by water", () => {
    for (const h of supportHeights(onFloats)) {
      const pieces = supportPieces(kit, onFloats, h / 1000, sizes);
      for (const p of pieces.filter((q) => q.role === "float")) {
        expect(p.z0 * 1000).toBeCloseTo(h - 527, 6);
        expect(p.z1 - p.z0).toBeCloseTo(0.4, 9);
      }
      expect(overlaps(pieces)).toEqual([]);
    }
    expect(supportCounts(onFloats).find((c) => c.item === "float")?.count).toBe(2);
  });

  test("faults: in the ground, no room over the freeboard, feet of another size, floats of a sleeper", () => {
    expect(faults({ ...onFloats, height_min_mm: 500 })).toMatch(/error .*would lie 27 mm .* in the ground/);
    const floats = onFloats.floats!;
    expect(faults({ ...onFloats, floats: { ...floats, freeboard_mm: 390 } })).toMatch(/error .*freeboard/);
    const small = onFloats.feet.map((f) => ({ ...f, across_mm: 500 }));
    expect(faults({ ...onFloats, feet: small })).toMatch(/error .*not as large as the float/);
    expect(faults({ ...onPiles, form: "sleeper" })).toMatch(/error .*has no piles/);
  });
});

test("an engineer is asked for on piles, floats and tall posts, not on a crate", () => {
  expect(engineerBecause(onPiles)).not.toBeNull();
  expect(engineerBecause(onFloats)).not.toBeNull();
  const crate = gratingKit.supports[0]!;
  expect(engineerBecause(crate)).toBeNull();
  expect(engineerBecause({ ...crate, form: "post-pair", height_max_mm: 900 })).toMatch(/posts over/);
});
