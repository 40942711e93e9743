import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { describe, test } from "vitest";
import {
  freeDepth,
  groundReaction,
  ignoredTop,
  lateral,
  pressed,
  pullOut,
  rakingPair,
  stakeStates,
  stakesNeeded,
  type StakeSection,
} from "../../src/anchors/index.ts";
import {
  breaksFirst,
  buoyantForce,
  crestLevel,
  crestUplift,
  dammedShare,
  dispersion,
  dragForce,
  facingArea,
  familyCoefficient,
  floatingOrder,
  floatLevel,
  froudeNumber,
  headLoss,
  iceLift,
  liftCurve,
  meshCoefficient,
  timberDensity,
  UNHELD,
  moistureStates,
  upliftByHeight,
  waveOnPiece,
  weightOfPieces,
  wrackCoefficient,
  type FloodPiece,
} from "../../src/flood/index.ts";
import { metres, newtons, pascals, qty } from "../../src/units/index.ts";

/** Half spread evenly over the range, half over the powers of two, which crowd about zero. */
const num = (min: number, max: number): fc.Arbitrary<number> =>
  fc.oneof(
    fc.integer({ min: 0, max: 1_000_000 }).map((i) => min + ((max - min) * i) / 1_000_000),
    fc.double({ min, max, noNaN: true }),
  );
const one = (v: number) => qty(v, "1");
const rho = (v: number) => qty(v, "kg/m3");
/** Rounding of a few operations. */
const slack = (v: number): number => 1e-12 * Math.abs(v) + 1e-12;

const piece: fc.Arbitrary<FloodPiece> = fc
  .tuple(num(-2, 3), num(0.001, 2), num(1e-5, 1), num(50, 8000))
  .map(([bottom_m, height, volume_m3, density_kg_m3]) => ({
    name: "piece",
    bottom_m,
    top_m: bottom_m + height,
    volume_m3,
    density_kg_m3,
  }));
const pieces = fc.array(piece, { minLength: 1, maxLength: 6 });
const water = num(950, 1050).map(rho);
const level = num(-3, 6);

describe("buoyancy", () => {
  test("more water never lowers the upward force, and it stays between nothing and all of the volume", () => {
    fc.assert(
      fc.property(pieces, water, level, num(0, 3), (list, rho_w, z, more) => {
        const [a, b] = [buoyantForce(list, z, rho_w), buoyantForce(list, z + more, rho_w)];
        const all = rho_w * 9.80665 * list.reduce((v, p) => v + p.volume_m3, 0);
        return a >= 0 && b >= a - slack(b) && b <= all + slack(all);
      }),
      { numRuns: 2000 },
    );
  });

  test("at the level where a part floats, the force balances weight and hold; below it does not reach them", () => {
    fc.assert(
      fc.property(
        pieces,
        water,
        num(0, 1),
        num(0, 2000),
        num(1e-4, 1),
        (list, rho_w, weight_share, hold_n, below) => {
          const need = weight_share * weightOfPieces(list) + hold_n;
          const z = floatLevel(list, rho_w, { weight_share, hold_n });
          if (z === null) return buoyantForce(list, 1e3, rho_w) < need * (1 + 1e-12);
          if (need === 0) return true;
          const lift = buoyantForce(list, z, rho_w);
          return (
            Math.abs(lift - need) <= 1e-9 * need + 1e-7 &&
            buoyantForce(list, z - below, rho_w) < need * (1 + 1e-12) + 1e-9
          );
        },
      ),
      { numRuns: 2000 },
    );
  });

  test("more hold never lets a part float earlier, and the order is that of the levels", () => {
    fc.assert(
      fc.property(
        fc.array(pieces, { minLength: 1, maxLength: 5 }),
        water,
        num(0, 500),
        (lists, rho_w, hold_n) => {
          const parts = lists.map((list, i) => ({ id: `part ${i}`, pieces: list, hold: UNHELD }));
          const levels = floatingOrder(parts, rho_w).map((f) => f.level_m ?? Infinity);
          const free = floatLevel(lists[0]!, rho_w) ?? Infinity;
          const heldAt = floatLevel(lists[0]!, rho_w, { weight_share: 1, hold_n }) ?? Infinity;
          return levels.every((z, i) => i === 0 || z >= levels[i - 1]!) && heldAt >= free - 1e-9;
        },
      ),
    );
  });

  test("the curve through bottoms and tops gives the force at any level between", () => {
    fc.assert(
      fc.property(pieces, water, num(0, 1), (list, rho_w, share) => {
        const curve = liftCurve(list, rho_w);
        return curve.slice(1).every((b, i) => {
          const a = curve[i]!;
          const z = a.level_m + share * (b.level_m - a.level_m);
          const line = a.lift_n + share * (b.lift_n - a.lift_n);
          return Math.abs(buoyantForce(list, z, rho_w) - line) <= 1e-9 * Math.max(1, b.lift_n);
        });
      }),
    );
  });

  test("wetter timber is never lighter", () => {
    fc.assert(
      fc.property(num(0.2, 0.9), (G) => {
        const rows = moistureStates.map((state) => timberDensity(one(G), state));
        return rows.every((r, i) => i === 0 || r >= rows[i - 1]! - slack(r));
      }),
    );
  });
});

