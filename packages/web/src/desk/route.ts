import { createStore, type Store } from "./store.ts";

/** The pages that exist, in the order of the job, each under the word of its group. */
export const pages = [
  { id: "request", title: "Request", group: "Plan" },
  { id: "site", title: "Site", group: "Plan" },
  { id: "water", title: "Water", group: "Plan" },
  { id: "layout", title: "Layout", group: "Plan" },
  { id: "kit", title: "Kit", group: "Prove" },
  { id: "checks", title: "Checks", group: "Prove" },
  { id: "materials", title: "Materials", group: "Build" },
  { id: "drawings", title: "Drawings", group: "Papers" },
] as const;

export type PageId = (typeof pages)[number]["id"];

export interface Route {
  readonly page: PageId;
  readonly plan: string | null;
}

/** `#/checks?plan=tarn-marsh`: the address keeps page and plan, so a reload shows the same. */
export function parseRoute(hash: string): Route {
  const [path = "", query = ""] = hash.replace(/^#\/?/, "").split("?");
  const page = pages.find((p) => p.id === path)?.id ?? "layout";
  return { page, plan: new URLSearchParams(query).get("plan") };
}

export const routeHash = ({ page, plan }: Route): string =>
  `#/${page}${plan === null ? "" : `?${new URLSearchParams({ plan }).toString()}`}`;

export interface Router extends Store<Route> {
  readonly go: (change: Partial<Route>) => void;
}

/** Follows and sets the address of a window. */
export function createRouter(view: Window): Router {
  const store = createStore<Route>(parseRoute(view.location.hash));
  view.addEventListener("hashchange", () => store.set(parseRoute(view.location.hash)));
  return {
    ...store,
    go: (change) => {
      view.location.hash = routeHash({ ...store.get(), ...change });
    },
  };
}
