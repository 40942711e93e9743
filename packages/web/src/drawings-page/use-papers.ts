import type { Problem } from "@causey/engine/formula";
import type { Results } from "@causey/engine/plan";
import { useEffect, useState } from "react";
import type { PlanSnapshot } from "../api/types.ts";
import { useDesk } from "../desk/desk.ts";
import { saveFile } from "../files/save-file.ts";
import { askPapers } from "../papers/papers-client.ts";
import type { DrawnSheets, PaperAnswer } from "../papers/protocol.ts";

export interface Papers {
  readonly chosen: readonly string[];
  readonly drawn: DrawnSheets | null;
  readonly page: number;
  /** What is going on, in words. */
  readonly words: string;
  readonly isPrinting: boolean;
  readonly problems: readonly Problem[];
  readonly broken: string | null;
  readonly choose: (ids: readonly string[]) => void;
  readonly turnTo: (page: number) => void;
  readonly download: () => void;
}

/** Sheets that are drawn when the page is opened: quick ones, that a director looks at first. */
const FIRST = ["summary", "site-plan", "cross-section", "long-section"];

/** Sheets chosen for each plan, for as long as this window is open. */
const chosenFor = new Map<string, readonly string[]>();

/** Keeps the drawn pages in step with plan and results, and gives them out as one PDF. */
export function usePapers(snapshot: PlanSnapshot, results: Results | null): Papers {
  const { shelf } = useDesk();
  const [chosen, setChosen] = useState<readonly string[]>(() => chosenFor.get(snapshot.id) ?? FIRST);
  const [drawn, setDrawn] = useState<DrawnSheets | null>(null);
  const [page, setPage] = useState(0);
  const [isPrinting, setPrinting] = useState(false);
  const [fault, setFault] = useState<Pick<Papers, "problems" | "broken">>({ problems: [], broken: null });

  const ask = async (as: "pictures" | "pdf"): Promise<PaperAnswer | null> => {
    if (!results) return null;
    const files = await shelf(snapshot.id, snapshot.files);
    return askPapers({
      plan: snapshot.plan,
      results,
      which: chosen,
      as,
      files: files.map(({ name, bytes }) => ({ name, bytes })),
    });
  };
  const refuse = (answer: PaperAnswer | null): void =>
    setFault({
      problems: answer?.kind === "refused" ? answer.problems : [],
      broken: answer?.kind === "broken" ? answer.message : null,
    });

  useEffect(() => {
    let isCurrent = true;
    void ask("pictures").then((answer) => {
      if (!isCurrent) return;
      refuse(answer);
      if (answer?.kind === "pictures") {
        setDrawn(answer.drawn);
        setPage((now) => Math.max(0, Math.min(now, answer.drawn.pages.length - 1)));
      }
    });
    return () => {
      isCurrent = false;
    };
    // The sheets follow what they are drawn from, not the functions that draw them.
    // oxlint-disable-next-line react/exhaustive-deps
  }, [snapshot, results, chosen]);

  const download = async (): Promise<void> => {
    setPrinting(true);
    const answer = await ask("pdf");
    setPrinting(false);
    refuse(answer);
    if (answer?.kind === "pdf") saveFile(answer.bytes, `${snapshot.plan.id}-papers.pdf`, "application/pdf");
  };

  return {
    chosen,
    drawn,
    page,
    isPrinting,
    ...fault,
    words: results
      ? "The sheets are being drawn."
      : "The sheets appear here when the layout has been worked out.",
    choose: (ids) => {
      chosenFor.set(snapshot.id, ids);
      setChosen(ids);
    },
    turnTo: setPage,
    download: () => void download(),
  };
}
