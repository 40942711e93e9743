import { expect, test } from "vitest";
import {
  crate,
  facts,
  feature,
  footOf,
  joint,
  ring,
  shapeOf,
  sheet,
  zone,
  type Sheet,
} from "../../../../test/support/hand-made-layout.ts";
import { auditLayout, type AuditInput } from "./index.ts";

const failing = (input: AuditInput): string[] =>
  auditLayout(input)
    .rules.filter((r) => r.problems.length > 0)
    .map((r) => r.rule);

test("a correct layout passes, and every rule has tested something", () => {
  const report = auditLayout(facts(sheet()));
  expect(report.rules.flatMap((r) => r.problems)).toEqual([]);
  expect(report.ok).toBe(true);
  expect(report.rules.filter((r) => r.tested === 0).map((r) => r.rule)).toEqual([]);
  const count = Object.fromEntries(report.rules.map((r) => [r.rule, r.tested]));
  expect(count).toMatchObject({
    feet: 7,
    "foot-ground": 8,
    "foot-level": 8,
    "part-overlap": 6,
    pitch: 3,
    "platform-edge": 1,
    "clear-span": 1,
  });
});

/** Each spoils one thing: what is spoilt, the rules that must object, and no others. */
const spoilt: readonly [
  string,
  readonly string[],
  (s: Sheet, input: AuditInput) => Partial<AuditInput> | void,
][] = [
  [
    "ground too low under the edge of a foot, high enough under its joint",
    ["foot-ground", "foot-level"],
    (s, i) => {
      i.terrain.values[25 * 41 + 9] = 0.3;
      const at = Math.fround(1 - 0.7 * 0.6 * 0.21);
      Object.assign(feature(s.features, "J5"), { ground_m: at, support_height_m: 1.2 - at });
    },
  ],
  [
    "ground that rises too much across a foot, so that the support gets too low as well",
    ["clear-height", "foot-level", "support-height"],
    (s, i) => {
      i.terrain.values[25 * 41 + 9] = 1.6;
      const at = Math.fround(1 + 0.6 * 0.6 * 0.21);
      Object.assign(feature(s.features, "J5"), { ground_m: at, support_height_m: 1.2 - at });
    },
  ],
  [
    "unknown ground under a foot, known under its joint",
    ["foot-ground"],
    (s, i) => {
      i.terrain.values[30 * 41 + 9] = NaN;
      expect(feature(s.features, "J1")["ground_m"]).toBe(1);
    },
  ],
  [
    "a foot in a use its kind keeps out of",
    ["foot-zone"],
    (_, i) => ({ zones: [...i.zones, zone("pan", "pool", [10.48, 21.5, 11, 22])] }),
  ],
  [
    "a part over a closed zone that no foot touches",
    ["shut-zone"],
    (_, i) => ({ zones: [...i.zones, zone("orchid", "closed", [9.6, 28, 9.7, 28.1])] }),
  ],
  [
    "a foot at the very edge of a closed zone",
    ["shut-zone"],
    (_, i) => ({ zones: [...i.zones, zone("nest", "buffer", [9.2, 21.53, 9.45, 21.63])] }),
  ],
  [
    "a part in the buffer around a closed zone",
    ["shut-zone"],
    (_, i) => ({ zones: [...i.zones, { ...zone("nest", "closed", [8, 28, 8.5, 29]), buffer_m: 1.06 }] }),
  ],
  [
    "a foot in the buffer around a use its kind keeps out of",
    ["foot-zone"],
    (_, i) => ({ zones: [...i.zones, { ...zone("pan", "pool", [10.7, 21.4, 11, 21.8]), buffer_m: 0.2 }] }),
  ],
  [
    "a plot reached from the wrong side",
    ["reached"],
    (_, i) => ({ plots: i.plots.map((p) => (p.id === "A" ? { ...p, arrive_from: "south" } : p)) }),
  ],
  [
    "a closure in force on the last day of laying only",
    ["shut-zone"],
    (_, i) => ({
      zones: [
        ...i.zones,
        zone("late", "seasonal-closure", [9.9, 28, 10.1, 29], { from: "05-14", to: "06-01" }),
      ],
    }),
  ],
  [
    "a closure that runs over New Year",
    ["shut-zone"],
    (_, i) => ({
      zones: [
        ...i.zones,
        zone("winter", "seasonal-closure", [9.9, 28, 10.1, 29], { from: "11-01", to: "05-10" }),
      ],
    }),
  ],
  [
    "a part inside the keep-off circle",
    ["keep-off"],
    (_, i) => ({ plots: [...i.plots, { id: "C", x: 11.4, y: 28, keep_off_m: 1, reach_m: 1 }] }),
  ],
  [
    "one part over another, sharing no joint",
    ["part-overlap", "pitch"],
    (s) => {
      shapeOf(s, "M3").coordinates = [ring([10.4, 23.6, 12.8, 24.5])];
    },
  ],
  [
    "neighbours 2 mm into each other",
    ["part-overlap", "pitch"],
    (s) => {
      shapeOf(s, "M1").coordinates = [ring([9.55, 26.383, 10.45, 29.983])];
    },
  ],
  [
    "the supports of two joints in one place",
    ["feet", "support-overlap"],
    (s) => {
      footOf(s, "J4").geometry.coordinates = [ring([10.3, 25.19, 10.5, 26.295])];
    },
  ],
  [
    "joints 3 mm more than a pitch apart",
    ["feet", "pitch"],
    (s) => {
      shapeOf(s, "J7").coordinates = [13.013, 25.79];
      s.reached[1]!.distance_m = 1.987;
    },
  ],
  [
    "joints off the module's middle line",
    ["feet", "pitch"],
    (s) => {
      shapeOf(s, "J7").coordinates = [13.01, 25.793];
      s.reached[1]!.distance_m = 1.99;
    },
  ],
  [
    "a module length the kit does not have",
    ["pitch"],
    (_, i) => ({ kit: { ...i.kit, lengths_mm: [2400, 3000] } }),
  ],
  [
    "a platform joint off the middle of its edge",
    ["feet", "platform-edge"],
    (s) => {
      shapeOf(s, "J5").coordinates = [9.4, 25.8];
    },
  ],
  [
    "a platform drawn too wide",
    ["platform-edge"],
    (s) => {
      shapeOf(s, "P1").coordinates = [ring([9.403, 25.195, 10.597, 26.385])];
    },
  ],
  [
    "a foot missing",
    ["feet"],
    (s) => {
      s.features.splice(s.features.indexOf(footOf(s, "J6")), 1);
    },
  ],
  [
    "a foot smaller than its kind's",
    ["feet"],
    (s) => {
      footOf(s, "J1").geometry.coordinates = [ring([9.6, 29.9, 10.4, 30.1])];
    },
  ],
  [
    "a support higher than it is made",
    ["support-height", "grade"],
    (s) => {
      Object.assign(feature(s.features, "J1"), { support_height_m: 0.55, deck_m: 1.75 });
    },
  ],
  [
    "a support the kit does not have",
    ["feet", "support-height"],
    (s) => {
      feature(s.features, "J1")["support"] = "trestle";
    },
  ],
  [
    "a deck level that does not add up",
    ["deck-sum"],
    (s) => {
      feature(s.features, "J1")["deck_m"] = 1.405;
    },
  ],
  [
    "ground other than the terrain's",
    ["deck-sum"],
    (s) => {
      Object.assign(feature(s.features, "J1"), { ground_m: 0.99, support_height_m: 0.21 });
    },
  ],
  ["an underside too near the ground", ["clear-height"], () => ({ min_clear_mm: 210 })],
  [
    "a module steeper than allowed",
    ["grade"],
    (s) => {
      Object.assign(feature(s.features, "J1"), {
        support_height_m: 0.2 + 0.082 * 3.61,
        deck_m: 1.4 + 0.082 * 3.61,
      });
    },
  ],
  [
    "a platform that is not level",
    ["platform-level"],
    (s) => {
      Object.assign(feature(s.features, "J5"), { support_height_m: 0.21, deck_m: 1.41 });
    },
  ],
  [
    "a trunk that begins away from the start",
    ["branch", "reached"],
    () => ({ starts: [{ id: "S", x: 10, y: 30.6 }] }),
  ],
  [
    "a branch that leaves a platform it does not touch",
    ["branch"],
    (s) => {
      feature(s.features, "b")["from"] = "P9";
    },
  ],
  [
    "a break in the walkway",
    ["branch", "reached"],
    (s) => {
      s.features.splice(0, 1);
    },
  ],
  ["a plot beyond reach", ["reached"], (_, i) => ({ plots: i.plots.map((p) => ({ ...p, reach_m: 0.95 })) })],
  [
    "a plot reached from inside its keep-off line",
    ["keep-off", "reached"],
    (_, i) => ({ plots: i.plots.map((p) => ({ ...p, keep_off_m: 2 })) }),
  ],
  [
    "a plot claimed twice",
    ["reached"],
    (s) => {
      s.reached.push({ ...s.reached[0]! });
    },
  ],
  [
    "a claimed distance that is not so",
    ["reached"],
    (s) => {
      s.reached[0]!.distance_m = 2.5;
    },
  ],
  [
    "a support in the channel that a module bridges",
    ["clear-span", "feet"],
    (s) => {
      footOf(s, "J6").geometry.coordinates = [ring([9.6, 23.3, 9.7, 23.4])];
    },
  ],
  [
    "a joint that no part leads to",
    ["branch"],
    (s) => {
      s.features.push(joint("J9", "b", 90, 18, 35), crate("J9", 18, 35, "ew"));
    },
  ],
  [
    "a feature that lacks a member",
    ["format", "reached"],
    (s) => {
      delete feature(s.features, "J7")["deck_m"];
    },
  ],
  [
    "laying dates the wrong way round",
    ["laying-dates"],
    () => ({ laying: { from: "2027-05-14", to: "2027-02-10" } }),
  ],
];

