import type { PlanSnapshot } from "../api/types.ts";
import { freshnessOf } from "../desk/derive-session.ts";
import { useDerived } from "../desk/use-derived.ts";
import { FormSheet } from "../fields/form-sheet.tsx";
import { DeriveStatus } from "../frame/derive-status.tsx";
import { Ledger } from "../frame/ledger.tsx";
import { count } from "../show/show.ts";
import { DryDays } from "./dry-days.tsx";
import { FloodProof } from "./flood-proof.tsx";
import { LevelFields } from "./level-fields.tsx";
import { Residuals } from "./residuals.tsx";
import { SeriesFields } from "./series-fields.tsx";
import { StationFinder } from "./station-finder.tsx";
import { Wetness } from "./wetness.tsx";
import "./water-page.css";

/** Levels on the site's datum, the record or table behind them, and how long ground and deck are wet. */
export function WaterPage({ snapshot }: { readonly snapshot: PlanSnapshot }) {
  const { phase, results } = useDerived();
  const { plan } = snapshot;
  return (
    <>
      <div className={`picture ${freshnessOf(phase)}`}>
        <FormSheet label="Water of the site">
          <LevelFields plan={plan} />
          <FloodProof plan={plan} />
          <SeriesFields snapshot={snapshot} which="series" />
          {plan.water.series && <SeriesFields snapshot={snapshot} which="compare" />}
          <StationFinder plan={plan} />
        </FormSheet>
      </div>
      <Ledger label="How wet the walkway is">
        <h1>Water</h1>
        <p className="quiet ledger-sub">
          {count(plan.levels.length, "level")} on {plan.vertical_datum}
          {plan.water.series ? `, one ${plan.water.series.basis} record` : ", no record"}
        </p>
        <DeriveStatus />
        <Wetness results={results} plan={plan} />
        {results && <DryDays results={results} />}
        {results && <Residuals residuals={results.water.residuals} plan={plan} />}
      </Ledger>
    </>
  );
}
