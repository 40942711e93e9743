import { Button } from "@mantine/core";
import type { Proposal } from "@causey/engine/proposals";
import type { PlanSnapshot } from "../api/types.ts";
import { useDesk } from "../desk/desk.ts";
import { useStore } from "../desk/store.ts";
import { show, showMoney, showShare, type Reading } from "../show/show.ts";
import "./proposal-list.css";

interface Props {
  readonly check: string;
  readonly snapshot: PlanSnapshot;
  readonly reading: Reading;
}

/** What would make a failing check pass: asked for by a button, since each answer works the whole plan out anew. */
export function ProposalList({ check, snapshot, reading }: Props) {
  const { derive, plan } = useDesk();
  const state = useStore(derive, (s) => s);
  const asked = state.asked?.check === check ? state.asked : null;
  const isBusy = state.phase === "running" || state.asked?.phase === "running";
  const look = (): void => void derive.propose(snapshot, check);
  return (
    <section className="proposals" aria-labelledby="proposals-head">
      <h3 id="proposals-head" className="working-head">
        What would make it pass
      </h3>
      {asked?.phase !== "done" && (
        <div className="status-line">
          <span>
            {asked
              ? wordsOf(asked.phase, asked.progress?.note)
              : "Each step is worked out on the whole plan."}
          </span>
          {asked?.phase === "running" ? (
            <Button size="compact-sm" variant="default" onClick={derive.cancel}>
              Stop
            </Button>
          ) : (
            <Button size="compact-sm" onClick={look} disabled={isBusy}>
              Look for changes
            </Button>
          )}
        </div>
      )}
      <p className="unseen" aria-live="polite">
        {asked?.phase === "done" ? `${asked.proposals.length} found` : ""}
      </p>
      {asked?.phase === "done" && asked.proposals.length === 0 && (
        <p>
          No step of the catalogue alone makes it pass: change the line or the visits, or ask an engineer.
        </p>
      )}
      {asked?.phase === "done" && asked.proposals.length > 0 && (
        <ul className="proposal-list">
          {asked.proposals.map((p) => (
            <li key={p.family}>
              <p className="proposal-words">{p.words}</p>
              <p className="quiet">{figuresOf(p, reading)}</p>
              {p.worsens.length > 0 && (
                <p className="proposal-worse">
                  With it no longer met: {p.worsens.map((c) => c.title).join("; ")}
                </p>
              )}
              <Button
                size="compact-sm"
                variant="default"
                disabled={isBusy}
                aria-label={`Apply: ${p.words}`}
                onClick={() => plan.edit(p.edit)}
              >
                Apply
              </Button>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

const wordsOf = (phase: "running" | "done" | "stopped", note: string | undefined): string =>
  phase === "stopped" ? "Stopped before it was done." : (note ?? "") || "Trying steps of the catalogue";

function figuresOf(p: Proposal, reading: Reading): string {
  const signed = (value: number, words: string): string => (value > 0 ? `+${words}` : words);
  return [
    `then ${showShare(p.utilisation)} of what it carries`,
    p.added_cost === null
      ? "cost not known: prices are missing"
      : signed(p.added_cost, showMoney(p.added_cost, reading)),
    `${signed(p.added_kg, show(p.added_kg, "kg", reading))} in all`,
    `heaviest module ${show(p.heaviest_kg, "kg", reading)}`,
  ].join("; ");
}
