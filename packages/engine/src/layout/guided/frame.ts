import { blockAlso, groundFields, keepOffAreas, type GroundFields } from "../fields.ts";
import { DX, DY, type Lattice } from "../lattice.ts";
import { JointTable } from "../joint-table.ts";
import type { PlacingSpace } from "../assemble.ts";
import type { SearchInput } from "../search-input.ts";
import type { GroundWindow } from "../standing.ts";
import { PartRules } from "./part-rules.ts";

/** One lattice ready for fitting: ground and zones read, supports looked at when asked for. */
export interface Frame {
  readonly l: Lattice;
  readonly ground: GroundFields;
  readonly table: JointTable;
  readonly space: PlacingSpace;
  readonly rules: PartRules;
}

export function makeFrame(input: SearchInput, l: Lattice, window: GroundWindow): Frame {
  const { site, laying, facts, costs, choice } = input;
  const ground = groundFields(l, site, laying.from, laying.to);
  const table = new JointTable(l, ground, site, window, facts, costs, {
    ...laying,
    min_clear_m: choice.min_clear_mm / 1000,
    contact_per_m2: choice.weights.contact_per_m2,
    money: choice.weights.money,
  });
  const fields = blockAlso(l, ground, keepOffAreas(site.plots));
  const rules = new PartRules(l, fields, table, facts, costs, choice);
  const exitOf = (ci: number, cj: number, d: number): number =>
    ((cj + DY[d]! * rules.half) * l.nx + ci + DX[d]! * rules.half) * 4 + d;
  return { l, ground, table, space: { l, table, exitOf }, rules };
}
