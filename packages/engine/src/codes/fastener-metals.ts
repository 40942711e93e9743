import type { Source } from "../formula/index.ts";
import type { FastenerJoint, GuidanceRow } from "./fastener-contract.ts";

const memory: Source = {
  id: "fastener-metals",
  title: "Fasteners in treated wood and near salt water (FEMA P-499; from memory)",
  status: "memory",
};

const words = {
  "stainless-316":
    "Stainless 316 stands in treated wood, fresh water and salt water. Do not pair it with zinc-coated plates.",
  "stainless-304": "Stainless 304 stands in treated wood and fresh water; salt water pits it: there use 316.",
  "hot-dip-zinc":
    "Hot-dip zinc stands in treated wood and fresh water for years; copper in the wood and salt water shorten its life. Do not pair it with stainless plates.",
  "plain-zinc":
    "Plain zinc plating does not last outdoors, and copper in treated wood eats it: use hot-dip zinc or stainless.",
  none: "Bare steel rusts in wet wood within a few seasons and stains it: use hot-dip zinc or stainless.",
} as const;

/** What the fastener's metal can and cannot stand. */
export function metalRows({ fastener: f }: FastenerJoint): readonly GuidanceRow[] {
  const metal = { what: "Metal", size_m: null, how: words[f.coating], source: memory };
  if (f.coating !== "stainless-304" && f.coating !== "stainless-316") return [metal];
  const how = "Stainless screws are softer than hardened ones: bore first, or they twist off in dense wood.";
  return [metal, { what: "Driving", size_m: null, how, source: memory }];
}
