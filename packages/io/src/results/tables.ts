import type { CheckResult } from "@causey/engine/checks";
import type { Cost } from "@causey/engine/cost";
import type { Joint } from "@causey/engine/layout";
import type { Results } from "@causey/engine/plan";
import { DomainError } from "@causey/engine/units";
import { csvBytes, type CsvCell } from "../csv/index.ts";
import { roundTo } from "../json/index.ts";

/** Six digits: more than any input of a check is good for. */
const figures = (value: number): number => Number(value.toPrecision(6));

/** `joints.csv`: every joint with its place in the grid, its heights on the plan's datum and its support. */
export const jointsCsv = (joints: readonly Joint[]): Uint8Array =>
  csvBytes(
    [
      "id",
      "branch",
      "along_m",
      "x_m",
      "y_m",
      "heading_deg",
      "ground_m",
      "deck_m",
      "support",
      "support_height_m",
    ],
    joints.map((j) => [
      j.id,
      j.branch,
      roundTo(j.along_m, 3),
      roundTo(j.x, 3),
      roundTo(j.y, 3),
      roundTo(j.heading_deg, 3),
      roundTo(j.ground_m, 3),
      roundTo(j.deck_m, 3),
      j.support,
      roundTo(j.support_height_m, 3),
    ]),
  );

/** `checks.csv`: one row for each check and each part it holds for. */
export const checksCsv = (checks: readonly CheckResult[]): Uint8Array =>
  csvBytes(
    [
      "id",
      "kind",
      "part",
      "status",
      "demand",
      "capacity",
      "unit",
      "utilisation_1",
      "governs",
      "rule",
      "source_status",
      "note",
    ],
    checks.flatMap((c) => (c.parts.length > 0 ? c.parts : [""]).map((part) => checkRow(c, part))),
  );

function checkRow(c: CheckResult, part: string): CsvCell[] {
  const head = [c.id, c.kind, part, c.status];
  const rule = c.rule.at === undefined ? c.rule.title : `${c.rule.title}, ${c.rule.at}`;
  if (c.status === "not-applicable")
    return [...head, null, null, null, null, null, rule, c.rule.status, c.because];
  if (c.status === "cannot-check")
    return [...head, null, null, null, null, null, rule, c.rule.status, `missing: ${c.missing.join("; ")}`];
  const { carries, change } = c.backwards;
  const confirm = c.from_memory ? "rests on values from memory, confirm" : null;
  const note = [carries, change, confirm].filter((t) => t !== null && t !== "").join("; ");
  return [
    ...head,
    figures(c.demand),
    figures(c.capacity),
    c.unit,
    figures(c.utilisation),
    c.governs,
    rule,
    c.rule.status,
    note,
  ];
}

/**
 * `order.csv`: what is bought, line by line, then tax, delivery, labour and the rest. The column of amounts adds up to
 * the cost; things without a price stand in it without an amount. Throws `DomainError` when the amounts do not add up.
 */
export function orderCsv(cost: Cost): Uint8Array {
  const bought: CsvCell[][] = cost.order.map((o) => [
    "materials",
    o.item,
    o.description,
    o.length_mm,
    o.quantity,
    o.needed,
    o.unit_price,
    o.amount,
    o.price_date,
    null,
  ]);
  const unpriced: CsvCell[][] = cost.unpriced.map((u) => [
    "materials",
    u.item,
    null,
    null,
    null,
    u.needed,
    null,
    null,
    null,
    "no price in the list: not in the total",
  ]);
  const others: CsvCell[][] = cost.lines
    .filter((l) => l.line !== "materials")
    .map((l) => [l.line, null, l.title, null, null, null, null, l.amount, null, l.note]);
  const rows = [...bought, ...unpriced, ...others];
  const sum = rows.reduce((total, row) => total + Number(row[7] ?? 0), 0);
  if (Math.abs(sum - cost.total) > 0.005)
    throw new DomainError("order-does-not-add-up", { sum, total: cost.total });
  return csvBytes(
    [
      "line",
      "item",
      "description",
      "length_mm",
      "quantity",
      "needed",
      `unit_price_${cost.currency}`,
      `amount_${cost.currency}`,
      "price_date",
      "note",
    ],
    rows.map((row) => row.map((c, i) => (i === 7 && typeof c === "number" ? roundTo(c, 2) : c))),
  );
}

/** `cutting.csv`: for each size the sticks to saw, pattern by pattern. */
export const cuttingCsv = (cutting: Results["cutting"]): Uint8Array =>
  csvBytes(
    ["size", "pattern", "stock_mm", "sticks", "cuts_mm", "offcut_mm"],
    cutting.flatMap(({ size, plan }) =>
      plan.patterns.map((p, i) => [
        size,
        i + 1,
        p.stock_mm,
        p.times,
        p.cuts.map((c) => `${c.count} x ${c.length_mm}`).join(" + "),
        p.offcut_mm,
      ]),
    ),
  );
