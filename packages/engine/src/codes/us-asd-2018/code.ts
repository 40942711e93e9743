import type { DesignCode } from "../contract.ts";
import { findMember } from "./member.ts";
import { screwLateral } from "./screws.ts";
import { nds } from "./sources.ts";
import { strength } from "./strength.ts";

/** US allowable stress design of sawn lumber, NDS 2018. */
export const usAsd2018: DesignCode = {
  id: "us-asd-2018",
  title: "US allowable stress design (NDS 2018)",
  safety: "allowable-stress",
  combinations: [
    {
      id: "dead-and-live",
      title: "Dead and live load",
      dead: 1,
      live: 1,
      source: {
        id: "asce-7-16",
        title: "ASCE 7-16, Minimum Design Loads",
        at: "2.4.1, combination 2: D + L",
        status: "memory",
      },
    },
  ],
  rule: (at) => nds(at, "memory"),
  member: findMember,
  strength,
  screws: screwLateral,
};
