import { useState } from "react";
import type { PlanSnapshot } from "../api/types.ts";
import { freshnessOf } from "../desk/derive-session.ts";
import { useDesk } from "../desk/desk.ts";
import { useStore } from "../desk/store.ts";
import { useDerived } from "../desk/use-derived.ts";
import { FormSheet } from "../fields/form-sheet.tsx";
import { DeriveStatus } from "../frame/derive-status.tsx";
import { Ledger } from "../frame/ledger.tsx";
import { ViewSwitch, type View } from "../frame/view-switch.tsx";
import { SiteMap } from "../map/site-map.tsx";
import { ZoneList } from "../layout-page/zone-list.tsx";
import { count } from "../show/show.ts";
import { BringIn } from "./bring-in.tsx";
import { GroundFields } from "./ground-fields.tsx";
import { PhotoFields } from "./photo-fields.tsx";
import { PlaceFields } from "./place-fields.tsx";
import { SiteFindings } from "./site-findings.tsx";
import { GroundProof } from "./ground-proof.tsx";
import { StrengthFields } from "./strength-fields.tsx";
import { SurveyFields } from "./survey-fields.tsx";
import { ZoneFields } from "./zone-fields.tsx";
import "./site-page.css";

/** The place: its ground, places and areas, as a map or as lists that can be changed; what the survey says, beside it. */
export function SitePage({ snapshot }: { readonly snapshot: PlanSnapshot }) {
  const desk = useDesk();
  const [view, setView] = useState<View>("map");
  const [isAsked, setAsked] = useState(false);
  const show = (next: View, toBringIn = false): void => {
    setView(next);
    setAsked(toBringIn);
  };
  const { phase, results } = useDerived();
  const waiting = useStore(desk.plan, (p) => p.waiting);
  const { plan } = snapshot;
  return (
    <>
      <div className="picture switched-picture">
        <ViewSwitch view={view} onView={show}>
          {view === "map" && (
            <button type="button" className="plain-button tool tool-last" onClick={() => show("lists", true)}>
              Bring in a file
            </button>
          )}
        </ViewSwitch>
        {view === "map" ? (
          <SiteMap
            key={plan.id}
            plan={plan}
            results={results}
            waiting={waiting}
            freshness={freshnessOf(phase)}
          />
        ) : (
          <FormSheet label="Lists of the site">
            <BringIn isAsked={isAsked} />
            <GroundFields snapshot={snapshot} />
            <PhotoFields snapshot={snapshot} />
            <PlaceFields plan={plan} />
            <ZoneFields plan={plan} />
            <SurveyFields plan={plan} />
            <StrengthFields plan={plan} />
            <GroundProof plan={plan} />
          </FormSheet>
        )}
      </div>
      <Ledger label="What is known of the site">
        <h1>Site</h1>
        <p className="quiet ledger-sub">
          {count(plan.starts.length, "start")}, {count(plan.plots.length, "plot")},{" "}
          {count(plan.zones.length, "area")}, {count(plan.ground.readings.length, "strength reading")}
        </p>
        <DeriveStatus />
        <SiteFindings plan={plan} results={results} />
        <ZoneList zones={plan.zones} />
      </Ledger>
    </>
  );
}
