import { ProblemError, type Problem } from "@causey/engine/formula";
import type { Price } from "@causey/engine/materials";
import { openQuote, readPrices, writePrices, type QuoteTable } from "@causey/io/prices";
import { useEffect, useState } from "react";
import type { PlanSnapshot } from "../api/types.ts";
import { useDesk } from "../desk/desk.ts";
import { useLayFile } from "../site-page/use-lay-file.ts";

export interface PriceList {
  /** Null while the list is on its way or cannot be read. */
  readonly prices: readonly Price[] | null;
  readonly problems: readonly Problem[];
  readonly broken: string | null;
  readonly isSending: boolean;
  /** Opens a file of the user's as rows of prices; null when it is none, and `problems` says why. */
  readonly openFile: (file: File) => Promise<QuoteTable | null>;
  /** Writes the list anew under a name, with these prices in this currency. */
  readonly takePrices: (prices: readonly Price[], currency: string, name?: string) => Promise<void>;
}

interface Read {
  readonly sha256: string;
  readonly prices: readonly Price[];
}

/** The plan's price list, and the ways to put another one in its place; each is one revision that can be undone. */
export function usePriceList({ id, plan, files }: PlanSnapshot): PriceList {
  const desk = useDesk();
  const laying = useLayFile(id);
  const [read, setRead] = useState<Read | null>(null);
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  const entry = files.find((f) => f.name === plan.prices.file);

  useEffect(() => {
    let isGone = false;
    if (entry !== undefined)
      desk.shelf(id, [entry]).then(
        ([file]) => {
          const answer = attempt(() => readPrices(entry.name, file!.bytes));
          if (isGone) return;
          if (answer.ok) setRead({ sha256: entry.sha256, prices: answer.value.prices });
          else setRefused(answer.problems);
        },
        () => undefined,
      );
    return () => {
      isGone = true;
    };
    // The content decides, not the object that names it.
    // oxlint-disable-next-line react-hooks/exhaustive-deps
  }, [desk, id, entry?.sha256]);

  return {
    prices: read !== null && read.sha256 === entry?.sha256 ? read.prices : null,
    problems: [...refused, ...laying.problems],
    broken: laying.broken,
    isSending: laying.isSending,
    openFile: async (file) => {
      const bytes = new Uint8Array(await file.arrayBuffer());
      const answer = attempt(() => openQuote(file.name, bytes));
      setRefused(answer.ok ? [] : answer.problems);
      return answer.ok ? answer.value : null;
    },
    takePrices: async (prices, currency, name = "prices.csv") => {
      setRefused([]);
      const bytes = writePrices(prices) as Uint8Array<ArrayBuffer>;
      await laying.lay(new File([bytes], name, { type: "text/csv" }), (laid) =>
        desk.plan.edit({ type: "set-price-list", file: laid.name, currency }),
      );
    },
  };
}

type Answer<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly Problem[] };

function attempt<T>(work: () => T): Answer<T> {
  try {
    return { ok: true, value: work() };
  } catch (error) {
    if (error instanceof ProblemError) return { ok: false, problems: error.problems };
    throw error;
  }
}
