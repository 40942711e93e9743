import { createContext, useContext } from "react";
import type { PlanStore } from "../api/types.ts";
import type { PhotoSession } from "../map/photo-session.ts";
import type { TerrainSession } from "../map/terrain-session.ts";
import type { DeriveSession } from "./derive-session.ts";
import type { FileShelf } from "./file-shelf.ts";
import type { PlanSession } from "./plan-session.ts";
import type { Router } from "./route.ts";
import { nothing, type SelectionStore } from "./selection.ts";

/** Everything a part of the page may reach. Made once in `main.tsx`. */
export interface Desk {
  readonly plans: PlanStore;
  readonly plan: PlanSession;
  readonly derive: DeriveSession;
  /** Files beside the plan, each content fetched once. */
  readonly shelf: FileShelf;
  readonly terrain: TerrainSession;
  readonly photo: PhotoSession;
  readonly selection: SelectionStore;
  readonly router: Router;
}

export const DeskContext = createContext<Desk | null>(null);

export function useDesk(): Desk {
  const desk = useContext(DeskContext);
  if (!desk) throw new Error("A part of the page stands outside the desk.");
  return desk;
}

/** Ties the sessions together: the address chooses the plan, each new state of the plan starts the pipeline. */
export function connectDesk(desk: Desk): void {
  let seen: unknown = null;
  desk.plan.subscribe(() => {
    const { snapshot } = desk.plan.get();
    if (snapshot === seen) return;
    seen = snapshot;
    if (snapshot) void desk.derive.run(snapshot);
  });
  const follow = (): void => {
    const { plan } = desk.router.get();
    if (plan === null) void openFirst(desk);
    else if (plan !== desk.plan.get().id) openPlan(desk, plan);
  };
  desk.router.subscribe(follow);
  follow();
}

const LAST_PLAN = "causey.last-plan";

function openPlan(desk: Desk, id: string): void {
  desk.derive.clear();
  desk.selection.set(nothing);
  localStorage.setItem(LAST_PLAN, id);
  void desk.plan.open(id);
}

/** With no plan in the address: the one opened last, else the first of the list. Also the way back after trouble. */
export async function openFirst(desk: Desk): Promise<void> {
  const id = await desk.plan.first(localStorage.getItem(LAST_PLAN));
  if (id !== null) desk.router.go({ plan: id });
}
