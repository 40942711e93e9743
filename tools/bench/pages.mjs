import { serve } from "@causey/server/serve";
import { existsSync, mkdtempSync, readFileSync, readdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { root } from "./demo-plan.mjs";

/** Size of what the first page loads, and how long it takes over localhost where a Chromium is there. */
export async function* rows() {
  const assets = join(root, "packages/web/dist/assets");
  const first = readFileSync(join(root, "packages/web/dist/index.html"), "utf8");
  const initial = readdirSync(assets).filter((f) => f.endsWith(".js") && first.includes(f));
  yield {
    "initial JS, kB gzip":
      initial.reduce((sum, f) => sum + gzipSync(readFileSync(join(assets, f))).length, 0) / 1000,
    files: initial.length,
  };
  const chromium = process.env.CHROMIUM ?? "/usr/bin/chromium";
  if (!existsSync(chromium)) return yield { "first page": "no Chromium here" };
  const { chromium: browser } = await import("playwright-core");
  const serving = await serve({
    dataFolder: mkdtempSync(join(tmpdir(), "causey-bench-")),
    port: 0,
    open: false,
    staticFolder: join(root, "packages/web/dist"),
    demoFolders: [join(root, "examples/salt-meadow")],
  });
  const opened = await browser.launch({
    executablePath: chromium,
    args: ["--no-sandbox", "--disable-quic", "--disable-background-networking"],
  });
  try {
    const page = await opened.newPage();
    const from = performance.now();
    await page.goto(serving.url);
    await page.waitForSelector("h1");
    yield { "first page, heading shown, ms": performance.now() - from };
  } finally {
    await opened.close();
    await serving.close();
  }
}
