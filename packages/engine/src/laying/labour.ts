import type { LabourLine } from "../cost/types.ts";
import type { Trace } from "../formula/index.ts";
import type { Tables } from "../materials/tables.ts";
import { DomainError, feet, metres, qty, type Qty } from "../units/index.ts";
import { layingHours, longCarryShare, removalHours } from "./crew-hours.ts";

export interface LabourInput {
  /** Length of walkway to lay [m], >= 0. */
  readonly length_m: number;
  /** Distance the parts are carried from the yard or landing to the middle of the work [m], >= 0. */
  readonly carry_m: number;
  /** Removal as a share of the laying hours, >= 0. */
  readonly removal_share: number;
}

type Rates = Tables["labour"]["ready_made"];
const middle = (r: Rates): number => (r.low_ft_per_h + r.high_ft_per_h) / 2;

/**
 * Person-hours of laying and removal as a range, from the length, the carry and the crew rates of the tables.
 *
 * trace    receives the working of the middle figure
 * returns  one line for laying and one for removal; low <= mid <= high. Mid uses the mean of the low and high rate.
 *
 * The rates come from few work days: the range is the answer, the middle is not. Beyond the long carry of the
 * tables hours are a lower bound, and the note says so. Throws `DomainError` for a negative input.
 */
export function labourHours(
  input: LabourInput,
  rates: Tables["labour"],
  trace?: Trace,
): readonly LabourLine[] {
  for (const [key, value] of Object.entries(input))
    if (!(value >= 0)) throw new DomainError("negative-labour-input", { [key]: value });
  const { ready_made: short, long_carry: long } = rates;
  const f = longCarryShare(
    {
      d: metres(input.carry_m),
      d_short: metres(rates.short_carry_m.value),
      d_long: metres(rates.long_carry_m.value),
    },
    trace,
  );
  const hours = (shortFt: number, longFt: number, working?: Trace): Qty<"h"> =>
    layingHours(
      { L: metres(input.length_m), f, r_short: feet(shortFt), r_long: feet(longFt) },
      working,
      `rates: ${short.source} (${short.status}), ${long.source} (${long.status})`,
    );
  const laying = {
    low: hours(short.high_ft_per_h, long.high_ft_per_h),
    mid: hours(middle(short), middle(long), trace),
    high: hours(short.low_ft_per_h, long.low_ft_per_h),
  };
  const share = qty(input.removal_share, "1");
  return [
    {
      work: "laying",
      length_m: input.length_m,
      low_h: laying.low,
      mid_h: laying.mid,
      high_h: laying.high,
      note: layingNote(input.carry_m, rates),
    },
    {
      work: "removal",
      length_m: input.length_m,
      low_h: removalHours({ s: share, t: laying.low }),
      mid_h: removalHours({ s: share, t: laying.mid }, trace),
      high_h: removalHours({ s: share, t: laying.high }),
      note: `${Math.round(input.removal_share * 100)} % of the laying hours, as the plan says.`,
    },
  ];
}

function layingNote(carry_m: number, rates: Tables["labour"]): string {
  const sources = `${rates.ready_made.source}, ${rates.long_carry.source}`;
  const far =
    carry_m > rates.long_carry_m.value
      ? ` The carry is longer than any of the cases: expect more than the range says.`
      : "";
  return `Person-hours for a carry of ${Math.round(carry_m)} m, from crew rates of few work days (${sources}). Put your own crew's rate in its place.${far}`;
}
