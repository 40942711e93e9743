import { Button } from "@mantine/core";
import { Fragment } from "react";
import type { UnitSystem } from "@causey/engine/units";
import { ChoiceField } from "./choice-field.tsx";
import { DayField } from "./day-field.tsx";
import { LengthField } from "./length-field.tsx";
import { MonthDayField } from "./month-day-field.tsx";
import { NumberField } from "./number-field.tsx";
import { TextField } from "./text-field.tsx";
import { YesField } from "./yes-field.tsx";
import "./row-editor.css";

/** How one entry of a row is shown and changed. Lengths and heights are in metres in the row. */
export type Column<T> = {
  readonly [K in keyof T & string]: {
    readonly key: K;
    readonly label: string;
    readonly description?: string;
    /** Shown only for rows that have a use for it. */
    readonly when?: (row: T) => boolean;
  } & (
    | { readonly as: "text"; readonly required?: boolean }
    | { readonly as: "month-day" }
    | { readonly as: "length" | "small-length" | "number"; readonly unit?: string; readonly least?: number }
    | {
        readonly as: "optional-length" | "optional-number";
        readonly unit?: string;
        /** Kept when the field is emptied: null, or undefined for an entry that may be left out. */
        readonly empty: null | undefined;
      }
    | { readonly as: "day"; readonly optional: boolean }
    | { readonly as: "yes" }
    | {
        readonly as: "choice";
        readonly choices: readonly { readonly value: string; readonly words: string }[];
      }
  );
}[keyof T & string];

interface Props<T extends { readonly id: string }> {
  /** What one row is, for the buttons: "level", "station". */
  readonly noun: string;
  readonly rows: readonly T[];
  readonly columns: readonly Column<T>[];
  readonly units: UnitSystem;
  readonly titleOf: (row: T) => string;
  readonly fresh?: () => T;
  readonly onTake: (rows: readonly T[]) => void;
  readonly rowNote?: (row: T) => React.ReactNode;
  /** Fields that change several entries together; they stand behind the first one. */
  readonly afterFirst?: (row: T, take: (row: T) => void) => React.ReactNode;
}

/** A list whose rows are changed in place: each change is saved by itself, as an edit of the whole list. */
export function RowEditor<T extends { readonly id: string }>(props: Props<T>) {
  const { noun, rows, columns, units, titleOf, fresh, onTake, rowNote, afterFirst } = props;
  const put = (i: number, key: string, value: unknown): void => {
    const next = { ...rows[i]!, [key]: value };
    if (value === undefined) delete (next as Record<string, unknown>)[key];
    onTake(rows.with(i, next));
  };
  return (
    <>
      {rows.map((row, i) => (
        <fieldset key={row.id} className="row-fields" data-row={row.id}>
          <legend>{titleOf(row)}</legend>
          <div className="fields">
            {columns
              .filter((column) => column.when?.(row) ?? true)
              .map((column, at) => (
                <Fragment key={column.key}>
                  <Cell
                    column={column}
                    value={row[column.key as keyof T]}
                    units={units}
                    onTake={(value) => put(i, column.key, value)}
                  />
                  {at === 0 && afterFirst?.(row, (next) => onTake(rows.with(i, next)))}
                </Fragment>
              ))}
          </div>
          {rowNote?.(row)}
          <Button variant="default" size="compact-sm" onClick={() => onTake(rows.toSpliced(i, 1))}>
            Remove {titleOf(row)}
          </Button>
        </fieldset>
      ))}
      {fresh && (
        <Button variant="default" onClick={() => onTake([...rows, fresh()])}>
          Add a {noun}
        </Button>
      )}
    </>
  );
}

interface CellProps<T> {
  readonly column: Column<T>;
  readonly value: unknown;
  readonly units: UnitSystem;
  readonly onTake: (value: unknown) => void;
}

function Cell<T>({ column, value, units, onTake }: CellProps<T>) {
  const { label } = column;
  const about = column.description === undefined ? {} : { description: column.description };
  switch (column.as) {
    case "text":
      return (
        <TextField
          label={label}
          {...about}
          required={column.required ?? false}
          value={typeof value === "string" ? value : ""}
          onTake={(text) => onTake(text === "" && !column.required && value === undefined ? undefined : text)}
        />
      );
    case "month-day":
      return (
        <MonthDayField
          label={label}
          {...about}
          value={typeof value === "string" ? value : ""}
          onTake={(day) => onTake(day === "" && value === undefined ? undefined : day)}
        />
      );
    case "length":
    case "small-length":
      return (
        <LengthField
          label={label}
          {...about}
          units={units}
          size={column.as === "length" ? "large" : "small"}
          {...(column.least === undefined ? {} : { least_m: column.least })}
          value={value as number}
          onTake={onTake}
        />
      );
    case "optional-length":
      return (
        <LengthField
          label={label}
          {...about}
          optional
          units={units}
          value={(value as number | null | undefined) ?? null}
          onTake={(metres) => onTake(metres ?? column.empty)}
        />
      );
    case "number":
      return (
        <NumberField
          label={label}
          {...about}
          {...(column.unit === undefined ? {} : { unit: column.unit })}
          {...(column.least === undefined ? {} : { least: column.least })}
          value={value as number}
          onTake={onTake}
        />
      );
    case "optional-number":
      return (
        <NumberField
          label={label}
          {...about}
          optional
          {...(column.unit === undefined ? {} : { unit: column.unit })}
          value={(value as number | null | undefined) ?? null}
          onTake={(n) => onTake(n ?? column.empty)}
        />
      );
    case "day":
      return column.optional ? (
        <DayField label={label} {...about} optional value={value as string | null} onTake={onTake} />
      ) : (
        <DayField label={label} {...about} value={value as string} onTake={onTake} />
      );
    case "yes":
      return <YesField label={label} {...about} value={value === true} onTake={onTake} />;
    case "choice":
      return (
        <ChoiceField
          label={label}
          {...about}
          value={(value as string | undefined) ?? ""}
          choices={column.choices}
          onTake={onTake}
        />
      );
  }
}
