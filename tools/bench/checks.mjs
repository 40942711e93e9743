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
  const goal = { ...twoHundred({ plan, site }), tables };
  const many = clock(() => runChecks(goal), 8);
  yield { modules: 200, kinds: 12, soils: 201, floods: 4, results: many.value.length, "ms warm": many.ms };
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

/** A straight walkway of 200 modules of 12 lengths, a strength of its own at every joint, four flood levels. */
function twoHundred({ plan, site }) {
  const lengths_mm = Array.from({ length: 12 }, (_, i) => 1206.5 + i * 203.2);
  const kit = { ...plan.kit, lengths_mm };
  const [support] = kit.supports;
  const top = site.levels.find((l) => l.id === plan.flood_level) ?? site.levels[0];
  const joints = [];
  const parts = [];
  let along = 0;
  for (let i = 0; i <= 200; i++) {
    joints.push({
      id: `J${i}`,
      x: along,
      y: 0,
      heading_deg: 90,
      branch: "A",
      along_m: along,
      ground_m: top.z_m - 0.4 + (i % 7) / 100,
      deck_m: top.z_m,
      support: support.id,
      support_height_m: support.height_min_mm / 1000,
      feet: [],
    });
    if (i === 200) break;
    const length_m = lengths_mm[i % 12] / 1000;
    parts.push({
      id: `M${i}`,
      kind: "module",
      branch: "A",
      length_m,
      heading_deg: 90,
      from: `J${i}`,
      to: `J${i + 1}`,
      along_m: along,
      outline: [],
      bridges: [],
    });
    along += length_m + kit.joint_gap_mm / 1000;
  }
  const readings = joints.map((j, i) => ({
    x: j.x,
    y: 0,
    depth_m: 0.3,
    su_kpa: 8 + (i % 23) / 2,
    source: "vane of the bench",
  }));
  const levels = [0, 1, 2].map((i) => ({
    ...top,
    id: `bench-${i}`,
    name: `Level ${i}`,
    z_m: top.z_m - i / 20,
  }));
  const flood = { ...plan.proof.flood, levels: levels.map((l) => l.id), speed_m_s: 0.5 };
  return {
    plan: {
      ...plan,
      kit,
      proof: { ...plan.proof, flood },
      ground: { ...plan.ground, readings: [] },
    },
    site: { ...site, zones: [], readings, levels: [...site.levels, ...levels] },
    layout: {
      heading_deg: 90,
      lattice_m: 0.2,
      joints,
      parts,
      branches: [],
      reached: [],
      unreached: [],
      notes: [],
      search: { headings: 1, estimate: 0 },
      line: null,
      as_laid: null,
    },
    masses: moduleMasses(kit, tables.sizes),
  };
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
