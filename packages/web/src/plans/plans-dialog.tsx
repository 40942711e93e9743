import { Button, FileButton } from "@mantine/core";
import type { Problem } from "@causey/engine/formula";
import { useEffect, useState } from "react";
import type { PlanEntry } from "../api/types.ts";
import { useDesk } from "../desk/desk.ts";
import { Dialog } from "../frame/panel.tsx";
import { ProblemList } from "../frame/problem-list.tsx";
import { archiveOf } from "./archive-of.ts";
import { NewPlanForm } from "./new-plan-form.tsx";
import "./plans.css";

type Opening =
  | { readonly kind: "idle" }
  | { readonly kind: "sending" }
  | { readonly kind: "refused"; readonly problems: readonly Problem[] }
  | { readonly kind: "broken"; readonly message: string };

/** The plans that this Causey keeps, and the way in for another one. */
export default function PlansDialog({ onClose }: { readonly onClose: () => void }) {
  const desk = useDesk();
  const [list, setList] = useState<readonly PlanEntry[] | string>([]);
  const [opening, setOpening] = useState<Opening>({ kind: "idle" });
  const [isStarting, setStarting] = useState(false);
  useEffect(() => {
    desk.plans.list().then(setList, (error: Error) => setList(error.message));
  }, [desk]);

  const goTo = (plan: string): void => {
    desk.router.go({ plan });
    onClose();
  };
  const openFiles = async (files: readonly File[]): Promise<void> => {
    if (files.length === 0) return;
    setOpening({ kind: "sending" });
    try {
      const answer = await desk.plans.open(await archiveOf(files));
      if (answer.kind === "opened") goTo(answer.id);
      else setOpening({ kind: "refused", problems: answer.problems });
    } catch (error) {
      setOpening({ kind: "broken", message: error instanceof Error ? error.message : String(error) });
    }
  };

  return (
    <Dialog title="Plans" closeWords="Close the list" onClose={onClose}>
      <PlanList list={list} current={desk.plan.get().id} onOpen={goTo} />
      <section className="plans-open" aria-labelledby="plans-new-head">
        <h3 id="plans-new-head">Start a new plan</h3>
        <p className="quiet">
          From a terrain file, or from the ground at the start alone. Plots, areas and visits come after.
        </p>
        {isStarting ? (
          <NewPlanForm
            onStarted={(plan) => {
              desk.router.go({ plan, page: "site" });
              onClose();
            }}
          />
        ) : (
          <Button onClick={() => setStarting(true)}>Start a new plan</Button>
        )}
      </section>
      <section className="plans-open" aria-labelledby="plans-open-head">
        <h3 id="plans-open-head">Open another</h3>
        <p className="quiet">One .zip of a plan folder, or its files together: plan.json, terrain, prices.</p>
        <FileButton onChange={(files) => void openFiles(files)} multiple>
          {(props) => (
            <Button {...props} variant="default" loading={opening.kind === "sending"}>
              Choose files
            </Button>
          )}
        </FileButton>
        <div aria-live="polite">
          {opening.kind === "broken" && <p className="plans-broken">{opening.message}</p>}
          {opening.kind === "refused" && (
            <>
              <p className="plans-broken">This plan was not taken in. What is wrong with it:</p>
              <ProblemList problems={opening.problems} />
            </>
          )}
        </div>
      </section>
    </Dialog>
  );
}

interface ListProps {
  readonly list: readonly PlanEntry[] | string;
  readonly current: string | null;
  readonly onOpen: (plan: string) => void;
}

function PlanList({ list, current, onOpen }: ListProps) {
  if (typeof list === "string") return <p className="plans-broken">{list}</p>;
  return (
    <ul className="plan-list">
      {list.map((entry) => (
        <li key={entry.id}>
          <button
            type="button"
            className="plain-button plan-entry"
            aria-current={entry.id === current ? "true" : undefined}
            onClick={() => onOpen(entry.id)}
          >
            <b>{entry.name}</b>
            <span className="quiet">
              {entry.id === current ? "on the sheet now · " : ""}revision {entry.revision}
            </span>
          </button>
        </li>
      ))}
    </ul>
  );
}