describe("flow", () => {
  test("faster water never lowers drag, whatever stands in it", () => {
    const angle = num(0, Math.PI / 2).map((v) => qty(v, "rad"));
    fc.assert(
      fc.property(
        water,
        num(0.1, 3),
        num(0, 10),
        num(0, 3),
        angle,
        num(0.01, 5),
        (rho_w, cd, v, more, theta, l) => {
          const A = facingArea({ h: metres(0.2), l: metres(l), w: metres(0.1), theta });
          const at = (V: number): number => dragForce({ rho_w, C_d: one(cd), A, V: qty(V, "m/s") });
          return at(v + more) >= at(v);
        },
      ),
      { numRuns: 2000 },
    );
  });

  test("faster water never lowers the force on a wrack mat, although its coefficient falls, nor the rise upstream", () => {
    fc.assert(
      fc.property(num(0.1, 3), num(0, 0.77), num(0, 0.99), num(0, 0.99), (d, B, f, g) => {
        const V = (Fr: number) => qty(Fr * Math.sqrt(9.80665 * d), "m/s");
        const [slow, fast] = [V(Math.min(f, g)), V(Math.max(f, g))];
        const C_d = (v: typeof slow) => wrackCoefficient(froudeNumber({ V: v, d: metres(d) }), one(B));
        const force = (v: typeof slow): number => C_d(v) * v ** 2;
        const rise = (v: typeof slow): number => headLoss({ C_d: C_d(v), B: one(B), V: v });
        return (
          force(fast) >= force(slow) - slack(force(fast)) && rise(fast) >= rise(slow) - slack(rise(fast))
        );
      }),
      { numRuns: 2000 },
    );
  });

  test("more clogging never lowers the drag of mesh nor the dammed share", () => {
    fc.assert(
      fc.property(num(0, 1), num(0, 1), num(0, 100), (p, q, A_s) => {
        const [less, more] = [Math.min(p, q), Math.max(p, q)];
        const mesh = (open: number) => meshCoefficient({ p_c: one(open), C_m: one(1.6), C_p: one(1.98) });
        const dam = (c: number) =>
          dammedShare({ A_s: qty(A_s, "m2"), l: metres(50), d: metres(1), c: one(c) });
        return mesh(less) >= mesh(more) - 1e-12 && dam(more) >= dam(less) - 1e-12 && dam(more) <= 1 + 1e-12;
      }),
    );
  });

  test("a coefficient read from a family lies between the least and the largest of its rows", () => {
    fc.assert(
      fc.property(fc.constantFrom("rectangle", "rod-corner", "cylinder"), num(0, 2000), (family, ratio) => {
        const cds = tables.drag_coefficients.filter((r) => r.family === family).map((r) => r.cd);
        const cd = familyCoefficient(tables, family, ratio)!;
        return cd >= Math.min(...cds) && cd <= Math.max(...cds);
      }),
    );
  });
});

