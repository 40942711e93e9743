import { Button } from "@mantine/core";
import type { CheckResult } from "@causey/engine/checks";
import type { Results } from "@causey/engine/plan";
import { useMediaQuery } from "@mantine/hooks";
import { lazy, Suspense } from "react";
import type { PlanSnapshot } from "../api/types.ts";
import { freshnessOf } from "../desk/derive-session.ts";
import { useDesk } from "../desk/desk.ts";
import { useDerived } from "../desk/use-derived.ts";
import { useStore } from "../desk/store.ts";
import { Cautions } from "../frame/cautions.tsx";
import { Ledger } from "../frame/ledger.tsx";
import { SidePanel } from "../frame/panel.tsx";
import { DeriveStatus } from "../frame/derive-status.tsx";
import { readingOf } from "../show/reading.ts";
import { narrow } from "../show/screen.ts";
import { count } from "../show/show.ts";
import { CheckDetail } from "./check-detail.tsx";
import { CheckTable } from "./check-table.tsx";
import { RuleChoice } from "./rule-choice.tsx";
import { frameOf } from "./structure/structure-choice.ts";
import { groupChecks, partsAt, tagsOf, tally } from "./check-words.ts";
import "./checks-page.css";
import "./structure/structure.css";

/** The drawing comes after the page: its code is not waited for. */
const StructurePanel = lazy(() => import("./structure/structure-panel.tsx"));

/** Whether each part carries, stays and reaches: drawing and table on the left, the chosen check's working on the right. */
export function ChecksPage({ snapshot }: { readonly snapshot: PlanSnapshot }) {
  const desk = useDesk();
  const { phase, results } = useDerived();
  const isNarrow = useMediaQuery(narrow) ?? false;
  const chosenId = useStore(desk.selection, (s) => s.check);
  const chosen = results?.checks.find((c) => c.id === chosenId) ?? null;
  const reading = readingOf(snapshot.plan);
  return (
    <>
      <div className={`picture ${freshnessOf(phase)}`}>
        {results ? (
          <Checks results={results} snapshot={snapshot} />
        ) : (
          <p className="empty">The checks appear here when the layout has been worked out.</p>
        )}
      </div>
      <Ledger label="The chosen check">
        <h1>Checks</h1>
        <p className="quiet ledger-sub">
          {results ? tallyWords(results.checks) : "Demand against capacity, part by part."}
        </p>
        <DeriveStatus />
        {!isNarrow && results && (
          <section aria-labelledby="detail-head" className="detail">
            <h2 id="detail-head">{chosen ? chosen.title : "Choose a check"}</h2>
            {frameOf(chosen, results.proof.frames) && (
              <button type="button" className="plain-button tool" onClick={() => showAt(".structure")}>
                Show the module as a structure
              </button>
            )}
            {chosen ? (
              <CheckDetail check={chosen} reading={reading} snapshot={snapshot} />
            ) : (
              <p className="quiet">Its working, its source and what would change the answer stand here.</p>
            )}
          </section>
        )}
        <RuleChoice plan={snapshot.plan} results={results} />
        {results && <Cautions cautions={results.cautions} />}
      </Ledger>
      {isNarrow && chosen && (
        <SidePanel
          title={chosen.title}
          closeWords="Close the working"
          onClose={() => desk.selection.chooseCheck(null)}
        >
          <CheckDetail check={chosen} reading={reading} snapshot={snapshot} />
        </SidePanel>
      )}
    </>
  );
}

/** The table, filtered by the part that is chosen on the strip or the map. */
function Checks({ results, snapshot }: { readonly results: Results; readonly snapshot: PlanSnapshot }) {
  const { selection } = useDesk();
  const { part, check, pointed } = useStore(selection, (s) => s);
  const tags = part === null ? null : tagsOf(results.layout, part);
  const groups = groupChecks(results.checks, tags);
  const pointedTags = pointed.length === 1 ? tagsOf(results.layout, pointed[0]!) : new Set<string>();
  return (
    <div className="checks-scroll">
      {results.proof.frames.length > 0 && (
        <section className="structure" aria-labelledby="structure-head">
          <div className="structure-head">
            <h2 id="structure-head">Module as a structure</h2>
            <button type="button" className="plain-button tool" onClick={() => showAt(".checks-filter")}>
              To the table of checks
            </button>
          </div>
          <Suspense fallback={<div className="structure-waiting" />}>
            <StructurePanel
              plan={snapshot.plan}
              results={results}
              check={results.checks.find((c) => c.id === check) ?? null}
              part={part}
            />
          </Suspense>
        </section>
      )}
      <div className="checks-filter">
        {part === null ? (
          <p className="quiet">All parts. Choose a part on the strip to see its checks alone.</p>
        ) : (
          <>
            <p>
              Only <b>{part}</b> and the joints it stands on
            </p>
            <Button size="compact-sm" variant="default" onClick={() => selection.choosePart(null)}>
              All parts
            </Button>
          </>
        )}
      </div>
      <CheckTable
        groups={groups}
        reading={readingOf(snapshot.plan)}
        chosen={check}
        concerns={(c) => c.parts.some((p) => pointedTags.has(p))}
        onChoose={(id) => selection.chooseCheck(id === check ? null : id)}
        onPoint={(c) => selection.point(c ? partsAt(results.layout, c.parts) : [])}
      />
    </div>
  );
}

/** Drawing and table lie one over the other in a place that scrolls by itself. */
const showAt = (place: string): void => document.querySelector(place)?.scrollIntoView({ block: "start" });

function tallyWords(checks: readonly CheckResult[]): string {
  const n = tally(checks);
  return [
    n.fail > 0 && `${n.fail} ${n.fail === 1 ? "does" : "do"} not meet the chosen rule`,
    n["cannot-check"] > 0 && `${n["cannot-check"]} cannot be checked`,
    `${n.pass} of ${count(checks.length, "check")} ${n.pass === 1 ? "meets" : "meet"} the chosen rule`,
    n["not-applicable"] > 0 &&
      `${n["not-applicable"]} ${n["not-applicable"] === 1 ? "does" : "do"} not apply`,
  ]
    .filter((s) => s !== false)
    .join("; ");
}
