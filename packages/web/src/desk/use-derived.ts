import { useDeferredValue } from "react";
import type { DeriveState } from "./derive-session.ts";
import { useDesk } from "./desk.ts";
import { useStore } from "./store.ts";

/** The state of the results, taken over in slices: a new layout of many parts does not hold up the hand. */
export function useDerived(): DeriveState {
  const { derive } = useDesk();
  return useDeferredValue(useStore(derive, (state) => state));
}