describe("waves", () => {
  test("the dispersion relation is met to 1e-12 of its value", () => {
    fc.assert(
      fc.property(num(-8, 4), (exponent) => {
        const y = 10 ** exponent;
        const x = dispersion(y);
        return Math.abs(x * Math.tanh(x) - y) < 1e-12 * y;
      }),
      { numRuns: 5000 },
    );
  });

  const wave = fc.tuple(num(0.05, 0.78), num(0.5, 15), num(0.1, 5)).map(([share, T, d]) => ({
    H: metres(share * d),
    T: qty(T, "s"),
    d: metres(d),
  }));
  const shape = { facing: metres(0.1), plan: qty(0.01, "m2"), C_d: one(2), C_m: one(2.5) };

  test("a higher wave never lowers the force on a post, which lies between its larger part and the sum", () => {
    fc.assert(
      fc.property(wave, num(0, 2), num(0.05, 3), num(0.1, 1), (w, bottom_m, height, share) => {
        const post = { ...shape, bottom_m, top_m: bottom_m + height };
        const full = waveOnPiece(w, post, rho(1025));
        const lower = waveOnPiece({ ...w, H: metres(w.H * share) }, post, rho(1025));
        const [larger, sum] = [Math.max(full.drag_n, full.inertia_n), full.drag_n + full.inertia_n];
        return (
          full.force_n >= lower.force_n - slack(full.force_n) &&
          full.force_n >= larger - 1e-9 * larger - 1e-9 &&
          full.force_n <= sum + slack(sum)
        );
      }),
      { numRuns: 1000 },
    );
  });

  test("the largest sum of drag and inertia is that of a sweep through the phase", () => {
    fc.assert(
      fc.property(wave, (w) => {
        const { drag_n, inertia_n, force_n } = waveOnPiece(
          w,
          { ...shape, bottom_m: 0, top_m: 10 },
          rho(1000),
        );
        let most = 0;
        for (let i = 0; i <= 2000; i++) {
          const phase = ((Math.PI / 2) * i) / 2000;
          most = Math.max(most, drag_n * Math.cos(phase) ** 2 + inertia_n * Math.sin(phase));
        }
        return force_n >= most - slack(force_n) && force_n <= most * (1 + 1e-5);
      }),
      { numRuns: 100 },
    );
  });

  test("the integral over a post's height is that of slices, and slices add up", () => {
    fc.assert(
      fc.property(wave, num(0.1, 0.9), (w, cut) => {
        const part = (bottom_m: number, top_m: number) =>
          waveOnPiece(w, { ...shape, bottom_m, top_m }, rho(1000));
        const [low, high, whole] = [part(0, cut * w.d), part(cut * w.d, 99), part(0, 99)];
        const same = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(b, 1e-6);
        return (
          same(low.drag_n + high.drag_n, whole.drag_n) &&
          same(low.inertia_n + high.inertia_n, whole.inertia_n)
        );
      }),
    );
  });

  test("a higher deck is never lifted more, and not at all over the crest", () => {
    fc.assert(
      fc.property(wave, num(1, 2), num(0, 6), num(0, 3), (w, slam, z, more) => {
        const deck = { solid_m2: qty(2, "m2"), slam: one(slam), rho_w: rho(1025) };
        const [low, high] = upliftByHeight(w, deck, [z, z + more]).map((p) => p.uplift_n);
        const z_c = crestLevel({ d: w.d, H: w.H });
        const over = crestUplift({
          k_s: one(slam),
          rho_w: rho(1025),
          H: w.H,
          z_c,
          z_u: z_c,
          A_s: qty(2, "m2"),
        });
        return low! >= high! && high! >= 0 && over === 0;
      }),
    );
  });
});

const section: fc.Arbitrary<StakeSection> = fc.oneof(
  num(0.02, 0.3).map((d) => ({ shape: "round" as const, diameter: metres(d) })),
  fc.tuple(num(0.02, 0.3), num(0.02, 0.3)).map(([a, b]) => ({
    shape: "rectangle" as const,
    facing: metres(a),
    along: metres(b),
  })),
);
const su = num(500, 100_000).map(pascals);
const state = fc.constantFrom(...stakeStates);

