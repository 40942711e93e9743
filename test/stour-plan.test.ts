// Lidar terrain of an English marsh from Goodwin, Mudd and Clubb (2018), Earth Surf. Dynam. 6, 239-255.
import { readyKits } from "@causey/data/kits";
import { tables } from "@causey/data/tables";
import { validateKit } from "@causey/engine/kit";
import { readPlan } from "@causey/io/plan";
import { describe, expect, test } from "vitest";
import { dataFolder, hasData } from "../packages/engine/test/support/open-data.ts";
import { stourPlanFiles } from "./support/stour-plan.ts";

const options = { readyKits, validateKit: (kit: (typeof readyKits)[number]) => validateKit(kit, tables) };

describe.skipIf(!hasData("marsh-dem-stour"))("Goodwin, Mudd and Clubb (2018), plan on real terrain", () => {
  for (const variant of ["low", "post-pairs"] as const)
    test(`${variant}: is a plan folder that the reader takes`, async () => {
      const read = await readPlan(await stourPlanFiles(dataFolder, variant), options);
      if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));
      expect(read.warnings.map((w) => w.code)).toEqual(["terrain-gaps", "terrain-edge-high"]);
      expect(read.site.terrain.cols * read.site.terrain.rows).toBe(225 * 247);
      expect(read.plan.plots.map((p) => p.id)).toEqual(["P1", "P2", "P3"]);
      expect(read.plan.zones.map((z) => `${z.use} ${z.name}`)).toContain("channel Middle creek");
      const kinds = read.plan.kit.supports.map((s) => [s.id, s.stands.ground_above_m, s.height_max_mm]);
      expect(kinds).toEqual([
        ["sleeper", 1.5, 228.6],
        ["open-crate", 1.5, variant === "low" ? 609.6 : 508],
        ...(variant === "low" ? [] : [["post-pair", 0.2, 2000]]),
      ]);
      expect(Math.max(...read.plan.kit.lengths_mm)).toBeLessThan(3658);
    });
});
