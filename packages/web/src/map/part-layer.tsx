import type { Kit } from "@causey/engine/kit";
import type { Layout } from "@causey/engine/layout";
import type { StripCell } from "@causey/engine/plan";
import { memo, useMemo } from "react";
import { polygonsPath } from "./ground-path.ts";
import { feetPath, jointBars, partShapes } from "./part-shapes.ts";
import type { XY } from "./view.ts";

interface Props {
  readonly layout: Layout;
  readonly kit: Kit;
  readonly cells: readonly StripCell[];
  readonly origin: XY;
}

/** The walkway at true scale: outlines, stringers, platforms, joints and feet. */
export const PartLayer = memo(function PartLayer({ layout, kit, cells, origin }: Props) {
  const shapes = useMemo(() => partShapes(layout, kit, origin), [layout, kit, origin]);
  const states = useMemo(() => new Map(cells.map((c) => [c.part, c.state])), [cells]);
  return (
    <g className="parts">
      <path className="part-feet" d={feetPath(layout, origin)} />
      {shapes.map((shape) => (
        <g key={shape.id} data-part={shape.id} className="part">
          <path className={`part-body part-${states.get(shape.id) ?? "not-checked"}`} d={shape.outline} />
          <path className="part-lines" d={shape.lines} />
        </g>
      ))}
      <path className="part-joints" d={jointBars(layout, kit, origin)} />
    </g>
  );
});

interface MarkProps {
  readonly layout: Layout;
  readonly parts: readonly string[];
  readonly origin: XY;
  readonly className: string;
}

/** A stronger outline around some parts. */
export function PartMark({ layout, parts, origin, className }: MarkProps) {
  const wanted = new Set(parts);
  const shapes = layout.parts.filter((p) => wanted.has(p.id));
  return (
    <g className={className} pointerEvents="none">
      {shapes.map((part) => (
        <path key={part.id} d={polygonsPath(part.outline, origin)} />
      ))}
    </g>
  );
}
