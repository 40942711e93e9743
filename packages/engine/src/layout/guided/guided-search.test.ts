import fc from "fast-check";
import { expect, test } from "vitest";
import { smallFacts, smallInput, smallSite, smallTerrain, zone } from "../../../test/support/small-site.ts";
import { finish } from "../../formula/index.ts";
import { AHEAD, LEFT, RIGHT } from "../joint-space.ts";
import { layLattice } from "../lattice.ts";
import { groundWindow } from "../standing.ts";
import { makeFrame, type Frame } from "./frame.ts";
import { Guide, type Spot } from "./guide.ts";
import { GuidedSearch, type FitTask } from "./guided-search.ts";
import { fitPrices } from "./prices.ts";

const NX = 9;
const DXY = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
] as const;

function frameOf(closed: readonly [number, number] | null): Frame {
  const zones = closed ? [zone("z", "closed", closed[0], closed[1], closed[0] + 0.6, closed[1] + 0.6)] : [];
  const site = smallSite(
    smallTerrain(NX, NX, () => 1),
    [],
    zones,
    { x: 4, y: 1 },
  );
  const l = layLattice(site.terrain, 1, 0, 4, 1);
  return makeFrame(smallInput(site), l, groundWindow(site.terrain, smallFacts.supports));
}

function taskOf(frame: Frame, points: readonly Spot[], passing: number | null): FitTask {
  const { l } = frame;
  return {
    guide: new Guide(l, points, 3),
    rules: frame.rules,
    prices: fitPrices(1.5),
    seeds: [0, 1, 2, 3].map((d) => ({ node: (l.sj * l.nx + l.si) * 4 + d, beside: 0, since: 0, cost: 0 })),
    corridor_m: 1.5,
    width_m: 2.5,
    demands: [],
    ends: null,
    passing,
    strict: false,
  };
}

/** Squared distance from a point to a segment, by the foot of the perpendicular; written out anew. */
function far2(p: readonly number[], a: readonly number[], b: readonly number[]): number {
  const [px, py, ax, ay, bx, by] = [p[0]!, p[1]!, a[0]!, a[1]!, b[0]!, b[1]!];
  const long = Math.hypot(bx - ax, by - ay);
  if (long === 0) return (px - ax) ** 2 + (py - ay) ** 2;
  const along = ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / long;
  if (along <= 0) return (px - ax) ** 2 + (py - ay) ** 2;
  if (along >= long) return (px - bx) ** 2 + (py - by) ** 2;
  return (((px - ax) * (by - ay) - (py - ay) * (bx - ax)) / long) ** 2;
}

