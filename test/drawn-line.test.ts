// Lidar terrain of an English marsh from Goodwin, Mudd and Clubb (2018), Earth Surf. Dynam. 6, 239-255.
import { finish } from "@causey/engine/formula";
import { searchLayout, type DrawnLine, type Layout, type SearchInput } from "@causey/engine/layout";
import { beforeAll, describe, expect, test } from "vitest";
import { dataFolder, hasData } from "../packages/engine/test/support/open-data.ts";
import { auditOf, faultsOf } from "./support/audit-of.ts";
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

describe.skipIf(!hasData("marsh-dem-stour"))("Goodwin, Mudd and Clubb (2018), real terrain", () => {
  let low: SearchInput;
  let tall: SearchInput;
  const lay = (input: SearchInput, choice: Partial<SearchInput["choice"]>): Layout =>
    finish(searchLayout({ ...input, choice: { ...input.choice, ...choice } }));
  beforeAll(async () => {
    low = await stourInput(dataFolder, "low");
    tall = await stourInput(dataFolder, "post-pairs");
  });

  test("a line over the marsh to plot P1 is followed in its corridor, its deviation told, nothing broken with tall posts", () => {
    const drawn = line([start, [621931.5, 233690.5], P1], { plot: "P1", corridor_m: 3 });
    const layout = lay(tall, { lines: [drawn] });
    expect(layout.reached.map((r) => r.plot)).toEqual(["P1"]);
    const [figures] = layout.line!.lines;
    expect(figures).toMatchObject({ within_corridor: true, not_followed: [] });
    expect(figures!.max_deviation_m).toBeGreaterThan(0.1);
    expect(figures!.rms_deviation_m).toBeLessThan(figures!.max_deviation_m!);
    expect(layout.line!.broken).toEqual([]);
    expect(faultsOf(layout, tall)).toEqual({ found: 0, unmarked: [] });
  });

  test("a line of 250 m across creeks is followed from end to end, and each broken rule is marked", () => {
    const drawn = line([start, [621930, 233660], [621985, 233660], [621980, 233580], [621925, 233570]]);
    const layout = lay(low, { lines: [drawn] });
    expect(layout.line!.lines[0]).toMatchObject({ within_corridor: true, not_followed: [] });
    expect(layout.joints.every((j) => Number.isFinite(j.deck_m))).toBe(true);
    // Crates and sleepers may not stand in the creeks that the line crosses: the audit finds that by itself.
    const { found, unmarked } = faultsOf(layout, low);
    expect(unmarked).toEqual([]);
    expect(found).toBeGreaterThan(20);
    expect(JSON.stringify(lay(low, { lines: [drawn] }))).toBe(JSON.stringify(layout));
  });

  test("a corner of 60 degrees in a corridor of 0.3 m is told as such, with what can be built", () => {
    const corner = [621925.5, 233690.5] as const;
    const drawn = line([start, corner, [621955.5, 233696.5]], { corridor_m: 0.3 });
    const layout = lay(tall, { lines: [drawn] });
    const rules = layout.line!.broken.map((b) => b.rule);
    expect(rules).toContain("corner");
    expect(rules).toContain("corridor");
    const mark = layout.line!.broken.find((b) => b.rule === "corner")!;
    expect(mark.place).toEqual(corner);
    expect(mark.message).toMatch(
      /turns by \d+ degrees here; a platform turns by 90\. Nearest that can be built: /,
    );
    expect(faultsOf(layout, tall).unmarked).toEqual([]);
  });

  test("the searched layout with places to pass keeps every rule of the audit", () => {
    const plots = tall.site.plots.filter((p) => p.id !== "P3");
    const two = { ...tall, site: { ...tall.site, plots } };
    const plain = lay(two, { heading_step_deg: 90 });
    const layout = lay(two, { heading_step_deg: 90, passing_every_m: 15 });
    expect(layout.reached.map((r) => r.plot).sort()).toEqual(plain.reached.map((r) => r.plot).sort());
    const platforms = (of: Layout): number => of.parts.filter((p) => p.kind === "platform").length;
    expect(platforms(layout)).toBeGreaterThan(platforms(plain));
    expect(layout.parts.some((p) => p.kind === "platform" && p.use === "passing")).toBe(true);
    const report = auditOf(layout, two);
    expect(report.rules.flatMap((r) => r.problems)).toEqual([]);
    expect(report.rules.find((r) => r.rule === "pitch")!.tested).toBeGreaterThan(20);
  });
});
