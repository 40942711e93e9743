import { Button } from "@mantine/core";
import type { KnownItem, QuoteChoice, QuoteRow } from "@causey/io/prices";
import { useState } from "react";
import { ChoiceField } from "../../fields/choice-field.tsx";
import { count } from "../../show/show.ts";
import { itemChoices, rowWords } from "./row-words.ts";

interface Props {
  readonly rows: readonly QuoteRow[];
  readonly choice: QuoteChoice;
  readonly known: readonly KnownItem[];
  /** Line of the file -> item that it prices. */
  readonly items: ReadonlyMap<number, string>;
  readonly onItem: (line: number, item: string) => void;
}

/** Every row with what it was taken for. Groups hold what was recognised at first, so that no row moves while choosing. */
export function QuoteRowFields(props: Props) {
  const recognised = props.rows.filter((row) => row.guess.item !== null);
  const others = props.rows.filter((row) => row.guess.item === null);
  return (
    <>
      <RowGroup {...props} rows={recognised} title={`Recognised: ${count(recognised.length, "row")}`} />
      <RowGroup
        {...props}
        rows={others}
        title={`Not recognised, left out until chosen: ${count(others.length, "row")}`}
      />
    </>
  );
}

/** Selects drawn at once: a catalogue of thousands of rows would hold up the page. */
const AT_ONCE = 60;

function RowGroup({ rows, title, choice, known, items, onItem }: Props & { readonly title: string }) {
  const [shown, setShown] = useState(AT_ONCE);
  if (rows.length === 0) return null;
  return (
    <div className="field-group">
      <h3>{title}</h3>
      <div className="fields">
        {rows.slice(0, shown).map((row) => (
          <ChoiceField
            key={row.line}
            label={row.words === "" ? "(no words)" : row.words}
            description={rowWords(row, choice)}
            value={items.get(row.line) ?? ""}
            choices={itemChoices(row, known)}
            onTake={(item) => onItem(row.line, item)}
          />
        ))}
      </div>
      {rows.length > shown && (
        <div className="file-row">
          <Button variant="default" onClick={() => setShown(shown + AT_ONCE)}>
            Show {Math.min(AT_ONCE, rows.length - shown)} more of {rows.length}
          </Button>
        </div>
      )}
    </div>
  );
}
