import type { RouteFacts } from "@causey/engine/layout";
import { partLength, shower } from "../drawings/show.ts";
import type { Block } from "../text/index.ts";
import { textSheet } from "./text-sheet.ts";

/** The list a crew with tapes sets the walkway out by. */
export const settingOutSheet = textSheet(
  {
    id: "setting-out",
    title: "Setting-out",
    about:
      "Every joint by baseline, offset and two ties that a tape can measure; diagonals of the platforms.",
  },
  ({ results, plan }) => {
    const out = results.setting_out;
    const show = shower(plan);
    const long = (metres: number): string => partLength(metres, plan);
    return [
      {
        kind: "text",
        text: `Work from the start on. Hold the tape along the baseline, then square to it: an offset is to the right as one walks. Check each joint by its two ties to places set out before. Supports may be off by ${long(plan.layout.slop_mm / 1000)} either way. The list closes to ${(out.closing_error_m * 1000).toFixed(1)} mm.`,
      },
      {
        kind: "table",
        columns: [
          { head: "Baseline", share: 1.4 },
          { head: "Begins at", share: 2 },
          { head: "Heading", share: 2 },
        ],
        rows: out.lines.map((l) => [l.id, `joint ${l.from}`, `${l.heading_deg.toFixed(1)}° from grid north`]),
      },
      {
        kind: "table",
        columns: [
          { head: "Joint", share: 1.1 },
          { head: "Line", share: 0.8 },
          { head: "Along line", share: 2, align: "end" },
          { head: "Offset", share: 1.7, align: "end" },
          { head: "Tie", share: 2.3 },
          { head: "Second tie", share: 2.3 },
          { head: "Support, height", share: 3 },
          { head: "Deck", share: 1.7, align: "end" },
        ],
        rows: out.joints.map((j) => [
          j.joint,
          j.line,
          long(j.distance_m),
          Math.abs(j.offset_m) < 5e-4 ? "on the line" : long(j.offset_m),
          tie(j.ties[0], long),
          tie(j.ties[1], long),
          `${plan.kit.supports.find((s) => s.id === j.support)?.name ?? j.support}, ${long(j.support_height_m)}`,
          show(j.deck_m, "m"),
        ]),
      },
      ...(out.diagonals.length === 0
        ? []
        : ([
            { kind: "head", text: "Diagonals of the platforms: alike when they lie square" },
            {
              kind: "table",
              columns: [
                { head: "Platform", share: 1 },
                { head: "From", share: 1 },
                { head: "To", share: 1 },
                { head: "Distance", share: 1.5, align: "end" },
              ],
              rows: out.diagonals.map((d) => [d.part, d.from, d.to, long(d.distance_m)]),
            },
          ] satisfies Block[])),
      ...signBlocks(results.route.dead_ends, long),
      { kind: "head", text: "Coordinates" },
      {
        kind: "table",
        columns: [
          { head: "Joint", share: 1 },
          { head: "East", share: 2, align: "end" },
          { head: "North", share: 2, align: "end" },
          { head: "Ground", share: 1.5, align: "end" },
          { head: "Along its branch", share: 2, align: "end" },
        ],
        rows: out.joints.map((j) => [
          j.joint,
          `${j.x.toFixed(3)} m`,
          `${j.y.toFixed(3)} m`,
          show(j.ground_m, "m"),
          `${j.branch}, ${long(j.along_m)}`,
        ]),
      },
    ];
  },
);

/** Where a sign names the last place to turn: accessible trails ask for it (ABA 1017.4). */
function signBlocks(ends: RouteFacts["dead_ends"], long: (metres: number) => string): Block[] {
  if (ends.length === 0) return [];
  return [
    { kind: "head", text: "Dead ends: a sign at the last place to turn (asked for on accessible trails)" },
    {
      kind: "table",
      columns: [
        { head: "Sign at", share: 1 },
        { head: "Last place to turn", share: 2 },
        { head: "Dead end at", share: 1.2 },
        { head: "Plot", share: 1.5 },
        { head: "From the sign to the end", share: 2, align: "end" },
      ],
      rows: ends.map((e) => [
        `joint ${e.sign_at}`,
        e.last_turn === null ? "the start" : `platform ${e.last_turn}`,
        `joint ${e.joint}`,
        e.plots.join(", "),
        e.back_m > 0 ? long(e.back_m) : "ends on the platform",
      ]),
    },
  ];
}

const tie = (
  t: { readonly to: string; readonly distance_m: number } | undefined,
  long: (metres: number) => string,
): string => (t ? `${t.to} ${long(t.distance_m)}` : "");
