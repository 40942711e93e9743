import { Button } from "@mantine/core";
import type { Problem } from "@causey/engine/formula";
import { openFirst, useDesk } from "../desk/desk.ts";
import type { Clash, PlanState } from "../desk/plan-session.ts";
import { ProblemList } from "./problem-list.tsx";
import "./notices.css";

/** What stands between the user and a saved plan, with the way out. */
export function Notices({ state }: { readonly state: PlanState }) {
  return (
    <div className="notices" aria-live="assertive">
      {state.trouble && <TroubleNotice state={state} />}
      {state.clash && <ClashNotice clash={state.clash} />}
      {state.refused.length > 0 && <Refusal state={state} />}
    </div>
  );
}

const wayOut: Readonly<Record<NonNullable<PlanState["trouble"]>["kind"], string>> = {
  "no-answer": "Start Causey again if it was ended, then try again. Nothing on this screen is lost.",
  "signed-out": "Open Causey from the address it printed when it was started: it lets this browser in.",
  "not-found": "It may have been taken away. Open another plan from the list.",
  unexpected: "Try again; if it stays, look at what the server printed.",
};

function TroubleNotice({ state }: { readonly state: PlanState }) {
  const desk = useDesk();
  const trouble = state.trouble!;
  const again = (): void => {
    if (state.id === null || trouble.kind === "not-found") void openFirst(desk);
    else desk.plan.tryAgain();
  };
  return (
    <div className="notice">
      <p>
        <b>{trouble.message}</b> {wayOut[trouble.kind]}
      </p>
      <Button onClick={again}>{trouble.kind === "not-found" ? "Open another plan" : "Try again"}</Button>
    </div>
  );
}

function ClashNotice({ clash }: { readonly clash: Clash }) {
  const { plan } = useDesk();
  return (
    <div className="notice">
      <p>
        <b>Someone saved revision {clash.revision} before you.</b> Your change is kept: {clash.words}.{" "}
        {clash.sections.length > 0
          ? `Theirs differs in: ${clash.sections.join(", ")}. It is shown now.`
          : "Theirs comes to the same plan."}
      </p>
      <div className="notice-buttons">
        <Button onClick={() => plan.settleClash("again")}>Make my change on theirs</Button>
        <Button variant="default" onClick={() => plan.settleClash("leave")}>
          Leave my change
        </Button>
      </div>
    </div>
  );
}

function Refusal({ state }: { readonly state: PlanState }) {
  const { plan } = useDesk();
  return (
    <div className="notice">
      <p>
        <b>The change was not made.</b>
      </p>
      <ProblemList problems={state.refused.map(inWords)} />
      <Button variant="default" onClick={plan.dismissRefusal}>
        Done
      </Button>
    </div>
  );
}

/** An edit's faults name their place inside the edit, which nobody at the page has seen: sentence and value are enough. */
const inWords = (problem: Problem): Problem => ({
  ...problem,
  file: problem.file === "edit" ? "" : problem.file,
  place: problem.file === "edit" ? "" : problem.place,
  message: `${problem.message[0]?.toUpperCase() ?? ""}${problem.message.slice(1)}${/[.!?]$/.test(problem.message) ? "" : "."}`,
  value: problem.message.includes(problem.value) ? "" : problem.value,
});
