import { unpricedWords } from "@causey/engine/cost";
import { highestDeck, type Plan, type Results } from "@causey/engine/plan";
import { feetInches, showQuantity, showShareOfLimit } from "@causey/engine/units";
import { noCrossingWords } from "./crossings.ts";
import { openCheckLines } from "./open-checks.ts";

/** The one-page summary: the values of `results.json`, in the plan's units. What matters most stands last, by the prompt. */
export function summary(results: Results, plan: Plan): string {
  const { layout, evaluation, cost, checks } = results;
  const show = (value: number, unit: "m" | "m2"): string => showQuantity(value, unit, plan.units);
  const money = (v: number): string =>
    `${cost.currency} ${v.toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 })}`;
  const modules = evaluation.modules.map(
    (m) => `${m.count} of ${plan.units === "us" ? feetInches(m.length_m) : show(m.length_m, "m")}`,
  );
  const highest = highestDeck(layout.joints);
  const isLaid = layout.parts.length > 0;
  const gaps = unpricedWords(cost);
  const costWords = isLaid
    ? `${money(cost.total)}${gaps === null ? "" : ` (${gaps})`}`
    : "none, nothing is laid";
  const failed = checks.filter((c) => c.status === "fail");
  return [
    `${plan.name} · ${plan.site_name}`,
    `${results.crs} · heights on ${results.datum}`,
    "",
    row("Walkway length", show(evaluation.length_m, "m")),
    row("Modules", modules.join(", ") || "none"),
    row("Turning platforms", String(evaluation.platforms)),
    row("Supports", String(evaluation.joints)),
    row("Shaded ground", show(evaluation.shaded_m2, "m2")),
    row("Ground touched", show(evaluation.contact_m2, "m2")),
    row("Least height over ground", show(evaluation.lowest_deck_clear_m, "m")),
    ...(highest === null
      ? []
      : [row("Greatest height of the deck", `${show(highest.height_m, "m")}, at joint ${highest.joint}`)]),
    ...evaluation.crossings.map((c) =>
      row(`Crossing of ${c.name}`, `${c.part}, ${show(c.clear_m, "m")} clear`),
    ),
    ...(evaluation.crossings.length === 0
      ? [row("Crossings of channels and pools", noCrossingWords(plan))]
      : []),
    "",
    ...layout.reached.map((r) =>
      row(
        `Reaches ${plotName(plan, r.plot)}`,
        `${show(r.walk_m, "m")} along the walkway, ends ${show(r.distance_m, "m")} from it`,
      ),
    ),
    ...layout.unreached.map((u) => `Does not reach ${plotName(plan, u.plot)}. ${u.because}`),
    "",
    ...(isLaid ? cost.lines.map((l) => row(l.title, money(l.amount))) : []),
    row("Cost", costWords),
    ...(cost.unpriced.length > 0
      ? [`Without a price, left out: ${cost.unpriced.map((u) => `${u.needed} x ${u.item}`).join("; ")}.`]
      : []),
    ...cost.labour.map((l) =>
      row(
        `Person-hours, ${l.work}`,
        `${l.low_h.toFixed(0)} to ${l.high_h.toFixed(0)} (reckoned with ${l.mid_h.toFixed(0)})`,
      ),
    ),
    "",
    row("Checks", checksTally(checks)),
    ...failed.map(
      (c) =>
        `  does not meet it: ${c.title}${c.status === "fail" ? `, ${showShareOfLimit(c.utilisation)} of the limit. ${c.backwards.carries} ${c.backwards.change ?? ""}` : ""}`,
    ),
    ...openCheckLines(checks),
    "",
    ...layout.notes,
    "",
    ...results.cautions,
    "",
    `${show(evaluation.length_m, "m")} long · ${isLaid ? "" : "cost: "}${costWords} · ${checks.length} checks: ${checksTally(checks)}`,
  ].join("\n");
}

const row = (title: string, value: string): string => `${`${title} `.padEnd(34, ".")} ${value}`;

const plotName = (plan: Plan, id: string): string => plan.plots.find((p) => p.id === id)?.name ?? id;

/** How many checks came out which way, in words; the ones that do not apply are not failures. */
function checksTally(checks: Results["checks"]): string {
  const count = (status: string): number => checks.filter((c) => c.status === status).length;
  return `${count("pass")} meet the chosen rule, ${count("fail")} do not, ${count("cannot-check")} cannot be checked, ${count("not-applicable")} do not apply`;
}
