import { TextInput } from "@mantine/core";
import { commitKeys, useDraft } from "./draft.ts";

interface Shared {
  readonly label: string;
  readonly description?: string;
  /** Shown behind the number: "kg", "kPa", "%". */
  readonly unit?: string;
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
  /** Shown and typed value over the kept one: 100 for shares shown in per cent. */
  readonly scale?: number;
  /** Decimals shown at most; what is kept stays exact until the field is changed. */
  readonly decimals?: number;
}
interface Required extends Shared {
  readonly value: number;
  readonly onTake: (value: number) => void;
  readonly optional?: false;
}
interface Optional extends Shared {
  readonly value: number | null;
  /** Null when the field was emptied: not known. */
  readonly onTake: (value: number | null) => void;
  readonly optional: true;
  /** What an empty field means; "not known" when left out. */
  readonly empty?: string;
}

/** A number with its unit; a comma is read as a decimal point. An optional one may stay empty: not known. */
export function NumberField(props: Required | Optional) {
  const { label, description, unit, scale = 1 } = props;
  const shown = props.value === null ? "" : numberWords(props.value * scale, props.decimals);
  const draft = useDraft<number | null>(
    shown,
    (text) => readNumber(text, props),
    (value) => {
      if (props.optional) props.onTake(value === null ? null : value / scale);
      else if (value !== null) props.onTake(value / scale);
    },
  );
  return (
    <TextInput
      label={unit === undefined ? label : `${label} (${unit})`}
      value={draft.text}
      error={draft.fault}
      inputMode="decimal"
      required={!props.optional}
      {...(description === undefined ? {} : { description })}
      {...(props.optional ? { placeholder: props.empty ?? "not known" } : {})}
      onChange={(e) => draft.change(e.currentTarget.value)}
      {...commitKeys(draft)}
    />
  );
}

const numberWords = (value: number, decimals: number | undefined): string =>
  String(Number(decimals === undefined ? value.toPrecision(12) : value.toFixed(decimals)));

type Answer =
  { readonly ok: true; readonly value: number | null } | { readonly ok: false; readonly fault: string };

function readNumber(text: string, { optional, least, most, whole }: Required | Optional): Answer {
  const words = text
    .trim()
    .replace("−", "-")
    .replace(/^(-?\d*),(\d+)$/, "$1.$2");
  if (words === "") return optional ? { ok: true, value: null } : { ok: false, fault: "Give a number." };
  const value = Number(words);
  if (!Number.isFinite(value)) return { ok: false, fault: `"${text.trim()}" is not a number.` };
  if (whole && !Number.isInteger(value)) return { ok: false, fault: "Give a whole number." };
  if (least !== undefined && value < least) return { ok: false, fault: `At least ${least}.` };
  if (most !== undefined && value > most) return { ok: false, fault: `At most ${most}.` };
  return { ok: true, value };
}
