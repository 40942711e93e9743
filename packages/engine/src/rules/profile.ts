import type { SourceStatus } from "../formula/source.ts";

/** What a rule limits. Those marked (listed) are shown to the reader; no check holds a plan against them. */
export type RuleTopic =
  | "clear-width"
  | "two-way-width"
  | "passing-interval"
  | "passing-size"
  | "opening"
  | "opening-direction"
  | "board-gap"
  | "board-length"
  | "board-width"
  | "height-per-width"
  | "deck-over-high-water"
  | "fall-without-rail"
  | "rail-height"
  | "fall-without-curb"
  | "curb-height"
  | "fall-without-consent"
  | "grade"
  | "ramp-start"
  | "grade-run"
  | "steep-share"
  | "rest-length"
  | "rest-grade"
  | "run-rise"
  | "rise-without-rail"
  | "cross-slope"
  | "step"
  | "public-span"
  | "bank-setback"
  | "cart-margin"
  | "tipping"
  /** Step to step, pins, pile leads, posts: (listed). */
  | "listed";

/** "as-large-as-can-be" is a wish without a number: its value is 0 and clashes with every upper limit. */
export type RuleDirection = "at-most" | "less-than" | "at-least" | "about" | "as-large-as-can-be";

/** One rule of a profile. Lengths in metres, shares and grades as ratios. */
export interface Rule {
  readonly id: string;
  readonly title: string;
  readonly topic: RuleTopic;
  readonly unit: "m" | "1";
  readonly value: number;
  readonly direction: RuleDirection;
  /** When it applies, in words; empty = always. */
  readonly when: string;
  /** Bands of grade: it applies to grades over the first, up to the second. */
  readonly steeper_than?: number;
  readonly up_to?: number;
  /** Id in the tables' sources, and the place in it. */
  readonly source: string;
  readonly at: string;
  readonly status: SourceStatus;
}

/** A set of rules that a plan can follow. */
export interface RuleProfile {
  readonly id: string;
  readonly name: string;
  /** Where it applies, and who asks for it. */
  readonly where: string;
  /** Written for walkways that the public may use. */
  readonly public: boolean;
  readonly rules: readonly Rule[];
}
