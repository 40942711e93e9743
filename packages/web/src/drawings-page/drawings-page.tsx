import { Button } from "@mantine/core";
import { useState } from "react";
import type { PlanSnapshot } from "../api/types.ts";
import { freshnessOf } from "../desk/derive-session.ts";
import { useDerived } from "../desk/use-derived.ts";
import { FieldGroup } from "../fields/form-sheet.tsx";
import { Ledger } from "../frame/ledger.tsx";
import { DeriveStatus } from "../frame/derive-status.tsx";
import { ProblemList } from "../frame/problem-list.tsx";
import { count } from "../show/show.ts";
import { LayoutFiles } from "./layout-files.tsx";
import { PaperFields } from "./paper-fields.tsx";
import { SheetChoice } from "./sheet-choice.tsx";
import { usePapers } from "./use-papers.ts";
import "./drawings-page.css";

/** The sheets: pages on the left as they will be printed, the choice and the title block on the right. */
export function DrawingsPage({ snapshot }: { readonly snapshot: PlanSnapshot }) {
  const { phase, results } = useDerived();
  const papers = usePapers(snapshot, results);
  const { drawn, page, chosen } = papers;
  const [isLarge, setLarge] = useState(false);
  const shown = drawn?.pages[page];
  return (
    <>
      <div className={`picture papers ${freshnessOf(phase)}`}>
        <div className="paper-bar">
          <Button
            variant="default"
            size="compact-sm"
            disabled={page === 0}
            onClick={() => papers.turnTo(page - 1)}
          >
            Page before
          </Button>
          <span aria-live="polite">
            {drawn ? `${shown?.title ?? ""}, page ${page + 1} of ${drawn.pages.length}` : papers.words}
          </span>
          <Button
            variant="default"
            size="compact-sm"
            disabled={!shown}
            aria-pressed={isLarge}
            onClick={() => setLarge(!isLarge)}
          >
            {isLarge ? "Whole page" : "Enlarge"}
          </Button>
          <Button
            variant="default"
            size="compact-sm"
            disabled={!drawn || page + 1 >= drawn.pages.length}
            onClick={() => papers.turnTo(page + 1)}
          >
            Next page
          </Button>
        </div>
        {/* A page may be larger than its place: it scrolls by itself, so it can be reached by keys. */}
        {/* oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex */}
        <section className="paper-desk" tabIndex={0} aria-label="The page">
          {shown ? (
            // A tap enlarges the page or shows it whole; by keys, the button above does.
            // oxlint-disable-next-line jsx-a11y/click-events-have-key-events, jsx-a11y/no-static-element-interactions
            <div
              className={`paper-page${isLarge ? " paper-large" : ""}`}
              onClick={() => setLarge(!isLarge)}
              // The drawing is made by our own writer, which lets no markup of a plan's texts through.
              // oxlint-disable-next-line react/no-danger
              dangerouslySetInnerHTML={{ __html: shown.svg }}
            />
          ) : (
            <p className="empty">{papers.words}</p>
          )}
        </section>
      </div>
      <Ledger label="Sheets and title block">
        <h1>Drawings</h1>
        <p className="quiet ledger-sub">
          {count(chosen.length, "kind of sheet", "kinds of sheets")} chosen
          {drawn ? `, ${count(drawn.pages.length, "page")}` : ""}
        </p>
        <DeriveStatus />
        <SheetChoice chosen={chosen} drawn={drawn} onChoose={papers.choose} onOpen={papers.turnTo} />
        <div className="form-buttons">
          <Button
            disabled={!results || chosen.length === 0}
            loading={papers.isPrinting}
            onClick={papers.download}
          >
            Take as PDF
          </Button>
        </div>
        {papers.problems.length > 0 && <ProblemList problems={papers.problems} />}
        {papers.broken !== null && <p>{papers.broken}</p>}
        <LayoutFiles plan={snapshot.plan} results={results} />
        <FieldGroup title="Title block">
          <PaperFields plan={snapshot.plan} />
        </FieldGroup>
      </Ledger>
    </>
  );
}
