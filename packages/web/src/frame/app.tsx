import { useComputedColorScheme } from "@mantine/core";
import { lazy, Suspense, useEffect, useState } from "react";
import type { PlanSnapshot } from "../api/types.ts";
import { freshnessOf } from "../desk/derive-session.ts";
import { useDesk } from "../desk/desk.ts";
import type { PlanState } from "../desk/plan-session.ts";
import { pages, type PageId } from "../desk/route.ts";
import { useDerived } from "../desk/use-derived.ts";
import { useStore } from "../desk/store.ts";
import { Strip } from "../strip/strip.tsx";
import { Header } from "./header.tsx";
import { Notices } from "./notices.tsx";
import { useUndoKeys } from "./tools.tsx";
import "./app.css";

type Page = React.ComponentType<{ readonly snapshot: PlanSnapshot }>;

/** Each page is fetched when it is first opened. */
const pageOf: Readonly<Record<PageId, React.LazyExoticComponent<Page>>> = {
  request: lazy(async () => ({ default: (await import("../request-page/request-page.tsx")).RequestPage })),
  site: lazy(async () => ({ default: (await import("../site-page/site-page.tsx")).SitePage })),
  water: lazy(async () => ({ default: (await import("../water-page/water-page.tsx")).WaterPage })),
  layout: lazy(async () => ({ default: (await import("../layout-page/layout-page.tsx")).LayoutPage })),
  kit: lazy(async () => ({ default: (await import("../kit-page/kit-page.tsx")).KitPage })),
  checks: lazy(async () => ({ default: (await import("../checks-page/checks-page.tsx")).ChecksPage })),
  materials: lazy(async () => ({
    default: (await import("../materials-page/materials-page.tsx")).MaterialsPage,
  })),
  drawings: lazy(async () => ({
    default: (await import("../drawings-page/drawings-page.tsx")).DrawingsPage,
  })),
};
const PlansDialog = lazy(() => import("../plans/plans-dialog.tsx"));

/** The sheet: head, the open page, and the strip along the foot. */
export function App() {
  const desk = useDesk();
  const state = useStore(desk.plan, (p) => p);
  const page = useStore(desk.router, (r) => r.page);
  const [isListOpen, setListOpen] = useState(false);
  useUndoKeys();
  usePageTitle(state, page);
  useTerrain(state.snapshot);
  return (
    <div className="sheet">
      <Header state={state} onPlans={() => setListOpen(true)} />
      <Notices state={state} />
      <main className="page">
        <Suspense fallback={<p className="empty">Opening the page.</p>}>
          {!state.snapshot ? (
            <NoPlan state={state} onPlans={() => setListOpen(true)} />
          ) : (
            <OpenPage page={page} snapshot={state.snapshot} />
          )}
        </Suspense>
      </main>
      <Foot snapshot={state.snapshot} />
      <Suspense>{isListOpen && <PlansDialog onClose={() => setListOpen(false)} />}</Suspense>
    </div>
  );
}

function OpenPage({ page, snapshot }: { readonly page: PageId; readonly snapshot: PlanSnapshot }) {
  const Open = pageOf[page];
  return <Open key={snapshot.id} snapshot={snapshot} />;
}

function usePageTitle({ snapshot }: PlanState, page: string): void {
  const title = pages.find((p) => p.id === page)?.title;
  const name = snapshot?.plan.name;
  useEffect(() => {
    document.title = name ? `${title}, ${name} · Causey` : "Causey";
  }, [title, name]);
}

function useTerrain(snapshot: PlanSnapshot | null): void {
  const { terrain, photo } = useDesk();
  const scheme = useComputedColorScheme("light");
  useEffect(() => {
    if (snapshot) void terrain.show(snapshot, scheme);
  }, [terrain, snapshot, scheme]);
  useEffect(() => {
    if (snapshot) void photo.show(snapshot);
  }, [photo, snapshot]);
}

/** With no plan on the desk: what to do next. */
function NoPlan({ state, onPlans }: { readonly state: PlanState; readonly onPlans: () => void }) {
  if (state.status === "loading")
    return (
      <div className="empty">
        <h1>{state.trouble ? "No plan could be opened" : "Opening the plan"}</h1>
      </div>
    );
  return (
    <div className="empty">
      <h1>No plan yet</h1>
      <p>
        Start a new one from a terrain file, or open a plan folder: as one .zip, or its files plan.json,
        terrain and price list. They are read, checked and kept by this Causey alone.
      </p>
      <button type="button" className="plain-button tool" onClick={onPlans}>
        Start or open a plan
      </button>
    </div>
  );
}

/** The strip, or its empty place while the first layout is on its way. */
function Foot({ snapshot }: { readonly snapshot: PlanSnapshot | null }) {
  const { results, phase } = useDerived();
  if (!snapshot) return null;
  return (
    <footer className="foot">
      {results && results.strip.cells.length > 0 ? (
        <Strip
          model={results.strip}
          layout={results.layout}
          plots={snapshot.plan.plots}
          units={snapshot.plan.units}
          freshness={freshnessOf(phase)}
        />
      ) : (
        <p className="strip-empty quiet">
          {results
            ? "No part was laid: the strip stays empty until a plot is reached."
            : "The long section appears here when the layout has been worked out."}
        </p>
      )}
    </footer>
  );
}
