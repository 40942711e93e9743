import type { StripModel } from "@causey/engine/plan";
import { feetInches, showQuantity, type UnitSystem } from "@causey/engine/units";
import { alongWord } from "../show/show.ts";
import { spread, type StripScale } from "./strip-scale.ts";

/** Levels to the half inch: nobody reads water finer. */
export const levelHeight = (z_m: number, units: UnitSystem): string =>
  units === "us" ? feetInches(z_m, 2) : showQuantity(z_m, "m", units);

const LINE_PX = 15;

interface Props {
  readonly model: StripModel;
  readonly scale: StripScale;
  readonly units: UnitSystem;
}

/** Names of the levels, and what the rows below show. */
export function StripGutter({ model, scale, units }: Props) {
  const places = spread(
    model.levels.map((l) => ({ id: l.id, y: scale.y(l.z_m) })),
    LINE_PX,
    scale.height - 4,
  );
  return (
    <div className="strip-gutter">
      <div className="strip-levels" style={{ height: scale.height }}>
        {places.map(({ id, y }) => {
          const level = model.levels.find((l) => l.id === id)!;
          const height = levelHeight(level.z_m, units);
          return (
            <p key={id} style={{ top: y }} title={`${level.name} ${height} on ${model.datum}`}>
              <span className="strip-level-name">{level.name}</span> {height}
            </p>
          );
        })}
      </div>
      <p className="strip-row-name">
        share of the limit
        <span>over 1 or !: not met</span>
      </p>
      <p className="strip-axis-name">
        {alongWord(units)}, {units === "us" ? "ft" : "m"} · heights ×{" "}
        {Math.max(1, Math.round(scale.exaggeration))}
      </p>
    </div>
  );
}
