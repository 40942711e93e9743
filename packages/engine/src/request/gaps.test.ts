import { describe, expect, test } from "vitest";
import { samplePlan } from "../../test/plan/sample-plan.ts";
import type { Plan } from "../plan/index.ts";
import { requestGaps } from "./gaps.ts";

const told: Plan = {
  ...samplePlan(),
  request: {
    requester: "A. Reed",
    organisation: "Station",
    contact: "",
    purpose: "Traps",
    received: null,
    wet_feet_ok: false,
    options: [{ kind: "no-structure", status: "rejected", reason: "Ruts." }],
  },
};
const places = (plan: Plan): string[] => requestGaps(plan).map((g) => g.place);

describe("what an access request leaves open", () => {
  test("a request that tells everything leaves nothing open", () => {
    const visits = told.visits.map((v) => ({ ...v, to: "2028-10-01", cart: null }));
    expect(places({ ...told, visits })).toEqual([]);
  });

  test("a visit without a last day is flagged, and says why that matters", () => {
    const visits = told.visits.map((v) => ({ ...v, to: null, cart: null }));
    const gaps = requestGaps({ ...told, visits });
    expect(gaps[0]).toMatchObject({ place: "visits[0].to" });
    expect(gaps[0]!.why).toContain("removal");
  });

  test("a cart without its size, a load given dry, no answer to doing without a structure", () => {
    const cart = {
      name: "Cart",
      empty_kg: 20,
      load_kg: 50,
      wet_kg: 0,
      width_mm: null,
      length_mm: 1200,
      track_mm: 450,
      axle_distance_mm: 0,
      axles: 1,
      wheel_width_mm: 50,
      wheel_contact_mm: 60,
    } as const;
    const visits = told.visits.slice(0, 1).map((v) => ({ ...v, to: "2028-10-01", cart }));
    const request = { ...told.request, options: [], requester: "" };
    expect(places({ ...told, visits, request })).toEqual([
      "request.requester",
      "visits[0].cart.width_mm",
      "visits[0].cart.wet_kg",
      "request.options",
    ]);
  });

  test("no visit at all", () => expect(places({ ...told, visits: [] })).toEqual(["visits"]));
});
