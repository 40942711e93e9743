import { unpricedWords } from "@causey/engine/cost";
import type { Results } from "@causey/engine/plan";
import { useRef } from "react";
import type { PlanSnapshot } from "../api/types.ts";
import { freshnessOf } from "../desk/derive-session.ts";
import { useDerived } from "../desk/use-derived.ts";
import { FieldGroup, FormSheet } from "../fields/form-sheet.tsx";
import { Cautions } from "../frame/cautions.tsx";
import { NothingLaid } from "../layout-page/nothing-laid.tsx";
import { DeriveStatus } from "../frame/derive-status.tsx";
import { Ledger } from "../frame/ledger.tsx";
import { Figures } from "../layout-page/figures.tsx";
import { readingOf } from "../show/reading.ts";
import { count, showMoney, type Reading } from "../show/show.ts";
import { BudgetTable } from "./budget-table.tsx";
import { CuttingPlan } from "./cutting-plan.tsx";
import { MoneyFields } from "./money-fields.tsx";
import { OrderTable } from "./order-table.tsx";
import { PriceAge } from "./price-age.tsx";
import { PriceFields } from "./price-fields.tsx";
import { SparesTable } from "./spares-table.tsx";
import { TakeOffTable } from "./take-off-table.tsx";
import "./materials-page.css";

/** What is bought, how it is sawn and what the project costs: lists on the left, the money's figures on the right. */
export function MaterialsPage({ snapshot }: { readonly snapshot: PlanSnapshot }) {
  const { phase, results } = useDerived();
  const { plan } = snapshot;
  const reading = readingOf(plan);
  const freshness = freshnessOf(phase);
  const priceList = useRef<HTMLDivElement>(null);
  return (
    <>
      <div className={`picture ${freshness}`}>
        <FormSheet label="Lists of materials">
          {results && hasParts(results) ? (
            <Lists results={results} snapshot={snapshot} reading={reading} />
          ) : (
            <p className="quiet">
              {results
                ? "Nothing is laid, so nothing is sawn, ordered or paid. Lists and budget appear here when a walkway is laid."
                : "The lists appear here when the layout has been worked out."}
            </p>
          )}
          <PriceFields snapshot={snapshot} needs={results?.take_off ?? null} at={priceList} />
          <MoneyFields plan={plan} />
        </FormSheet>
      </div>
      <Ledger label="Figures of the money">
        <h1>Materials</h1>
        <p className="quiet ledger-sub">{ledgerWords(results, reading)}</p>
        <DeriveStatus />
        {results && (
          <>
            <Figures figures={moneyFigures(results)} reading={reading} freshness={freshness} />
            {hasParts(results) ? (
              <PriceAge
                budget={results.budget}
                cost={results.cost}
                age_days={plan.money.price_age_days}
                onPriceList={() => goToFields(priceList.current)}
              />
            ) : (
              <NothingLaid />
            )}
            <Cautions cautions={results.cautions} />
          </>
        )}
      </Ledger>
    </>
  );
}

const hasParts = ({ layout }: Results): boolean => layout.parts.length > 0;

function ledgerWords(results: Results | null, reading: Reading): string {
  if (results === null || !hasParts(results)) return "Take-off, cutting plan, order list, budget.";
  const gaps = unpricedWords(results.cost);
  const sum = `${count(results.cost.order.length, "line")} to order, ${showMoney(results.budget.mid, reading)} in all`;
  return gaps === null ? sum : `${sum}, ${gaps}`;
}

/** The fields stand at the foot of the page: they are brought into view, and the keys go on from there. */
function goToFields(fields: HTMLElement | null): void {
  fields?.scrollIntoView({ block: "start" });
  fields?.querySelector<HTMLElement>("button:not(:disabled)")?.focus({ preventScroll: true });
}

const shown = ["cost", "budget", "cost-per-length", "cost-per-visit", "cost-per-year"];
const moneyFigures = ({ figures }: Results): Results["figures"] =>
  figures.filter((figure) => shown.includes(figure.id));

interface ListsProps {
  readonly results: Results;
  readonly snapshot: PlanSnapshot;
  readonly reading: Reading;
}

function Lists({ results, snapshot, reading }: ListsProps) {
  const { plan } = snapshot;
  return (
    <>
      <FieldGroup
        title="Order list"
        note="Whole sticks and packs, after the cutting plan. Check sizes and prices at the yard before you order."
      >
        <OrderTable cost={results.cost} reading={reading} />
      </FieldGroup>
      <FieldGroup
        title="Cutting plan"
        note={`One row for each way a stick is sawn, with a saw cut of ${plan.saw.kerf_mm} mm between pieces.`}
      >
        <CuttingPlan cutting={results.cutting} kerf_mm={plan.saw.kerf_mm} reading={reading} />
      </FieldGroup>
      <FieldGroup title="Take-off" note="Every piece of the walkway, spares with it.">
        <TakeOffTable takeOff={results.take_off} reading={reading} />
      </FieldGroup>
      <FieldGroup
        title="Spare modules"
        note={`${Number((plan.kit.spares_share * 100).toFixed(2))} % of each length, rounded up to whole modules; the Kit page sets the share.`}
      >
        <SparesTable spares={results.spares} reading={reading} />
      </FieldGroup>
      <FieldGroup
        title="Budget by year"
        note="Labour is a range: crews and ground differ. Bought things have none."
      >
        <BudgetTable budget={results.budget} reading={reading} />
      </FieldGroup>
    </>
  );
}
