import type { PlanSnapshot } from "../api/types.ts";
import { freshnessOf } from "../desk/derive-session.ts";
import { useDerived } from "../desk/use-derived.ts";
import { FormSheet } from "../fields/form-sheet.tsx";
import { Cautions } from "../frame/cautions.tsx";
import { DeriveStatus } from "../frame/derive-status.tsx";
import { Ledger } from "../frame/ledger.tsx";
import { count } from "../show/show.ts";
import { KitFigureList } from "./kit-figure-list.tsx";
import { PartPicture } from "./part-picture.tsx";
import { RecipeFields } from "./recipe-fields.tsx";
import { SupportFields } from "./support-fields.tsx";
import "./kit-page.css";

/** The recipe of every part: its drawing over the fields that make it, masses and costs beside them. */
export function KitPage({ snapshot }: { readonly snapshot: PlanSnapshot }) {
  const { phase, results } = useDerived();
  const { plan } = snapshot;
  return (
    <>
      <div className="picture">
        <FormSheet label="The kit">
          <PartPicture kit={plan.kit} units={plan.units} />
          <RecipeFields plan={plan} />
          <SupportFields plan={plan} />
        </FormSheet>
      </div>
      <Ledger label="Masses and costs of the parts">
        <h1>Kit</h1>
        <p className="quiet ledger-sub">
          {plan.kit.name}: {count(plan.kit.lengths_mm.length, "module")},{" "}
          {count(plan.kit.supports.length, "support")}
        </p>
        <DeriveStatus />
        {results && (
          <div className={freshnessOf(phase)}>
            <KitFigureList figures={results.kit} plan={plan} />
          </div>
        )}
        {results && <Cautions cautions={results.cautions} />}
      </Ledger>
    </>
  );
}
