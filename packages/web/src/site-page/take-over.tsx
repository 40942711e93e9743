import { Button } from "@mantine/core";
import type { Edit } from "@causey/engine/plan";
import { useState } from "react";
import { useDesk } from "../desk/desk.ts";
import { useAfterFields } from "../fields/use-after-fields.ts";
import { count } from "../show/show.ts";

interface Props {
  /** The change of the plan; null while something stands against it. */
  readonly edit: Edit | null;
  readonly count: number;
  readonly noun: string;
  readonly onClose: () => void;
}

/** A field of the same dialog whose words could not be read: what was taken over would not be what stands there. */
const unreadIn = (button: HTMLElement): HTMLElement | null =>
  button.closest("[role=dialog]")?.querySelector<HTMLElement>('[aria-invalid="true"]') ?? null;

/** The foot of an import: takes over what was looked at, and closes. */
export function TakeOver({ edit, count: rows, noun, onClose }: Props) {
  const desk = useDesk();
  // The change that was held back; once a field gives another one, nothing is to be said any more.
  const [heldBack, setHeldBack] = useState<Edit | null>(null);
  const press = useAfterFields((button) => {
    const unread = unreadIn(button);
    setHeldBack(unread === null ? null : edit);
    unread?.focus();
    if (edit === null || unread !== null) return;
    desk.plan.edit(edit);
    onClose();
  });
  return (
    <div className="file-row">
      <Button disabled={edit === null} {...press}>
        {edit === null ? "Take over" : `Take over ${count(rows, noun)}`}
      </Button>
      {heldBack !== null && heldBack === edit && (
        <span className="take-over-unread">What stands in the marked field cannot be read.</span>
      )}
    </div>
  );
}
