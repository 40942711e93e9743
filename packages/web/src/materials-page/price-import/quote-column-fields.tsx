import {
  LENGTH_UNITS,
  withColumn,
  type LengthUnit,
  type QuoteChoice,
  type QuoteKey,
  type QuoteTable,
} from "@causey/io/prices";
import { ChoiceField } from "../../fields/choice-field.tsx";
import { DayField } from "../../fields/day-field.tsx";
import { TextField } from "../../fields/text-field.tsx";
import { dateOrderChoices, decimalChoices } from "../../fields/written-choices.ts";

interface Props {
  readonly table: QuoteTable;
  readonly choice: QuoteChoice;
  readonly onTake: (choice: QuoteChoice) => void;
}

/** What each column is called, and what its absence means. */
const columns: readonly (readonly [key: QuoteKey, label: string, none: string])[] = [
  ["item", "item", "choose"],
  ["length", "length", "there is none"],
  ["length_ft", "length in feet", "there is none"],
  ["price", "price", "choose"],
  ["currency", "currency", "none: one for all"],
  ["date", "day", "none: one for all"],
  ["source", "source", "none: one for all"],
  ["pack", "pieces in a pack", "none: one piece"],
  ["description", "description", "none: the item's words"],
];

const unitWords: Readonly<Record<LengthUnit, string>> = {
  mm: "millimetres",
  cm: "centimetres",
  m: "metres",
  ft: "feet",
  in: "inches",
};

/** Which column of the file means what, and what is said once for all its rows. */
export function QuoteColumnFields({ table, choice, onTake }: Props) {
  const put = (some: Partial<QuoteChoice>): void => onTake({ ...choice, ...some });
  const shown = columns.filter(([key]) => key !== "length_ft" || choice.columns.length_ft !== null);
  return (
    <div className="fields quote-fields">
      {shown.map(([key, label, none]) => (
        <ChoiceField
          key={key}
          label={`Column: ${label}`}
          value={choice.columns[key] ?? ""}
          choices={[
            { value: "", words: none },
            ...table.heads.filter((head) => head !== "").map((head) => ({ value: head, words: head })),
          ]}
          onTake={(head) => onTake(withColumn(table, choice, key, head === "" ? null : head))}
        />
      ))}
      <WrittenFields choice={choice} put={put} />
      <ForAllFields choice={choice} put={put} />
    </div>
  );
}

interface PutProps {
  readonly choice: QuoteChoice;
  readonly put: (some: Partial<QuoteChoice>) => void;
}

const choose = { value: "", words: "choose" } as const;

function WrittenFields({ choice, put }: PutProps) {
  const { columns: have, length_unit, date_order, decimal } = choice;
  return (
    <>
      {have.length !== null && (
        <ChoiceField<LengthUnit | "">
          label="Lengths are in"
          value={length_unit ?? ""}
          choices={[
            ...(length_unit === null ? [choose] : []),
            ...LENGTH_UNITS.map((unit) => ({ value: unit, words: unitWords[unit] })),
          ]}
          onTake={(unit) => put({ length_unit: unit === "" ? null : unit })}
        />
      )}
      <ChoiceField
        label="Decimals are written with"
        value={decimal}
        choices={decimalChoices}
        onTake={(sign) => put({ decimal: sign })}
      />
      {have.date !== null && (
        <ChoiceField
          label="Days are written as"
          value={date_order ?? ""}
          choices={[...(date_order === null ? [choose] : []), ...dateOrderChoices]}
          onTake={(order) => put({ date_order: order === "" ? null : order })}
        />
      )}
    </>
  );
}

/** What no column tells: typed once, and never made up. */
function ForAllFields({ choice, put }: PutProps) {
  const { columns: have } = choice;
  return (
    <>
      {have.currency === null && (
        <TextField
          required
          label="Currency of the file"
          description="Three letters, such as USD."
          value={choice.currency}
          onTake={(words) => put({ currency: words.toUpperCase() })}
        />
      )}
      {have.date === null && (
        <DayField label="Day of the prices" value={choice.date} onTake={(date) => put({ date })} />
      )}
      {have.source === null && (
        <TextField
          required
          live
          label="Source of the prices"
          description="The yard or catalogue."
          value={choice.source}
          onTake={(source) => put({ source })}
        />
      )}
    </>
  );
}
