import { auditLayout, type AuditReport } from "@causey/engine/audit";
import type { Layout, SearchInput } from "@causey/engine/layout";
import type { Plan, Results } from "@causey/engine/plan";
import { layoutGeoJson } from "@causey/io/results";

const NO_FIGURES = { length_m: 0, shaded_m2: 0, contact_m2: 0 };

/** Holds a layout, written as its file would be, against every hard rule: by the audit, which shares no code with the search. */
export function auditOf(layout: Layout, { site, choice, laying, facts }: SearchInput): AuditReport {
  const results = { layout, evaluation: NO_FIGURES, cost: { total: 0, currency: "USD" }, datum: site.datum };
  const written = layoutGeoJson(
    results as unknown as Results,
    { id: "test", crs: { local: "test grid" } } as Plan,
  );
  return auditLayout({
    layout: JSON.parse(JSON.stringify(written)) as unknown,
    terrain: site.terrain,
    zones: site.zones,
    starts: site.starts,
    plots: site.plots,
    kit: {
      lengths_mm: facts.lengths_m.map((m) => m * 1000),
      joint_gap_mm: facts.gap_m * 1000,
      platform: { side_mm: facts.platform_side_m * 1000 },
      supports: facts.supports,
    },
    module_depth_m: facts.depth_m,
    laying,
    max_grade: choice.max_grade,
    min_clear_mm: choice.min_clear_mm,
  });
}

/** What the audit finds in a fitted layout, and what of it is not marked on the part or joint under the same rule. */
export function faultsOf(layout: Layout, input: SearchInput): { found: number; unmarked: string[] } {
  const marked = new Set(layout.line!.broken.map((b) => `${b.rule} ${b.part_or_joint}`));
  const faults = auditOf(layout, input).rules.flatMap((r) => r.problems.map((p) => ({ rule: r.rule, ...p })));
  const isMarked = (rule: string, place: string): boolean =>
    (place.split(" at ")[0]!.match(/[A-Z]+\d+/g) ?? []).some((id) => marked.has(`${rule} ${id}`));
  return {
    found: faults.length,
    unmarked: faults
      .filter((f) => !isMarked(f.rule, f.place))
      .map((f) => `${f.rule}, ${f.place}: ${f.message}`),
  };
}