for (const [name, rules, spoil] of spoilt)
  test(`the audit objects to ${name}`, () => {
    const layout = sheet();
    const input = facts(layout);
    expect(failing({ ...input, ...spoil(layout, input) }).sort()).toEqual([...rules].sort());
  });

test("a file that is no layout is a problem, not a crash", () => {
  for (const layout of [null, 7, {}, { features: [null, { properties: { kind: "tower" } }], reached: [3] }])
    expect(failing({ ...facts(sheet()), layout })).toContain("format");
});

test("a buffer that a part stays out of, and the side a plot is reached from, are not objected to", () => {
  const input = facts(sheet());
  const nest = { ...zone("nest", "closed", [8, 28, 8.5, 29]), buffer_m: 1.04 };
  const plots = input.plots.map((p) => (p.id === "A" ? { ...p, arrive_from: "north" as const } : p));
  expect(failing({ ...input, plots, zones: [...input.zones, nest] })).toEqual([]);
});

test("holes of a zone are outside it, and a shut zone wholly under a part is found", () => {
  const input = facts(sheet());
  const around = { id: "ring", use: "closed", polygons: [[ring([-5, -5, 40, 40]), ring([2, 2, 19, 35])]] };
  expect(failing({ ...input, zones: [around] })).toEqual([]);
  const touching = { ...around, polygons: [[ring([-5, -5, 40, 40]), ring([9.3, 2, 19, 35])]] };
  expect(failing({ ...input, zones: [touching] })).toEqual(["shut-zone"]);
});

