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

/** A heading on which all three plots can be joined, and one on which one of them cannot: the search has to prove it. */
const HEADINGS = { "all plots joined": 0, "a plot out of reach": 30 };

/** The demo site tiled to larger ground: search time by size for one heading and for the sweep, then the whole folder. */
export async function* rows() {
  const read = await demoPlan();
  for (const factor of [1, 2]) {
    const site = tiled(read.site, factor);
    const facts = layoutFacts(read.plan.kit, tables.sizes);
    const costs = searchCosts(read.plan, read.prices, tables);
    const searcher = (first_heading_deg, heading_step_deg, memory) => (plots) =>
      clock(() => {
        const choice = { ...read.plan.layout, heading_step_deg, first_heading_deg };
        const input = { site: { ...site, plots }, choice, laying: read.plan.laying, facts, costs };
        return finish(searchLayout(input, memory));
      });
    const size = `${site.terrain.cols * site.terrain.dx} x ${site.terrain.rows * site.terrain.dy}`;
    for (const [what, heading] of Object.entries(HEADINGS)) {
      const memory = new SearchMemory(MEMORY_BYTES);
      const search = searcher(heading, 90, memory);
      const { ms, value } = search(site.plots);
      const settled = memory.settled;
      const moved = search(site.plots.map((p, n) => (n === 0 ? { ...p, x: p.x + 2, y: p.y - 3 } : p)));
      yield {
        "site m": size,
        "one heading": what,
        "lattice m": facts.lattice_m,
        "plots reached": `${value.reached.length} of ${site.plots.length}`,
        parts: value.parts.length,
        "joints settled": settled,
        ms,
        "ms, a plot moved": moved.ms,
        "peak MB": process.resourceUsage().maxRSS / 1024,
      };
    }
    const sweep = searcher(0, read.plan.layout.heading_step_deg, new SearchMemory(MEMORY_BYTES))(site.plots);
    yield { "site m": size, "sweep, headings": 90 / read.plan.layout.heading_step_deg, ms: sweep.ms };
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
