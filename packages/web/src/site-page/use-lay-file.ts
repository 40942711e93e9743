import type { Problem } from "@causey/engine/formula";
import { useState } from "react";
import type { FileEntry } from "../api/types.ts";
import { useDesk } from "../desk/desk.ts";

export interface LayFile {
  readonly isSending: boolean;
  readonly problems: readonly Problem[];
  readonly broken: string | null;
  /** Lays the file beside the plan, and goes on with the name under which it lies. */
  readonly lay: (file: File, then: (entry: FileEntry) => void) => Promise<void>;
}

/** Brings a file of the user's into the store, beside the plan. */
export function useLayFile(planId: string): LayFile {
  const desk = useDesk();
  const [state, setState] = useState<Omit<LayFile, "lay">>({ isSending: false, problems: [], broken: null });
  const lay = async (file: File, then: (entry: FileEntry) => void): Promise<void> => {
    setState({ isSending: true, problems: [], broken: null });
    try {
      const answer = await desk.plans.addFile(planId, file.name, new Uint8Array(await file.arrayBuffer()));
      setState({
        isSending: false,
        problems: answer.kind === "refused" ? answer.problems : [],
        broken: null,
      });
      if (answer.kind === "kept") {
        desk.plan.fileLaid(answer.file);
        then(answer.file);
      }
    } catch (error) {
      setState({
        isSending: false,
        problems: [],
        broken: error instanceof Error ? error.message : String(error),
      });
    }
  };
  return { ...state, lay };
}
