import type { Problem } from "@causey/engine/formula";
import { expect } from "vitest";

/** The one message with a code among all; each part that helps must be there, and what it says as wanted. */
export function said(
  problems: readonly Problem[],
  code: string,
  wanted: Partial<Record<"severity" | "place" | "value" | "message" | "mend", string | RegExp>>,
): Problem {
  const found = problems.filter((p) => p.code === code);
  expect(
    found.map((p) => p.code),
    problems.map((p) => `${p.code}: ${p.message}`).join("\n"),
  ).toEqual([code]);
  const problem = found[0]!;
  for (const part of ["file", "place", "value", "message", "mend"] as const)
    expect(problem[part], `${code} has no ${part}`).not.toBe("");
  for (const [part, text] of Object.entries(wanted))
    expect(problem[part as keyof typeof wanted]).toMatch(
      typeof text === "string" ? new RegExp(escaped(text)) : text,
    );
  return problem;
}

const escaped = (text: string): string => text.replaceAll(/[\\^$.*+?()[\]{}|]/g, String.raw`\$&`);

/** The problems that a reader throws; what it gives back when it throws none is a failure. */
export async function refusal(read: () => unknown): Promise<readonly Problem[]> {
  try {
    await read();
  } catch (error) {
    const { problems } = error as { readonly problems?: readonly Problem[] };
    if (problems === undefined) throw error;
    return problems;
  }
  throw new Error("the reader took what it should refuse");
}
