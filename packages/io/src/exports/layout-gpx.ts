import { ProblemError, type Problem } from "@causey/engine/formula";
import type { Results } from "@causey/engine/plan";
import type { Crs } from "@causey/engine/site";
import { DomainError } from "@causey/engine/units";
import { lonLatAccuracy, toLonLat } from "../crs/index.ts";
import { writeGpx } from "../markup/index.ts";
import { fault } from "../problem/index.ts";
import { branchLines } from "../results/index.ts";

export interface GpxWritten {
  readonly bytes: Uint8Array;
  readonly warnings: readonly Problem[];
}

/**
 * The layout for a handheld receiver: each joint as a waypoint named by its tag, each branch as a track along its
 * middle line. Equal results give equal bytes. Nothing of any zone is written, so hidden ones cannot show; heights
 * are left out, for a receiver counts them from the sea.
 *
 * crs  the site's system. On a local grid, or where no datum shift is known, this throws `ProblemError`; where the
 *      shift is coarse, a warning (and the file itself) says how far off the waypoints may be.
 */
export function layoutGpx(results: Results, crs: Crs): GpxWritten {
  const note = accuracyNote(crs);
  const map = toLonLat(crs);
  const degrees = (x: number, y: number): readonly [number, number] => {
    const at = map(x, y);
    if (at === null) throw new DomainError("no-lon-lat", { x, y });
    return at;
  };
  const { layout } = results;
  const waypoints = layout.joints.map((j) => {
    const [lon, lat] = degrees(j.x, j.y);
    return { name: j.id, lon, lat, note: `${j.support}, branch ${j.branch} at ${j.along_m.toFixed(2)} m` };
  });
  const tracks = branchLines(layout).map((b) => ({
    name: `${b.id}: ${b.from} to ${b.to_plot}`,
    points: b.line.map(([x, y]) => degrees(x, y)),
  }));
  const coarse = note.grade === "good" ? [] : [note.text];
  return {
    bytes: writeGpx(waypoints, tracks, [results.plan.name, ...coarse].join(". ")),
    warnings: coarse.map((message) =>
      problem("warning", "gpx-accuracy", message, "Set out from marks in the grid itself."),
    ),
  };
}

function accuracyNote(crs: Crs): { readonly grade: "good" | "metres"; readonly text: string } {
  if (crs.kind === "local")
    throw new ProblemError([
      problem(
        "error",
        "gpx-local-grid",
        `The plan is on the local grid "${crs.name}", whose place on the earth is not known: GPX needs longitude and latitude.`,
        "Set out from the joints' coordinates in the grid (joints.csv), or put the plan on an EPSG system.",
      ),
    ]);
  const { grade, note } = lonLatAccuracy(crs);
  if (grade !== "unknown") return { grade, text: note };
  throw new ProblemError([
    problem(
      "error",
      "gpx-datum-shift",
      note,
      "Set out from the joints' coordinates in the grid (joints.csv).",
    ),
  ]);
}

const problem = (severity: Problem["severity"], code: string, message: string, mend: string): Problem =>
  fault("layout.gpx", { code, place: "crs", message, mend }, severity);
