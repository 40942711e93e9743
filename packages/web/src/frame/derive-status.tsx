import { Button, Progress } from "@mantine/core";
import type { DeriveState } from "../desk/derive-session.ts";
import { useDesk } from "../desk/desk.ts";
import { useDerived } from "../desk/use-derived.ts";
import { useStore } from "../desk/store.ts";
import { ProblemList } from "./problem-list.tsx";
import "./derive-status.css";

/** What the computation is doing, in a place of fixed height: progress and Cancel, or how the last one ended. */
export function DeriveStatus() {
  const { derive, plan } = useDesk();
  const state = useDerived();
  const snapshot = useStore(plan, (p) => p.snapshot);
  const again = (): void => void (snapshot && derive.run(snapshot));
  const older = state.results ? ` What is shown is of revision ${state.revision}.` : "";
  return (
    <>
      <p className="unseen" aria-live="polite">
        {phaseWords[state.phase]}
      </p>
      <div className="status">
        {state.phase === "running" && (
          <>
            <div className="status-line">
              <span>{state.progress?.note || "Beginning"}</span>
              <Button size="compact-sm" variant="default" onClick={derive.cancel}>
                Cancel
              </Button>
            </div>
            <Progress
              size="xs"
              value={share(state.progress)}
              aria-label="Progress of the computation"
              transitionDuration={120}
            />
          </>
        )}
        {state.phase === "idle" && state.results && (
          <p className="status-line quiet">Worked out for revision {state.revision}.</p>
        )}
        {state.phase === "cancelled" && (
          <div className="status-line status-marked">
            <span>Search cancelled.{older}</span>
            <Button size="compact-sm" onClick={again}>
              Search again
            </Button>
          </div>
        )}
        {state.phase === "failed" && (
          <div className="status-line status-marked">
            <span>
              {state.broken
                ? `The computation broke off: ${state.broken}`
                : "The plan cannot be worked out yet."}
              {older}
            </span>
            {state.broken && (
              <Button size="compact-sm" onClick={again}>
                Try again
              </Button>
            )}
          </div>
        )}
      </div>
      {state.problems.length > 0 && <ProblemList problems={state.problems} />}
    </>
  );
}

/** Said aloud once a phase; the running text of the progress would only chatter. */
const phaseWords: Readonly<Record<DeriveState["phase"], string>> = {
  idle: "Worked out.",
  running: "Working out.",
  cancelled: "Search cancelled.",
  failed: "Not worked out.",
};

const share = (progress: { readonly done: number; readonly total: number } | null): number =>
  progress && progress.total > 0 ? Math.min(100, (100 * progress.done) / progress.total) : 0;
