import { tables } from "@causey/data/tables";
import { finish } from "@causey/engine/formula";
import { derive } from "@causey/engine/plan";
import { withoutHidden } from "@causey/io/results";
import { allSheets, paperPdf, paperSet, PERMIT_SET } from "@causey/papers/set";
import { loadSolver } from "@causey/runtime/solver";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { demoPlan } from "./demo-plan.mjs";

const face = (name) =>
  new Uint8Array(
    readFileSync(fileURLToPath(import.meta.resolve(`@expo-google-fonts/source-sans-3/${name}.ttf`))),
  );

/** Papers of the demo: the permit set, the building papers, and everything with every working. */
export async function* rows() {
  const { plan: read, site, prices } = await demoPlan();
  const plan = { ...read, layout: { ...read.layout, heading_step_deg: 90 } };
  const results = finish(derive({ plan, site, prices }, { tables, solver: await loadSolver() }));
  const context = { plan, site, tables, results: withoutHidden(results, plan.zones) };
  const fonts = {
    regular: face("400Regular/SourceSans3_400Regular"),
    semibold: face("600SemiBold/SourceSans3_600SemiBold"),
  };
  const every = allSheets.map((s) => s.id);
  for (const [set, which] of [
    ["permit", PERMIT_SET],
    ["all but workings", every.filter((id) => id !== "workings")],
    ["all", every],
  ]) {
    const from = performance.now();
    const drawn = paperSet(context, which);
    const drawing = performance.now() - from;
    const pdf = await paperPdf(drawn, context, fonts);
    yield {
      set,
      pages: drawn.pages.length,
      "drawn, ms": drawing,
      "as PDF, ms": performance.now() - from,
      "PDF kB": pdf.length / 1000,
    };
  }
}
