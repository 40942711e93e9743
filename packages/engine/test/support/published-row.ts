import { expect, test, type TaskMeta } from "vitest";

/** What a test held against a published figure: the validation page prints it beside the title. */
export interface PublishedFigure {
  readonly id: string;
  readonly unit: string;
  readonly expected: number;
  readonly got: number;
  readonly tolerance: number;
}

interface Row {
  /** Short name of the row on the validation page. */
  readonly id: string;
  /** Where the expected figure was printed, or what it rests on: "AWC DCA 6 (2015 IRC) Table 2", "from memory". */
  readonly source: string;
  readonly what: string;
  readonly expected: number;
  readonly unit: string;
  /** Largest difference that passes, in `unit`. */
  readonly tolerance: number;
}

/** One test: a figure of ours against a published one, kept with its tolerance for the validation page. */
export function publishedRow({ id, source, what, expected, unit, tolerance }: Row, got: () => number): void {
  test(`${source}: ${what}: ${expected} ${unit}`.trim(), ({ task }) => {
    const figure: PublishedFigure = { id, unit, expected, got: got(), tolerance };
    (task.meta as TaskMeta & { published?: PublishedFigure }).published = figure;
    expect(Number.isFinite(figure.got)).toBe(true);
    expect(Math.abs(figure.got - expected)).toBeLessThanOrEqual(tolerance);
  });
}

/** A share of the expected figure as a tolerance. */
export const within = (share: number, expected: number): number => Math.abs(expected) * share;
