import { tables } from "@causey/data/tables";
import {
  moduleDrawing,
  platformDrawing,
  rampDrawing,
  supportDrawing,
  underPlatformEdge,
  type DrawnPiece,
  type Kit,
  type PartDrawing,
} from "@causey/engine/kit";
import { feetInches, type UnitSystem } from "@causey/engine/units";
import { useMemo, useState } from "react";
import { ChoiceField } from "../fields/choice-field.tsx";

interface Props {
  readonly kit: Kit;
  readonly units: UnitSystem;
}

interface Choice {
  readonly value: string;
  readonly words: string;
  readonly draw: () => PartDrawing;
}

const length = (mm: number, units: UnitSystem): string =>
  units === "us" ? feetInches(mm / 1000, 16) : `${Math.round(mm)} mm`;

/** Every part of the kit that can be drawn. */
function choicesOf(kit: Kit, units: UnitSystem): readonly Choice[] {
  const { sizes } = tables;
  return [
    ...kit.lengths_mm.map((mm) => ({
      value: `module ${mm}`,
      words: `module, ${length(mm, units)}`,
      draw: () => moduleDrawing(kit, mm, sizes),
    })),
    { value: "platform", words: "turning platform", draw: () => platformDrawing(kit, sizes) },
    ...(kit.ramp?.lengths_mm ?? []).map((mm) => ({
      value: `ramp ${mm}`,
      words: `ramp, ${length(mm, units)}`,
      draw: () => rampDrawing(kit, mm, sizes),
    })),
    ...kit.supports.map((s) => ({
      value: `support ${s.id}`,
      words: s.name,
      draw: () => supportDrawing(kit, s.id, s.height_max_mm / 1000, sizes),
    })),
    ...kit.supports.flatMap((s) => {
      const edge = underPlatformEdge(kit, s);
      if (edge === s) return [];
      const words = `${s.name}, under a platform's edge`;
      return [
        {
          value: `edge ${s.id}`,
          words,
          draw: () => supportDrawing(kit, { ...edge, name: words }, s.height_max_mm / 1000, sizes),
        },
      ];
    }),
  ];
}

/** The chosen part in plan, from the side and from its end, to scale, with its screws; it follows every change. */
export function PartPicture({ kit, units }: Props) {
  const choices = useMemo(() => choicesOf(kit, units), [kit, units]);
  const [chosen, setChosen] = useState(choices[0]!.value);
  const choice = choices.find((c) => c.value === chosen) ?? choices[0]!;
  const drawing = useMemo(() => drawn(choice), [choice]);
  return (
    <figure className="part-picture">
      <ChoiceField
        label="Drawing of"
        value={choice.value}
        choices={choices.map(({ value, words }) => ({ value, words }))}
        onTake={setChosen}
      />
      {drawing === null ? (
        <p>This part cannot be drawn from the recipe as it stands.</p>
      ) : (
        <Views drawing={drawing} units={units} />
      )}
      {drawing && (
        <figcaption className="quiet">
          {drawing.name}, to scale.{" "}
          {drawing.screws.length > 0 && `${drawing.screws.length} screws and clips at their places.`}
        </figcaption>
      )}
    </figure>
  );
}

/** Null for a recipe that gives no part: its faults stand in the notices. */
function drawn(choice: Choice): PartDrawing | null {
  try {
    return choice.draw();
  } catch {
    return null;
  }
}

interface Bounds {
  readonly u0: number;
  readonly u1: number;
  readonly v0: number;
  readonly v1: number;
}
const boundsOf = (pieces: readonly DrawnPiece[]): Bounds => ({
  u0: Math.min(...pieces.map((p) => p.u0)),
  u1: Math.max(...pieces.map((p) => p.u1)),
  v0: Math.min(...pieces.map((p) => p.v0)),
  v1: Math.max(...pieces.map((p) => p.v1)),
});

/** Space between the views and for the dimensions [mm of the part]. */
const GAP = 260;
const CHAIN = 130;

function Views({ drawing, units }: { readonly drawing: PartDrawing; readonly units: UnitSystem }) {
  const [plan, side, end] = [drawing.plan, drawing.side, drawing.end].map(boundsOf) as [
    Bounds,
    Bounds,
    Bounds,
  ];
  const along = drawing.chains.filter((c) => c.axis === "along");
  const across = drawing.chains.filter((c) => c.axis === "across");
  const wide = Math.max(plan.u1 - plan.u0, side.u1 - side.u0);
  const top = CHAIN * (along.length + 0.6);
  const planHigh = plan.v1 - plan.v0;
  const endX = wide + GAP * 1.6;
  const width = endX + (end.u1 - end.u0) + GAP;
  const height = top + planHigh + GAP + (side.v1 - side.v0) + CHAIN * (across.length + 1);
  const sideTop = top + planHigh + GAP;
  return (
    <svg
      className="part-views"
      viewBox={`-60 0 ${width + 60} ${height}`}
      role="img"
      aria-label={`${drawing.name}: plan, side and end, with dimensions`}
    >
      <Pieces pieces={drawing.plan} bounds={plan} x={0} y={top} />
      {drawing.screws.map((s) => (
        <circle
          key={`${s.x_mm} ${s.y_mm} ${s.z_mm} ${s.holds} ${s.item}`}
          className="part-screw"
          cx={s.x_mm - plan.u0}
          cy={top + plan.v1 - s.y_mm}
          r="9"
        />
      ))}
      <Pieces pieces={drawing.side} bounds={side} x={0} y={sideTop} />
      <Pieces pieces={drawing.end} bounds={end} x={endX} y={sideTop} />
      {along.map((chain, i) => (
        <Chain
          key={chain.id}
          at={chain.at_mm.map((mm) => mm - plan.u0)}
          x={0}
          y={top - CHAIN * (i + 0.4)}
          units={units}
        />
      ))}
      {across.map((chain, i) => (
        <Chain
          key={chain.id}
          at={chain.at_mm.map((mm) => mm - end.u0)}
          x={endX}
          y={sideTop + (end.v1 - end.v0) + CHAIN * (i + 0.9)}
          units={units}
        />
      ))}
    </svg>
  );
}

interface PiecesProps {
  readonly pieces: readonly DrawnPiece[];
  readonly bounds: Bounds;
  readonly x: number;
  readonly y: number;
}

const Pieces = ({ pieces, bounds, x, y }: PiecesProps) => (
  <g>
    {pieces.map((p) => (
      <rect
        key={`${p.role} ${p.u0} ${p.v0} ${p.u1} ${p.v1}`}
        className={`part-piece${p.role === "stringer" ? " part-stringer" : ""}`}
        x={x + p.u0 - bounds.u0}
        y={y + bounds.v1 - p.v1}
        width={p.u1 - p.u0}
        height={p.v1 - p.v0}
      />
    ))}
  </g>
);

interface ChainProps {
  readonly at: readonly number[];
  readonly x: number;
  readonly y: number;
  readonly units: UnitSystem;
}

/** One row of lengths; those too short for their words show a tick alone. */
function Chain({ at, x, y, units }: ChainProps) {
  return (
    <g className="part-chain">
      <path d={`M${x + at[0]!} ${y}H${x + at.at(-1)!}`} />
      {at.map((mm) => (
        <path key={mm} d={`M${x + mm - 18} ${y + 18}l36 -36`} />
      ))}
      {at.slice(1).map((mm, i) => {
        const long = mm - at[i]!;
        const words = length(long, units);
        return long < words.length * 26 ? null : (
          <text key={mm} x={x + (mm + at[i]!) / 2} y={y - 22}>
            {words}
          </text>
        );
      })}
    </g>
  );
}
