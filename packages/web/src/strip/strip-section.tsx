import type { StripModel } from "@causey/engine/plan";
import { memo } from "react";
import type { StripScale } from "./strip-scale.ts";

interface Props {
  readonly model: StripModel;
  readonly scale: StripScale;
}

/** The long section: water levels, ground, supports and deck. */
export const StripSection = memo(function StripSection({ model, scale }: Props) {
  return (
    <svg className="strip-section" width={scale.width} height={scale.height} aria-hidden="true">
      <Water model={model} scale={scale} />
      {groundRuns(model).map((run) => (
        <Ground key={run[0]!.at_m} run={run} scale={scale} />
      ))}
      <Levels model={model} scale={scale} />
      {model.joints.map((j) => (
        <rect
          key={`${j.id} ${j.at_m}`}
          className="strip-support"
          x={scale.x(j.at_m) - 2}
          y={scale.y(j.deck_m)}
          width={4}
          height={Math.max(0, scale.y(j.ground_m) - scale.y(j.deck_m))}
        />
      ))}
      {model.branches.map((b) => (
        <path key={b.id} className="strip-deck" d={deckPath(model, scale, b.from_m, b.to_m)} />
      ))}
      {model.branches.slice(1).map((b) => (
        <path key={b.id} className="strip-branch" d={`M${scale.x(b.from_m)} 0V${scale.height}`} />
      ))}
    </svg>
  );
});

interface GroundPoint {
  readonly at_m: number;
  readonly z_m: number;
}

/** Ground in runs of known height: unknown ground is left open. */
export function groundRuns(model: StripModel): GroundPoint[][] {
  const runs: GroundPoint[][] = [[]];
  for (const { at_m, z_m } of model.ground) {
    if (z_m !== null) runs.at(-1)!.push({ at_m, z_m });
    else if (runs.at(-1)!.length > 0) runs.push([]);
  }
  return runs.filter((run) => run.length > 1);
}

function Ground({ run, scale }: { readonly run: readonly GroundPoint[]; readonly scale: StripScale }) {
  const line = run.map((p) => `${scale.x(p.at_m).toFixed(1)} ${scale.y(p.z_m).toFixed(1)}`).join("L");
  const [first, last] = [scale.x(run[0]!.at_m), scale.x(run.at(-1)!.at_m)];
  return (
    <>
      <path className="strip-ground" d={`M${line}L${last} ${scale.height}L${first} ${scale.height}Z`} />
      <path className="strip-ground-line" d={`M${line}`} />
    </>
  );
}

/** The lowest named level that wets any ground of the section: up to it, water is drawn. */
function wettingLevel(model: StripModel): number {
  const lowest = Math.min(...model.ground.map((g) => g.z_m ?? Infinity));
  return Math.min(...model.levels.map((l) => l.z_m).filter((z) => z > lowest));
}

/** Water stands over known ground alone. */
function Water({ model, scale }: Props) {
  const level = wettingLevel(model);
  if (!Number.isFinite(level)) return null;
  const top = scale.y(level);
  return groundRuns(model).map((run) => {
    const [from, to] = [scale.x(run[0]!.at_m), scale.x(run.at(-1)!.at_m)];
    const height = Math.max(0, scale.height - top);
    return <rect key={from} className="strip-water" x={from} y={top} width={to - from} height={height} />;
  });
}

function Levels({ model, scale }: Props) {
  const wetting = wettingLevel(model);
  return model.levels.map((l) => (
    <path
      key={l.id}
      className={l.z_m === wetting ? "strip-level" : "strip-level strip-level-rare"}
      d={`M0 ${scale.y(l.z_m)}H${scale.width}`}
    />
  ));
}

function deckPath(model: StripModel, scale: StripScale, from: number, to: number): string {
  const points = model.joints
    .filter((j) => j.at_m >= from - 1e-6 && j.at_m <= to + 1e-6)
    .toSorted((a, b) => a.at_m - b.at_m);
  return points.length < 2
    ? ""
    : `M${points.map((j) => `${scale.x(j.at_m)} ${scale.y(j.deck_m)}`).join("L")}`;
}
