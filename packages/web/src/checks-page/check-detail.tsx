import type { CheckResult } from "@causey/engine/checks";
import type { PlanSnapshot } from "../api/types.ts";
import { show, type Reading } from "../show/show.ts";
import { SourceLine, Steps } from "../working/steps.tsx";
import { ProposalList } from "./proposal-list.tsx";
import { canBeMended, statusLine, tagWords } from "./check-words.ts";
import { ShareBar } from "./share-bar.tsx";

interface Props {
  readonly check: CheckResult;
  readonly reading: Reading;
  readonly snapshot: PlanSnapshot;
}

/** One check down to clause and source, and its answer backwards. */
export function CheckDetail({ check, reading, snapshot }: Props) {
  return (
    <div className={`check-detail check-${check.status}`}>
      <p className="check-detail-status">{statusLine(check)}</p>
      <p className="quiet">{tagWords(check.parts)}</p>
      {(check.status === "pass" || check.status === "fail") && (
        <>
          <p className="check-detail-share">
            <ShareBar utilisation={check.utilisation} />
          </p>
          <p>
            {show(check.demand, check.unit, reading)} of {show(check.capacity, check.unit, reading)}
            {check.governs && <span className="quiet">; {check.governs}</span>}
          </p>
          <h3 className="working-head">The other way round</h3>
          <p>{check.backwards.carries}</p>
          {check.backwards.change && <p className="check-change">{check.backwards.change}</p>}
          {check.status === "fail" && canBeMended(check) && (
            <ProposalList check={check.id} snapshot={snapshot} reading={reading} />
          )}
        </>
      )}
      <h3 className="working-head">Rule</h3>
      <SourceLine source={check.rule} />
      {(check.status === "pass" || check.status === "fail") && (
        <>
          <h3 className="working-head">Working</h3>
          <Steps steps={check.working} reading={reading} />
        </>
      )}
      {check.caution && <p className="check-caution">{check.caution}</p>}
    </div>
  );
}
