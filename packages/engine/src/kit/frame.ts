import type { LumberSize } from "../materials/tables.ts";
import type { Span } from "./piece.ts";
import { sectionOf } from "./section.ts";
import type { Kit } from "./types.ts";

/** Stringers across the part, from right to left, and how deep they stand on edge [mm]. */
export interface StringerLines {
  readonly lines: readonly Span[];
  /** Clear spaces between neighbouring stringers. */
  readonly bays: readonly Span[];
  readonly depth_mm: number;
  readonly thickness_mm: number;
}

/** Evenly spaced stringers on edge, the outer two flush with the overall width. */
export function stringerLines(
  overall_mm: number,
  count: number,
  section: { readonly thickness_mm: number; readonly width_mm: number },
): StringerLines {
  const t = section.thickness_mm;
  const pitch = (overall_mm - t) / (count - 1);
  const lines = Array.from({ length: count }, (_, i): Span => {
    const y0 = -overall_mm / 2 + i * pitch;
    return [y0, y0 + t];
  });
  const bays = lines.slice(1).map((line, i): Span => [lines[i]![1], line[0]]);
  return { lines, bays, depth_mm: section.width_mm, thickness_mm: t };
}

export const moduleStringers = (kit: Kit, sizes: readonly LumberSize[]): StringerLines =>
  stringerLines(kit.stringers.overall_mm, kit.stringers.count, sectionOf(sizes, kit.stringers.size));

export const platformStringers = (kit: Kit, sizes: readonly LumberSize[]): StringerLines =>
  stringerLines(
    kit.platform.side_mm,
    kit.platform.stringers.count,
    sectionOf(sizes, kit.platform.stringers.size),
  );
