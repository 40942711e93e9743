import { useState } from "react";

/** What is being typed into a field, and whether it can be taken over. */
export interface Draft {
  readonly text: string;
  readonly fault: string | null;
  readonly change: (text: string) => void;
  /** Takes over what was typed, when it is sound and new. */
  readonly commit: () => void;
}

/**
 * Text of one field: follows the plan's value until something is typed, and gives the value back when the field is
 * left. What cannot be read stays in the field with its fault, so that nothing typed is lost.
 */
export function useDraft<T>(
  shown: string,
  read: (
    text: string,
  ) => { readonly ok: true; readonly value: T } | { readonly ok: false; readonly fault: string },
  take: (value: T) => void,
): Draft {
  const [text, setText] = useState(shown);
  const [fault, setFault] = useState<string | null>(null);
  const [follows, setFollows] = useState(shown);
  if (follows !== shown) {
    setFollows(shown);
    setText(shown);
    setFault(null);
  }
  return {
    text,
    fault,
    change: (next) => {
      setText(next);
      if (fault !== null) setFault(null);
    },
    commit: () => {
      if (text === shown) return setFault(null);
      const answer = read(text);
      if (!answer.ok) return setFault(answer.fault);
      setFault(null);
      take(answer.value);
    },
  };
}

/** Enter takes over what was typed; leaving the field does too. */
export const commitKeys = (draft: Draft) => ({
  onBlur: draft.commit,
  onKeyDown: (event: React.KeyboardEvent): void => {
    if (event.key === "Enter") draft.commit();
  },
});
