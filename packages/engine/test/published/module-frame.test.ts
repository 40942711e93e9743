// CalculiX 2.20 (finite elements, B32R beams as solids), slender grillages without releases: a general program that
// shares no code with this one. Its one quadratic element over a section twists as J = 4 I1 I2 / (I1 + I2), which is
// therefore taken here too.
import { expect, test } from "vitest";
import {
  assemble,
  displacements,
  factorContact,
  reactions,
  type NodeLoad,
} from "../../src/grillage/index.ts";
import { meshOf } from "../../src/module-frame/mesh.ts";
import type { FrameRecipe } from "../../src/module-frame/index.ts";
import { hasCalculix, solveByCalculix, type SlenderCase, type Solved } from "../support/calculix-deck.ts";
import { publishedRow } from "../support/published-row.ts";

const E = 1e10;
const G = 5e9;
const inertia = (b: number, h: number): number => (b * h ** 3) / 12;
const stiffness = ([b, h]: readonly [number, number]) => ({
  ei: E * inertia(b, h),
  ga: (5 / 6) * G * b * h,
  gj: (G * 4 * inertia(b, h) * inertia(h, b)) / (inertia(b, h) + inertia(h, b)),
});

function solved(c: SlenderCase): Solved {
  const y = c.stringers_y;
  const recipe: FrameRecipe = {
    length_m: c.length,
    stringers_y_m: y,
    pieces: y.map(() => 1),
    stringer: stiffness(c.stringer),
    rows: c.rows_x.map((x_m) => ({ x_m, ...stiffness(c.row) })),
    boards: [],
    rests: [0, c.length].flatMap((x_m) => y.map((_, stringer) => ({ x_m, stringer }))),
    deck: "stringers",
    own_n_m: 0,
    division_m: 0.1,
  };
  const state = {
    name: "stiff",
    ends: "stiff",
    ...(c.settled > 0 ? { settled: { rest: 0, by_m: c.settled } } : {}),
  } as const;
  const mesh = meshOf(recipe, state, []);
  const nodeAt = (x: number, stringer: number): number =>
    mesh.nodeOf(
      stringer,
      mesh.stations_m.findIndex((s) => Math.abs(s - x) < 1e-6),
    );
  const loads: NodeLoad[] = c.loads.map(([x, s, down]) => ({ node: nodeAt(x, s), down }));
  const system = factorContact(
    assemble(mesh.grillage),
    recipe.rests.map(() => true),
  );
  const u = displacements(system, loads);
  const sag = (x: number): number[] => y.map((_, s) => u[nodeAt(x, s) * 3]!);
  return { quarter: sag(c.length / 4), half: sag(c.length / 2), reactions: reactions(system, u, loads) };
}

const two: SlenderCase = {
  length: 8,
  stringers_y: [-1, 1],
  rows_x: [0.4, 2, 4, 6, 7.6],
  stringer: [0.05, 0.1],
  row: [0.04, 0.04],
  loads: [[4, 0, 200]],
  settled: 0,
};
const three: SlenderCase = { ...two, stringers_y: [-1, 0, 1], row: [0.06, 0.03] };

/** What the program printed. */
const printed: readonly (readonly [string, SlenderCase, Solved])[] = [
  [
    "two stringers, 200 N at midspan of one",
    two,
    {
      half: [0.03940344, 0.01181261],
      quarter: [0.026966, 0.008242048],
      reactions: [100, 0, 100, 0],
    },
  ],
  [
    "two stringers, 200 N at a quarter of one, 100 N at midspan of the other",
    {
      ...two,
      loads: [
        [2, 0, 200],
        [4, 1, 100],
      ],
    },
    {
      half: [0.0328723, 0.02794377],
      quarter: [0.02691542, 0.01950065],
      reactions: [148.1756, 51.82442, 51.82442, 48.17558],
    },
  ],
  [
    "two stringers, one corner settled by 20 mm",
    { ...two, settled: 0.02 },
    {
      half: [0.04940344, 0.01181261],
      quarter: [0.04178355, 0.00842449],
      reactions: [86.73974, 13.26026, 113.2603, -13.26026],
    },
  ],
  [
    "three stringers, 200 N at midspan of an outer one",
    three,
    {
      half: [0.02819916, 0.01551446, 0.007502424],
      quarter: [0.01918246, 0.01084013, 0.005185454],
      reactions: [88.69526, 22.60947, -11.30474, 88.69526, 22.60947, -11.30474],
    },
  ],
  [
    "three stringers, one corner settled by 20 mm",
    { ...three, settled: 0.02 },
    {
      half: [0.03706869, 0.01777541, 0.00637195],
      quarter: [0.03256847, 0.01351888, 0.004120693],
      reactions: [-1.20583, 160.4516, -59.24573, 119.3315, 3.297158, -22.62863],
    },
  ],
];

const most = (values: readonly number[]): number => Math.max(...values.map(Math.abs));

for (const [n, [what, c, wanted]] of printed.entries()) {
  const got = solved(c);
  for (const [which, unit, times] of [
    ["half", "mm", 1000],
    ["quarter", "mm", 1000],
    ["reactions", "N", 1],
  ] as const)
    for (const [i, expected] of wanted[which].entries())
      publishedRow(
        {
          id: `frame ${n + 1} ${which} ${i + 1}`,
          source: "CalculiX 2.20",
          what: `${what}, ${which === "reactions" ? "bearing" : `sag at ${which}, stringer`} ${i + 1}`,
          expected: expected * times,
          unit,
          tolerance: 0.01 * most(wanted[which]) * times,
        },
        () => got[which][i]! * times,
      );
}

test.runIf(hasCalculix())("CalculiX: the figures above are what the program prints today", () => {
  for (const [what, c, wanted] of printed) {
    const now = solveByCalculix(c);
    for (const which of ["half", "quarter", "reactions"] as const)
      for (const [i, v] of wanted[which].entries())
        expect(Math.abs(now[which][i]! - v), what).toBeLessThanOrEqual(1e-4 * most(wanted[which]));
  }
});
