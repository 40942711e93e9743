import { TextInput } from "@mantine/core";
import { feetInches, readLength, type UnitSystem } from "@causey/engine/units";
import { commitKeys, useDraft } from "./draft.ts";

interface Shared {
  readonly label: string;
  readonly units: UnitSystem;
  readonly description?: string;
  /** small: inches or millimetres for a bare number; large: feet or metres. */
  readonly size?: "small" | "large";
  readonly least_m?: number;
}
interface Required extends Shared {
  /** [m] */
  readonly value: number;
  readonly onTake: (metres: number) => void;
  readonly optional?: false;
}
interface Optional extends Shared {
  readonly value: number | null;
  readonly onTake: (metres: number | null) => void;
  readonly optional: true;
  /** What an empty field means; "not known" when left out. */
  readonly empty?: string;
}

/** A length as it is read off a tape: feet, inches and fractions, or metres and millimetres; any of them is read. */
export function LengthField(props: Required | Optional) {
  const { label, units, description, size = "large" } = props;
  const draft = useDraft<number | null>(
    props.value === null ? "" : lengthText(props.value, units, size),
    (text) => readField(text, props),
    (value) => {
      if (props.optional) props.onTake(value);
      else if (value !== null) props.onTake(value);
    },
  );
  return (
    <TextInput
      label={label}
      value={draft.text}
      error={draft.fault}
      required={!props.optional}
      {...(description === undefined ? {} : { description })}
      {...(props.optional ? { placeholder: props.empty ?? "not known" } : {})}
      onChange={(e) => draft.change(e.currentTarget.value)}
      {...commitKeys(draft)}
    />
  );
}

/** Fine enough that leaving the field unchanged never changes the value that is kept. */
export const lengthText = (metres: number, units: UnitSystem, size: "small" | "large"): string =>
  units === "us"
    ? feetInches(metres, 64)
    : size === "small"
      ? `${Number((metres * 1000).toFixed(1))} mm`
      : `${Number(metres.toFixed(3))} m`;

type Answer =
  { readonly ok: true; readonly value: number | null } | { readonly ok: false; readonly fault: string };

function readField(text: string, { units, size = "large", optional, least_m }: Required | Optional): Answer {
  if (text.trim() === "")
    return optional ? { ok: true, value: null } : { ok: false, fault: "Give a length." };
  const bare = size === "small" ? (units === "us" ? "in" : "mm") : units === "us" ? "ft" : "m";
  const value = readLength(text, units, bare);
  const example = units === "us" ? "8 ft 3 1/2 in" : size === "small" ? "140 mm" : "2.44 m";
  if (value === null)
    return { ok: false, fault: `"${text.trim()}" is not a length; write it as ${example}.` };
  if (least_m !== undefined && value < least_m)
    return { ok: false, fault: `At least ${lengthText(least_m, units, size)}.` };
  return { ok: true, value };
}
