import type { Price, TakeOff } from "@causey/engine/materials";
import { missingPrices } from "@causey/engine/materials";
import { useMemo } from "react";
import { count } from "../show/show.ts";

interface Props {
  /** What the walkway needs; null while it is not worked out. */
  readonly needs: TakeOff | null;
  readonly prices: readonly Price[];
}

/** What the order would lack with this list, by name, before the list is taken over. */
export function MissingAfter({ needs, prices }: Props) {
  const missing = useMemo(() => (needs === null ? [] : missingPrices(needs, prices)), [needs, prices]);
  if (needs === null)
    return <p className="quiet">The order is not worked out yet: what it would lack cannot be said.</p>;
  if (missing.length === 0) return null;
  return (
    <div className="problem problem-warning" data-missing={missing.length}>
      <p className="problem-message">
        {count(missing.length, "item")} that the order needs would then be without a price:
      </p>
      <p>{missing.map((m) => m.item).join("; ")}.</p>
    </div>
  );
}
