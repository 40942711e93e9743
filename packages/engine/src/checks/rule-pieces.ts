import { recordTrain, uniformMoment, uniformShear } from "../structure/index.ts";
import { metres, newtons, qty, type Qty } from "../units/index.ts";
import { areaLine } from "./area-load.ts";
import type { CheckContext } from "./input.ts";
import { overhangCase, singleCase, type Load, type PieceCase } from "./piece-cases.ts";
import { pointOf, recordRule } from "./rule-loads.ts";

type Context = Pick<CheckContext, "load_rules" | "tables">;

const withLimit = (load: PieceCase, span_over: number | null): PieceCase =>
  span_over === null ? load : { ...load, span_over };

/** A pressure on the width of deck that one piece carries, all along its span. */
function areaCase(
  name: string,
  pressure_pa: number,
  along_m: number,
  explain: PieceCase["explain"],
): PieceCase {
  const p = qty(pressure_pa, "Pa");
  const b = metres(along_m);
  return {
    name,
    load: newtons(areaLine({ p, b })),
    explain,
    moment: (L, trace) => uniformMoment({ w: areaLine({ p, b }, trace), L }, trace),
    reaction: (L, trace) => uniformShear({ w: areaLine({ p, b }, trace), L }, trace),
    deflectionTimesStiffness: (L) => (5 * areaLine({ p, b }) * L ** 4) / 384,
  };
}

/**
 * The load rules of a plan on one piece across the walkway.
 *
 * spread    lets a single load stand on its patch, as on a deck board
 * along_m   deck along the walkway that the piece carries under a load all over [m]
 */
export const rulePieceCases = (
  { load_rules = [], tables }: Context,
  spread: boolean,
  along_m: number,
): PieceCase[] =>
  load_rules.map((rule) => {
    if (rule.kind === "area")
      return withLimit(
        areaCase(rule.name, rule.pressure_pa, along_m, (trace) => recordRule(rule, tables, trace)),
        rule.span_over,
      );
    const contact = metres(spread ? rule.side_m : 0);
    return withLimit(
      singleCase(`${rule.name} at the middle`, pointOf(rule, tables), contact),
      rule.span_over,
    );
  });

/** The same on what a board reaches past the outer stringer: a patch wholly on the deck, a pressure all over it. */
export function ruleEdgeCases(
  { load_rules = [], tables }: Context,
  clear_width_m: number,
  overall_m: number,
  along_m: number,
): PieceCase[] {
  const out = (clear_width_m - overall_m) / 2;
  if (out <= 0) return [];
  return load_rules.map((rule) => {
    if (rule.kind === "point")
      return overhangCase(`${rule.name} at the edge`, pointOf(rule, tables), metres(out - rule.side_m / 2));
    const load: Load = (trace) => {
      recordRule(rule, tables, trace);
      const w = areaLine({ p: qty(rule.pressure_pa, "Pa"), b: metres(along_m) }, trace);
      const W: Qty<"N"> = newtons(w * out);
      recordTrain(trace, "P", "Load on the overhang", W, "N", rule.name);
      return W;
    };
    return overhangCase(`${rule.name} on the overhang`, load, metres(out / 2));
  });
}
