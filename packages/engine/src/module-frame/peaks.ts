import type { EffectKind } from "./influence.ts";
import type { FrameCase } from "./recipe.ts";
import { standAt, type Runner } from "./stand.ts";

export type Peaked = "moment" | "shear" | "sag" | "push" | "row_moment" | "row_shear";
export const ALL_PEAKS: readonly Peaked[] = ["moment", "shear", "sag", "push", "row_moment", "row_shear"];

/** The largest effect of one kind, and what made it. */
export interface Peak {
  readonly value: number;
  /** What of it own weight does before any load comes; 0 for a sag, which is told for the loads alone. */
  readonly own: number;
  /** Stringer from the right, or row of cross pieces from the start. */
  readonly member: number;
  /** Section along the part [m]. */
  readonly at_m: number;
  readonly load: FrameCase;
  /** Where the case's first load stands [m], and which way the others lie. */
  readonly front_m: number;
  readonly way: 1 | -1;
  readonly placed: Runner;
  /** True when a bearing had lost the part. */
  readonly lifted: boolean;
}

/** A load that no set of bearings holds. */
export interface Tipped {
  readonly load: FrameCase;
  readonly front_m: number;
  readonly placed: Runner;
}

/** Largest and least value at each station, by stringer: what a drawing of the part shows. */
export interface Lines {
  readonly most: Float64Array;
  readonly least: Float64Array;
}

export interface Peaks {
  readonly largest: Readonly<Record<Peaked, Peak | null>>;
  readonly tipped: Tipped | null;
  /** Along each stringer: moment, shear on the side of the load that is larger, and sag under loads alone. */
  readonly lines: Readonly<Record<"moment" | "shear" | "sag", Lines>>;
}

/** What one place of the loads may raise: where it is read, and which member and section it speaks of. */
interface Reading {
  readonly what: Peaked;
  readonly kind: EffectKind;
  readonly index: number;
  readonly member: number;
}

/** Fronts at which some load of the case stands at a section: an influence line has its corner there. */
function frontsAt(load: FrameCase, x_m: number): (readonly [number, 1 | -1])[] {
  if (load.loads.length === 0) return [[0, 1]];
  const ways = load.loads.length > 1 ? ([1, -1] as const) : ([1] as const);
  return ways.flatMap((way) => load.loads.map((l) => [x_m - way * l.at_m, way] as const));
}

/** What is read when a load stands at a station: moment there, shear beside it, a bearing or a row there. */
function readingsAt({ model }: Runner, station: number): Reading[] {
  const { mesh, recipe } = model;
  const S = mesh.stations_m.length;
  const out: Reading[] = [];
  for (const i of recipe.stringers_y_m.keys()) {
    for (const kind of ["moment", "moment_after"] as const)
      out.push({ what: "moment", kind, index: i * S + station, member: i });
    out.push({ what: "sag", kind: "sag", index: i * S + station, member: i });
    for (const s of [station - 1, station])
      if (s >= 0 && s < S - 1) out.push({ what: "shear", kind: "shear", index: i * (S - 1) + s, member: i });
  }
  for (const [b, rest] of recipe.rests.entries())
    if (Math.abs(rest.x_m - mesh.stations_m[station]!) < 1e-3)
      out.push({ what: "push", kind: "push", index: b, member: rest.stringer });
  return [...out, ...rowReadings(model, station)];
}

function rowReadings({ mesh }: Runner["model"], station: number): Reading[] {
  const out: Reading[] = [];
  let first = 0;
  for (const [r, row] of mesh.rows.entries()) {
    const count = mesh.rowBeams[r]!.length;
    if (row.station === station)
      for (let index = first; index < first + count; index++) {
        out.push({ what: "row_shear", kind: "row_shear", index, member: r });
        out.push({ what: "row_moment", kind: "row_from", index, member: r });
        out.push({ what: "row_moment", kind: "row_to", index, member: r });
      }
    first += count;
  }
  return out;
}

/** Collects the largest of everything while loads are stood on a part. */
class Tally {
  readonly largest: Record<Peaked, Peak | null> = {
    moment: null,
    shear: null,
    sag: null,
    push: null,
    row_moment: null,
    row_shear: null,
  };
  readonly lines: Record<"moment" | "shear" | "sag", Lines>;
  tipped: Tipped | null = null;

  constructor(length: number) {
    const line = (): Lines => ({ most: new Float64Array(length), least: new Float64Array(length) });
    this.lines = { moment: line(), shear: line(), sag: line() };
  }

  /** True when it is the largest of its kind so far. */
  note({ what }: Reading, value: number, at: number): boolean {
    if (what === "moment" || what === "shear" || what === "sag") {
      const line = this.lines[what];
      if (value > line.most[at]!) line.most[at] = value;
      if (value < line.least[at]!) line.least[at] = value;
    }
    return Math.abs(value) > (this.largest[what]?.value ?? 0);
  }
}

/**
 * The largest effects of a set of cases on one part: each load of each case is set over every station in turn, both
 * ways round. Moments, shears, pushes and rows have the corners of their influence lines there; a sag is met within
 * its own flat top.
 */
export function peaksOf(
  runners: readonly Runner[],
  cases: readonly FrameCase[],
  wanted: readonly Peaked[] = ALL_PEAKS,
): Peaks {
  const { mesh, recipe } = runners[0]!.model;
  const S = mesh.stations_m.length;
  const tally = new Tally(S * recipe.stringers_y_m.length);
  for (const placed of runners) {
    const own = placed.stand([]);
    for (const [station, at_m] of mesh.stations_m.entries()) {
      const readings = readingsAt(placed, station).filter(({ what }) => wanted.includes(what));
      if (readings.length === 0) continue;
      for (const load of cases)
        for (const [front_m, way] of frontsAt(load, at_m)) {
          const standing = placed.stand(standAt(load, front_m, way, recipe.length_m), load.area_n_m);
          if (!standing) tally.tipped ??= { load, front_m, placed };
          else
            for (const reading of readings) {
              const { what, member, kind, index } = reading;
              const before = own?.read(kind, index) ?? 0;
              // Own weight sags before anyone walks.
              const signed = standing.read(kind, index) - (what === "sag" ? before : 0);
              if (!tally.note(reading, signed, member * S + station)) continue;
              const { lifted } = standing;
              const value = Math.abs(signed);
              const part = what === "sag" ? 0 : before * Math.sign(signed);
              tally.largest[what] = { value, own: part, member, at_m, load, front_m, way, placed, lifted };
            }
        }
    }
  }
  return { largest: tally.largest, tipped: tally.tipped, lines: tally.lines };
}
