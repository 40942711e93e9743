import fc from "fast-check";
import { expect, test } from "vitest";
import { plotAt, smallInput, smallSite, smallTerrain, zone } from "../../../test/support/small-site.ts";
import { finish } from "../../formula/index.ts";
import { searchLayout, type Layout, type PlatformPart, type SearchInput } from "../index.ts";

const flat = smallTerrain(40, 40, () => 1);

const asking = (input: SearchInput, passing_every_m: number | null): SearchInput => ({
  ...input,
  choice: { ...input.choice, passing_every_m },
});
const lay = (input: SearchInput): Layout => finish(searchLayout(input));

/** Longest way between two places to pass, by walking over the written layout from joint to joint. */
function longestWay(layout: Layout): number {
  let longest = 0;
  const visit = (joint: string, since: number): void => {
    let goesOn = false;
    for (const part of layout.parts) {
      if (part.from !== joint) continue;
      goesOn = true;
      if (part.kind === "module") visit(part.to, since + part.length_m);
      else {
        longest = Math.max(longest, since + part.side_m / 2);
        for (const exit of Object.values(part.exits)) visit(exit, part.side_m / 2);
      }
    }
    if (!goesOn) longest = Math.max(longest, since);
  };
  visit(layout.joints[0]!.id, 0);
  return longest;
}

test("a straight walkway gets platforms for passing, and still ends where its plot is reached", () => {
  const input = smallInput(smallSite(flat, [plotAt("p", 5, 34)]));
  const plain = lay(input);
  expect(plain.parts.some((p) => p.kind === "platform")).toBe(false);
  const layout = lay(asking(input, 10));
  const platforms = layout.parts.filter((p): p is PlatformPart => p.kind === "platform");
  // 26 m or so with a place to pass every 10 m: two platforms.
  expect(platforms.map((p) => p.use)).toEqual(["passing", "passing"]);
  expect(longestWay(layout)).toBeLessThanOrEqual(10);
  expect(layout.reached.map((r) => r.plot)).toEqual(["p"]);
  expect(layout.joints.every((j) => Math.abs(j.x - 5) < 1.01)).toBe(true);
});

test("a layout that keeps the interval already stays as it is", () => {
  const input = smallInput(smallSite(flat, [plotAt("p", 5, 18)]));
  expect(JSON.stringify(lay(asking(input, 50)))).toBe(JSON.stringify(lay(input)));
});

test("where no platform finds room, a note says where", () => {
  // A lane 1.96 m wide between two closed areas, 16 m long: no platform of 2 m fits in.
  const walls = [zone("w", "closed", 0, 8, 4.02, 24), zone("e", "closed", 5.98, 8, 40, 24)];
  const input = smallInput(smallSite(flat, [plotAt("p", 5, 30)], walls));
  const layout = lay(asking(input, 8));
  expect(layout.reached.map((r) => r.plot)).toEqual(["p"]);
  expect(layout.notes.join(" ")).toMatch(
    /No place to pass at least every 8\.0 m: from \w+ to \w+ on branch A/,
  );
});

test("property: the interval is kept on every branch, and every plot stays reached", () => {
  fc.assert(
    fc.property(
      fc.tuple(fc.integer({ min: 8, max: 34 }), fc.integer({ min: 16, max: 34 })),
      fc.tuple(fc.integer({ min: 8, max: 34 }), fc.integer({ min: 8, max: 34 })),
      fc.integer({ min: 6, max: 14 }),
      fc.integer({ min: 0, max: 3 }),
      (p, q, interval, waves) => {
        const ground = smallTerrain(40, 40, (x, y) => 1 + 0.05 * waves * Math.sin(x / 3) * Math.cos(y / 4));
        const input = smallInput(smallSite(ground, [plotAt("p", ...p), plotAt("q", ...q)]));
        const plain = lay(input);
        const layout = lay(asking(input, interval));
        expect(layout.reached.map((r) => r.plot).sort()).toEqual(plain.reached.map((r) => r.plot).sort());
        expect(longestWay(layout)).toBeLessThanOrEqual(interval + 1e-9);
        expect(layout.notes.some((n) => n.startsWith("No place to pass"))).toBe(false);
        expect(layout.heading_deg).toBe(plain.heading_deg);
      },
    ),
    { numRuns: 25, seed: 13 },
  );
});
