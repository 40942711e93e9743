import { describe, expect, test } from "vitest";
import { commonPracticeKit as good } from "../../test/support/common-practice-kit.ts";
import { yardTables } from "../../test/support/yard-tables.ts";
import type { Deck, Kit, SupportKind } from "./types.ts";
import { validateKit } from "./validate.ts";

const IN = 25.4;
const found = (change: Partial<Kit>) => validateKit({ ...good, ...change }, yardTables);
const boards: Deck = {
  kind: "boards",
  size: "5/4x6",
  gap_mm: 12.7,
  width_mm: 24 * IN,
  screw: "screw-8x2.5",
  screws_per_bearing: 2,
};
const crate = good.supports[0]!;
const withCrate = (change: Partial<SupportKind>): Partial<Kit> => ({ supports: [{ ...crate, ...change }] });
const mesh = good.deck as Extract<Deck, { kind: "mesh" }>;

/** Each recipe has one fault: its place in the plan file, and a word of the message. */
const faults: readonly [title: string, change: Partial<Kit>, place: string, says: string][] = [
  ["no length", { lengths_mm: [] }, "lengths_mm", "no module length"],
  ["a length twice", { lengths_mm: [2438.4, 2438.4] }, "lengths_mm[1]", "given twice"],
  ["no number for the gap", { joint_gap_mm: Number.NaN }, "joint_gap_mm", "0 or more"],
  ["unknown lumber", { lumber: { ...good.lumber, species: "oak" } }, "lumber", "not in the tables"],
  [
    "unknown size of stringer",
    { stringers: { ...good.stringers, size: "2x5" } },
    "stringers.size",
    '"2x5" is not in the tables',
  ],
  [
    "stringers without space",
    { stringers: { ...good.stringers, overall_mm: 150 } },
    "stringers.overall_mm",
    "left between the stringers",
  ],
  [
    "unknown screw",
    { cross_pieces: { ...good.cross_pieces, screw: "screw-x" } },
    "cross_pieces.screw",
    "not in the tables",
  ],
  [
    "rows closer than they are wide",
    { cross_pieces: { ...good.cross_pieces, spacing_mm: 60, exceptions: [] } },
    "cross_pieces.spacing_mm",
    "neighbours would overlap",
  ],
  [
    "an exception off the module",
    { cross_pieces: { ...good.cross_pieces, exceptions: [{ length_mm: 1219.2, at_mm: 1300 }] } },
    "cross_pieces.exceptions[0].at_mm",
    "off the module",
  ],
  [
    "an exception for no module",
    { cross_pieces: { ...good.cross_pieces, exceptions: [{ length_mm: 1000, at_mm: 300 }] } },
    "cross_pieces.exceptions[0].length_mm",
    "no module of the kit has this length",
  ],
  [
    "a cross piece below the stringers",
    { cross_pieces: { ...good.cross_pieces, size: "2x6", lay: "edge" } },
    "cross_pieces.size",
    "hangs below",
  ],
  [
    "no room for the catch board",
    { cross_pieces: { ...good.cross_pieces, lay: "edge" } },
    "end.size",
    "under the first cross piece",
  ],
  [
    "a catch board that does not reach",
    { end: { kind: "catch-board", size: "2x10", projection_mm: 5 }, joint_gap_mm: 10 },
    "end.projection_mm",
    "does not reach",
  ],
  [
    "a catch board without hold",
    { end: { kind: "catch-board", size: "2x10", projection_mm: 220 } },
    "end.projection_mm",
    "inside its module",
  ],
  ["boards that leave a rest", { deck: boards, lengths_mm: [2438.4, 1000] }, "lengths_mm[1]", "leave a rest"],
  ["panels that do not fill", { lengths_mm: [12 * 304.8, 3000, 4 * 304.8] }, "lengths_mm[1]", "do not fill"],
  [
    "a panel joint in the air",
    { cross_pieces: { ...good.cross_pieces, exceptions: [], spacing_mm: 500 } },
    "cross_pieces",
    "no cross piece under the joint",
  ],
  ["a deck too narrow", { deck: { ...mesh, width_mm: 400 } }, "deck.width_mm", "ends short"],
  ["an open share of 2", { deck: { ...mesh, open_share: 2 } }, "deck.open_share", "between 0 and 1"],
  [
    "curbs that leave no way",
    { curb: { size: "2x8", screw: "screw-10x3", screw_spacing_mm: 600 } },
    "curb.size",
    "left to walk on",
  ],
  ["no support", { supports: [] }, "supports", "no support kind"],
  [
    "heights crossed",
    withCrate({ height_min_mm: 600, height_max_mm: 300 }),
    "supports[0].height_min_mm",
    "above the greatest",
  ],
  [
    "a sill shorter than the module",
    withCrate({ sill: { ...crate.sill, length_mm: 500 } }),
    "supports[0].sill.length_mm",
    "shorter than the module",
  ],
  [
    "legs that do not reach",
    withCrate({ pieces: crate.pieces.map((p) => (p.name === "leg" ? { ...p, length_mm: -200 } : p)) }),
    "supports[0].pieces",
    "too short for the sill",
  ],
  [
    "three legs on two lines",
    withCrate({ pieces: crate.pieces.map((p) => (p.name === "leg" ? { ...p, count: 3 } : p)) }),
    "supports[0].pieces[1].count",
    "cannot stand evenly",
  ],
  ["no foot", withCrate({ feet: [] }), "supports[0].feet", "no foot"],
  [
    "a stake all in the ground",
    withCrate({ anchor: { ...crate.anchor!, embedment_mm: 1300 } }),
    "supports[0].anchor.embedment_mm",
    "nothing is left",
  ],
  [
    "an unknown use of zone",
    withCrate({ stands: { ground_above_m: null, not_in: ["lake"] } }),
    "supports[0].stands.not_in[0]",
    "no use of a zone",
  ],
  [
    "a platform smaller than the walkway",
    { platform: { ...good.platform, side_mm: 500, stringers: { size: "2x4", count: 2 } } },
    "platform.side_mm",
    "smaller than the walkway",
  ],
  [
    "a platform of another depth",
    { platform: { ...good.platform, stringers: { size: "2x6", count: 4 } } },
    "platform.stringers.size",
    "decks do not meet",
  ],
  [
    "mesh of a platform that meets in the air",
    { platform: { ...good.platform, cross_pieces: { size: "2x4", count: 4 } } },
    "platform.cross_pieces.count",
    "no row of cross pieces",
  ],
  [
    "a platform stringer in the way of the catch board",
    { platform: { ...good.platform, stringers: { size: "2x4", count: 5 } } },
    "platform",
    "stand in the same place",
  ],
  ["a gap that spoils the lattice", { joint_gap_mm: 12.7 }, "joint_gap_mm", "share no step"],
];

