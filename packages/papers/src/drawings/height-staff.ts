import { boxShape, stroked, words, type Box, type Ink, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import { wrap } from "../text/index.ts";
import { levelText } from "./show.ts";

export interface StaffHeight {
  readonly name: string;
  readonly z_m: number;
  readonly ink: Ink;
}

interface StaffPlace {
  /** Right edge of the staff: a leader runs from here to the words [mm]. */
  readonly x: number;
  readonly left: number;
  readonly yOf: (z_m: number) => number;
  /** Heights that the drawing beside it shows [m]. */
  readonly low_m: number;
  readonly high_m: number;
}

const SIZE = 2.1;
const SPACING = 3.1;
const LEADER = 5;

/** Names and values of heights left of a section, in their order and never over one another; the others are noted. */
export function heightStaff(
  context: PaperContext,
  heights: readonly StaffHeight[],
  place: StaffPlace,
): Shape[] {
  const { plan } = context;
  const sorted = [...heights].sort((a, b) => b.z_m - a.z_m);
  const shown = sorted.filter((h) => h.z_m > place.low_m && h.z_m < place.high_m);
  const ys = spread(shown.map((h) => place.yOf(h.z_m)));
  const beyond = (list: readonly StaffHeight[], where: string, from: number): Shape[] =>
    list.map((h, i) =>
      words(`${h.name} ${levelText(h.z_m, plan)}, ${where} this view`, [place.left, from + i * SPACING], {
        size: SIZE,
        ink: h.ink,
      }),
    );
  const above = sorted.filter((h) => h.z_m >= place.high_m);
  const below = sorted.filter((h) => h.z_m <= place.low_m);
  return [
    ...beyond(above, "above", place.yOf(place.high_m) - above.length * SPACING),
    ...shown.flatMap((h, i): Shape[] => {
      const y = place.yOf(h.z_m);
      return [
        stroked(
          [
            [place.x - LEADER, ys[i]!],
            [place.x - 1.5, y],
            [place.x + 2, y],
          ],
          { ink: h.ink, width: 0.15 },
        ),
        words(`${h.name} ${levelText(h.z_m, plan)}`, [place.x - LEADER - 0.8, ys[i]! + 0.7], {
          size: SIZE,
          ink: h.ink,
          anchor: "end",
          weight: h.ink === "ink" ? "semibold" : "regular",
        }),
      ];
    }),
    ...beyond(below, "below", place.yOf(place.low_m) + SPACING),
  ];
}

/** Places in the same order, at least one line apart, as near to their own as a pass down and a pass up bring them. */
function spread(ys: readonly number[]): number[] {
  const down: number[] = [];
  for (const y of ys) down.push(Math.max(y, (down.at(-1) ?? -Infinity) + SPACING));
  const shift = down.reduce((sum, y, i) => sum + (y - ys[i]!), 0) / Math.max(1, ys.length);
  return down.map((y) => y - shift);
}

/** Depth of each level over one ground height, as permit offices ask for it. */
export function levelNotes({ plan }: PaperContext, ground_m: number, box: Box): Shape[] {
  if (plan.levels.length === 0) return [];
  const lines = [...plan.levels]
    .sort((a, b) => b.z_m - a.z_m)
    .map((l) =>
      l.z_m > ground_m
        ? `${l.name}: ${levelText(l.z_m - ground_m, plan)} deep over this ground`
        : `${l.name}: ${levelText(ground_m - l.z_m, plan)} below this ground`,
    );
  const wrapped = lines.flatMap((line) => wrap(line, box.width - 2, SIZE));
  return [
    boxShape(
      { x: box.x - 2, y: box.y - 3.6, width: box.width + 2, height: 6.2 + wrapped.length * SPACING },
      { stroke: { ink: "rule", width: 0.2 }, fill: "white" },
    ),
    words("Water at this place, predicted or read without waves", [box.x, box.y], {
      size: 2.2,
      weight: "semibold",
    }),
    ...wrapped.map((text, i) => words(text, [box.x, box.y + 3.3 + i * SPACING], { size: SIZE })),
  ];
}
