import { finish } from "@causey/engine/formula";
import { searchLayout, type Layout, type SearchInput } from "@causey/engine/layout";
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  plotAt,
  sleeper,
  smallFacts,
  smallInput,
  smallSite,
  smallTerrain,
  zone,
} from "../packages/engine/test/support/small-site.ts";
import { auditOf, faultsOf } from "./support/audit-of.ts";

const place = fc.tuple(fc.integer({ min: 8, max: 34 }), fc.integer({ min: 12, max: 34 }));
const wavy = (waves: number) =>
  smallTerrain(40, 40, (x, y) => 1 + 0.04 * waves * Math.sin(x / 3) * Math.cos(y / 4));
/** Feet wide enough that their area, written to the millimetre on a slanting heading, stays within the audit's hundredth. */
const wide = { ...sleeper, feet: [{ along_mm: 240, across_mm: 600, offset_across_mm: 0 }] };
const asking = (input: SearchInput, choice: Partial<SearchInput["choice"]>): Layout =>
  finish(searchLayout({ ...input, choice: { ...input.choice, ...choice } }));

test("property: a layout with places to pass breaks no rule that the audit holds it against", () => {
  fc.assert(
    fc.property(
      place,
      place,
      fc.integer({ min: 7, max: 14 }),
      fc.integer({ min: 0, max: 3 }),
      fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 8, max: 28 })),
      (p, q, passing_every_m, waves, [x, y]) => {
        const closed = zone("nest", "closed", x, y, x + 6, y + 2);
        const input = smallInput(smallSite(wavy(waves), [plotAt("p", ...p), plotAt("q", ...q)], [closed]));
        const layout = asking(input, { passing_every_m });
        if (layout.parts.length === 0) return;
        expect(auditOf(layout, input).rules.flatMap((r) => r.problems)).toEqual([]);
      },
    ),
    { numRuns: 30, seed: 23 },
  );
});

test("property: whatever the audit finds in parts fitted to a drawn line is marked on that part or joint", () => {
  let faults = 0;
  fc.assert(
    fc.property(
      place,
      place,
      fc.integer({ min: 0, max: 12 }),
      fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 8, max: 28 })),
      (bend, end, waves, [x, y]) => {
        const zones = [
          zone("nest", "closed", x, y, x + 8, y + 3),
          zone("creek", "channel", -1, 20.2, 41, 22.4),
        ];
        const facts = { ...smallFacts, supports: [wide] };
        const input = smallInput(smallSite(wavy(waves), [plotAt("p", 20, 20, 2, 2)], zones), { facts });
        const line = {
          id: "agreed",
          points: [[5, 5], bend, end] as [number, number][],
          plot: null,
          corridor_m: 1,
        };
        const layout = asking(input, { lines: [line] });
        const { found, unmarked } = faultsOf(layout, input);
        expect(unmarked).toEqual([]);
        faults += found;
      },
    ),
    { numRuns: 40, seed: 29 },
  );
  expect(faults).toBeGreaterThan(20);
});
