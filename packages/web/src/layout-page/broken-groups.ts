import type { BrokenRule } from "@causey/engine/layout";
import { idRuns } from "../show/id-runs.ts";

/** One rule broken against one area, plot or kind of support, with all parts and joints that break it. */
export interface BrokenGroup {
  readonly key: string;
  readonly rule: string;
  /** `A49 to A52, A57`. */
  readonly where: string;
  readonly count: number;
  /** The sentence that holds for all; where they differ in a figure, that of the first. */
  readonly message: string;
  readonly isSame: boolean;
  readonly mend: string;
  readonly all: readonly BrokenRule[];
}

/** Broken rules with those of one rule and one named thing together, in the order in which they first stand. */
export function brokenGroups(broken: readonly BrokenRule[]): readonly BrokenGroup[] {
  const groups = new Map<string, BrokenRule[]>();
  for (const b of broken) {
    const key = [b.rule, b.mend, ...(b.message.match(/"[^"]*"/g) ?? [])].join(" ");
    groups.set(key, [...(groups.get(key) ?? []), b]);
  }
  return [...groups].map(([key, all]) => {
    const sentences = new Set(all.map(withoutId));
    const first = all[0]!;
    const isSame = sentences.size === 1;
    return {
      key,
      rule: first.rule,
      where: idRuns(all.map((b) => b.part_or_joint)),
      count: all.length,
      message: isSame ? withoutId(first) : first.message,
      isSame,
      mend: first.mend,
      all,
    };
  });
}

/** The message after the id that it begins with, since the ids stand before it. */
const withoutId = ({ message, part_or_joint: id }: BrokenRule): string =>
  message.startsWith(`${id} `)
    ? message.slice(id.length + 1)
    : message.startsWith(`Support ${id} `)
      ? `support ${message.slice(id.length + 9)}`
      : message;
