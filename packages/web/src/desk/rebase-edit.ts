import type { Edit, Plan } from "@causey/engine/plan";

/**
 * An edit that replaces a whole section, made anew for a plan that has moved on since: what it changed of `seen`, the
 * plan on the screen when it was made, is changed in `now`, and what earlier edits changed stays. Two fields of one form
 * that are filled one right after the other would else undo each other. Where both changed one value, the edit wins.
 */
export function rebaseEdit(edit: Edit, seen: Plan, now: Plan): Edit {
  if (seen === now) return edit;
  switch (edit.type) {
    case "set-section": {
      const value = merge(seen[edit.section], edit.value, now[edit.section]);
      return { ...edit, value } as Edit;
    }
    case "set-layout":
      return { ...edit, layout: merge(seen.layout, edit.layout, now.layout) };
    case "set-weights":
      return { ...edit, weights: merge(seen.layout.weights, edit.weights, now.layout.weights) };
    case "set-kit":
      return { ...edit, kit: merge(seen.kit, edit.kit, now.kit) };
    case "set-visit": {
      const of = (plan: Plan) => plan.visits.find((v) => v.id === edit.visit.id);
      return { ...edit, visit: merge(of(seen), edit.visit, of(now)) };
    }
    default:
      return edit;
  }
}

/** Three ways: `mine` was made of `base`, which has become `theirs` in the meantime. */
function merge<T>(base: unknown, mine: T, theirs: unknown): T {
  if (isSame(mine, base)) return theirs as T;
  if (isSame(theirs, base)) return mine;
  if (isList(base) && isList(mine) && isList(theirs)) return mergeLists(base, mine, theirs) as T;
  if (isRecord(base) && isRecord(mine) && isRecord(theirs)) return mergeRecords(base, mine, theirs) as T;
  return mine;
}

type Fields = Readonly<Record<string, unknown>>;

function mergeRecords(base: Fields, mine: Fields, theirs: Fields): Fields {
  const keys = new Set([...Object.keys(theirs), ...Object.keys(mine)]);
  const merged: Record<string, unknown> = {};
  for (const key of keys) {
    const wasTaken = key in base && !(key in mine);
    const wasTakenByThem = key in base && !(key in theirs) && isSame(mine[key], base[key]);
    if (!wasTaken && !wasTakenByThem) merged[key] = merge(base[key], mine[key], theirs[key]);
  }
  return merged;
}

/** Rows by their ids, and words by themselves; other lists are taken whole, for their order is what they say. */
function mergeLists(
  base: readonly unknown[],
  mine: readonly unknown[],
  theirs: readonly unknown[],
): readonly unknown[] {
  if (![base, mine, theirs].every((list) => list.every((item) => idOf(item) !== null))) return mine;
  const [was, is] = [byId(base), byId(theirs)];
  const mineIds = byId(mine);
  const kept = mine.flatMap((item) => {
    const id = idOf(item)!;
    if (is.has(id)) return [merge(was.get(id), item, is.get(id))];
    return was.has(id) && isSame(item, was.get(id)) ? [] : [item];
  });
  const fresh = theirs.filter((item) => !was.has(idOf(item)!) && !mineIds.has(idOf(item)!));
  return [...kept, ...fresh];
}

const byId = (list: readonly unknown[]): ReadonlyMap<string, unknown> =>
  new Map(list.map((item) => [idOf(item)!, item]));

function idOf(item: unknown): string | null {
  if (typeof item === "string") return item;
  return isRecord(item) && typeof item["id"] === "string" ? item["id"] : null;
}

const isList = (value: unknown): value is readonly unknown[] => Array.isArray(value);
const isRecord = (value: unknown): value is Fields =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Plain data that says the same, whatever the order of its entries. */
function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (isList(a) && isList(b)) return a.length === b.length && a.every((item, i) => isSame(item, b[i]));
  if (!isRecord(a) || !isRecord(b)) return false;
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((k) => k in b && isSame(a[k], b[k]));
}
