import { Textarea, TextInput } from "@mantine/core";
import { commitKeys, useDraft } from "./draft.ts";

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onTake: (value: string) => void;
  readonly description?: string;
  readonly required?: boolean;
  /** Several lines. */
  readonly long?: boolean;
}

/** Words; taken over when the field is left. */
export function TextField({ label, value, onTake, description, required = false, long = false }: Props) {
  const draft = useDraft(
    value,
    (text) =>
      required && text.trim() === ""
        ? { ok: false, fault: "This cannot stay empty." }
        : { ok: true, value: text.trim() },
    onTake,
  );
  const shared = {
    label,
    value: draft.text,
    error: draft.fault,
    required,
    onBlur: draft.commit,
    ...(description === undefined ? {} : { description }),
  };
  return long ? (
    <Textarea {...shared} autosize minRows={3} onChange={(e) => draft.change(e.currentTarget.value)} />
  ) : (
    <TextInput
      {...shared}
      onChange={(e) => draft.change(e.currentTarget.value)}
      onKeyDown={commitKeys(draft).onKeyDown}
    />
  );
}
