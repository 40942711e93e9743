import type { Plan, Results } from "@causey/engine/plan";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { expect, test } from "vitest";
import { SurveyFindings } from "./survey-results.tsx";
import { bandFigure } from "./survey-words.ts";

type Survey = Results["survey"];
const plan = {
  units: "metric",
  money: { currency: "EUR" },
  survey: { benchmarks: [{ id: "B1", name: "Bolt" }] },
} as unknown as Plan;
const step = {
  id: "survey.height-band",
  title: "Band",
  symbol: "k",
  text: "t * s",
  inputs: [],
  value: 0.11,
  unit: "m",
  source: { id: "one", title: "One", status: "memory" },
} as const;
const survey: Survey = {
  terrain: {
    kind: "grid",
    n: 2,
    median_m: 0.06,
    mean_m: 0.07,
    sd_m: 0.02,
    lowered_m: 0,
    note: "The terrain reads 0.060 m high.",
    shots: [
      { id: "C1", x: 0, y: 0, residual_m: 0.05, outlier: false },
      { id: "C2", x: 1, y: 0, residual_m: 0.4, outlier: true },
    ],
    elsewhere: ["C7"],
    off_terrain: [],
  },
  band_m: 0.11,
  band_working: [step, step],
  unchecked_habitats: [{ zone: "reed", name: "Reed bed" }],
  closure: {
    closures: [{ benchmark: "B1", shot: "C7", difference_m: 0.03, closes: false, mark_m: 2, shot_m: 2.03 }],
    rms_m: 0.03,
    not_visited: [],
    other_datum: [],
  },
  shear: [
    {
      x: 5,
      y: 6,
      readings: [
        { depth_m: 0.3, su_kpa: 6, remoulded_kpa: 2, sensitivity: 3, vane_mm: "55 x 110", source: "vane" },
        { depth_m: 0.6, su_kpa: 9, remoulded_kpa: null, sensitivity: null, vane_mm: null, source: "vane" },
      ],
      least_su_kpa: 6,
      sensitivity: 3,
    },
  ],
  shear_working: [],
  stations: [
    {
      id: "T1",
      x: 0,
      y: 0,
      ground_m: 2,
      probe_m: 1.5,
      water_m: null,
      date: null,
      along_m: 0,
      firm_m: 0.5,
      water_over_m: null,
    },
  ],
  points: null,
  accuracy_m: null,
  date: "2026-07-20",
  cautions: ["The survey does not close on B1."],
};
const page = (some: Partial<Survey> = {}): string =>
  renderToStaticMarkup(createElement(SurveyFindings, { survey: { ...survey, ...some }, plan }));
/** Cells of the rows whose head holds the given text. */
const rowsOf = (html: string, head: string): string[][] =>
  [...html.matchAll(/<tr[^>]*>(.*?)<\/tr>/g)]
    .map((row) =>
      [...row[1]!.matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/g)].map((cell) => cell[1]!.replace(/<[^>]*>/g, "")),
    )
    .filter((cells) => cells[0] === head);

test("every shot, mark, reading and station has its row; what was not read says so", () => {
  const html = page();
  expect(rowsOf(html, "C2")[0]).toEqual(["C2", "400 mm", "far from the others; counted all the same"]);
  expect(rowsOf(html, "Bolt")[0]!.at(-1)).toBe("no");
  expect(rowsOf(html, "5.0, 6.0")[0]!.slice(2, 5)).toEqual(["6.0 kPa", "2.0 kPa", "3.0"]);
  expect(rowsOf(html, "same place")[0]!.slice(3, 5)).toEqual(["not read", "not known"]);
  expect(rowsOf(html, "T1")[0]!.at(-1)).toBe("not read");
  expect(html).toContain("<b>Reed bed</b> has no check shot");
  expect(html).toContain("held apart: C7");
  expect(html).toContain("The survey does not close on B1.");
});

test("points that stand away from their neighbours are listed by name and line", () => {
  const outlier = {
    id: "17",
    line: 18,
    x: 0,
    y: 0,
    z_m: 3.4,
    residual_m: 2.1,
    sigmas: 42,
    accuracy_m: 0.02,
    date: "2026-07-20",
  };
  const points = {
    n: 40,
    sigma_m: 0.02,
    not_judged: 0,
    merged: 0,
    accuracy: null,
    dates: null,
    left_out: 2,
    outlier_count: 1,
    outliers: [outlier],
  };
  const html = page({ points });
  const [row] = rowsOf(html, "17");
  expect(row!.slice(0, 2)).toEqual(["17", "18"]);
  expect(row!.slice(-2)).toEqual(["20 mm", "2026-07-20"]);
  expect(html).toContain("40 points, 2 rows of the file left out");
});

test("a band that is not known is said to be so, and has no working to open", () => {
  const html = page({ band_m: null, terrain: null });
  expect(html).toContain("not known");
  expect(html).not.toContain("show the working");
  expect(bandFigure({ ...survey, band_m: null })).toBeNull();
});

test("the band is a figure with its working, each source once", () => {
  const figure = bandFigure(survey)!;
  expect([figure.value, figure.working.length, figure.sources.length]).toEqual([0.11, 2, 1]);
});
