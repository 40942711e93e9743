import { TextInput } from "@mantine/core";
import { useDraft } from "./draft.ts";

interface Shared {
  readonly label: string;
  readonly description?: string;
}
interface Required extends Shared {
  /** ISO day. */
  readonly value: string;
  readonly onTake: (day: string) => void;
  readonly optional?: false;
}
interface Optional extends Shared {
  readonly value: string | null;
  readonly onTake: (day: string | null) => void;
  readonly optional: true;
}

/** A calendar day, through the browser's own picker. An optional one may be emptied. */
export function DayField(props: Required | Optional) {
  const draft = useDraft<string | null>(
    props.value ?? "",
    (text) => {
      if (text === "")
        return props.optional ? { ok: true, value: null } : { ok: false, fault: "Give a day." };
      return /^\d{4}-\d{2}-\d{2}$/.test(text)
        ? { ok: true, value: text }
        : { ok: false, fault: "Give year, month and day." };
    },
    (value) => {
      if (props.optional) props.onTake(value);
      else if (value !== null) props.onTake(value);
    },
  );
  return (
    <TextInput
      type="date"
      label={props.label}
      value={draft.text}
      error={draft.fault}
      required={!props.optional}
      {...(props.description === undefined ? {} : { description: props.description })}
      onChange={(e) => draft.change(e.currentTarget.value)}
      onBlur={draft.commit}
    />
  );
}
