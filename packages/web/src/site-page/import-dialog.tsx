import { Button, FileButton } from "@mantine/core";
import { ProblemError, type Problem } from "@causey/engine/formula";
import type { Plan } from "@causey/engine/plan";
import { columnHeads } from "@causey/io/points";
import { useMemo, useState } from "react";
import { Dialog } from "../frame/panel.tsx";
import { ProblemList } from "../frame/problem-list.tsx";
import { ImportFields } from "./import-fields.tsx";
import { guessColumns, importKinds, type ImportKind } from "./import-kinds.ts";
import { ImportOutcome } from "./import-outcome.tsx";
import { previewImport, startChoice, stillMissing, type ImportChoice } from "./readings-import.ts";
import { TakeOver } from "./take-over.tsx";

interface Props {
  readonly kind: ImportKind;
  readonly plan: Plan;
  readonly onClose: () => void;
}

interface Chosen {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly heads: readonly string[];
}

/** File, columns, unit, a look at what would come of it, and only then the change of the plan. */
export default function ImportDialog({ kind, plan, onClose }: Props) {
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  const [choice, setChoice] = useState<ImportChoice>({ ...startChoice, columns: {} });
  const { title, noun } = importKinds[kind];

  const take = async (file: File): Promise<void> => {
    const bytes = new Uint8Array(await file.arrayBuffer());
    try {
      const heads = columnHeads(file.name, bytes);
      setChosen({ name: file.name, bytes, heads });
      setChoice((last) => ({ ...last, columns: guessColumns(kind, heads) }));
      setRefused([]);
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      setChosen(null);
      setRefused(error.problems);
    }
  };
  const missing = stillMissing(kind, choice);
  const preview = useMemo(
    () =>
      chosen === null || missing !== null
        ? null
        : previewImport(kind, chosen.name, chosen.bytes, choice, plan),
    [kind, chosen, choice, missing, plan],
  );

  return (
    <Dialog title={title} closeWords="Close without a change" onClose={onClose}>
      <div className="file-row">
        <span>{chosen ? <b>{chosen.name}</b> : "A CSV file with its columns named in the first line."}</span>
        <FileButton accept=".csv,.txt,.tsv,text/csv" onChange={(file) => file && void take(file)}>
          {(props) => (
            <Button {...props} variant="default" size="compact-sm">
              {chosen ? "Choose another file" : "Choose a file"}
            </Button>
          )}
        </FileButton>
      </div>
      {chosen && <ImportFields kind={kind} heads={chosen.heads} choice={choice} onTake={setChoice} />}
      <div aria-live="polite">
        {refused.length > 0 && <ProblemList problems={refused} />}
        {chosen && missing !== null && <p className="quiet">{missing}</p>}
        {preview && <ImportOutcome preview={preview} noun={noun} />}
      </div>
      <TakeOver edit={preview?.edit ?? null} count={preview?.count ?? 0} noun={noun} onClose={onClose} />
    </Dialog>
  );
}
