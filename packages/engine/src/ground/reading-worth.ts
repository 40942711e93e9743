import { logBeta, normalBelow, normalNodes, studentQuantile } from "../statistics/index.ts";
import { chanceOver, logSpreadAt, type BandJoint } from "./strength-band.ts";
import type { LogSpread } from "./strength-chance.ts";
import type { StrengthField } from "./strength-field.ts";
import type { StrengthSettings } from "./strength-settings.ts";

/** A joint before a reading, and as it is expected after one and after two more there. */
export interface Before {
  readonly now: number;
  readonly one: number;
  readonly two: number;
}

export interface ReadingWorth {
  readonly id: string;
  readonly at_m: number;
  /** Strength at 95 % over strength at 5 % at this joint. */
  readonly ratio: Before;
  /** The same, as a mean over all joints of the walkway. */
  readonly ratio_all: Before;
  /**
   * Chance of trouble that is left at this joint when it is mended wherever that is the better choice: the mean of
   * min(chance, chance accepted). Null where no load is given.
   */
  readonly risk: Before | null;
  /** Chance that the joint then stands on the other side of the accepted chance than now. */
  readonly turns: Before | null;
  readonly words: string;
}

/** Mean of the posterior sigma after k more readings, over the sigma of now. df > 1. */
const sigmaAfter = (df: number, k: number): number =>
  Math.sqrt(df / (df + k)) * Math.exp(logBeta((df - 1) / 2, k / 2) - logBeta(df / 2, k / 2));

/** A possible outcome of k readings: how far their mean lies from the expected one, in its own scale; sum of squares; share. */
interface Outcome {
  readonly off: number;
  readonly squares: number;
  readonly share: number;
}

/** Places of Student's t with their shares, dense in the middle and reaching far into the tails. */
const places = (step: number, df: number): { readonly t: number; readonly share: number }[] =>
  normalNodes(step)
    .filter(({ z }) => Math.abs(z) < 4.6)
    .map(({ z, share }) => ({ t: studentQuantile(normalBelow(z), df), share }));

/** Outcomes of one or two readings of one place with their shares. */
function outcomes(df: number, k: 1 | 2): Outcome[] {
  if (k === 1) return places(0.3, df).map(({ t, share }) => ({ off: t, squares: t * t, share }));
  const inner = places(0.75, df + 1).filter(({ t }) => t > -1e-9);
  return places(0.3, df).flatMap(({ t: off, share }) =>
    inner.map((other) => {
      const twice = other.t > 1e-9 ? 2 : 1;
      const squares = off * off + (other.t ** 2 * (df + off * off)) / (df + 1);
      return { off, squares, share: share * other.share * twice };
    }),
  );
}

/**
 * Ranks the joints by what one or two more readings there are worth, the most useful first.
 *
 * A preposterior expectation: every reading that may come is followed through, with its effect on mean, spread and
 * degrees of freedom. On average a reading leaves the chance of trouble where it is; its worth is that the joint can
 * then be cleared or mended with better reason. Where the band rests on the plan's value alone, that value is taken to
 * keep counting as one reading, so that the figures are a little low there.
 *
 * accepted  chance of trouble at a joint that the plan accepts, 0..1: over it the joint would be mended
 */
export function readingWorth(
  field: StrengthField,
  joints: readonly BandJoint[],
  settings: StrengthSettings,
  accepted: number,
): readonly ReadingWorth[] {
  const reach = [reachAfter(field, 0), reachAfter(field, 1), reachAfter(field, 2)] as const;
  const cases = { one: outcomes(field.df, 1), two: outcomes(field.df, 2) };
  const all = joints.map((joint, i) => {
    const ratio = (of: number, k: 0 | 1 | 2): number =>
      Math.exp(reach[k] * Math.sqrt(shapeAfter(field, of, i, k, settings.scatter_share)));
    const before = (f: (k: 0 | 1 | 2) => number): Before => ({ now: f(0), one: f(1), two: f(2) });
    const mean = (k: 0 | 1 | 2): number => joints.reduce((s, _, of) => s + ratio(of, k), 0) / joints.length;
    const own = before((k) => ratio(i, k));
    const judged = joint.pressure_pa === null ? null : judge(field, joint, i, settings, accepted, cases);
    return {
      id: joint.id,
      at_m: joint.at_m,
      ratio: own,
      ratio_all: before(mean),
      risk: judged?.risk ?? null,
      turns: judged?.turns ?? null,
      words: wordsOf(own, judged),
    };
  });
  const lowers = (w: ReadingWorth): number => (w.risk ? w.risk.now - w.risk.one : 0);
  const narrows = (w: ReadingWorth): number => Math.log(w.ratio_all.now / w.ratio_all.one);
  const isClear = (w: ReadingWorth): boolean => lowers(w) > 1e-6;
  return all.sort((a, b) =>
    isClear(a) || isClear(b) ? lowers(b) - lowers(a) : narrows(b) - narrows(a) || a.at_m - b.at_m,
  );
}

