// Rows of the feature table on laying out standard parts. Common practice, no source: whole modules, tags at both ends,
// 2 to 4 % spare modules.
import { csvRows } from "../support/csv-rows.ts";
import { resultFiles } from "@causey/io/results";
import { beforeAll, describe, expect, test } from "vitest";
import { boardKit, deriveLane, sheetTexts, type Derived } from "../support/lane-plan.ts";

const FT = 0.3048;
let d: Derived;
beforeAll(async () => {
  d = await deriveLane({
    wide: 50,
    long: 50,
    start: [12, 4],
    plots: { P1: [12, 41.7], P2: [40, 24.3], P3: [30, 40.9] },
  });
});

/** Straight runs of modules between places where the way turns, branches or ends: their joint-to-joint lengths [m]. */
function straightRuns({ results: { layout } }: Derived): number[] {
  const at = new Map(layout.joints.map((j) => [j.id, j]));
  const runs: number[] = [];
  let end = "";
  for (const p of layout.parts) {
    if (p.kind === "platform") continue;
    const [a, b] = [at.get(p.from)!, at.get(p.to)!];
    const length = Math.hypot(a.x - b.x, a.y - b.y);
    if (p.from === end) runs.push(runs.pop()! + length);
    else runs.push(length);
    end = p.to;
  }
  return runs;
}

describe("28 whole modules are laid, customs are fewest and listed (common practice, no source)", () => {
  test("every part is one of the kit's sizes, so that no custom piece is listed", () => {
    const { layout, route } = d.results;
    expect(layout.reached).toHaveLength(3);
    const own = d.plan.kit.lengths_mm;
    const odd = layout.parts.filter((p) =>
      p.kind === "module"
        ? own.every((mm) => Math.abs(mm - p.length_m * 1000) > 0.05)
        : Math.abs(p.side_m * 1000 - d.plan.kit.platform.side_mm) > 0.05,
    );
    expect(odd).toEqual([]);
    expect(route.custom_parts).toEqual([]);
  });

  test("over the same lengths a crew that lays the longest module on and cuts the last one cuts some", () => {
    const longest = 12 * FT;
    const runs = straightRuns(d);
    const customs = runs.filter((run) => {
      const rest = run - Math.floor(run / longest + 1e-6) * longest;
      return rest > 1e-3;
    });
    expect(runs.reduce((sum, run) => sum + run, 0)).toBeGreaterThan(50);
    expect(customs.length).toBeGreaterThan(0);
    expect(d.results.route.custom_parts.length).toBeLessThan(customs.length);
  });

  test("what was laid by a recipe of other lengths keeps its joints, and no part of another size goes unlisted", async () => {
    const laid = d.results.layout.joints.slice(0, 3);
    const again = await deriveLane({
      wide: 50,
      long: 50,
      start: [12, 4],
      plots: { P1: [12, 41.7], P2: [40, 24.3], P3: [30, 40.9] },
      layout: {
        as_laid: laid.map((j) => ({ joint: j.id, x: j.x, y: j.y, deck_m: j.deck_m, date: "2027-05-12" })),
      },
    });
    expect(again.results.layout.as_laid!.kept.length).toBeGreaterThan(0);
    const own = again.plan.kit.lengths_mm;
    const odd = again.results.layout.parts.filter(
      (p) => p.kind === "module" && own.every((mm) => Math.abs(mm - p.length_m * 1000) > 0.1),
    );
    expect(again.results.route.custom_parts).toEqual(odd.map((p) => p.id));
  });
});

