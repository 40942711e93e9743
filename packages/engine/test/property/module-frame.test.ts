import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { assemble, displacements, factorContact, reactions } from "../../src/grillage/index.ts";
import {
  frameModel,
  moduleRests,
  peaksOf,
  rectangleStiffness,
  runner,
  standAt,
  type FrameCase,
  type FrameRecipe,
  type FrameState,
  type Placement,
} from "../../src/module-frame/index.ts";
import { leverShares } from "../../src/structure/index.ts";
import { largestMoment, largestReaction } from "../../src/structure/index.ts";
import { qty } from "../../src/units/index.ts";

const E = qty(8e9, "Pa");

/** Ordinary modules: 1.2 to 4 m long, two or three stringers of 2x6 to 2x12, rows every 0.4 to 0.8 m. */
const recipes = fc
  .record({
    length: fc.double({ min: 1.2, max: 4, noNaN: true }),
    half: fc.double({ min: 0.2, max: 0.5, noNaN: true }),
    count: fc.constantFrom(2, 3),
    depth: fc.constantFrom(0.14, 0.184, 0.235, 0.286),
    rows: fc.integer({ min: 3, max: 8 }),
    flat: fc.boolean(),
    own: fc.double({ min: 100, max: 600, noNaN: true }),
    deck: fc.constantFrom("stringers" as const, "rows" as const),
  })
  .map(({ length, half, count, depth, rows, flat, own, deck }): FrameRecipe => {
    const y = count === 2 ? [-half, half] : [-half, 0, half];
    const row = flat ? rectangleStiffness(E, 0.089, 0.038) : rectangleStiffness(E, 0.038, 0.089);
    return {
      length_m: length,
      stringers_y_m: y,
      pieces: y.map(() => 1),
      stringer: rectangleStiffness(E, 0.038, depth),
      rows: Array.from({ length: rows }, (_, i) => ({
        x_m: 0.02 + ((length - 0.04) * i) / (rows - 1),
        ...row,
      })),
      boards: [],
      rests: moduleRests(y.length, length),
      deck,
      own_n_m: own,
      division_m: 0.1,
    };
  });

const trains = fc
  .array(
    fc.record({
      gap: fc.double({ min: 0.3, max: 2, noNaN: true }),
      weight: fc.double({ min: 100, max: 1500, noNaN: true }),
    }),
    { minLength: 1, maxLength: 4 },
  )
  .map((loads): FrameCase => {
    let at = 0;
    return {
      name: "train",
      loads: loads.map(({ gap, weight }, i) => ({
        at_m: (at += i === 0 ? 0 : gap),
        weight_n: weight,
        kind: "feet",
      })),
    };
  });

const at = (y_m: number): Placement => ({
  stringer: 0,
  places: [{ kind: "feet", off_m: y_m, parts: [{ y_m, part: 1 }] }],
});
const hinged: FrameState = { name: "hinged", ends: "hinged" };
const stiff: FrameState = { name: "stiff", ends: "stiff" };
const plain = { own: 1, live: 1 };
const peaks = (recipe: FrameRecipe, state: FrameState, load: FrameCase, y: number) =>
  peaksOf([runner(frameModel(recipe, state, [at(y)]), at(y), plain)], [load]);

describe("equilibrium", () => {
  test("the bearings carry what stands on the module, within 1e-9, wherever it stands", () => {
    fc.assert(
      fc.property(
        recipes,
        fc.constantFrom(hinged, stiff),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (recipe, state, along, across) => {
          const y = across * recipe.stringers_y_m.at(-1)!;
          const model = frameModel(recipe, state, [at(y)]);
          const load = { x_m: along * recipe.length_m, weight_n: 1000, kind: "feet" };
          const standing = runner(model, at(y), plain).stand([load])!;
          const push = recipe.rests.map((_, i) => standing.read("push", i));
          const total = 1000 + recipe.own_n_m * recipe.length_m;
          const sum = push.reduce((a, b) => a + b, 0);
          expect(Math.abs(sum - total)).toBeLessThanOrEqual(1e-9 * total);
          // Moments about the start and about the middle line.
          const turn = recipe.rests.reduce((a, r, i) => a + r.x_m * push[i]!, 0);
          const wanted = load.x_m * 1000 + (recipe.own_n_m * recipe.length_m ** 2) / 2;
          expect(Math.abs(turn - wanted)).toBeLessThanOrEqual(1e-8 * total * recipe.length_m);
          const roll = recipe.rests.reduce((a, r, i) => a + recipe.stringers_y_m[r.stringer]! * push[i]!, 0);
          expect(Math.abs(roll - y * 1000)).toBeLessThanOrEqual(1e-8 * total);
          expect(Math.min(...push)).toBeGreaterThanOrEqual(-1e-6);
        },
      ),
      { numRuns: 200 },
    );
  });

  test("with one corner settled too, whatever lifts", () => {
    fc.assert(
      fc.property(
        recipes,
        fc.double({ min: 0.001, max: 0.05, noNaN: true }),
        trains,
        (recipe, by_m, load) => {
          const state: FrameState = { ...stiff, settled: { rest: 0, by_m } };
          const model = frameModel(recipe, state, [at(0)]);
          const loads = standAt(load, recipe.length_m / 3, 1, recipe.length_m);
          const standing = runner(model, at(0), plain).stand(loads);
          if (!standing) return;
          const push = recipe.rests.map((_, i) => standing.read("push", i));
          const total = loads.reduce((a, l) => a + l.weight_n, 0) + recipe.own_n_m * recipe.length_m;
          expect(Math.abs(push.reduce((a, b) => a + b, 0) - total)).toBeLessThanOrEqual(1e-8 * total);
          expect(Math.min(...push)).toBeGreaterThanOrEqual(-1e-5);
        },
      ),
      { numRuns: 100 },
    );
  });
});

