// Sturtevant (2012), Benchmarks for grid-based pathfinding, IEEE T-CIAIG 4(2): every scenario of four generated maps.
import { expect, test } from "vitest";
import { gridPath } from "../../src/layout/index.ts";
import { dataText, hasData } from "../support/open-data.ts";

const maps = ["random-64-64-20", "room-64-64-8", "32room_000", "random512-25-0"];

for (const name of maps)
  test.skipIf(!hasData("grid-paths"))(
    `Sturtevant (2012), ${name}: every scenario's length within 1e-5`,
    () => {
      const rows = dataText("grid-paths", `${name}.map.scen`)
        .trim()
        .split("\n")
        .slice(1)
        .map((l) => l.split("\t"));
      const queries = rows.map((r) => r.slice(4, 8).map(Number));
      const outcome = gridPath.run({ map: dataText("grid-paths", `${name}.map`), queries }, {});
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
      const lengths = outcome.outputs["lengths"] as number[];
      const worst = Math.max(
        ...rows.map((r, i) => Math.abs(lengths[i]! - Number(r[8])) / Math.max(1e-9, Number(r[8]))),
      );
      expect(lengths.length).toBeGreaterThan(200);
      expect(worst).toBeLessThan(1e-5);
    },
  );
