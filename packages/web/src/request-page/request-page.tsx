import { requestGaps } from "@causey/engine/request";
import type { PlanSnapshot } from "../api/types.ts";
import { useDerived } from "../desk/use-derived.ts";
import { FormSheet } from "../fields/form-sheet.tsx";
import { DeriveStatus } from "../frame/derive-status.tsx";
import { Ledger } from "../frame/ledger.tsx";
import { count } from "../show/show.ts";
import { Kinds } from "./kinds.tsx";
import { PlanFields } from "./plan-fields.tsx";
import { LoadProof } from "./load-proof.tsx";
import { Visits } from "./visits.tsx";
import { WhoAsks } from "./who-asks.tsx";
import "./request-page.css";

/** Who asks to go where, with what and until when: the form on the left, what is still open on the right. */
export function RequestPage({ snapshot }: { readonly snapshot: PlanSnapshot }) {
  const { plan } = snapshot;
  const { results } = useDerived();
  const gaps = requestGaps(plan);
  return (
    <>
      <div className="picture">
        <FormSheet label="The access request">
          <PlanFields plan={plan} />
          <WhoAsks plan={plan} />
          <Visits plan={plan} />
          <LoadProof plan={plan} />
          <Kinds plan={plan} lines={results?.options ?? []} />
        </FormSheet>
      </div>
      <Ledger label="What the request leaves open">
        <h1>Request</h1>
        <p className="quiet ledger-sub">
          {count(plan.visits.length, "visit")} to {count(plan.plots.length, "plot")},{" "}
          {count(Math.round(plan.visits.reduce((n, v) => n + v.per_year, 0)), "time")} a year
        </p>
        <DeriveStatus />
        {gaps.length === 0 ? (
          <p>The request tells everything that the plan asks for.</p>
        ) : (
          <section aria-labelledby="gaps-head">
            <h2 id="gaps-head">Still to be asked</h2>
            <ul className="gaps">
              {gaps.map((gap) => (
                <li key={`${gap.place} ${gap.message}`} data-gap={gap.place}>
                  <b>{gap.message}</b> <span className="quiet">{gap.why}</span>
                </li>
              ))}
            </ul>
          </section>
        )}
      </Ledger>
    </>
  );
}
