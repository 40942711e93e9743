import type { Plot } from "@causey/engine/site";
import { quote, type Findings } from "../problem/index.ts";
import type { PlanDocument } from "./read-document.ts";

/** What plan.json must have right within itself: days in their order, ids that are defined and defined once. */
export function checkDocument(found: Findings, document: PlanDocument): void {
  checkDays(found, document);
  checkTwinIds(found, "levels", document.levels);
  checkTwinIds(found, "visits", document.visits);
  checkCompared(found, document.water);
  const { flood_level, levels } = document;
  if (flood_level !== null && !levels.some((l) => l.id === flood_level))
    unknown(found, "flood_level", flood_level, "water level", levels);
}

/** A second series is there to be compared: it must be of the other basis, and there must be a first. */
function checkCompared(found: Findings, { series, compare }: PlanDocument["water"]): void {
  if (!compare || (series !== null && series.basis !== compare.basis)) return;
  found.error({
    code: "series-compare",
    place: "water.compare",
    value: compare.basis,
    message:
      series === null
        ? "There is a series to compare with, but no record or tide table that it is compared to."
        : `Both series are ${compare.basis}: a record is compared with a prediction.`,
    mend: "Give a record as one of the two (water.series, water.compare) and a prediction as the other, or leave water.compare out.",
  });
}

function checkDays(found: Findings, document: PlanDocument): void {
  const { laying, removal, visits } = document;
  const order = (place: string, first: string, last: string, what: string): void => {
    if (first <= last) return;
    found.error({
      code: "plan-days",
      place,
      value: last,
      message: `${what}: ${last} lies before ${first}.`,
      mend: "Correct one of the two days.",
    });
  };
  order("laying.to", laying.from, laying.to, "The laying ends before it begins");
  order("removal.by", laying.to, removal.by, "The walkway would be taken out before it is laid");
  visits.forEach((visit, i) => {
    if (visit.to === null) {
      found.warn({
        code: "visit-open-end",
        place: `visits[${i}].to`,
        value: null,
        message: `The visit ${quote(visit.name)} has no last day: a temporary walkway needs one, and a permit asks for it.`,
        mend: "Ask the researcher for the last day, and give it.",
      });
      return;
    }
    order(`visits[${i}].to`, visit.from, visit.to, `The visit ${quote(visit.name)} ends before it begins`);
    if (visit.to > removal.by)
      found.warn({
        code: "visit-after-removal",
        place: `visits[${i}].to`,
        value: visit.to,
        message: `The visit ${quote(visit.name)} goes on after the walkway is taken out (${removal.by}).`,
        mend: "Let the visit end earlier, or take the walkway out later.",
      });
  });
}

function checkTwinIds(found: Findings, list: string, items: readonly { readonly id: string }[]): void {
  const ids = items.map((item) => item.id);
  ids.forEach((id, i) => {
    const first = ids.indexOf(id);
    if (first < i)
      found.error({
        code: "plan-twins",
        place: `${list}[${i}].id`,
        value: id,
        message: `${list}[${first}] already has the id ${quote(id)}.`,
        mend: "Give each its own id.",
      });
  });
}

/** Visits go to plots that stand in places.geojson. */
export function checkVisits(found: Findings, document: PlanDocument, plots: readonly Plot[]): void {
  document.visits.forEach((visit, i) =>
    visit.plots.forEach((id, n) => {
      if (!plots.some((p) => p.id === id))
        unknown(found, `visits[${i}].plots[${n}]`, id, "plot in places.geojson", plots);
    }),
  );
}

const unknown = (
  found: Findings,
  place: string,
  id: string,
  what: string,
  known: readonly { readonly id: string }[],
): void =>
  found.error({
    code: "plan-unknown-id",
    place,
    value: id,
    message: `There is no ${what} with the id ${quote(id)}.`,
    mend: known.length > 0 ? `Use one of: ${known.map((k) => k.id).join(", ")}.` : `Add the ${what} first.`,
  });

/** Money adds up in one currency only. */
export function checkCurrency(found: Findings, document: PlanDocument, list: string | null): void {
  const { currency } = document.money;
  if (list === null)
    found.warn({
      code: "prices-empty",
      place: "rows",
      message: "The price list is empty: nothing can be costed.",
      mend: "Add a row for each item of the kit.",
    });
  else if (list !== currency)
    found.error({
      code: "currency-clash",
      place: "column currency",
      value: list,
      message: `The prices are in ${list}, the plan reckons in ${currency} (plan.json, money.currency).`,
      mend: `Give prices in ${currency}, or set money.currency to ${list}.`,
    });
}
