import { Button } from "@mantine/core";
import type { Edit } from "@causey/engine/plan";
import { useDesk } from "../desk/desk.ts";
import { count } from "../show/show.ts";

interface Props {
  /** The change of the plan; null while something stands against it. */
  readonly edit: Edit | null;
  readonly count: number;
  readonly noun: string;
  readonly onClose: () => void;
}

/** The foot of an import: takes over what was looked at, and closes. */
export function TakeOver({ edit, count: rows, noun, onClose }: Props) {
  const desk = useDesk();
  return (
    <div className="file-row">
      <Button
        disabled={edit === null}
        onClick={() => {
          if (edit === null) return;
          desk.plan.edit(edit);
          onClose();
        }}
      >
        {edit === null ? "Take over" : `Take over ${count(rows, noun)}`}
      </Button>
    </div>
  );
}
