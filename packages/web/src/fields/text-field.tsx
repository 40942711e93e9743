import { Textarea, TextInput } from "@mantine/core";
import { useDraft } from "./draft.ts";

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onTake: (value: string) => void;
  readonly description?: string;
  readonly required?: boolean;
  /** Several lines. */
  readonly long?: boolean;
  /** Taken over with every letter: where something beside the field waits for it. */
  readonly live?: boolean;
}

/** Words; taken over when the field is left, unless they are `live`. */
export function TextField({
  label,
  value,
  onTake,
  description,
  required = false,
  long = false,
  live = false,
}: Props) {
  const draft = useDraft(
    value,
    (text) =>
      required && text.trim() === ""
        ? { ok: false, fault: "This cannot stay empty." }
        : { ok: true, value: text.trim() },
    onTake,
  );
  const change = (text: string): void => {
    draft.change(text);
    if (live) onTake(text);
  };
  const leave = (): void => {
    if (live) onTake(draft.text.trim());
    else draft.commit();
  };
  const shared = {
    label,
    value: draft.text,
    error: draft.fault,
    required,
    onBlur: leave,
    ...(description === undefined ? {} : { description }),
  };
  return long ? (
    <Textarea {...shared} autosize minRows={3} onChange={(e) => change(e.currentTarget.value)} />
  ) : (
    <TextInput
      {...shared}
      onChange={(e) => change(e.currentTarget.value)}
      onKeyDown={(e) => {
        if (e.key === "Enter") leave();
      }}
    />
  );
}
