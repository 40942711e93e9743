import { tables } from "@causey/data/tables";
import { finish } from "@causey/engine/formula";
import { SearchMemory, searchLayout } from "@causey/engine/layout";
import { layoutFacts, searchCosts } from "@causey/engine/plan";
import { spawnSync } from "node:child_process";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { demoPlan, root } from "./demo-plan.mjs";
import { clock } from "./report.mjs";

const MEMORY_BYTES = 512e6;

/** The demo site tiled to larger ground: search time by size for one heading, then the whole folder through the shell. */
export async function* rows() {
  const read = await demoPlan();
  for (const factor of [1, 2]) {
    const site = tiled(read.site, factor);
    const facts = layoutFacts(read.plan.kit, tables.sizes);
    const costs = searchCosts(read.plan, read.prices, tables);
    const choice = { ...read.plan.layout, heading_step_deg: 90, first_heading_deg: 30 };
    const memory = new SearchMemory(MEMORY_BYTES);
    const search = (plots) =>
      clock(() =>
        finish(
          searchLayout({ site: { ...site, plots }, choice, laying: read.plan.laying, facts, costs }, memory),
        ),
      );
    const { ms, value } = search(site.plots);
    const settled = memory.settled;
    const moved = search(site.plots.map((p, n) => (n === 0 ? { ...p, x: p.x + 2, y: p.y - 3 } : p)));
    yield {
      "site m": `${site.terrain.cols * site.terrain.dx} x ${site.terrain.rows * site.terrain.dy}`,
      headings: 1,
      "lattice m": facts.lattice_m,
      plots: site.plots.length,
      parts: value.parts.length,
      "joints settled": settled,
      ms,
      "ms, a plot moved": moved.ms,
      "peak MB": process.resourceUsage().maxRSS / 1024,
    };
  }
  const out = join(mkdtempSync(join(tmpdir(), "causey-bench-")), "out");
  const program = join(root, "packages/cli/bin/causey.mjs");
  const { ms } = clock(() =>
    spawnSync(process.execPath, [program, "plan", join(root, "examples/salt-meadow"), "--out", out]),
  );
  yield { "demo folder to results, cold, ms": ms, headings: 90 / read.plan.layout.heading_step_deg };
}

/** The terrain repeated `factor` times along both axes, mirrored so that it stays continuous; plots and start stay. */
function tiled(site, factor) {
  const { cols, rows: height, values } = site.terrain;
  const wide = new Float32Array(cols * factor * height * factor);
  const mirror = (k, n) => (Math.floor(k / n) % 2 === 0 ? k % n : n - 1 - (k % n));
  for (let j = 0; j < height * factor; j++)
    for (let i = 0; i < cols * factor; i++)
      wide[j * cols * factor + i] = values[mirror(j, height) * cols + mirror(i, cols)];
  return { ...site, terrain: { ...site.terrain, cols: cols * factor, rows: height * factor, values: wide } };
}
