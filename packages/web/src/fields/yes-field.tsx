import { Checkbox } from "@mantine/core";

interface Props {
  readonly label: string;
  readonly value: boolean;
  readonly onTake: (value: boolean) => void;
  readonly description?: string;
}

/** Yes or no. */
export const YesField = ({ label, value, onTake, description }: Props) => (
  <Checkbox
    label={label}
    checked={value}
    {...(description === undefined ? {} : { description })}
    onChange={(e) => onTake(e.currentTarget.checked)}
  />
);
