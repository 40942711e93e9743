import { recordValue, type Source, type Trace } from "../formula/index.ts";

/** A load on a sill, rail or bearer: where along it, and how much of it is own weight [m, N]. */
export interface BeamLoad {
  readonly at_m: number;
  readonly dead_n: number;
  readonly live_n: number;
}

/** Loads that act together, with the steps that made them. */
export interface BeamPattern {
  readonly name: string;
  readonly explain: (trace: Trace) => void;
  readonly loads: readonly BeamLoad[];
}

/** What carries the piece, as a stretch along it [m]: a rail's width, a post's side, a packing's length. */
export type Carrier = readonly [number, number];

/** Dead and live part of a moment or force, and where it acts, in words. */
export interface Effect {
  readonly dead: number;
  readonly live: number;
  readonly where: string;
}

/** A carrier longer than this holds the piece from end to end: nothing bends over it, its ends are what a load levers on [m]. */
const LONG_CARRIER_M = 0.25;
const EDGE = 1e-6;

interface Point {
  readonly at: number;
  readonly carrier: number;
  /** The stretch to the next point lies on one long carrier. */
  readonly solid: boolean;
}

const NONE: Effect = { dead: 0, live: 0, where: "" };
const mm = (m: number): string => `${(m * 1000).toFixed(0)} mm`;

/** The places that bear a beam: the middle of a short carrier, both ends of a long one. */
function pointsOf(carriers: readonly Carrier[]): Point[] {
  return carriers
    .map((c, carrier) => ({ c, carrier }))
    .sort((a, b) => a.c[0] - b.c[0])
    .flatMap(({ c: [a, b], carrier }): Point[] =>
      b - a > LONG_CARRIER_M
        ? [
            { at: a, carrier, solid: true },
            { at: b, carrier, solid: false },
          ]
        : [{ at: (a + b) / 2, carrier, solid: false }],
    );
}

const sum = (loads: readonly BeamLoad[], by: (l: BeamLoad) => number, where: string): Effect => ({
  dead: loads.reduce((s, l) => s + l.dead_n * by(l), 0),
  live: loads.reduce((s, l) => s + l.live_n * by(l), 0),
  where,
});

interface Bay {
  readonly a: number;
  readonly b: number;
  readonly loads: readonly BeamLoad[];
}

const baysOf = (points: readonly Point[], loads: readonly BeamLoad[]): Bay[] =>
  points.slice(1).flatMap((p, i) => {
    const from = points[i]!;
    if (from.solid) return [];
    return [{ a: from.at, b: p.at, loads: loads.filter((l) => l.at_m > from.at && l.at_m < p.at) }];
  });

/** Overhangs beyond the first and the last point: the loads there, and how far beyond each acts. */
function overhangs(points: readonly Point[], loads: readonly BeamLoad[]) {
  const [first, last] = [points[0]!.at, points.at(-1)!.at];
  return [
    { at: first, loads: loads.filter((l) => l.at_m < first - EDGE), arm: (l: BeamLoad) => first - l.at_m },
    { at: last, loads: loads.filter((l) => l.at_m > last + EDGE), arm: (l: BeamLoad) => l.at_m - last },
  ];
}

/**
 * Moments where they can be largest: over the outer carriers under what hangs over, and under each load between two
 * carriers. Bays are taken as simple spans, what hangs over does not relieve them. [N*m]
 */
export function beamMoments(carriers: readonly Carrier[], loads: readonly BeamLoad[]): Effect[] {
  const points = pointsOf(carriers);
  const hogging = overhangs(points, loads).map((o) =>
    sum(o.loads, o.arm, `over the carrier ${mm(o.at)} from the middle`),
  );
  const sagging = baysOf(points, loads).flatMap(({ a, b, loads: inside }) =>
    inside.map(({ at_m: x }) =>
      sum(
        inside,
        (l) => ((Math.min(l.at_m, x) - a) * (b - Math.max(l.at_m, x))) / (b - a),
        `between two carriers ${mm(b - a)} apart`,
      ),
    ),
  );
  return [...hogging, ...sagging];
}

/** Shear beside the carriers; in a bay with what the overhang beside it adds. [N] */
export function beamShears(carriers: readonly Carrier[], loads: readonly BeamLoad[]): Effect[] {
  const points = pointsOf(carriers);
  const over = overhangs(points, loads);
  const cantilever = over.map((o) =>
    sum(o.loads, () => 1, `outside the carrier ${mm(o.at)} from the middle`),
  );
  const bays = baysOf(points, loads).flatMap(({ a, b, loads: inside }) => {
    const beside = over
      .filter((o) => o.at === a || o.at === b)
      .map((o) => sum(o.loads, (l) => o.arm(l) / (b - a), ""));
    const added = beside.reduce((x, y) => (y.dead + y.live > x.dead + x.live ? y : x), NONE);
    const where = `between two carriers ${mm(b - a)} apart`;
    return [(l: BeamLoad) => (b - l.at_m) / (b - a), (l: BeamLoad) => (l.at_m - a) / (b - a)].map((share) => {
      const own = sum(inside, share, where);
      return { dead: own.dead + added.dead, live: own.live + added.live, where };
    });
  });
  return [...cantilever, ...bays];
}

/**
 * Largest force on each carrier: its share of the bays on its sides, and of what hangs over with the leverage of it.
 * A load that stands on a long carrier counts on it whole. [N]
 */
export function carrierForces(carriers: readonly Carrier[], loads: readonly BeamLoad[]): Effect[] {
  const points = pointsOf(carriers);
  const over = overhangs(points, loads);
  const bays = baysOf(points, loads);
  return carriers.map(([from, to], carrier) => {
    const mine = points.filter((p) => p.carrier === carrier);
    const shareOf = (l: BeamLoad): number => {
      if (l.at_m >= from - EDGE && l.at_m <= to + EDGE) return 1;
      return mine.reduce((s, { at }) => {
        const bay = bays.find((x) => (x.a === at || x.b === at) && x.loads.includes(l));
        if (bay) return s + (bay.a === at ? bay.b - l.at_m : l.at_m - bay.a) / (bay.b - bay.a);
        const out = over.find((o) => o.at === at && o.loads.includes(l));
        if (!out) return s;
        const inner = bays.find((x) => x.a === at || x.b === at);
        return s + 1 + (inner ? out.arm(l) / (inner.b - inner.a) : 0);
      }, 0);
    };
    return sum(loads, shareOf, `on the carrier ${mm((from + to) / 2)} from the middle`);
  });
}

export const BEAM: Source = {
  id: "statics",
  title: "Statics",
  at: "a piece on its carriers: overhangs as cantilevers, bays as simple spans",
  status: "computed",
};

/** Puts a force or moment of such a beam into the working. */
export function recordEffect(
  trace: Trace,
  symbol: string,
  title: string,
  value: number,
  unit: "N" | "N*m",
  where: string,
  note: string,
): void {
  recordValue(trace, {
    id: "check.support-beam",
    title,
    symbol,
    value,
    unit,
    source: BEAM,
    how: where,
    note,
  });
}