test("hinged cross pieces: every stringer is a simple span under its lever share, within 1.6 (division/length)^2", () => {
  fc.assert(
    fc.property(recipes, trains, fc.double({ min: -1, max: 1, noNaN: true }), (given, load, across) => {
      const recipe: FrameRecipe = { ...given, deck: "stringers" };
      const y = across * recipe.stringers_y_m.at(-1)!;
      const found = peaks(recipe, hinged, load, y).largest;
      const shares = leverShares(recipe.stringers_y_m, y);
      const own = (i: number): number => {
        const s = recipe.stringers_y_m;
        const width = ((s[i + 1] ?? s[i]!) - (s[i - 1] ?? s[i]!)) / 2 / (s.at(-1)! - s[0]!);
        return recipe.own_n_m * width;
      };
      const L = recipe.length_m;
      const byHand = shares.map((share, i) => {
        const train = load.loads.map((l) => ({ at: l.at_m, weight: l.weight_n * share }));
        return {
          moment: largestMoment(train, L),
          shear: largestReaction(train, L).value + (own(i) * L) / 2,
          own: own(i),
        };
      });
      const moment = Math.max(
        ...byHand.map(({ moment: m, own: w }) => m.value + (w * m.section * (L - m.section)) / 2),
      );
      expect(found.moment!.value).toBeGreaterThanOrEqual(moment * (1 - 1.6 * (recipe.division_m / L) ** 2));
      const withOwn = Math.max(...byHand.map(({ moment: m, own: w }) => m.value + (w * L * L) / 8));
      expect(found.moment!.value).toBeLessThanOrEqual(withOwn * 1.000001);
      const push = Math.max(...byHand.map((b) => b.shear));
      expect(found.push!.value).toBeGreaterThanOrEqual(push * 0.99999);
      expect(found.push!.value).toBeLessThanOrEqual(push * 1.00001);
    }),
    { numRuns: 40 },
  );
});

test("a mirrored load mirrors what the stringers and bearings feel", () => {
  fc.assert(
    fc.property(recipes, trains, fc.double({ min: 0, max: 1, noNaN: true }), (recipe, load, across) => {
      const y = across * recipe.stringers_y_m.at(-1)!;
      const [right, left] = [peaks(recipe, stiff, load, -y), peaks(recipe, stiff, load, y)];
      for (const what of ["moment", "shear", "sag", "push"] as const) {
        const [a, b] = [right.largest[what]!.value, left.largest[what]!.value];
        expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-6 * a);
      }
    }),
    { numRuns: 40 },
  );
});

test("more load never lowers a moment, a shear, a sag or a push", () => {
  fc.assert(
    fc.property(recipes, trains, fc.double({ min: 1, max: 3, noNaN: true }), (recipe, load, more) => {
      const heavier = {
        ...load,
        loads: load.loads.map((l) => ({ ...l, weight_n: l.weight_n * more })),
      };
      const y = recipe.stringers_y_m[0]!;
      const [a, b] = [peaks(recipe, stiff, load, y), peaks(recipe, stiff, heavier, y)];
      for (const what of ["moment", "shear", "sag", "push"] as const)
        expect(b.largest[what]!.value).toBeGreaterThanOrEqual(a.largest[what]!.value * (1 - 1e-9));
    }),
    { numRuns: 40 },
  );
});

test("a prescribed sinking without load pulls as much as it pushes: forces sum to nothing", () => {
  const recipe = fc.sample(recipes, 1)[0]!;
  const model = frameModel(recipe, { ...stiff, settled: { rest: 0, by_m: 0.01 } }, [at(0)]);
  const system = factorContact(
    assemble(model.mesh.grillage),
    recipe.rests.map(() => true),
  );
  const R = reactions(system, displacements(system, []), []);
  const most = Math.max(...R.map(Math.abs));
  expect(most).toBeGreaterThan(0);
  expect(Math.abs(R.reduce((a, b) => a + b, 0))).toBeLessThanOrEqual(1e-6 * most);
});
