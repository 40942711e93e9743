import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { hasPoppler } from "../../packages/papers/test/support/poppler.ts";
import { openPage, wide } from "./support/browser.ts";
import { openSheet } from "./support/sheet.ts";
import { causeySession } from "./support/session.ts";

const session = causeySession();
let page: Page;
const folder = mkdtempSync(join(tmpdir(), "causey-test-"));
beforeAll(async () => {
  ({ page } = await openPage(session.browser, wide));
  await openSheet(page, session.url);
});
afterAll(async () => {
  rmSync(folder, { recursive: true, force: true });
});

async function open(name: string): Promise<void> {
  await page.getByRole("link", { name, exact: true }).click();
  await page.getByRole("heading", { level: 1, name }).waitFor();
  if (name === "Drawings") await page.locator(".paper-page svg").waitFor();
}

/** The page as its browser prints it on A4, read back: words, and the height of the plan's name on paper [pt]. */
async function printed(name: string): Promise<{ readonly words: string; readonly title_pt: number }> {
  const file = join(folder, `${name}.pdf`);
  await page.pdf({ path: file, format: "A4", margin: { left: "12mm", right: "12mm" } });
  const words = execFileSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });
  const boxes = execFileSync("pdftotext", ["-bbox", file, "-"], { encoding: "utf8" });
  const at = /yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">Trap</.exec(boxes);
  return { words, title_pt: at ? Number(at[2]) - Number(at[1]) : 0 };
}

// The plan's name is set in 22 px with lines of its own; shrunk to fit a page it came out a third smaller.
test.runIf(hasPoppler())(
  "each page prints at its own size, with the plan's name, its figures and the strip",
  async () => {
    for (const name of ["Drawings", "Request", "Site", "Water", "Layout", "Kit", "Checks", "Materials"]) {
      await open(name);
      const { words, title_pt } = await printed(name);
      if (name === "Drawings") {
        expect(words, "the drawing alone").not.toContain("Title block");
        continue;
      }
      expect(title_pt, name).toBeGreaterThan(20);
      expect(words, name).toContain("Trap plots, three seasons");
      expect(words, name).toContain("Mean high water");
    }
  },
);

test.runIf(hasPoppler())("Checks print their table, Layout its figures, Materials its sum once", async () => {
  await open("Checks");
  expect((await printed("checks")).words).toMatch(/Share of the limit[\s\S]*Stringer/);
  await open("Layout");
  expect((await printed("layout")).words).toContain("Walkway length");
  await open("Materials");
  expect((await printed("materials")).words.match(/The whole/g)).toHaveLength(1);
});
