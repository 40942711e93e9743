import type { RuleProfile } from "@causey/engine/rules";
import { foot, inch, rulesOf } from "./rule.ts";
import { commonRules } from "./shared.ts";

export const staffAccess: RuleProfile = {
  id: "staff-access",
  name: "Staff access",
  where:
    "Trained staff and researchers with the loads asked for. No law of paths binds in general; the values are common practice.",
  public: false,
  rules: [
    ...rulesOf("staff", {
      width: {
        title: "Clear width, single file",
        topic: "clear-width",
        value: inch(16),
        direction: "at-least",
        source: "staff-walkways",
        at: "16 to 24 in in single file, 30 to 36 in with a hand cart",
        status: "practice",
      },
      opening: {
        title: "Deck openings, so that no foot slips in",
        topic: "opening",
        value: inch(2),
        direction: "at-most",
        source: "bog-bridge-club",
        at: "1 to 2 in between planks; the wider one",
        status: "seen",
      },
      gap: {
        title: "Gap between boards, as commonly built",
        topic: "listed",
        value: inch(1),
        direction: "at-most",
        source: "staff-walkways",
        at: "1/2 to 1 in",
        status: "practice",
      },
      rail: {
        title: "Fall from which a rail is needed",
        topic: "fall-without-rail",
        value: foot(4),
        direction: "less-than",
        source: "osha-1910-23",
        at: "runway 4 ft or more over ground; taken over for staff everywhere",
        status: "practice",
      },
      "rail-height": {
        title: "Height of that rail",
        topic: "rail-height",
        value: inch(42),
        direction: "at-least",
        source: "fs-rails",
        at: "42 in",
        status: "practice",
      },
      curb: {
        title: "Fall from which a curb is needed where there is no rail",
        topic: "fall-without-curb",
        value: inch(12),
        direction: "at-most",
        source: "staff-walkways",
        at: "ground-laid walkways, to 12 in, go without",
        status: "practice",
      },
    }),
    ...commonRules,
  ],
};

export const workplace: RuleProfile = {
  id: "osha-workplace",
  name: "Workplace, US (OSHA 1910)",
  where:
    "US workplaces of general industry; whether a field walkway is one is for the employer's safety officer to say.",
  public: false,
  rules: [
    ...rulesOf("osha", {
      rail: {
        title: "Fall from which a runway needs a standard rail",
        topic: "fall-without-rail",
        value: foot(4),
        direction: "less-than",
        source: "osha-1910-23",
        at: "4 ft or more over ground: both open sides",
        status: "seen",
      },
      "rail-height": {
        title: "Height of that rail",
        topic: "rail-height",
        value: inch(42),
        direction: "at-least",
        when: "42 in, 3 in more or less",
        source: "osha-1910-23",
        at: "standard railing; from memory",
        status: "memory",
      },
    }),
    ...commonRules,
  ],
};
