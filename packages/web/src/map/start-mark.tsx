import type { Start } from "@causey/engine/site";
import type { XY } from "./view.ts";

/** A triangle whose point stands on the start. */
export function StartMark({ start, at }: { readonly start: Start; readonly at: XY }) {
  return (
    <path
      className="start-mark"
      data-start={start.id}
      transform={`translate(${at[0]} ${at[1]})`}
      d="M-9-15H9L0 0Z"
      pointerEvents="none"
    />
  );
}
