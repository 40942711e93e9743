// Lidar terrain of an English marsh from Goodwin, Mudd and Clubb (2018), Earth Surf. Dynam. 6, 239-255.
import { finish } from "@causey/engine/formula";
import { searchLayout, type DrawnLine, type Layout, type SearchInput } from "@causey/engine/layout";
import { beforeAll, describe, expect, test } from "vitest";
import { dataFolder, hasData } from "../packages/engine/test/support/open-data.ts";
import { auditOf } from "./support/audit-of.ts";
import { stourInput } from "./support/stour-input.ts";
import { STOUR_PLACES } from "./support/stour-places.ts";

const { start, P1 } = STOUR_PLACES;
const line = (points: DrawnLine["points"], more: Partial<DrawnLine> = {}): DrawnLine => ({
  id: "agreed",
  points,
  plot: null,
  corridor_m: 2,
  ...more,
});

describe.skipIf(!hasData("marsh-dem-stour"))("Goodwin, Mudd and Clubb (2018), drawn lines on real terrain", () => {
  let input: SearchInput;
  const fit = (lines: readonly DrawnLine[]): Layout =>
    finish(searchLayout({ ...input, choice: { ...input.choice, lines } }));
  beforeAll(async () => {
    input = await stourInput(dataFolder, "low", {});
  });

  /** What the audit objects to is marked on the same part or joint, under the same rule. */
  const expectMarked = (layout: Layout): void => {
    const marked = new Set(layout.line!.broken.map((b) => `${b.rule} ${b.part_or_joint}`));
    for (const { rule, problems } of auditOf(layout, input).rules)
      for (const p of problems) {
        const of = /(?:of |and )?([A-Z]+\d+)(?: at .*)?$/.exec(p.place)?.[1] ?? p.place;
        expect([...marked], `${rule} at ${p.place}: ${p.message}`).toContain(`${rule} ${of}`);
      }
  };

  test("a line over the platform to plot P1 is followed within its corridor", () => {
    const t = performance.now();
    const layout = fit([line([start, [621924, 233700], P1], { plot: "P1", corridor_m: 3 })]);
    console.log(performance.now() - t, JSON.stringify(layout.line, null, 1), layout.parts.length, layout.heading_deg, layout.reached);
    expectMarked(layout);
  });

  test("a line of 250 m across creeks is followed and every broken rule is marked", () => {
    const t = performance.now();
    const layout = fit([line([start, [621930, 233660], [621985, 233660], [621980, 233580], [621925, 233570]])]);
    console.log(performance.now() - t, JSON.stringify(layout.line!.lines, null, 1), layout.line!.broken.map(b=>`${b.rule} ${b.part_or_joint}: ${b.message}`).join("\n"), layout.parts.length, layout.heading_deg);
    expectMarked(layout);
  });
});
