import { TextInput } from "@mantine/core";
import { monthDayWords, readMonthDay } from "@causey/engine/site";
import { commitKeys, useDraft } from "./draft.ts";

interface Props {
  readonly label: string;
  readonly description?: string;
  /** `04-01`; empty when no day is given. */
  readonly value: string;
  readonly onTake: (value: string) => void;
  readonly required?: boolean;
}

/** A day of every year, typed as people write it and shown as "1 Apr". */
export function MonthDayField({ label, description, value, onTake, required = false }: Props) {
  const draft = useDraft(
    value === "" ? "" : monthDayWords(value),
    (text) => {
      if (text.trim() === "" && !required) return { ok: true, value: "" };
      const day = readMonthDay(text);
      return day === null
        ? { ok: false, fault: "Give a day and its month, such as 1 Apr or 04-01." }
        : { ok: true, value: day };
    },
    onTake,
  );
  return (
    <TextInput
      label={label}
      description={description ?? "Such as 1 Apr or 04-01."}
      value={draft.text}
      error={draft.fault}
      required={required}
      onChange={(e) => draft.change(e.currentTarget.value)}
      {...commitKeys(draft)}
    />
  );
}
