import { tables } from "@causey/data/tables";
import { runChecks } from "@causey/engine/checks";
import { finish } from "@causey/engine/formula";
import { searchLayout } from "@causey/engine/layout";
import { moduleMasses } from "@causey/engine/materials";
import { layoutFacts, searchCosts } from "@causey/engine/plan";
import { demoPlan } from "./demo-plan.mjs";
import { clock } from "./report.mjs";

/** All checks of the demo, its parts and joints repeated. */
export async function* rows() {
  const { plan, site, prices } = await demoPlan();
  const facts = layoutFacts(plan.kit, tables.sizes);
  const choice = { ...plan.layout, heading_step_deg: 90, first_heading_deg: 30 };
  const layout = finish(
    searchLayout({ site, choice, laying: plan.laying, facts, costs: searchCosts(plan, prices, tables) }),
  );
  const masses = moduleMasses(plan.kit, tables.sizes);
  for (const times of [1, 2, 3, 6]) {
    const many = repeated(layout, times);
    const { ms, value } = clock(() => runChecks({ plan, site, layout: many, tables, masses }), 8);
    yield {
      modules: many.parts.filter((p) => p.kind === "module").length,
      joints: many.joints.length,
      results: value.length,
      "ms warm": ms,
    };
  }
}

function repeated(layout, times) {
  const tag = (id, n) => (n === 0 ? id : `${id}.${n}`);
  const copies = Array.from({ length: times }, (_, n) => n);
  return {
    ...layout,
    joints: copies.flatMap((n) =>
      layout.joints.map((j) => ({
        ...j,
        id: tag(j.id, n),
        deck_m: j.deck_m + n / 1000,
        support_height_m: j.support_height_m + n / 1000,
      })),
    ),
    parts: copies.flatMap((n) =>
      layout.parts.map((p) =>
        p.kind === "module"
          ? { ...p, id: tag(p.id, n), from: tag(p.from, n), to: tag(p.to, n) }
          : {
              ...p,
              id: tag(p.id, n),
              from: tag(p.from, n),
              exits: {
                ahead: tag(p.exits.ahead, n),
                left: tag(p.exits.left, n),
                right: tag(p.exits.right, n),
              },
            },
      ),
    ),
  };
}
