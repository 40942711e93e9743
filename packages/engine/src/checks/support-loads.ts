import { largestJointReaction, leverShares, weightOf } from "../structure/index.ts";
import { kilograms } from "../units/index.ts";
import { recordTrain } from "../structure/index.ts";
import { reachOf } from "./frame.ts";
import type { BeamPattern } from "./support-beam.ts";
import type { CaseLoad, LoadCase } from "./walk-demand.ts";

/** Stringers that end on a sill, with the spans and the weight behind them. */
export interface EndingStringers {
  /** Their middles across, rising [m]. */
  readonly positions_m: readonly number[];
  readonly clear_width_m: number;
  /** Spans on either side, 0 for none [m]. */
  readonly left_m: number;
  readonly right_m: number;
  /** Length of the sill: stringers beyond its ends do not press it [m]. */
  readonly sill_m: number;
  /** Own weight that they bring to the sill, soaked [kg]. */
  readonly dead_kg: number;
}

/** Part of the own weight that each stringer brings: half of the bays beside it. */
export function tributaryShares(positions_m: readonly number[]): number[] {
  const last = positions_m.length - 1;
  const width = positions_m[last]! - positions_m[0]!;
  return positions_m.map(
    (_, i) => (positions_m[Math.min(last, i + 1)]! - positions_m[Math.max(0, i - 1)]!) / 2 / width,
  );
}

/** Share of a load that stands `out` (0 middle, 1 as far as it can) that each stringer takes; never less than 0. */
function sharesOf(s: EndingStringers, { cart }: CaseLoad, out: number): number[] {
  const middle = out * Math.max(0, reachOf(s.clear_width_m, cart));
  const wheels = cart ? [-cart.track_mm / 2000, cart.track_mm / 2000] : [0];
  const shares = wheels.map((offset) => leverShares(s.positions_m, middle + offset));
  return s.positions_m.map((_, i) =>
    Math.max(
      0,
      shares.reduce((sum, row) => sum + row[i]! / wheels.length, 0),
    ),
  );
}

const STANDS = [
  [1, "as far out as it can stand"],
  [0, "in the middle"],
] as const;

/** Reactions of the stringers on the sill under every case, each at its own worst place of the loads along the way. */
export function sillPatterns(s: EndingStringers, cases: readonly LoadCase[]): BeamPattern[] {
  const tributary = tributaryShares(s.positions_m);
  const dead = weightOf({ m: kilograms(s.dead_kg) });
  return cases.flatMap((load) =>
    STANDS.map(([out, words]): BeamPattern => {
      const rows = load.loads.map((l) => sharesOf(s, l, out));
      const live = s.positions_m.map((_, i) => {
        const train = load.loads.map((l, k) => ({ at: l.at, weight: l.weight * rows[k]![i]! }));
        return largestJointReaction(train, s.left_m, s.right_m).value;
      });
      const name = `${load.name}, ${words}`;
      return {
        name,
        explain: (trace) => {
          load.explain(trace);
          weightOf({ m: kilograms(s.dead_kg) }, trace, "parts on the sill, soaked");
          live.forEach((N, i) =>
            recordTrain(
              trace,
              `R_${i + 1}`,
              `Largest live load of stringer ${i + 1} on the sill`,
              N,
              "N",
              name,
            ),
          );
        },
        loads: s.positions_m
          .map((at_m, i) => ({ at_m, dead_n: dead * tributary[i]!, live_n: live[i]! }))
          .filter((l) => Math.abs(l.at_m) <= s.sill_m / 2 + 1e-6),
      };
    }),
  );
}
