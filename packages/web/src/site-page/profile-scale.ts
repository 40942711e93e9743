import type { SurveyResults } from "@causey/engine/survey";

type Row = SurveyResults["stations"][number];

/** A line or an area of the profile, broken where a station was not read. */
export type Run = readonly { readonly x: number; readonly y: number }[];

export interface ProfileDrawing {
  readonly width: number;
  readonly height: number;
  /** A station's place, with the heights that were read there. */
  readonly marks: readonly {
    readonly id: string;
    readonly x: number;
    readonly ground: number;
    readonly firm: number | null;
    readonly water: number | null;
    /** Whether its name has room beside the one before. */
    readonly named: boolean;
  }[];
  readonly ground: Run;
  readonly firm: readonly Run[];
  readonly water: readonly Run[];
  /** Between ground and firm layer: closed outlines. */
  readonly soft: readonly Run[];
  readonly y: (height_m: number) => number;
  readonly top_m: number;
  readonly bottom_m: number;
  readonly exaggeration: number;
}

const MARGIN = { left: 14, right: 14, top: 14, bottom: 26 } as const;
/** Room that a name needs [px]. */
const NAME_PX = 26;
/** Heights within this span are not drawn larger than the picture allows [m]. */
const LEAST_SPAN_M = 0.2;

/** Places the stations of a survey on a picture of the given size, in their order, heights to one scale. */
export function profileDrawing(stations: readonly Row[], width: number, height: number): ProfileDrawing {
  const heights = stations.flatMap((s) => [s.ground_m, s.firm_m, s.water_m].filter((h) => h !== null));
  const [top_m, bottom_m] = [Math.max(...heights), Math.min(...heights)];
  const length = Math.max(stations.at(-1)?.along_m ?? 0, 0.1);
  const perMetre = (width - MARGIN.left - MARGIN.right) / length;
  const perHeight = (height - MARGIN.top - MARGIN.bottom) / Math.max(top_m - bottom_m, LEAST_SPAN_M);
  const y = (z: number): number => MARGIN.top + (top_m - z) * perHeight;
  const orNull = (z: number | null): number | null => (z === null ? null : y(z));
  let lastNamed = -Infinity;
  const marks = stations.map((s) => {
    const x = stations.length === 1 ? width / 2 : MARGIN.left + s.along_m * perMetre;
    const named = x - lastNamed >= NAME_PX;
    if (named) lastNamed = x;
    return { id: s.id, x, ground: y(s.ground_m), firm: orNull(s.firm_m), water: orNull(s.water_m), named };
  });
  const probed = runs(marks, (m) => m.firm !== null);
  return {
    width,
    height,
    marks,
    ground: marks.map((m) => ({ x: m.x, y: m.ground })),
    firm: probed.map((run) => run.map((m) => ({ x: m.x, y: m.firm! }))),
    water: runs(marks, (m) => m.water !== null).map((run) => run.map((m) => ({ x: m.x, y: m.water! }))),
    soft: probed.map((run) => [
      ...run.map((m) => ({ x: m.x, y: m.ground })),
      ...run.toReversed().map((m) => ({ x: m.x, y: m.firm! })),
    ]),
    y,
    top_m,
    bottom_m,
    exaggeration: perHeight / perMetre,
  };
}

/** Neighbours that all have what is asked for. */
function runs<T>(items: readonly T[], has: (item: T) => boolean): T[][] {
  const found: T[][] = [];
  let open: T[] | null = null;
  for (const item of items) {
    if (!has(item)) open = null;
    else if (open) open.push(item);
    else found.push((open = [item]));
  }
  return found;
}

export const pointsOf = (run: Run): string =>
  run.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(" ");
