import { settleGrid } from "@causey/engine/layout";
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { clock } from "./report.mjs";

/** The settle loop on random grids of cell costs 1 to 10, beside skimage.graph.MCP_Geometric where it is installed. */
export function* rows() {
  for (const side of [500, 1000, 2000]) {
    const cost = randomCosts(side * side);
    const own = clock(() => settleGrid(side, side, cost, 256), side < 2000 ? 3 : 1);
    const peer = peerTime(side, cost);
    yield {
      cells: side * side,
      ms: own.ms,
      "million states a second": own.value.settled / own.ms / 1000,
      cost: own.value.corner,
      ...(peer === null
        ? { peer: "skimage is not installed (Debian: python3-skimage)" }
        : {
            "MCP_Geometric ms": peer.ms,
            ratio: own.ms / peer.ms,
            "cost differs by": Math.abs(own.value.corner / peer.cost - 1),
          }),
    };
  }
}

function randomCosts(n) {
  const cost = new Float64Array(n);
  let seed = 12345;
  for (let k = 0; k < n; k++) {
    seed = (seed * 16807) % 2147483647;
    cost[k] = 1 + (9 * seed) / 2147483647;
  }
  return cost;
}

const script = `
import sys, time, numpy as np
from skimage.graph import MCP_Geometric
n = int(sys.argv[1]); cost = np.fromfile(sys.argv[2]).reshape(n, n)
MCP_Geometric(cost[:50, :50]).find_costs([(0, 0)])
t = time.perf_counter(); total, _ = MCP_Geometric(cost).find_costs([(0, 0)])
print((time.perf_counter() - t) * 1000, total[-1, -1])
`;

function peerTime(side, cost) {
  const folder = mkdtempSync(join(tmpdir(), "causey-bench-"));
  try {
    writeFileSync(join(folder, "cost.bin"), new Uint8Array(cost.buffer));
    const run = spawnSync("/usr/bin/python3", ["-c", script, String(side), join(folder, "cost.bin")], {
      encoding: "utf8",
    });
    if (run.status !== 0) return null;
    const [ms, total] = run.stdout.trim().split(" ").map(Number);
    return { ms, cost: total };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
