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

/**
 * Stringers of a platform. One that is carried in two pieces has half of them in either half, and two stand face to
 * face under the middle line, with no bay between them.
 */
export function platformStringers(kit: Kit, sizes: readonly LumberSize[]): StringerLines {
  const { side_mm, pieces, stringers } = kit.platform;
  const section = sectionOf(sizes, stringers.size);
  if (pieces === 1) return stringerLines(side_mm, stringers.count, section);
  const half = stringerLines(side_mm / 2, stringers.count / 2, section);
  const moved = (by: number) => (spans: readonly Span[]) => spans.map(([a, b]): Span => [a + by, b + by]);
  const [right, left] = [moved(-side_mm / 4), moved(side_mm / 4)];
  return {
    ...half,
    lines: [...right(half.lines), ...left(half.lines)],
    bays: [...right(half.bays), ...left(half.bays)],
  };
}
