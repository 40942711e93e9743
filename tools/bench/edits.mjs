import { tables } from "@causey/data/tables";
import { finish } from "@causey/engine/formula";
import { derive } from "@causey/engine/plan";
import { loadSolver } from "@causey/runtime/solver";
import { demoPlan } from "./demo-plan.mjs";
import { clock } from "./report.mjs";

/** From one change of the demo plan to every figure anew, with what was worked out before kept; no page drawn. */
export async function* rows() {
  const read = await demoPlan();
  const context = { tables, solver: await loadSolver(), cache: new Map() };
  let plan = { ...read.plan, layout: { ...read.plan.layout, heading_step_deg: 90 } };
  const work = () => finish(derive({ ...read, plan, site: { ...read.site, plots: plan.plots } }, context));
  const first = clock(work);
  yield { edit: "none, all worked out", ms: first.ms, parts: first.value.layout.parts.length };
  const edits = {
    "load of the cart": (p, n) => ({
      ...p,
      visits: p.visits.map((v) => (v.cart === null ? v : { ...v, cart: { ...v.cart, load_kg: 40 + n } })),
    }),
    "fasteners of the kit": (p, n) => ({
      ...p,
      kit: { ...p.kit, deck_screw: { ...p.kit.deck_screw, per_crossing: 2 + (n % 2) } },
    }),
    "gap between deck boards": (p, n) => ({
      ...p,
      kit: { ...p.kit, deck: { ...p.kit.deck, gap_mm: 10 + (n % 7) } },
    }),
    "price of labour": (p, n) => ({ ...p, money: { ...p.money, labour_per_hour: 20 + n } }),
    "a plot moved 1 m": (p, n) => ({
      ...p,
      plots: p.plots.map((q, i) => (i === 0 ? { ...q, x: q.x + (n % 2 === 0 ? 1 : -1) } : q)),
    }),
  };
  for (const [edit, change] of Object.entries(edits)) {
    const times = Array.from({ length: 20 }, (_, n) => {
      plan = change(plan, n);
      return clock(work).ms;
    }).toSorted((a, b) => a - b);
    yield { edit, "median ms": times[9], "p95 ms": times[18] };
  }
}
