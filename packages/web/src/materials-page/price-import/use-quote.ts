import type { Problem } from "@causey/engine/formula";
import type { Price } from "@causey/engine/materials";
import {
  guessQuote,
  mergeFaults,
  mergePrices,
  quoteRows,
  readQuote,
  stillMissing,
  type KnownItem,
  type MergedPrices,
  type MergeWay,
  type QuoteChoice,
  type QuoteRead,
  type QuoteRow,
  type QuoteTable,
} from "@causey/io/prices";
import { useMemo, useState } from "react";

export interface Quote {
  readonly choice: QuoteChoice;
  readonly rows: readonly QuoteRow[];
  readonly items: ReadonlyMap<number, string>;
  readonly way: MergeWay;
  /** Null while something is still to be said. */
  readonly outcome: {
    readonly read: QuoteRead;
    readonly merged: MergedPrices;
    readonly problems: readonly Problem[];
  } | null;
  readonly missing: string | null;
  readonly choose: (choice: QuoteChoice) => void;
  readonly setItem: (line: number, item: string) => void;
  readonly setWay: (way: MergeWay) => void;
}

/** A quote on its way into the list `there`: how it is read, what its rows are, and what would come of it. */
export function useQuote(
  table: QuoteTable,
  there: readonly Price[],
  known: readonly KnownItem[],
  firstWay: MergeWay,
): Quote {
  const [choice, setChoice] = useState<QuoteChoice>(() => guessQuote(table));
  const [byHand, setByHand] = useState<ReadonlyMap<number, string>>(new Map());
  const [way, setWay] = useState<MergeWay>(firstWay);
  const rows = useMemo(() => quoteRows(table, choice, known), [table, choice, known]);
  const items = useMemo(() => itemsOf(rows, byHand), [rows, byHand]);
  const missing = stillMissing(choice);
  const outcome = useMemo(() => {
    if (missing !== null) return null;
    const read = readQuote(table, choice, items, known);
    const problems = [...read.problems, ...mergeFaults(table.file, there, read.prices, way)];
    return { read, merged: mergePrices(there, read.prices, way), problems };
  }, [table, choice, items, known, there, way, missing]);
  return {
    choice,
    rows,
    items,
    way,
    outcome,
    missing,
    choose: (next) => {
      // Other words are other rows: what was chosen for the old ones does not hold for them.
      if (next.columns.item !== choice.columns.item) setByHand(new Map());
      setChoice(next);
    },
    setItem: (line, item) => setByHand((last) => new Map([...last, [line, item]])),
    setWay,
  };
}

const itemsOf = (
  rows: readonly QuoteRow[],
  byHand: ReadonlyMap<number, string>,
): ReadonlyMap<number, string> =>
  new Map(
    rows.flatMap(({ line, guess }) => {
      const item = byHand.get(line) ?? guess.item ?? "";
      return item === "" ? [] : [[line, item] as const];
    }),
  );
