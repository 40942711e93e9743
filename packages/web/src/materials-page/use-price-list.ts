import { ProblemError, type Problem } from "@causey/engine/formula";
import type { Price } from "@causey/engine/materials";
import { readPrices, writePrices } from "@causey/io/prices";
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
  /** Takes a file of the user's as the price list, when it can be read as one. */
  readonly takeFile: (file: File) => Promise<void>;
  /** Writes the list anew, with these prices in this currency. */
  readonly takePrices: (prices: readonly Price[], currency: string) => Promise<void>;
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
          const answer = attempt(entry.name, file!.bytes);
          if (isGone) return;
          if (answer.ok) setRead({ sha256: entry.sha256, prices: answer.prices });
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

  const lay = (file: File, currency: string): Promise<void> =>
    laying.lay(file, (laid) => desk.plan.edit({ type: "set-price-list", file: laid.name, currency }));
  return {
    prices: read !== null && read.sha256 === entry?.sha256 ? read.prices : null,
    problems: [...refused, ...laying.problems],
    broken: laying.broken,
    isSending: laying.isSending,
    takeFile: async (file) => {
      const answer = attempt(file.name, new Uint8Array(await file.arrayBuffer()));
      setRefused(answer.ok ? [] : answer.problems);
      if (answer.ok) await lay(file, answer.currency ?? plan.money.currency);
    },
    takePrices: async (prices, currency) => {
      setRefused([]);
      const bytes = writePrices(prices) as Uint8Array<ArrayBuffer>;
      await lay(new File([bytes], "prices.csv", { type: "text/csv" }), currency);
    },
  };
}

type Answer =
  | { readonly ok: true; readonly prices: readonly Price[]; readonly currency: string | null }
  | { readonly ok: false; readonly problems: readonly Problem[] };

function attempt(name: string, bytes: Uint8Array): Answer {
  try {
    return { ok: true, ...readPrices(name, bytes) };
  } catch (error) {
    if (error instanceof ProblemError) return { ok: false, problems: error.problems };
    throw error;
  }
}