describe("stakes", () => {
  test("a longer stake is never weaker, pulled, pressed or pushed, with a free or a fixed head", () => {
    fc.assert(
      fc.property(
        section,
        num(0.5, 3),
        num(0, 2),
        su,
        state,
        num(0, 1.5),
        fc.option(num(10, 20_000)),
        (s, L, more, strength, k, e, wood) => {
          const at = (length: number): number[] => {
            const stake = { section: s, embedment: metres(length), su: strength, state: k };
            const side = (head: "free" | "fixed"): number =>
              lateral({
                b: metres(0.1),
                L: metres(length),
                e: metres(e),
                su: strength,
                head,
                wood: wood === null ? null : qty(wood, "N*m"),
              }).force_n;
            return [pullOut(stake), pressed(stake), side("free"), side("fixed")];
          };
          const [short, long] = [at(L), at(L + more)];
          return long.every((v, i) => v >= short[i]! - slack(v)) && short[3]! >= short[2]! - slack(short[3]!);
        },
      ),
      { numRuns: 2000 },
    );
  });

  test("a loosened or a fresh stake holds no more than a set one, and a raking pair no more than twice its legs", () => {
    fc.assert(
      fc.property(section, num(0.1, 3), su, num(0, 1.5), (s, L, strength, theta) => {
        const at = (k: (typeof stakeStates)[number]) =>
          pullOut({ section: s, embedment: metres(L), su: strength, state: k });
        const pair = rakingPair({ R: at("set"), theta: qty(theta, "rad") });
        return at("loosened") <= at("set") && at("fresh") <= at("set") && pair <= 2 * at("set");
      }),
    );
  });

  test("Broms' closed form is the root that bisection finds, to 1e-9", () => {
    fc.assert(
      fc.property(num(0.02, 0.3), num(0.01, 5), num(0, 3), su, (b, l, e, strength) => {
        const t = ignoredTop({ b: metres(b) });
        const q = groundReaction({ su: strength, b: metres(b) });
        let [low, high] = [0, l];
        for (let i = 0; i < 200; i++) {
          const f = (low + high) / 2;
          if (q * f * (e + t + f / 2) > (q * (l - f) ** 2) / 4) high = f;
          else low = f;
        }
        return Math.abs(freeDepth({ l: metres(l), e: metres(e), t }) - low) <= 1e-9 * low;
      }),
      { numRuns: 2000 },
    );
  });

  test("forces and moments of the pushed stake balance", () => {
    fc.assert(
      fc.property(num(0.02, 0.3), num(0.6, 5), num(0, 3), su, (b, L, e, strength) => {
        const found = lateral({
          b: metres(b),
          L: metres(L),
          e: metres(e),
          su: strength,
          head: "free",
          wood: null,
        });
        const [q, t, H] = [found.reaction_n_m, found.ignored_m, found.ground_n];
        const f = H / q;
        const g = L - t - f;
        // Ground pushes back along f and g / 2, forward along the last g / 2: sums of force, and of moment about the head.
        const force = H - q * (f + g / 2) + q * (g / 2);
        const back = q * (f + g / 2) * (e + t + (f + g / 2) / 2);
        const forward = q * (g / 2) * (e + L - g / 4);
        return Math.abs(force) <= 1e-9 * H && Math.abs(back - forward) <= 1e-9 * back;
      }),
      { numRuns: 1000 },
    );
  });

  test("every set of stakes that is named holds, with one stake less it does not, and none is larger than a smaller one that holds", () => {
    fc.assert(
      fc.property(
        num(0, 8000),
        num(0, 3000),
        num(0, 1),
        su,
        state,
        (uplift_n, horizontal_n, e_m, strength, k) => {
          const demand = {
            uplift_n,
            horizontal_n,
            e_m,
            above_m: 0.3,
            su: strength,
            state: k,
            sway: false,
            safety_pull: 1.5,
            safety_lateral: 2,
          };
          const choices = [0.05, 0.09].map((d) => ({
            name: `${d}`,
            section: { shape: "round" as const, diameter: metres(d) },
            lengths_m: [0.9, 1.2, 1.8],
            bending_pa: pascals(10e6),
          }));
          const { sets, nearest } = stakesNeeded(choices, demand, 12);
          const fewer = sets.flatMap((s) => {
            const choice = choices
              .filter((c) => c.name === s.name)
              .map((c) => ({ ...c, lengths_m: [s.length_m] }));
            return s.count > 1 ? stakesNeeded(choice, demand, s.count - 1).sets : [];
          });
          return (
            sets.every((s) => s.combined <= 1) &&
            fewer.length === 0 &&
            sets.every(
              (s, i) => i === 0 || (s.count < sets[i - 1]!.count && s.timber_m3 >= sets[i - 1]!.timber_m3),
            ) &&
            (sets.length > 0 ? nearest === null : nearest!.combined > 1)
          );
        },
      ),
      { numRuns: 300 },
    );
  });
});

test("what breaks first is the weakest of the links, and it is over exactly when the force is", () => {
  const link = fc.record({ name: fc.string(), capacity_n: num(0, 1e5) });
  fc.assert(
    fc.property(fc.array(link, { minLength: 1 }), num(0, 1e5), (links, force) => {
      const first = breaksFirst(force, links)!;
      const least = Math.min(...links.map((l) => l.capacity_n));
      return first.weakest.capacity_n === least && first.breaks === force > least;
    }),
  );
});

test("ice lifts no more than it can when afloat, and a thicker sheet that hangs on the grip of one post never less", () => {
  fc.assert(
    fc.property(num(0.05, 0.4), num(0.02, 1), num(0.01, 0.5), num(0.1, 1000), (D, h, more, A) => {
      const at = (thick: number) =>
        iceLift({ diameter: metres(D), thickness: metres(thick), area: qty(A, "m2"), rho_w: rho(1025) });
      const afloat = newtons((1025 - 917) * 9.80665 * h * A);
      return at(h) <= afloat * (1 + 1e-12) && at(h + more) >= at(h) - slack(at(h));
    }),
  );
});
