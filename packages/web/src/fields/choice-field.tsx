import { NativeSelect } from "@mantine/core";

interface Props<T extends string> {
  readonly label: string;
  readonly value: T;
  /** `barred`: shown, but not to be chosen; the words say why. */
  readonly choices: readonly { readonly value: T; readonly words: string; readonly barred?: boolean }[];
  readonly onTake: (value: T) => void;
  readonly description?: string;
}

/** One of a few words. */
export function ChoiceField<T extends string>({ label, value, choices, onTake, description }: Props<T>) {
  return (
    <NativeSelect
      label={label}
      value={value}
      data={choices.map((c) => ({ value: c.value, label: c.words, disabled: c.barred ?? false }))}
      {...(description === undefined ? {} : { description })}
      onChange={(e) => onTake(e.currentTarget.value as T)}
    />
  );
}
