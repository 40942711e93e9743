import { createStore, type Store } from "./store.ts";

/** What the user points at and what is chosen: one state for map, strip and tables. */
export interface Selection {
  /** Tag of the chosen part. */
  readonly part: string | null;
  /** Tags of the parts under the pointer, or of the row under it. */
  readonly pointed: readonly string[];
  readonly zone: string | null;
  readonly check: string | null;
}

export interface SelectionStore extends Store<Selection> {
  readonly choosePart: (part: string | null) => void;
  readonly point: (parts: readonly string[]) => void;
  readonly chooseZone: (zone: string | null) => void;
  readonly chooseCheck: (check: string | null) => void;
}

export const nothing: Selection = { part: null, pointed: [], zone: null, check: null };

export function createSelection(): SelectionStore {
  const store = createStore<Selection>(nothing);
  return {
    ...store,
    choosePart: (part) => store.update({ part }),
    point: (pointed) => {
      if (pointed.join() !== store.get().pointed.join()) store.update({ pointed });
    },
    chooseZone: (zone) => store.update({ zone }),
    chooseCheck: (check) => store.update({ check }),
  };
}
