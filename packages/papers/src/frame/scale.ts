import { M_PER_FT, type UnitSystem } from "@causey/engine/units";
import { boxShape, stroked, thin, words, type Point, type Shape } from "../scene/index.ts";

/** A round scale of a drawing. */
export interface Scale {
  /** Metres on the ground for one millimetre on the sheet. */
  readonly m_per_mm: number;
  readonly words: string;
}

const METRIC = [10, 20, 25, 50, 100, 200, 250, 500, 1000, 1250, 2000, 2500, 5000, 10_000, 20_000];
const FEET_TO_INCH = [1, 2, 3, 4, 5, 10, 20, 30, 40, 50, 60, 80, 100, 150, 200, 300, 400, 500, 1000, 2000];
const MM_PER_IN = 25.4;

/** The largest round scale at which a length fits into a room; the smallest of all when none does. */
export function roundScale(length_m: number, room_mm: number, units: UnitSystem): Scale {
  const least = length_m / room_mm;
  const scales: readonly Scale[] =
    units === "us"
      ? FEET_TO_INCH.map((ft) => ({ m_per_mm: (ft * M_PER_FT) / MM_PER_IN, words: `1 in = ${ft} ft` }))
      : METRIC.map((n) => ({ m_per_mm: n / 1000, words: `1 : ${n}` }));
  return scales.find((s) => s.m_per_mm >= least - 1e-12) ?? scales.at(-1)!;
}

/** Steps of a picture's scale in each power of ten: closer than those of a drawing that is measured with a rule. */
const PICTURE_STEPS = [1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8];

/** The largest scale of whole numbers, closely stepped, at which a length fits: for a picture that has its own bar. */
export function pictureScale(length_m: number, room_mm: number, units: UnitSystem): Scale {
  const unit = units === "us" ? M_PER_FT / MM_PER_IN : 1 / 1000;
  const least = length_m / room_mm / unit;
  const powers = [1, 10, 100, 1000, 10_000];
  const found = powers
    .flatMap((power) => PICTURE_STEPS.map((step) => Math.round(step * power * 10) / 10))
    .find((n) => Number.isInteger(n) && n >= least - 1e-9);
  const n = found ?? Math.ceil(least);
  return { m_per_mm: n * unit, words: units === "us" ? `1 in = ${n} ft` : `1 : ${n}` };
}

/** A bar of whole feet or metres, about 40 mm long, from its left end. */
export function scaleBar(scale: Scale, at: Point, units: UnitSystem): Shape[] {
  const unit = units === "us" ? M_PER_FT : 1;
  const about = (40 * scale.m_per_mm) / unit;
  const power = 10 ** Math.floor(Math.log10(about));
  const whole = [5, 2, 1].map((k) => k * power).find((v) => v <= about) ?? power;
  const width = (whole * unit) / scale.m_per_mm;
  const [x, y] = at;
  const part = width / 4;
  return [
    ...Array.from({ length: 4 }, (_, i) =>
      boxShape(
        { x: x + i * part, y: y - 1.2, width: part, height: 1.2 },
        { stroke: thin, fill: i % 2 === 0 ? "ink" : "white" },
      ),
    ),
    words("0", [x, y + 2.8], { size: 2.1, anchor: "middle" }),
    words(`${Number(whole.toPrecision(3))} ${units === "us" ? "ft" : "m"}`, [x + width, y + 2.8], {
      size: 2.1,
      anchor: "middle",
    }),
  ];
}

/** An arrow to grid north. */
export function northArrow([x, y]: Point): Shape[] {
  return [
    stroked(
      [
        [x, y + 12],
        [x, y],
      ],
      { ink: "ink", width: 0.3 },
    ),
    {
      kind: "path",
      lines: [
        [
          [x, y],
          [x - 1.8, y + 5],
          [x, y + 4],
        ],
      ],
      closed: true,
      fill: "ink",
    },
    {
      kind: "path",
      lines: [
        [
          [x, y],
          [x + 1.8, y + 5],
          [x, y + 4],
        ],
      ],
      closed: true,
      stroke: thin,
      fill: "white",
    },
    words("N", [x, y - 1], { weight: "semibold", anchor: "middle", size: 3 }),
    words("grid north", [x, y + 14.6], { size: 1.9, anchor: "middle", ink: "second" }),
  ];
}
