import {
  defineMethod,
  formulaCalculation,
  inputProblem,
  type Calculation,
  type Field,
} from "../formula/index.ts";
import { auditPoints } from "./audit.ts";
import { surveyFormulas } from "./formulas.ts";
import { readRows } from "./input-points.ts";
import { predictionInterval, surveyMethod } from "./sources.ts";
import { surfaceAt } from "./surface-at.ts";
import { biasOfPairs } from "./terrain-bias.ts";
import { triangulate, type PointCloud } from "./tin.ts";

const pointsField: Field = {
  key: "points",
  title: "Survey points, each with x, y and z in metres",
  type: "array",
};
const some = (key: string, title: string): Field => ({ key, title, type: "any" });
const count = (key: string, title: string): Field => ({ key, title, type: "integer" });

const cloudOf = (rows: readonly Readonly<Record<"x" | "y" | "z", number>>[]): PointCloud => ({
  x: rows.map((r) => r.x),
  y: rows.map((r) => r.y),
  z: rows.map((r) => r.z),
});

const biasMethod = defineMethod<unknown>(
  {
    id: "survey.terrain-bias",
    title: "Bias of a terrain against check shots, and the band on its heights",
    inputs: [
      {
        key: "shots",
        title: "Check shots of one kind of ground: terrain_m, z_m and, if stated, accuracy_m",
        type: "array",
      },
    ],
    outputs: [
      count("n", "Check shots"),
      some("median_m", "Terrain less shot, middle value; null without shots"),
      some("mean_m", "Terrain less shot, mean; null without shots"),
      some("sd_m", "Spread of the residuals; null for fewer than two shots"),
      some("band_m", "Half width at 95 % once the median is taken off; null for fewer than three shots"),
      { key: "residuals_m", title: "Terrain less shot, in the order given", type: "array" },
      {
        key: "outliers",
        title: "Places in the list, from 0, of shots past three robust deviations",
        type: "array",
      },
    ],
    validity:
      "Shots spread over the ground in question; errors roughly normal. Three shots at least for a band.",
    sources: [surveyMethod, predictionInterval],
  },
  (input, _context, trace) => {
    const read = readRows("shots", input["shots"], ["terrain_m", "z_m"], ["accuracy_m"]);
    if ("problems" in read) return read;
    const bad = read.rows.findIndex((r) => r.accuracy_m !== null && r.accuracy_m < 0);
    if (bad >= 0) {
      const place = `shots[${bad}].accuracy_m`;
      return {
        problems: [inputProblem(place, read.rows[bad]!.accuracy_m, "is below zero", "Give 0 or more.")],
      };
    }
    const pairs = read.rows.map(({ terrain_m, z_m, accuracy_m }, i) => ({
      shot: { id: String(i), x: 0, y: 0, z_m, accuracy_m, date: null },
      terrain_m,
    }));
    const { n, median_m, mean_m, sd_m, band_m, residuals, outliers } = biasOfPairs(pairs, trace);
    const residuals_m = residuals.map((r) => r.residual_m);
    return { n, median_m, mean_m, sd_m, band_m, residuals_m, outliers: outliers.map((o) => Number(o.id)) };
  },
);

const auditMethod = defineMethod<unknown>(
  {
    id: "survey.point-audit",
    title: "Survey points held against the ground that their neighbours tell",
    inputs: [pointsField],
    outputs: [
      count("n", "Points"),
      { key: "outliers", title: "Points past three robust deviations, widest first", type: "array" },
      some("sigma_m", "Robust deviation about the neighbours' planes; null when none could be judged"),
      count("not_judged", "Points whose neighbours tell no plane"),
      count("merged", "Points on the spot of another one"),
      some("accuracy", "Stated accuracy: how many, middle and worst; null when none is stated"),
    ],
    validity: "Ground that is roughly plane from one point to the next; a bank or a ditch is listed too.",
    sources: [surveyMethod],
  },
  (input) => {
    const read = readRows("points", input["points"], ["x", "y", "z"], ["accuracy_m"]);
    if ("problems" in read) return read;
    const audit = auditPoints({
      ...cloudOf(read.rows),
      accuracy_m: read.rows.map((r) => r.accuracy_m ?? NaN),
    });
    const { n, sigma_m, not_judged, merged, accuracy } = audit;
    const outliers = audit.outliers.map((o) => ({ ...o }));
    return { n, outliers, sigma_m, not_judged, merged, accuracy: accuracy === null ? null : { ...accuracy } };
  },
);

const surfaceMethod = defineMethod<unknown>(
  {
    id: "survey.surface-at",
    title: "Height of the ground at a place between survey points",
    inputs: [
      pointsField,
      { key: "x", title: "East [m]", type: "number" },
      { key: "y", title: "North [m]", type: "number" },
      {
        key: "longest_edge_m",
        title: "Triangles with a longer edge hold no ground",
        type: "number",
        min: 0,
        optional: true,
      },
    ],
    outputs: [
      some("z_m", "Height; null where the points tell nothing"),
      count("triangles", "Triangles between the points"),
    ],
    validity: "Linear in each Delaunay triangle; the ground between points is not known better than that.",
    sources: [surveyMethod],
  },
  (input) => {
    const read = readRows("points", input["points"], ["x", "y", "z"], []);
    if ("problems" in read) return read;
    const tin = triangulate(cloudOf(read.rows));
    const longest = (input["longest_edge_m"] as number | undefined) ?? Infinity;
    const z_m = surfaceAt(tin, input["x"] as number, input["y"] as number, longest);
    return { z_m: Number.isNaN(z_m) ? null : z_m, triangles: tin.triangles.length / 3 };
  },
);

/** Every calculation of this topic, for the registry. */
export const surveyCalculations: readonly Calculation[] = [
  ...surveyFormulas.map(formulaCalculation),
  biasMethod,
  auditMethod,
  surfaceMethod,
];
