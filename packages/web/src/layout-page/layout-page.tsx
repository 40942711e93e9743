import { useState } from "react";
import type { DrawnLine, Layout } from "@causey/engine/layout";
import type { Plot } from "@causey/engine/site";
import type { PlanSnapshot } from "../api/types.ts";
import { freshnessOf } from "../desk/derive-session.ts";
import { useDesk } from "../desk/desk.ts";
import { useDerived } from "../desk/use-derived.ts";
import { useStore } from "../desk/store.ts";
import { Cautions } from "../frame/cautions.tsx";
import { DeriveStatus } from "../frame/derive-status.tsx";
import { FormSheet } from "../fields/form-sheet.tsx";
import { Ledger } from "../frame/ledger.tsx";
import { ViewSwitch, type View } from "../frame/view-switch.tsx";
import { SiteMap } from "../map/site-map.tsx";
import { count } from "../show/show.ts";
import { readingOf } from "../show/reading.ts";
import { DeadEnds } from "./dead-ends.tsx";
import { Figures } from "./figures.tsx";
import { LaidFields } from "./laid-fields.tsx";
import { LaidReport } from "./laid-report.tsx";
import { LineReport } from "./line-report.tsx";
import { NothingLaid } from "./nothing-laid.tsx";
import { PlotsReached } from "./plots-reached.tsx";
import { RouteReport } from "./route-report.tsx";
import { SearchFields } from "./search-fields.tsx";
import { WeightFields } from "./weight-fields.tsx";
import { ZoneList } from "./zone-list.tsx";
import "./layout-page.css";

/** The line of the walkway: map on the left, its figures on the right. */
export function LayoutPage({ snapshot }: { readonly snapshot: PlanSnapshot }) {
  const desk = useDesk();
  const { phase, results } = useDerived();
  const waiting = useStore(desk.plan, (p) => p.waiting);
  const [view, setView] = useState<View>("map");
  const { plan } = snapshot;
  const freshness = freshnessOf(phase);
  return (
    <>
      <div className="picture switched-picture">
        <ViewSwitch view={view} onView={setView} />
        {view === "lists" ? (
          <FormSheet label="Lists of the layout">
            <SearchFields plan={plan} />
            <WeightFields plan={plan} />
            <LaidFields plan={plan} layout={results?.layout ?? null} />
          </FormSheet>
        ) : (
          <SiteMap
            key={plan.id}
            plan={plan}
            results={results}
            waiting={waiting}
            freshness={freshness}
            onLine={(points) =>
              desk.plan.edit({
                type: "set-layout",
                layout: { ...plan.layout, lines: linesOf(points, plan.plots) },
              })
            }
          />
        )}
      </div>
      <Ledger label="Figures of the layout">
        <h1>Layout</h1>
        <p className="quiet ledger-sub">
          {results ? summary(results.layout, plan.plots.length) : "The line of the walkway."}
        </p>
        <DeriveStatus />
        {results ? (
          <>
            <Figures figures={results.figures} reading={readingOf(plan)} freshness={freshness} />
            {results.layout.parts.length === 0 && <NothingLaid />}
            <div className={`ledger-part ${freshness}`}>
              <PlotsReached layout={results.layout} plan={plan} />
              <DeadEnds route={results.route} units={plan.units} />
              <RouteReport route={results.route} plan={plan} />
              <LineReport fit={results.layout.line} units={plan.units} />
              <LaidReport report={results.layout.as_laid} units={plan.units} />
              <Notes notes={results.layout.notes} />
            </div>
          </>
        ) : (
          <FiguresToCome />
        )}
        <ZoneList zones={plan.zones} />
        {results && <Cautions cautions={results.cautions} />}
      </Ledger>
    </>
  );
}

/** The walkway is kept within this distance of a line drawn by hand [m]. */
const CORRIDOR_M = 3;

/**
 * One line drawn by hand, to the centimetre; none when the line is to be searched. A line that ends on a plot leads to
 * it: its parts end outside the plot's keep-off.
 */
const linesOf = (
  points: readonly (readonly [number, number])[] | null,
  plots: readonly Plot[],
): readonly DrawnLine[] =>
  points === null
    ? []
    : [
        {
          id: "line-1",
          points: points.map(([x, y]) => [Math.round(x * 100) / 100, Math.round(y * 100) / 100] as const),
          plot: plots.find((p) => p.x === points.at(-1)?.[0] && p.y === points.at(-1)?.[1])?.id ?? null,
          corridor_m: CORRIDOR_M,
        },
      ];

const summary = (layout: Layout, plots: number): string =>
  `${layout.reached.length} of ${count(plots, "plot")} reached, ${count(layout.branches.length, "branch", "branches")}, ${count(layout.parts.length, "part")}`;

/** What in the layout is exact and what is a heuristic. */
function Notes({ notes }: { readonly notes: readonly string[] }) {
  if (notes.length === 0) return null;
  return (
    <section aria-labelledby="notes-head">
      <h2 id="notes-head">What is exact, and what is not</h2>
      <ul className="notes">
        {notes.map((n) => (
          <li key={n}>{n}</li>
        ))}
      </ul>
    </section>
  );
}

/** Keeps the column's shape until the first figures are there. */
function FiguresToCome() {
  return (
    <dl className="figures pending" aria-hidden="true">
      {Array.from({ length: 8 }, (_, i) => (
        // oxlint-disable-next-line react/no-array-index-key
        <div key={i} className="figure">
          <dt>…</dt>
          <dd>…</dd>
        </div>
      ))}
    </dl>
  );
}