/** Expected logarithm of the ratio of 95 to 5 % after k readings, for a shape of 1. */
const reachAfter = (field: StrengthField, k: 0 | 1 | 2): number =>
  2 * studentQuantile(0.95, field.df + k) * field.sigma * (k === 0 ? 1 : sigmaAfter(field.df, k));

/** Shape at one place after k readings at another. */
function shapeAfter(field: StrengthField, of: number, at: number, k: 0 | 1 | 2, scatter: number): number {
  const { size, values } = field.shape;
  const own = values[of * size + of]!;
  if (k === 0) return own;
  return Math.max(0, own - values[of * size + at]! ** 2 / (values[at * size + at]! + scatter / k));
}

interface Judged {
  readonly risk: Before;
  readonly turns: Before;
  readonly isOver: boolean;
  /** The mean chance over all outcomes: it must be the chance of now. */
  readonly mean: Before;
}

/** Follows every outcome of one and of two readings at a joint. */
export function judge(
  field: StrengthField,
  joint: BandJoint,
  i: number,
  settings: StrengthSettings,
  accepted: number,
  cases: { readonly one: readonly Outcome[]; readonly two: readonly Outcome[] } = {
    one: outcomes(field.df, 1),
    two: outcomes(field.df, 2),
  },
): Judged {
  const spread = logSpreadAt(field, i, settings);
  const chance = (s: LogSpread): number => chanceOver(joint.pressure_pa!, joint.factor, s);
  const now = chance(spread);
  const isOver = now > accepted;
  const after = (list: readonly Outcome[], k: 1 | 2) => {
    const chances = list.map((o) => ({
      p: chance(updated(field, i, spread, o, k, settings.scatter_share)),
      share: o.share,
    }));
    const mean = (f: (p: number) => number): number => chances.reduce((s, c) => s + c.share * f(c.p), 0);
    return {
      risk: mean((p) => Math.min(p, accepted)),
      turns: mean((p) => (p > accepted === isOver ? 0 : 1)),
      mean: mean((p) => p),
    };
  };
  const [one, two] = [after(cases.one, 1), after(cases.two, 2)];
  return {
    risk: { now: Math.min(now, accepted), one: one.risk, two: two.risk },
    turns: { now: 0, one: one.turns, two: two.turns },
    mean: { now, one: one.mean, two: two.mean },
    isOver,
  };
}

/** The joint's strength once k readings there have come out so. */
function updated(
  field: StrengthField,
  i: number,
  spread: LogSpread,
  { off, squares }: Outcome,
  k: 1 | 2,
  scatter: number,
): LogSpread {
  const own = field.shape.values[i * field.shape.size + i]!;
  const total = own + scatter / k;
  const mean = spread.mean + (own / total) * off * field.sigma * Math.sqrt(total);
  const sigma = field.sigma * Math.sqrt((field.df + squares) / (field.df + k));
  return { ...spread, mean, scale: sigma * Math.sqrt((own * scatter) / k / total), df: field.df + k };
}

const percent = (share: number): string =>
  share < 0.001 ? "under 0.1 %" : `${(share * 100).toFixed(share < 0.1 ? 1 : 0)} %`;

function wordsOf(ratio: Before, judged: Judged | null): string {
  const band = `One reading here would narrow the band from ${ratio.now.toFixed(2)} to ${ratio.one.toFixed(2)} times (95 % over 5 %), two to ${ratio.two.toFixed(2)}.`;
  if (!judged) return band;
  const { turns, mean, isOver } = judged;
  const now = `The chance that the load exceeds the ground's capacity is ${percent(mean.now)} now.`;
  if (turns.two < 0.001) return `${band} ${now} Readings here would hardly change the verdict.`;
  const turn = isOver ? "the joint comes out clear" : "it turns out to need mending";
  return `${band} ${now} The chance that ${turn} is ${percent(turns.one)} with one reading and ${percent(turns.two)} with two.`;
}
