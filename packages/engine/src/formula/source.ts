/**
 * Where a value or a formula comes from.
 *
 * seen      read in the named public page or print
 * memory    general knowledge, not seen: shown as "from memory, confirm" wherever a result rests on it
 * computed  worked out by this project from seen facts
 * practice  common practice of the trade, no printed source
 * project   a decision of this project or of the plan's owner
 */
export type SourceStatus = "seen" | "memory" | "computed" | "practice" | "project";

export interface Source {
  readonly id: string;
  readonly title: string;
  readonly at?: string;
  readonly status: SourceStatus;
}
