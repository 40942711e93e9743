import { ChoiceField } from "../fields/choice-field.tsx";
import { NumberField } from "../fields/number-field.tsx";
import { TextField } from "../fields/text-field.tsx";
import { dateOrderChoices, decimalChoices } from "../fields/written-choices.ts";
import { YesField } from "../fields/yes-field.tsx";
import { importKinds, type ImportKind } from "./import-kinds.ts";
import type { ImportChoice } from "./readings-import.ts";

interface Props {
  readonly kind: ImportKind;
  readonly heads: readonly string[];
  readonly choice: ImportChoice;
  readonly onTake: (choice: ImportChoice) => void;
}

/** Which column means what, and how its numbers are written. */
export function ImportFields({ kind, heads, choice, onTake }: Props) {
  const { columns, hasDates, noun } = importKinds[kind];
  const put = (some: Partial<ImportChoice>): void => onTake({ ...choice, ...some });
  return (
    <div className="fields">
      {columns.map(({ key, label, required }) => (
        <ChoiceField
          key={key}
          label={`Column: ${label}`}
          value={choice.columns[key] ?? ""}
          choices={[
            { value: "", words: required ? "choose" : "there is none" },
            ...heads.map((head) => ({ value: head, words: head })),
          ]}
          onTake={(head) => put({ columns: { ...choice.columns, [key]: head === "" ? null : head } })}
        />
      ))}
      <ChoiceField
        label="Lengths and heights are in"
        value={choice.unit}
        choices={[
          { value: "m", words: "metres" },
          { value: "ft", words: "international feet" },
          { value: "us-ft", words: "US survey feet" },
        ]}
        onTake={(unit) => put({ unit })}
      />
      <ChoiceField
        label="Decimals are written with"
        value={choice.decimal}
        choices={decimalChoices}
        onTake={(decimal) => put({ decimal })}
      />
      {hasDates && (
        <ChoiceField
          label="Days are written as"
          value={choice.date_order}
          choices={dateOrderChoices}
          onTake={(date_order) => put({ date_order })}
        />
      )}
      {kind === "shear" && <StrengthFields choice={choice} put={put} />}
      <YesField
        label={`Replace every ${noun} that is there`}
        description={
          kind === "shear"
            ? "Otherwise they are added."
            : "Otherwise they are added; equal names are replaced."
        }
        value={choice.replace}
        onTake={(replace) => put({ replace })}
      />
    </div>
  );
}

const StrengthFields = ({
  choice,
  put,
}: {
  readonly choice: ImportChoice;
  readonly put: (some: Partial<ImportChoice>) => void;
}) => (
  <>
    <ChoiceField
      label="Strengths are in"
      value={choice.strength_unit}
      choices={[
        { value: "kpa", words: "kPa" },
        { value: "psf", words: "pounds per square foot" },
      ]}
      onTake={(strength_unit) => put({ strength_unit })}
    />
    <NumberField
      label="Correction"
      description="1 where the file is corrected already; a vane in peat reads high."
      optional
      least={0.01}
      most={1}
      value={choice.correction}
      onTake={(correction) => put({ correction })}
    />
    <TextField
      required
      label="Source"
      description="Who took them, with what, when."
      value={choice.source}
      onTake={(source) => put({ source })}
    />
  </>
);
