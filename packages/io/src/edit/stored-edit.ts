import type { Json, JsonObject } from "@causey/engine/formula";
import type { Edit } from "@causey/engine/plan";
import { kitToTwo, layoutToTwo, visitToTwo } from "../plan/migrate-to-two.ts";

/** What an edit of an earlier schema carries whole, by the key it stands under. */
const upgrades: Readonly<Record<string, (value: Json | undefined) => Json | undefined>> = {
  layout: layoutToTwo,
  visit: visitToTwo,
  kit: kitToTwo,
};

/**
 * An edit as a store kept it, brought to the schema of today: undo goes back past the day of an update. One that is
 * of today already comes out the same.
 */
export function upgradeEdit(stored: Json): Edit {
  const edit = stored as JsonObject;
  const changed = Object.entries(edit).map(([key, value]) => [key, upgrades[key]?.(value) ?? value]);
  return Object.fromEntries(changed) as Edit;
}
