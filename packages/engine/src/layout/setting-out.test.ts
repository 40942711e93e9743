import fc from "fast-check";
import { expect, test } from "vitest";
import { plotAt, smallFacts, smallInput, smallSite, smallTerrain } from "../../test/support/small-site.ts";
import { finish } from "../formula/index.ts";
import { searchNetwork } from "./search.ts";
import { settingOut } from "./setting-out.ts";
import type { SettingOut } from "./setting-out-types.ts";
import type { Layout } from "./types.ts";

const bumpy = smallTerrain(60, 60, (x, y) => 1 + 0.1 * Math.sin(x / 3) * Math.cos(y / 4));

function lay(heading: number, places: readonly (readonly [number, number])[], gap_m = 0.012): Layout {
  const plots = places.map(([x, y], k) => plotAt(`p${k}`, x, y));
  const base = smallInput(smallSite(bumpy, plots, [], { x: 30, y: 8 }));
  const lengths_m = smallFacts.lengths_m.map((l) => l - gap_m);
  return finish(
    searchNetwork({
      ...base,
      facts: { ...smallFacts, gap_m, lengths_m, platform_side_m: 2 - gap_m },
      choice: { ...base.choice, first_heading_deg: heading },
    }),
  );
}

/** Reads a list as a crew would, with nothing but the first joint's place: along each line, then square to it. */
function readBack(list: SettingOut): Map<string, [number, number]> {
  const at = new Map<string, [number, number]>([
    [list.joints[0]!.joint, [list.joints[0]!.x, list.joints[0]!.y]],
  ]);
  for (const j of list.joints.slice(1)) {
    const line = list.lines.find((l) => l.id === j.line)!;
    const [x, y] = at.get(line.from)!;
    const [north, east] = [Math.cos(rad(line.heading_deg)), Math.sin(rad(line.heading_deg))];
    at.set(j.joint, [
      x + j.distance_m * east + j.offset_m * north,
      y + j.distance_m * north - j.offset_m * east,
    ]);
  }
  return at;
}
const rad = (deg: number): number => (deg * Math.PI) / 180;

test("property: the list, summed from the first joint, comes back to every joint's coordinates within 1 mm", () => {
  let turned = 0;
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 89, noNaN: true }),
      fc.array(fc.tuple(fc.integer({ min: 8, max: 52 }), fc.integer({ min: 14, max: 52 })), {
        minLength: 1,
        maxLength: 4,
      }),
      (heading, places) => {
        const layout = lay(heading, places);
        const list = settingOut(layout);
        expect(list.joints.map((j) => j.joint).sort()).toEqual(layout.joints.map((j) => j.id).sort());
        const back = readBack(list);
        for (const joint of layout.joints) {
          const [x, y] = back.get(joint.id)!;
          expect(Math.hypot(x - joint.x, y - joint.y)).toBeLessThan(0.001);
          expect(Math.hypot(x - joint.x, y - joint.y)).toBeLessThanOrEqual(list.closing_error_m + 1e-12);
        }
        if (list.lines.length > 1) turned++;
      },
    ),
    { numRuns: 30 },
  );
  expect(turned).toBeGreaterThan(10);
});

test("ties lead to places set out before, and with the diagonals they are the plain distances", () => {
  const layout = lay(23, [
    [12, 40],
    [48, 44],
    [40, 20],
  ]);
  const marks = [
    { id: "BM1", x: 27, y: 10 },
    { id: "BM2", x: 34, y: 6 },
  ];
  const list = settingOut(layout, marks);
  const place = new Map([...layout.joints, ...marks].map((p) => [p.id, p]));
  const before = new Set(marks.map((m) => m.id));
  for (const j of list.joints) {
    expect(j.ties).toHaveLength(2);
    for (const tie of j.ties) {
      expect(before.has(tie.to)).toBe(true);
      const to = place.get(tie.to)!;
      expect(Math.abs(Math.hypot(to.x - j.x, to.y - j.y) - tie.distance_m)).toBeLessThanOrEqual(
        0.00005 + 1e-9,
      );
    }
    before.add(j.joint);
  }
  expect(list.joints[0]!.ties.map((t) => t.to).sort()).toEqual(["BM1", "BM2"]);
  const platforms = layout.parts.filter((p) => p.kind === "platform");
  expect(platforms.length).toBeGreaterThan(0);
  expect(list.diagonals).toHaveLength(4 * platforms.length);
  // Edge joints lie 1 m from the middle of a 2 m platform pitch: all four are the root of two.
  for (const d of list.diagonals) expect(d.distance_m).toBeCloseTo(Math.SQRT2, 4);
});

test("a straight walkway is one line, measured along it without offsets; its own ties hardly cross", () => {
  const list = settingOut(lay(0, [[30, 30]]));
  expect(list.lines).toEqual([{ id: "L1", from: "J1", heading_deg: 0 }]);
  for (const j of list.joints) {
    expect(j.offset_m).toBe(0);
    expect(j.distance_m).toBeCloseTo(j.along_m, 4);
  }
  expect(list.joints[0]).toMatchObject({ ties: [], crossing_deg: null });
  expect(list.joints[2]!.crossing_deg).toBe(0);
  expect(list.closing_error_m).toBeLessThan(0.001);
});

test("a layout without parts has an empty list", () => {
  const empty = { ...lay(0, [[30, 30]]), joints: [], parts: [] };
  expect(settingOut(empty)).toEqual({ lines: [], joints: [], diagonals: [], closing_error_m: 0 });
});