/** Turns every coordinate and heading of a layout and its facts about the south-west corner of the site. */
function turned(input: AuditInput, degrees: number): AuditInput {
  const h = (degrees * Math.PI) / 180;
  const spot = (x: number, y: number): [number, number] => [
    20 + (x - 20) * Math.cos(h) + (y - 20) * Math.sin(h),
    20 - (x - 20) * Math.sin(h) + (y - 20) * Math.cos(h),
  ];
  const place = <T extends { x: number; y: number }>(p: T): T => {
    const [x, y] = spot(p.x, p.y);
    return { ...p, x, y };
  };
  const every = (c: unknown): unknown =>
    Array.isArray(c) ? (typeof c[0] === "number" ? spot(c[0], c[1] as number) : c.map(every)) : c;
  const layout = structuredClone(input.layout as Sheet);
  for (const f of layout.features) {
    f.geometry.coordinates = every(f.geometry.coordinates);
    const heading = f.properties["heading_deg"];
    if (typeof heading === "number") f.properties["heading_deg"] = (heading + degrees) % 360;
  }
  const zones = input.zones.map((z) => ({
    ...z,
    polygons: z.polygons.map((rings) => rings.map((r) => r.map(([x, y]) => spot(x, y)))),
  }));
  return {
    ...input,
    layout,
    zones,
    starts: input.starts.map(place),
    plots: input.plots.map(place),
  };
}

test("the verdict does not depend on the heading of the whole layout", () => {
  for (const degrees of [17, 45, 123.4]) {
    expect(failing(turned(facts(sheet()), degrees))).toEqual([]);
    const late = facts(sheet());
    const spoilt = { ...late, plots: late.plots.map((p) => ({ ...p, keep_off_m: 2 })) };
    expect(failing(turned(spoilt, degrees)).sort()).toEqual(["keep-off", "reached"]);
  }
});