describe("validateKit", () => {
  test.each(faults)("%s", (_title, change, place, says) => {
    const problem = found(change).find((p) => p.place === `kit.${place}` && p.message.includes(says));
    expect(problem, JSON.stringify(found(change), null, 1)).toBeDefined();
    expect(problem!.severity).toBe("error");
    expect(problem!.file).toBe("plan.json");
    expect(problem!.mend.length).toBeGreaterThan(5);
  });

  test("names every fault at once", () => {
    const problems = found({ lengths_mm: [], supports: [], lumber: { ...good.lumber, grade: "x" } });
    expect(problems.map((p) => p.place)).toEqual(
      expect.arrayContaining(["kit.lengths_mm", "kit.supports", "kit.lumber"]),
    );
  });

  test("a spoilt lattice says how to mend it, with the lengths to saw", () => {
    const [problem] = found({ joint_gap_mm: 12.7 }).filter((p) => p.code === "kit-lattice");
    const text = found({ joint_gap_mm: 12.7 })
      .map((p) => p.mend)
      .join(" ");
    expect(problem).toBeDefined();
    expect(text).toContain("3644.9 mm");
    expect(text).toContain("304.8 mm (1 ft)");
    expect(text).toContain("set the joint gap to 0");
  });

  test("warns of a short screw, of feet that are not there, and of heights that nothing reaches", () => {
    const short = { ...yardTables.fasteners[0]!, length_mm: 50 };
    const tables = { ...yardTables, fasteners: [short, ...yardTables.fasteners.slice(1)] };
    const codes = (kit: Kit): string[] => validateKit(kit, tables).map((p) => `${p.severity} ${p.code}`);
    expect(codes(good)).toContain("warning kit-screw");
    const feet = crate.feet.map((f) => ({ ...f, along_mm: f.along_mm * 2 }));
    expect(found(withCrate({ feet })).map((p) => p.place)).toEqual(["kit.supports[0].feet"]);
    const high = { ...crate, id: "high", height_min_mm: 30 * IN, height_max_mm: 31 * IN };
    const gaps = found({ supports: [crate, high] }).map((p) => p.message);
    expect(gaps.join()).toContain("no support can be built to heights between");
  });

  test("hostile numbers end in problems, quickly", () => {
    const wild = found({
      lengths_mm: [1e12, 1e-9],
      cross_pieces: { ...good.cross_pieces, spacing_mm: 1e-9 },
      deck: { ...mesh, panel_length_mm: 1e-9 },
      platform: { ...good.platform, side_mm: 1e300, stringers: { size: "2x4", count: 1e9 } },
      supports: [{ ...crate, height_step_mm: 1e-12, height_max_mm: Infinity }],
    });
    expect(wild.length).toBeGreaterThan(5);
    expect(wild.every((p) => p.message !== "")).toBe(true);
  });
});
