/** A project's own value in place of a rule's; shown as such wherever it acts. */
export interface RuleOverride {
  /** Id of the rule, as the profile lists it. */
  readonly rule: string;
  readonly value: number;
  readonly reason: string;
  readonly by: string;
  readonly date: string;
}

/** The rule profile that a plan follows, and where it departs from it. */
export interface RuleChoice {
  readonly profile: string;
  readonly overrides: readonly RuleOverride[];
}
