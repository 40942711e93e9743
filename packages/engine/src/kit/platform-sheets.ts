import { sheetWidth } from "./deck.ts";
import type { StringerLines } from "./frame.ts";
import { panelSheet, sheetRun, sheetSpan, type Sheet, type SheetRun } from "./panels.ts";
import { place, type PlacedPiece, type Span } from "./piece.ts";
import type { Kit, MeshDeck, PanelDeck } from "./types.ts";

/** How sheets cover a platform: strips whose seams lie on stringers, cut across over rows of cross pieces. */
export interface PlatformSheets {
  /** Seams and edges across, from right to left [mm]. */
  readonly seams: readonly number[];
  /** Pieces in one strip. */
  readonly run: SheetRun;
  readonly sheet: Sheet;
  /** Sheets to buy: how many pieces come out of one, whole. */
  readonly sheets: number;
}

/** The sheet a deck is laid in. */
export const sheetOf = (deck: MeshDeck | PanelDeck): Sheet =>
  deck.kind === "mesh"
    ? { length_mm: deck.panel_length_mm, width_mm: sheetWidth(deck), gap_mm: 0 }
    : panelSheet(deck);

/**
 * The sheets of a platform. Bays wider than a sheet give no strip: `validateKit` reports that. The middle line of a
 * platform in two pieces is always a seam.
 */
export function platformSheetPlan(
  kit: Kit,
  deck: MeshDeck | PanelDeck,
  lines: StringerLines,
): PlatformSheets {
  const { side_mm: side, pieces } = kit.platform;
  const sheet = sheetOf(deck);
  const inner = lines.lines.slice(1, -1).map(([a, b]) => (a + b) / 2);
  const seams =
    pieces === 1
      ? strips([-side / 2, ...inner, side / 2], sheet.width_mm)
      : [
          ...strips([-side / 2, ...inner.filter((y) => y < -lines.thickness_mm), 0], sheet.width_mm),
          ...strips([0, ...inner.filter((y) => y > lines.thickness_mm), side / 2], sheet.width_mm).slice(1),
        ];
  const run = sheetRun(sheet, side);
  const perSheet =
    Math.max(1, Math.floor(sheet.length_mm / run.length_mm + 1e-6)) *
    Math.max(1, Math.floor(sheet.width_mm / widestStrip(seams) + 1e-6));
  return { seams, run, sheet, sheets: Math.ceil(((seams.length - 1) * run.count) / perSheet) };
}

export const widestStrip = (seams: readonly number[]): number =>
  Math.max(...seams.slice(1).map((y, i) => y - seams[i]!));

/** Joins neighbouring bays into strips as wide as a sheet allows; `marks` are places where a seam may lie. */
function strips(marks: readonly number[], width_mm: number): number[] {
  const seams = [marks[0]!];
  for (let i = 1; i < marks.length; i++)
    if (i === marks.length - 1 || marks[i + 1]! - seams.at(-1)! > width_mm + 0.05) seams.push(marks[i]!);
  return seams;
}

/** Sheets of a platform as boxes; at an inner seam each panel ends half a gap short of it. */
export function platformSheets(
  kit: Kit,
  deck: MeshDeck | PanelDeck,
  lines: StringerLines,
  thickness_mm: number,
): PlacedPiece[] {
  const { seams, run, sheet } = platformSheetPlan(kit, deck, lines);
  const role = deck.kind === "mesh" ? "mesh panel" : "deck panel";
  const z: Span = [lines.depth_mm, lines.depth_mm + thickness_mm];
  const half = kit.platform.side_mm / 2;
  const short = (y: number): number => (Math.abs(y) < half - 0.01 ? sheet.gap_mm / 2 : 0);
  return seams.slice(1).flatMap((end, strip) => {
    const start = seams[strip]!;
    const y: Span = [start + short(start), end - short(end)];
    return Array.from({ length: run.count }, (_, k) =>
      place(role, null, run.length_mm, sheetSpan(run, sheet.gap_mm, k), y, z),
    );
  });
}