/** The least cost of any chain of parts, by walking every chain that costs less than the best so far. */
function tryEverything(frame: Frame, t: FitTask): number {
  const { l, rules } = frame;
  const g = Array.from({ length: t.guide.count }, (_, n) => [t.guide.u[n]!, t.guide.v[n]!]);
  const near = (m: number, p: readonly number[]): number =>
    Math.min(...[m - 1, m].filter((n) => n >= 0 && n + 1 < g.length).map((n) => far2(p, g[n]!, g[n + 1]!)));
  const leg = (n: number): number => Math.hypot(g[n]![0]! - g[n - 1]![0]!, g[n]![1]! - g[n - 1]![1]!);
  /** One step of a middle line: cost and guide point at its end; null outside what is searched. */
  const step = (
    m: number,
    a: readonly number[],
    b: readonly number[],
  ): { cost: number; m: number } | null => {
    let next = m;
    for (let n = m; n <= Math.min(m + 3, g.length - 1); n++)
      if (far2(b, g[n]!, g[n]!) < far2(b, g[next]!, g[next]!) - 1e-12) next = n;
    const off = Math.sqrt(near(next, b));
    if (off > t.width_m) return null;
    let cost = (near(m, a) + off * off) / 2;
    for (let n = m + 1; n <= next; n++) cost += leg(n) * far2(g[n]!, a, b);
    return { cost: cost + (off > t.corridor_m ? t.prices.rule * (off - t.corridor_m) : 0), m: next };
  };
  const isBack = (m: number, p: readonly number[]): boolean => {
    const off = Math.sqrt(near(m, p));
    if (off <= 2) return false;
    return g.slice(Math.max(0, m - 3), m).some((q) => Math.sqrt(far2(p, q, q)) < off - 2);
  };
  let best = Infinity;
  const visit = (
    i: number,
    j: number,
    d: number,
    m: number,
    since: number,
    cost: number,
    depth: number,
  ): void => {
    let rest = 0;
    for (let n = m + 1; n < g.length; n++) {
      const d2 = far2([i, j], g[n]!, g[n]!);
      rest += leg(n) * (d2 + (d2 > t.corridor_m ** 2 ? t.prices.open : 0));
    }
    best = Math.min(best, cost + rest);
    if (depth === 0) return;
    const joint = (x: number, y: number, o: number) => rules.joint(y * l.nx + x, o);
    const walk = (path: readonly (readonly number[])[]): { cost: number; m: number } | null => {
      let [sum, at] = [0, m];
      for (let k = 1; k < path.length; k++) {
        const one = step(at, path[k - 1]!, path[k]!);
        if (one === null) return null;
        sum += one.cost;
        at = one.m;
      }
      return isBack(at, path.at(-1)!) ? null : { cost: sum, m: at };
    };
    const go = (
      path: readonly (readonly number[])[],
      out: number,
      isModule: boolean,
      price: number,
      broken: number,
      turn: number,
    ): void => {
      const w = walk(path);
      if (w === null || !Number.isFinite(broken)) return;
      const long = isModule ? path.length - 1 : 1;
      const late = t.passing !== null && since + long > t.passing ? t.prices.passing : 0;
      const [x, y] = path.at(-1)! as [number, number];
      const now =
        cost + w.cost + late + broken * t.prices.rule + turn + t.prices.part + price * t.prices.money;
      const on = t.passing === null ? 0 : isModule ? Math.min(since + long, t.passing) : 1;
      if (now < best) visit(x, y, out, w.m, on, now, depth - 1);
    };
    const at = (k: number, dir: number, x = i, y = j): number[] => [
      x + DXY[dir]![0] * k,
      y + DXY[dir]![1] * k,
    ];
    const isIn = (p: readonly number[]): boolean => p[0]! >= 0 && p[1]! >= 0 && p[0]! < l.nx && p[1]! < l.ny;
    [3, 2, 1].forEach((k, n) => {
      const end = at(k, d);
      if (!isIn(end)) return;
      const low = d < 2 ? [i, j] : end;
      const part = rules.module(d & 1, n, low[1]! * l.nx + low[0]!);
      const support = joint(end[0]!, end[1]!, d & 1);
      go(
        Array.from({ length: k + 1 }, (_, s) => at(s, d)),
        d,
        true,
        part.price + support.price,
        part.broken + support.broken,
        0,
      );
    });
    const c = at(1, d) as [number, number];
    const part = isIn(c) ? rules.platform(c[0], c[1]) : { price: 0, broken: Infinity };
    if (part.broken === Infinity) return;
    const own = joint(i, j, d & 1);
    for (const out of [d, (d + 1) & 3, (d + 3) & 3])
      go(
        [[i, j], c, at(1, out, ...c)],
        out,
        false,
        part.price - own.price,
        part.broken - own.broken,
        out === d ? 0 : t.prices.turn,
      );
  };
  for (let d = 0; d < 4; d++) visit(l.si, l.sj, d, 0, 0, 0, 5);
  return best;
}

const spot = fc
  .tuple(fc.integer({ min: 2, max: 14 }), fc.integer({ min: 4, max: 14 }))
  .map(([a, b]): Spot => [a / 2, b / 2]);

test("property: the fit costs what trying every chain of parts finds, with broken rules and with passing", () => {
  fc.assert(
    fc.property(
      fc.tuple(spot, spot),
      fc.option(fc.tuple(fc.integer({ min: 3, max: 6 }), fc.integer({ min: 3, max: 6 }))),
      fc.option(fc.integer({ min: 2, max: 5 })),
      ([bend, end], closed, passing) => {
        const frame = frameOf(closed as [number, number] | null);
        const task = taskOf(frame, [[4, 1], bend, end], passing);
        const path = finish(new GuidedSearch(task, Infinity).run(""))!;
        // Chains of more than five parts are not tried: where the fit takes more, it must cost no more than they.
        const brute = tryEverything(frame, task);
        if (path.steps.length <= 5) expect(path.cost).toBeCloseTo(brute, 6);
        else expect(path.cost).toBeLessThanOrEqual(brute + 1e-6);
      },
    ),
    { numRuns: 40, seed: 5 },
  );
});

test("a fit that may not cost more than another gives nothing", () => {
  const frame = frameOf(null);
  const task = taskOf(
    frame,
    [
      [4, 1],
      [4, 7],
    ],
    null,
  );
  const path = finish(new GuidedSearch(task, Infinity).run(""))!;
  expect(path.isWhole).toBe(true);
  expect(path.steps.map((s) => s.arc)).toEqual([1, 1]);
  expect(finish(new GuidedSearch(task, path.cost).run(""))).toBeNull();
  expect(finish(new GuidedSearch(task, path.cost + 1e-9).run(""))!.cost).toBe(path.cost);
});

test("places to pass are put where the interval asks for them, at no deviation", () => {
  const frame = frameOf(null);
  const path = finish(
    new GuidedSearch(
      taskOf(
        frame,
        [
          [4, 1],
          [4, 8],
        ],
        4,
      ),
      Infinity,
    ).run(""),
  )!;
  const arcs = path.steps.map((s) => s.arc);
  expect(arcs.filter((a) => a === AHEAD)).toHaveLength(1);
  expect(arcs.some((a) => a === LEFT || a === RIGHT)).toBe(false);
  expect(path.cost).toBeLessThan(0.01);
});