describe("29 station numbers, coordinates and headings for setting out: the list closes on the route", () => {
  test("summed line by line from the first joint the list ends at every joint's coordinates (plane geometry)", () => {
    const { lines, joints, closing_error_m } = d.results.setting_out;
    const rows = csvRows(resultFiles(d.results, d.plan).get("joints.csv")!);
    const written = new Map(rows.map((r) => [r["id"]!, [Number(r["x_m"]), Number(r["y_m"])] as const]));
    expect(joints.map((j) => j.joint).sort()).toEqual([...written.keys()].sort());
    const placed = new Map<string, readonly [number, number]>();
    for (const j of joints) {
      const line = lines.find((l) => l.id === j.line)!;
      const [x, y] = placed.get(line.from) ?? written.get(line.from)!;
      const h = (line.heading_deg * Math.PI) / 180;
      placed.set(j.joint, [
        x + j.distance_m * Math.sin(h) + j.offset_m * Math.cos(h),
        y + j.distance_m * Math.cos(h) - j.offset_m * Math.sin(h),
      ]);
    }
    const misses = [...placed].map(([id, [x, y]]) => {
      const [wx, wy] = written.get(id)!;
      return Math.hypot(x - wx, y - wy);
    });
    expect(placed.size).toBe(written.size);
    expect(Math.max(...misses)).toBeLessThan(0.002);
    expect(closing_error_m).toBeLessThan(0.001);
  });

  test("ties lead to places that are set out already and have the length between the two coordinates", () => {
    const known = new Map<string, readonly [number, number]>();
    let ties = 0;
    for (const j of d.results.setting_out.joints) {
      for (const t of j.ties) {
        const [x, y] = known.get(t.to)!;
        expect(t.distance_m).toBeCloseTo(Math.hypot(j.x - x, j.y - y), 3);
        ties++;
      }
      known.set(j.joint, [j.x, j.y]);
    }
    expect(ties).toBeGreaterThan(d.results.layout.joints.length);
  });

  test("the paper has every joint with line, coordinates and heading of its line", () => {
    const texts = sheetTexts(d, "setting-out");
    const { lines, joints } = d.results.setting_out;
    for (const l of lines) expect(texts).toContain(`${l.heading_deg.toFixed(1)}° from grid north`);
    for (const j of joints) {
      expect(texts.filter((t) => t === j.joint).length, j.joint).toBeGreaterThanOrEqual(2);
      expect(texts).toContain(`${j.x.toFixed(3)} m`);
      expect(texts).toContain(`${j.y.toFixed(3)} m`);
    }
  });
});

describe("30 parts are numbered in install order, and there are as many labels as parts", () => {
  test("one label for each part, each tag once, in the order of the layout", () => {
    const { parts } = d.results.layout;
    const tags = parts.map((p) => p.id);
    expect(new Set(tags).size).toBe(parts.length);
    const texts = sheetTexts(d, "labels").filter((t) => tags.includes(t));
    expect(texts).toEqual(tags);
  });

  test("every part begins at a joint that is there already: one works from the start on laid deck", () => {
    const { parts, joints } = d.results.layout;
    const there = new Set([joints[0]!.id]);
    for (const p of parts) {
      expect(there.has(p.from), p.id).toBe(true);
      for (const end of p.kind === "module" ? [p.to] : Object.values(p.exits)) there.add(end);
    }
    expect(there.size).toBe(joints.length);
    for (const branch of d.results.layout.branches) {
      const numbers = branch.parts.map((id) => Number(id.replace(/\D+/, "")));
      expect(numbers).toEqual(numbers.toSorted((a, b) => a - b));
    }
  });
});

describe("31 spares by the plan's share (2 to 4 %, common practice, no source): their line is there", () => {
  const short = { kit: boardKit({ spares_share: 0.04 }) };

  test("each length's share is rounded up, and the sheet names modules in the walkway and on the shelf", async () => {
    const { plan, site, results, warnings } = await deriveLane(short);
    const counts = new Map<number, number>();
    for (const p of results.layout.parts)
      if (p.kind === "module") counts.set(p.length_m, (counts.get(p.length_m) ?? 0) + 1);
    expect(results.spares.map((s) => [s.length_m, s.in_layout, s.spares])).toEqual(
      [...counts].map(([length, n]) => [length, n, Math.ceil(n * 0.04)]),
    );
    expect(results.spares.length).toBeGreaterThan(0);
    const texts = sheetTexts({ plan, site, results, warnings }, "order");
    expect(texts).toContain("Spare modules");
    expect(texts).toContain("Spare, for the shelf");
    expect(texts.join(" ")).toContain("4 % of each length, rounded up to whole modules");
  });

  test("spares are in the take-off: two stringers more for each", async () => {
    const stringers = ({ results }: Derived): number =>
      results.take_off.timber
        .flatMap((l) => l.uses)
        .filter((u) => u.use === "stringer")
        .reduce((sum, u) => sum + u.count, 0);
    const [none, some] = await Promise.all([
      deriveLane({ kit: boardKit({ spares_share: 0 }) }),
      deriveLane(short),
    ]);
    const spares = some.results.spares.reduce((sum, s) => sum + s.spares, 0);
    expect(none.results.spares.every((s) => s.spares === 0)).toBe(true);
    expect(stringers(some) - stringers(none)).toBe(2 * spares);
  });
});
