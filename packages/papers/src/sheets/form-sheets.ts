import type { Block } from "../text/index.ts";
import { textSheet } from "./text-sheet.ts";

const line = (label: string, lines = 1): Block => ({ kind: "blank", label, lines });

/** Blank rows of a table to write into; the codes in the first column are keyed back with the rows. */
const blankTable = (heads: readonly string[], prefix: string, count: number, first = 1): Block => ({
  kind: "table",
  toFill: true,
  columns: heads.map((head, i) => ({ head, share: i === 0 ? 0.8 : 1.4 })),
  rows: Array.from({ length: count }, (_, i) => [`${prefix}${i + first}`, ...heads.slice(1).map(() => " ")]),
});

/** The form that researchers fill in; its questions stand in the order of the Request page. */
export const requestForm = textSheet(
  {
    id: "request-form",
    title: "Access request",
    about: "A blank form for researchers; every question has its place on the Request page.",
  },
  ({ results }) => [
    {
      kind: "text",
      text: 'Please answer every line; write "not known" where you do not know. One row for each kind of visit.',
    },
    { kind: "head", text: "Who asks, and for what" },
    line("1  Name"),
    line("2  Organisation"),
    line("3  How to reach you"),
    line("4  Day of this request"),
    line("5  Purpose and need", 3),
    line("6  Could it be done without a structure, by boat, or in another season? Why not?", 3),
    line("7  Are wet feet at high water accepted? (yes / no)"),
    { kind: "head", text: "Plots" },
    {
      kind: "text",
      text: `Coordinates in ${results.crs}. Marked with a phone or a GPS receiver instead? Send its file (GPX or KML) along and leave them open.`,
    },
    blankTable(["Plot", "Name", "East", "North", "Keep off, all round", "Reached from"], "P", 5),
    { kind: "page" },
    { kind: "head", text: "Visits" },
    blankTable(
      ["Visit", "Plots", "Times a year", "People", "Mass, with pack", "First day", "Last day"],
      "V",
      8,
    ),
    { kind: "head", text: "Carts" },
    blankTable(
      [
        "Visit",
        "Empty",
        "Load, dry",
        "Mud and water",
        "Width x length",
        "Wheels apart",
        "Wheel width",
        "Axles",
      ],
      "V",
      6,
    ),
  ],
);

/** The number after the highest that a code of the plan carries: a second day in the field writes over nothing. */
const nextCode = (prefix: string, ids: readonly string[]): number =>
  ids.reduce((next, id) => {
    const digits = id.startsWith(prefix) ? id.slice(prefix.length) : "";
    return /^\d{1,6}$/.test(digits) ? Math.max(next, Number(digits) + 1) : next;
  }, 1);

/** Blank sheets for the survey, whose rows are read back as points, stations and strengths. */
export const fieldSheets = textSheet(
  {
    id: "field-sheets",
    title: "Field sheet",
    about: "Blank rows for stations, strengths and check shots; the codes are keyed back.",
  },
  ({ plan, results }) => [
    {
      kind: "rows",
      rows: [
        ["Site", plan.site_name],
        ["Coordinates", results.crs],
        ["Heights on", results.datum],
        ["Lengths in", plan.units === "us" ? "feet and decimals" : "metres"],
        ["Strength in", "kPa as read; vane as diameter x height in mm"],
      ],
    },
    line("Surveyor, day, instrument"),
    line("Bench mark, its height, closing reading"),
    { kind: "head", text: "Stations: ground level, probe, water" },
    blankTable(
      ["Code", "East", "North", "Ground level", "Probe sank", "Water level", "Photo"],
      "T",
      16,
      nextCode(
        "T",
        plan.survey.stations.map((s) => s.id),
      ),
    ),
    { kind: "page" },
    { kind: "head", text: "Strength of the ground" },
    blankTable(
      ["Code", "East", "North", "Depth", "Peak", "Remoulded", "Vane"],
      "R",
      8,
      plan.ground.readings.length + 1,
    ),
    { kind: "head", text: "Check shots on the ground itself" },
    blankTable(
      ["Code", "East", "North", "Height", "Accuracy"],
      "C",
      8,
      nextCode(
        "C",
        plan.survey.check_shots.map((s) => s.id),
      ),
    ),
  ],
);
