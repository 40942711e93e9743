import { useMediaQuery } from "@mantine/hooks";
import type { PlanState } from "../desk/plan-session.ts";
import { narrow } from "../show/screen.ts";
import { count } from "../show/show.ts";
import { SurveyLine } from "./survey-line.tsx";
import { HandOver, SheetSwitch, Tools, UndoRedo, UnitSwitch } from "./tools.tsx";
import "./header.css";

interface Props {
  readonly state: PlanState;
  readonly onPlans: () => void;
}

/** Head of every page: which plan, which page, and the few tools that belong to the whole plan. */
export function Header({ state, onPlans }: Props) {
  const isNarrow = useMediaQuery(narrow) ?? false;
  const { snapshot } = state;
  return (
    <header className="header">
      <div className="title">
        <p className="title-name">{snapshot?.plan.name ?? "Causey"}</p>
        <p className="title-sub quiet">
          {snapshot ? savedWords(state) : "temporary walkways over fragile wetland"}
        </p>
      </div>
      {snapshot && <SurveyLine />}
      {isNarrow ? (
        <NarrowTools state={state} onPlans={onPlans} />
      ) : (
        <Tools snapshot={snapshot} onPlans={onPlans} />
      )}
    </header>
  );
}

function savedWords({ snapshot, waiting, trouble }: PlanState): string {
  const head = `${snapshot!.plan.site_name} · revision ${snapshot!.revision}`;
  if (waiting.length === 0) return `${head}, saved`;
  return trouble ? `${head}, ${count(waiting.length, "change")} not saved yet` : `${head}, saving`;
}

/** One row for one hand; what is seldom needed folds away. */
function NarrowTools({ state, onPlans }: Props) {
  const { snapshot } = state;
  return (
    <div className="tools tools-narrow">
      {snapshot && <UndoRedo snapshot={snapshot} />}
      <button type="button" className="plain-button tool" onClick={onPlans} aria-haspopup="dialog">
        Plans
      </button>
      <details className="tools-more">
        <summary className="tool">More</summary>
        <div className="tools-folded">
          {snapshot && <UnitSwitch units={snapshot.plan.units} />}
          <SheetSwitch />
          {snapshot && <HandOver id={snapshot.id} />}
        </div>
      </details>
    </div>
  );
}
