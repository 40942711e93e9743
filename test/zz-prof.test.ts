import { finish } from "@causey/engine/formula";
import { searchLayout } from "@causey/engine/layout";
import { test } from "vitest";
import { dataFolder } from "../packages/engine/test/support/open-data.ts";
import { stourInput } from "./support/stour-input.ts";
import { STOUR_PLACES } from "./support/stour-places.ts";
test("p", async () => {
  for (const v of ["low", "post-pairs"] as const) for (const corridor_m of [2, 0.3, 5]) for (const band of [Infinity, 12, 6, 3]) {
  const input = await stourInput(dataFolder, v);
  (globalThis as any).BAND = band;
  const lines = [{ id: "a", plot: null, corridor_m, points: [STOUR_PLACES.start, [621930, 233660], [621985, 233660], [621980, 233580], [621925, 233570]] as any }];
  const t = performance.now();
  const l = finish(searchLayout({ ...input, choice: { ...input.choice, lines } }));
  const c = new Map<string, number>(); for (const b of l.line!.broken) c.set(b.rule, (c.get(b.rule) ?? 0) + 1);
  console.log("TOTAL", v, corridor_m, band, Math.round(performance.now() - t), l.heading_deg, l.line!.lines[0]!.max_deviation_m, l.line!.lines[0]!.rms_deviation_m, l.line!.lines[0]!.not_followed.length, l.parts.length, JSON.stringify([...c]));
  }
});
