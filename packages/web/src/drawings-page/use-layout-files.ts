import { ProblemError, type Problem } from "@causey/engine/formula";
import type { Plan, Results } from "@causey/engine/plan";
import { useState } from "react";
import { saveFile } from "../files/save-file.ts";
import type { LayoutKind } from "./layout-file.ts";

interface Told {
  readonly problems: readonly Problem[];
  readonly broken: string | null;
}

export interface LayoutFilesState extends Told {
  /** The file that is being made. */
  readonly making: LayoutKind | null;
  readonly take: (kind: LayoutKind) => Promise<void>;
}

/** Makes the layout's files on demand; writers, coordinate register and SQLite are fetched only then. */
export function useLayoutFiles(plan: Plan, results: Results | null): LayoutFilesState {
  const [making, setMaking] = useState<LayoutKind | null>(null);
  const [told, setTold] = useState<Told>({ problems: [], broken: null });

  const take = async (kind: LayoutKind): Promise<void> => {
    if (results === null) return;
    setMaking(kind);
    try {
      const { layoutFile } = await import("./layout-file.ts");
      const { bytes, type, warnings } = await layoutFile(kind, plan, results);
      saveFile(bytes, `${plan.id}-layout.${kind}`, type);
      setTold({ problems: warnings, broken: null });
    } catch (error) {
      setTold(
        error instanceof ProblemError
          ? { problems: error.problems, broken: null }
          : { problems: [], broken: error instanceof Error ? error.message : String(error) },
      );
    } finally {
      setMaking(null);
    }
  };
  return { making, ...told, take };
}
