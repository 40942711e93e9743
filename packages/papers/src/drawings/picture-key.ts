import { words, type Box, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import { wrap } from "../text/index.ts";
import { lineSample, plotSample, SAMPLE, startSample, zoneEntry, type Entry } from "./legend.ts";
import { areSeen } from "./plan-zones.ts";
import type { SheetView } from "./view.ts";
import { zoneSymbols } from "./zone-look.ts";

/** Least width of the key beside a picture: one column and the scale bar [mm]. */
export const LEAST_KEY = 48;
/** A wider key has as many columns as these go into it [mm]. */
const COLUMN = 40;
const SIZE = 1.9;
const LINE = 2.4;
const HEAD = 5;
/** Scale in words and the bar, at the foot of the key [mm]. */
const FOOT = 12;

/** What occurs in the picture, and no more. */
export function keyEntries({ plan, results }: PaperContext, view: SheetView): Entry[] {
  return [
    ...(results.layout.parts.length > 0
      ? [
          {
            words: "line of the walkway",
            sample: (x: number, y: number) => lineSample(x, y, { ink: "ink", width: 0.9 }),
          },
        ]
      : []),
    ...(plan.starts.length > 0 ? [{ words: "start", sample: startSample }] : []),
    ...(plan.plots.length > 0 ? [{ words: "plot; dashed circle: keep off", sample: plotSample }] : []),
    ...zoneSymbols(plan.zones)
      .filter((symbol) => areSeen(symbol.zones, view))
      .map(zoneEntry),
  ];
}

const columnsOf = (width: number): number => Math.max(1, Math.floor(width / COLUMN));

interface Row {
  readonly lines: readonly string[];
  readonly height: number;
  readonly sample: Entry["sample"];
}

function rowsOf(entries: readonly Entry[], width: number): Row[] {
  const room = width / columnsOf(width) - SAMPLE - 5;
  return entries.map(({ words: text, sample }) => {
    const lines = wrap(text, room, SIZE);
    return { lines, sample, height: Math.max(4.6, lines.length * LINE + 1.4) };
  });
}

/** Height that the key needs at this width, its scale and bar with it [mm]. */
export function keyHeight(entries: readonly Entry[], width: number): number {
  const rows = rowsOf(entries, width);
  const whole = rows.reduce((sum, r) => sum + r.height, 0);
  const most = rows.reduce((a, r) => Math.max(a, r.height), 0);
  const columns = columnsOf(width);
  return HEAD + FOOT + (columns === 1 ? whole : whole / columns + most);
}

/** The key, column after column; where the height does not hold all of it, it says where the rest stands. */
export function keyShapes(entries: readonly Entry[], box: Box, scale: string): Shape[] {
  const columns = columnsOf(box.width);
  const bottom = box.y + box.height - FOOT;
  const shapes: Shape[] = [words("The line", [box.x, box.y + 3], { weight: "semibold", size: 2.6 })];
  let [column, y, placed] = [0, box.y + HEAD, 0];
  for (const row of rowsOf(entries, box.width)) {
    if (y + row.height > bottom && column + 1 < columns) [column, y] = [column + 1, box.y + HEAD];
    if (y + row.height > bottom) break;
    const x = box.x + (column * box.width) / columns;
    shapes.push(
      ...row.sample(x, y),
      ...row.lines.map((text, i) => words(text, [x + SAMPLE + 2, y + 2.6 + i * LINE], { size: SIZE })),
    );
    y += row.height;
    placed++;
  }
  const more = entries.length - placed;
  const rest = more > 0 ? `; ${more} more signs: legend of the site plan` : "";
  return [...shapes, words(`Scale ${scale}${rest}`, [box.x, bottom + 4], { size: SIZE, ink: "second" })];
}
