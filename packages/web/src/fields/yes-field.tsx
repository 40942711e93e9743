import { Checkbox } from "@mantine/core";

interface Props {
  readonly label: string;
  readonly value: boolean;
  readonly onTake: (value: boolean) => void;
  readonly description?: string;
  /** Its whole name, where the label alone stands for several. It holds the label's words. */
  readonly name?: string;
}

/** Yes or no. */
export const YesField = ({ label, value, onTake, description, name }: Props) => (
  <Checkbox
    label={label}
    checked={value}
    {...(name === undefined ? {} : { "aria-label": name })}
    {...(description === undefined ? {} : { description })}
    onChange={(e) => onTake(e.currentTarget.checked)}
  />
);
