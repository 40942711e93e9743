import { expect, test } from "vitest";
import { parseRoute, routeHash } from "./route.ts";

test("the address keeps page and plan, whatever the plan's id looks like", () => {
  const route = { page: "checks", plan: "tarn marsh & fen/2" } as const;
  expect(parseRoute(routeHash(route))).toEqual(route);
});

test("an unknown page or an empty address is the layout, with no plan chosen", () => {
  expect(parseRoute("")).toEqual({ page: "layout", plan: null });
  expect(parseRoute("#/elsewhere?plan=p")).toEqual({ page: "layout", plan: "p" });
});
