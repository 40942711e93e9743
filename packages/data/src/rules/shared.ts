import { foot, inch, rulesOf } from "./rule.ts";

/** Rules that every profile holds: they follow from the place and the load, not from who may come. */
export const commonRules = rulesOf("common", {
  "bank-setback": {
    title: "Distance of a support from a channel's edge, in bank heights",
    topic: "bank-setback",
    value: 1,
    direction: "at-least",
    source: "staff-walkways",
    at: "as far off as the bank is high; no source",
    status: "practice",
  },
  "cart-margin": {
    title: "Room beside a cart, on each side",
    topic: "cart-margin",
    value: inch(1),
    direction: "at-least",
    source: "rules-project",
    at: "1 in: nobody steers closer on a wet deck",
    status: "project",
  },
  tipping: {
    title: "Ratio of what holds a support down to what tips it",
    topic: "tipping",
    value: 1.5,
    direction: "at-least",
    source: "rules-project",
    at: "1.5",
    status: "project",
  },
});

/** Rules of every profile that lets the public in. */
export const publicRules = rulesOf("public", {
  span: {
    title: "Span from which the rules for inspecting bridges apply",
    topic: "public-span",
    value: foot(20),
    direction: "at-most",
    when: "open to the public",
    source: "nrcs-568",
    at: "spans over 20 ft open to the public: by bridge rules",
    status: "seen",
  },
});
