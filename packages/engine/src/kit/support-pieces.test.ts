import { expect, test } from "vitest";
import { commonPracticeKit as kit } from "../../test/support/common-practice-kit.ts";
import { yardTables } from "../../test/support/yard-tables.ts";
import { overlaps, type PlacedPiece } from "./piece.ts";
import { supportPieces } from "./support-pieces.ts";
import { supportHeights, supportMisfit } from "./support-tiers.ts";
import type { SupportKind } from "./types.ts";

const { sizes } = yardTables;
const IN = 25.4;
const base: SupportKind = kit.supports[0]!;

const sleeper: SupportKind = {
  ...base,
  id: "sleeper",
  form: "sleeper",
  height_min_mm: 3 * IN,
  height_max_mm: 9 * IN,
  height_step_mm: 1.5 * IN,
  pieces: [
    { name: "sleeper", size: "2x10", count: 1, length_mm: 24 * IN, per_height: 0 },
    { name: "packing", size: "2x6", count: 1, length_mm: 24 * IN, per_height: 0, fill: true },
  ],
  feet: [{ along_mm: 9.25 * IN, across_mm: 24 * IN, offset_across_mm: 0 }],
};

const postsInGround: SupportKind = {
  ...base,
  id: "posts",
  form: "post-pair",
  pieces: [
    { name: "post", size: "4x4", count: 2, length_mm: 22.5 * IN, per_height: 1 },
    { name: "tie", size: "2x4", count: 2, length_mm: 22 * IN, per_height: 0, lie: "across", beside: true },
  ],
  feet: [-9, 9].map((y) => ({ along_mm: 3.5 * IN, across_mm: 3.5 * IN, offset_across_mm: y * IN })),
};

const named = (pieces: readonly PlacedPiece[], role: string) => pieces.filter((p) => p.role === role);

test("open crate: legs grow with the height and fill the room between runner and rail", () => {
  for (const h of supportHeights(base)) {
    const pieces = supportPieces(kit, base, h / 1000, sizes);
    expect(named(pieces, "leg")).toHaveLength(4);
    for (const leg of named(pieces, "leg")) {
      expect(leg.length_mm).toBeCloseTo(h - 6.5 * IN, 2);
      expect(leg.z0).toBeCloseTo(0.0381, 6);
      expect(leg.z1).toBeCloseTo(h / 1000 - 0.127, 6);
    }
    expect(overlaps(pieces)).toEqual([]);
  }
});

test("sleeper: each height step adds one layer of packing under the sill", () => {
  const layers = supportHeights(sleeper).map(
    (h) => named(supportPieces(kit, sleeper, h / 1000, sizes), "packing").length,
  );
  expect(layers).toEqual([0, 1, 2, 3, 4]);
  for (const h of supportHeights(sleeper)) expect(supportMisfit(sleeper, h, sizes)).toBeCloseTo(0, 6);
});

test("posts set in the ground reach below it and end under the sill; ties lie against their faces", () => {
  const pieces = supportPieces(kit, postsInGround, 0.4572, sizes);
  const posts = named(pieces, "post");
  for (const post of posts) {
    expect(post.z0).toBeCloseTo(-0.6096, 4);
    expect(post.z1).toBeCloseTo(0.4572 - 0.0381, 4);
  }
  const ties = named(pieces, "tie");
  expect(ties.map((t) => Math.sign(t.x0 + t.x1))).toEqual([1, -1]);
  expect(ties[0]!.x0).toBeCloseTo(posts[0]!.x1, 9);
  expect(overlaps(pieces)).toEqual([]);
});

test("stakes stand against the timber they reach, by turns left and right, no higher than the sill", () => {
  const two = { ...base, anchor: { ...base.anchor!, count: 2 } };
  for (const h of supportHeights(two)) {
    const pieces = supportPieces(kit, two, h / 1000, sizes);
    const [left, right] = named(pieces, "stake");
    const sill = named(pieces, "sill")[0]!;
    expect(left!.y0).toBeCloseTo(sill.y1, 9);
    expect(right!.y1).toBeCloseTo(sill.y0, 9);
    expect(left!.z1).toBeLessThanOrEqual(h / 1000 + 1e-9);
    expect(-left!.z0).toBeGreaterThanOrEqual(two.anchor.embedment_mm / 1000 - 1e-9);
  }
});

test("an unknown support kind or size is a broken promise, not a guess", () => {
  expect(() => supportPieces(kit, "raft", 0.3, sizes)).toThrow("unknown-support-kind");
  const odd = { ...base, sill: { ...base.sill, size: "3x3" } };
  expect(() => supportPieces(kit, odd, 0.3, sizes)).toThrow("unknown-lumber-size");
});
