import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

/** Everything that axe holds against the page: rule, and the elements. */
export async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { axe: loaded } = globalThis as unknown as {
      axe: { run: () => Promise<{ violations: readonly Violation[] }> };
    };
    const found = await loaded.run();
    return found.violations.map(
      (v) =>
        `${v.id}: ${v.nodes.map((n) => `${n.html.slice(0, 160)} ${n.failureSummary ?? ""}`).join(" | ")}`,
    );
  });
}
