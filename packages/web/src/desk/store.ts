import { useRef, useSyncExternalStore } from "react";

/** A value that many parts of the page watch. */
export interface Store<T> {
  readonly get: () => T;
  readonly set: (next: T) => void;
  readonly update: (change: Partial<T>) => void;
  readonly subscribe: (listener: () => void) => () => void;
}

export function createStore<T extends object>(initial: T): Store<T> {
  let value = initial;
  const listeners = new Set<() => void>();
  const set = (next: T): void => {
    value = next;
    for (const listener of [...listeners]) listener();
  };
  return {
    get: () => value,
    set,
    update: (change) => set({ ...value, ...change }),
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** Watches one part of a store. `select` may build a new object: it is compared field by field. */
export function useStore<T extends object, S>(store: Store<T>, select: (value: T) => S): S {
  const last = useRef<S | null>(null);
  return useSyncExternalStore(store.subscribe, () => {
    const next = select(store.get());
    if (last.current !== null && sameFields(last.current, next)) return last.current;
    last.current = next;
    return next;
  });
}

function sameFields(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (!isPlainObject(a) || !isPlainObject(b)) return false;
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((k) => Object.is(a[k], b[k]));
}

const isPlainObject = (v: unknown): v is Record<string, unknown> =>
  typeof v === "object" && v !== null && Object.getPrototypeOf(v) === Object.prototype;
