import { describe, expect, test } from "vitest";
import { commonPracticeKit } from "../../test/support/common-practice-kit.ts";
import { gratingKit, halvesKit, plywoodKit } from "../../test/support/deck-kits.ts";
import { yardTables } from "../../test/support/yard-tables.ts";
import { moduleCounts, platformCounts, rampCounts, type Counted } from "./counts.ts";
import { moduleDrawing, platformDrawing, rampDrawing, supportDrawing, type PartDrawing } from "./drawing.ts";
import { modulePieces } from "./module-pieces.ts";
import type { ScrewPoint } from "./screw-points.ts";
import type { Kit } from "./types.ts";

const { sizes, fasteners } = yardTables;
const IN = 25.4;
const curb = { size: "2x2", screw: "screw-10x3", screw_spacing_mm: 600 } as const;
const kits: readonly Kit[] = [
  commonPracticeKit,
  gratingKit,
  plywoodKit,
  halvesKit,
  { ...halvesKit, id: "curbed", curb },
];

/** Screws and clips of a list of counts: everything that the fastener table knows. */
const screwsOf = (counts: readonly Counted[]): Record<string, number> =>
  Object.fromEntries(
    counts.filter((c) => fasteners.some((f) => f.id === c.item)).map((c) => [c.item, c.count]),
  );
const drawn = (points: readonly ScrewPoint[]): Record<string, number> => {
  const counts: Record<string, number> = {};
  for (const p of points) counts[p.item] = (counts[p.item] ?? 0) + 1;
  return counts;
};

for (const kit of kits)
  describe(`screws of "${kit.id}"`, () => {
    test("as many are drawn as are counted, in modules, platform and ramps", () => {
      for (const l of kit.lengths_mm)
        expect(drawn(moduleDrawing(kit, l, sizes).screws)).toEqual(screwsOf(moduleCounts(kit, l, sizes)));
      for (const closed of [[], ["ahead", "left"]] as const)
        expect(drawn(platformDrawing(kit, sizes, closed).screws)).toEqual(
          screwsOf(platformCounts(kit, sizes, closed)),
        );
      for (const l of kit.ramp?.lengths_mm ?? [])
        expect(drawn(rampDrawing(kit, l, sizes).screws)).toEqual(screwsOf(rampCounts(kit, l, sizes)));
    });

    test("each lies on the part, within the piece that it holds, and no two of one face at one place", () => {
      for (const l of kit.lengths_mm) {
        const pieces = modulePieces(kit, l, sizes);
        const screws = moduleDrawing(kit, l, sizes).screws;
        for (const s of screws) {
          const held = pieces.filter((p) => p.role === s.holds);
          const t = 38.1 + 0.1;
          const isIn = held.some(
            (p) =>
              s.x_mm >= p.x0 * 1000 - 0.1 &&
              s.x_mm <= p.x1 * 1000 + 0.1 &&
              s.y_mm >= p.y0 * 1000 - t &&
              s.y_mm <= p.y1 * 1000 + t &&
              s.z_mm >= p.z0 * 1000 - 0.1 &&
              s.z_mm <= p.z1 * 1000 + 0.1,
          );
          expect(isIn, JSON.stringify(s)).toBe(true);
        }
        const above = screws.filter((s) => s.from === "above");
        const places = above.map((s) => `${s.x_mm.toFixed(1)} ${s.y_mm.toFixed(1)} ${s.holds}`);
        expect(new Set(places).size).toBe(places.length);
      }
    });
  });

const chainOf = (d: PartDrawing, id: string): readonly number[] => d.chains.find((c) => c.id === id)!.at_mm;

describe("views and chains of a grating module of 8 ft (by hand)", () => {
  const drawing = moduleDrawing(gratingKit, 96 * IN, sizes);

  test("every piece is a rectangle in every view, and the three views agree", () => {
    const pieces = modulePieces(gratingKit, 96 * IN, sizes);
    for (const view of [drawing.plan, drawing.side, drawing.end]) {
      expect(view.map((p) => p.role)).toEqual(pieces.map((p) => p.role));
      for (const p of view) expect([p.u1 > p.u0, p.v1 > p.v0]).toEqual([true, true]);
    }
    drawing.plan.forEach((p, i) => {
      expect([drawing.side[i]!.u0, drawing.side[i]!.u1]).toEqual([p.u0, p.u1]);
      expect([-drawing.end[i]!.u1, -drawing.end[i]!.u0].map((v) => v + 0)).toEqual(
        [p.v0, p.v1].map((v) => v + 0),
      );
    });
  });

  test("chains: cross pieces 1 3/4, 24, 48, 72, 94 1/4 in; panels, stringers, heights", () => {
    const inches = (id: string): number[] =>
      chainOf(drawing, id).map((v) => Math.round((v / IN) * 1000) / 1000);
    expect(inches("length")).toEqual([0, 96]);
    expect(inches("cross-pieces")).toEqual([0, 1.75, 24, 48, 72, 94.25, 96]);
    expect(inches("sheets")).toEqual([0, 47.875, 48.125, 96]);
    expect(inches("stringers")).toEqual([-11, -9.5, 9.5, 11]);
    expect(inches("width")).toEqual([-12, 12]);
    expect(inches("heights")).toEqual([0, 3.5, 5]);
  });

  test("every chain rises", () => {
    const all = [
      drawing,
      platformDrawing(halvesKit, sizes),
      rampDrawing(halvesKit, 95.5 * IN, sizes),
      supportDrawing(gratingKit, "open-crate", 0.3, sizes),
    ];
    for (const d of all)
      for (const { id, at_mm } of d.chains) {
        expect(at_mm.length, `${d.name} ${id}`).toBeGreaterThan(1);
        for (let i = 1; i < at_mm.length; i++) expect(at_mm[i]!).toBeGreaterThan(at_mm[i - 1]!);
      }
  });
});

test("a platform in two pieces says so in its drawing, with the screws that join them on the middle line", () => {
  const drawing = platformDrawing(halvesKit, sizes);
  expect(chainOf(drawing, "halves").map((v) => v / IN)).toEqual(
    [-35.75, 0, 35.75].map((v) => expect.closeTo(v, 6)),
  );
  const joins = drawing.screws.filter((s) => s.holds === "halves");
  expect(joins).toHaveLength(6);
  for (const s of joins) expect(Math.abs(s.y_mm)).toBeCloseTo(38.1, 6);
  expect(platformDrawing(gratingKit, sizes).chains.some((c) => c.id === "halves")).toBe(false);
});
