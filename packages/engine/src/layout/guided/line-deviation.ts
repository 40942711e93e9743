import { defineMethod, inputProblem, type Json, type Problem } from "../../formula/index.ts";
import type { Spot } from "./guide.ts";
import { lineFigures } from "./line-figures.ts";

const source = {
  id: "causey-drawn-line",
  title: "docs/methods/drawn-line.md: distances of one polyline from another, read every 50 mm",
  status: "computed",
} as const;

/** `layout.line-deviation`: how far a walkway's middle line lies off the line that was agreed. */
export const lineDeviation = defineMethod<unknown>(
  {
    id: "layout.line-deviation",
    title: "Deviation of a walkway's middle line from a drawn line",
    inputs: [
      { key: "drawn", title: "Drawn line, list of [x, y] in metres", type: "array" },
      { key: "middle", title: "Middle line of the parts, list of [x, y] in metres", type: "array" },
      { key: "corridor_m", title: "How far to either side the middle line may lie", type: "number", min: 0 },
    ],
    outputs: [
      { key: "max_deviation_m", title: "Largest distance from the drawn line", type: "number" },
      { key: "rms_deviation_m", title: "Root mean square distance along the middle line", type: "number" },
      { key: "at", title: "Where it is largest, [x, y]", type: "array" },
      { key: "within_corridor", title: "All of the middle line lies in the corridor", type: "boolean" },
      {
        key: "not_followed",
        title: "Stretches of the drawn line with no part in the corridor",
        type: "array",
      },
    ],
    validity:
      "Read every 50 mm along the middle line and every 100 mm along the drawn line; plane coordinates.",
    sources: [source],
  },
  (input) => {
    const problems = ["drawn", "middle"].flatMap((key) => lineFaults(key, input[key]));
    if (problems.length > 0) return { problems };
    const [drawn, middle] = [input["drawn"], input["middle"]] as unknown as [Spot[], Spot[]];
    const { id: _, ...figures } = lineFigures("", drawn, [middle], input["corridor_m"] as number);
    return figures as unknown as Readonly<Record<string, Json>>;
  },
);

function lineFaults(key: string, value: Json | undefined): Problem[] {
  const isSpot = (p: Json): boolean =>
    Array.isArray(p) && p.length === 2 && p.every((v) => Number.isFinite(v));
  if (Array.isArray(value) && value.length >= 2 && value.every(isSpot)) return [];
  return [inputProblem(key, value, "must be two or more points", "Give a list of [x, y] in metres.")];
}
