import type { RuleProfile } from "@causey/engine/rules";
import { rulesOf } from "./rule.ts";
import { commonRules, publicRules } from "./shared.ts";

export const ukPaths: RuleProfile = {
  id: "uk-paths",
  name: "Path guidance, UK",
  where: "Guidance of a Scottish path trust for public boardwalks.",
  public: true,
  rules: [
    ...rulesOf("uk", {
      width: {
        title: "Clear width, one way with passing places",
        topic: "clear-width",
        value: 1.2,
        direction: "at-least",
        source: "paths-for-all",
        at: "1200 mm",
        status: "seen",
      },
      "two-way": {
        title: "Clear width, two ways",
        topic: "two-way-width",
        value: 1.7,
        direction: "at-least",
        when: "without passing places",
        source: "paths-for-all",
        at: "1700 mm",
        status: "seen",
      },
      gap: {
        title: "Gap between deck boards",
        topic: "board-gap",
        value: 0.01,
        direction: "about",
        source: "paths-for-all",
        at: "10 mm",
        status: "seen",
      },
      grade: {
        title: "Steepest ramp",
        topic: "grade",
        value: 1 / 12,
        direction: "at-most",
        source: "paths-for-all",
        at: "8 %, 1:12",
        status: "seen",
      },
      "post-size": {
        title: "Posts on peat",
        topic: "listed",
        value: 0.1,
        direction: "about",
        source: "fen-handbook",
        at: "100 mm, every 2 m",
        status: "seen",
      },
      "post-spacing": {
        title: "Posts on peat, apart",
        topic: "listed",
        value: 2,
        direction: "about",
        source: "fen-handbook",
        at: "100 mm, every 2 m",
        status: "seen",
      },
    }),
    ...publicRules,
    ...commonRules,
  ],
};

export const scottishGrant: RuleProfile = {
  id: "scottish-grant",
  name: "Timber boardwalk, Scottish grant",
  where: "Specification that a Scottish forestry grant pays for.",
  public: true,
  rules: [
    ...rulesOf("grant", {
      "board-length": {
        title: "Deck boards across the walkway",
        topic: "board-length",
        value: 1.6,
        direction: "at-least",
        source: "scottish-grant",
        at: "boards 1600 x 150 x 50 mm",
        status: "seen",
      },
      "board-width": {
        title: "Width of deck boards",
        topic: "listed",
        value: 0.15,
        direction: "about",
        source: "scottish-grant",
        at: "boards 1600 x 150 x 50 mm",
        status: "seen",
      },
      "board-thickness": {
        title: "Thickness of deck boards",
        topic: "listed",
        value: 0.05,
        direction: "about",
        source: "scottish-grant",
        at: "boards 1600 x 150 x 50 mm",
        status: "seen",
      },
      "post-depth": {
        title: "Posts in the ground",
        topic: "listed",
        value: 0.6,
        direction: "at-least",
        source: "scottish-grant",
        at: "100 x 100 mm, set 600 mm in",
        status: "seen",
      },
      grade: {
        title: "Level, or at most",
        topic: "grade",
        value: 1 / 12,
        direction: "at-most",
        source: "scottish-grant",
        at: "1:12",
        status: "seen",
      },
    }),
    ...publicRules,
    ...commonRules,
  ],
};

export const nzStructures: RuleProfile = {
  id: "nz-structures",
  name: "Visitor structures, New Zealand",
  where:
    "Fall heights of the building consent guidance; widths and loads stand in SNZ HB 8630, which was not read.",
  public: true,
  rules: [
    ...rulesOf("nz", {
      rail: {
        title: "Fall from which a barrier is needed",
        topic: "fall-without-rail",
        value: 1,
        direction: "less-than",
        source: "nz-consent",
        at: "a fall of 1 m or more",
        status: "seen",
      },
      consent: {
        title: "Fall up to which no building consent is needed",
        topic: "fall-without-consent",
        value: 1.5,
        direction: "at-most",
        source: "nz-consent",
        at: "a fall of up to 1.5 m",
        status: "seen",
      },
    }),
    ...publicRules,
    ...commonRules,
  ],
};
