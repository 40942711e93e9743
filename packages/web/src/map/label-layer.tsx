import type { Layout } from "@causey/engine/layout";
import type { Plan } from "@causey/engine/plan";
import { memo, useDeferredValue, useMemo } from "react";
import { furnitureBoxes } from "./furniture-boxes.ts";
import { placeLabels, signBox, textWidth, type LabelKind, type LabelWish } from "./place-labels.ts";
import type { PlotMoves } from "./use-plot-moves.ts";
import { toGround, toPicture, type Extent, type Size, type View, type XY } from "./view.ts";
import { labelPoint } from "./zone-label-point.ts";
import { drawingOrder, zoneLabel } from "./zone-style.ts";

interface Props {
  readonly plan: Plan;
  readonly layout: Layout | null;
  readonly moves: PlotMoves;
  readonly view: View;
  readonly size: Size;
}

const zoneKinds: Readonly<Record<string, LabelKind>> = {
  habitat: "habitat",
  channel: "water",
  pool: "water",
  closed: "closed",
  "seasonal-closure": "closed",
  buffer: "closed",
};

/** Names on the map, each where it hides least. They settle after the map has stopped moving. */
export function LabelLayer({ plan, layout, moves, view, size }: Props) {
  const look = useMemo(() => ({ view, size }), [view, size]);
  const settled = useDeferredValue(look);
  const zoneWishes = useMemo(() => zoneLabels(plan, settled.view, settled.size), [plan, settled]);
  const wishes = [
    ...plan.starts.map((s) =>
      pointLabel("start", s.id, shortName(s.name), toPicture(view, size, [s.x, s.y]), 13),
    ),
    ...plan.plots.map((p) =>
      pointLabel("plot", p.id, shortName(p.name), toPicture(view, size, moves.place(p)), 14),
    ),
    ...branchLabels(layout, view, size),
    ...zoneWishes.toReversed().map((w) => ({ ...w, at: toPicture(view, size, w.ground) })),
  ];
  const walkway = layout?.joints.map((j) => toPicture(view, size, [j.x, j.y])) ?? [];
  const blocked = [
    ...plan.plots.map((p) => signBox(toPicture(view, size, moves.place(p)))),
    ...plan.starts.map((s) => signBox(toPicture(view, size, [s.x, s.y]))),
    ...furnitureBoxes(size),
  ];
  return (
    <g className="labels" pointerEvents="none" aria-hidden="true">
      {placeLabels(wishes, blocked, walkway, size).map((l) => (
        <Label
          key={`${l.kind} ${l.id}`}
          kind={l.kind}
          text={l.text}
          size={l.size}
          x={l.middle[0]}
          y={l.middle[1]}
        />
      ))}
    </g>
  );
}

const ZONE_SIZE = 12.5;

/** The name up to its first comma: the whole of it stands in the lists. */
const shortName = (name: string): string => name.split(",")[0] ?? name;

const pointLabel = (kind: "plot" | "start", id: string, text: string, at: XY, size: number): LabelWish => ({
  id,
  text,
  kind,
  at,
  gap: 15,
  size,
});

function branchLabels(layout: Layout | null, view: View, size: Size): LabelWish[] {
  if (!layout) return [];
  const joints = new Map(layout.joints.map((j) => [j.id, j]));
  const parts = new Map(layout.parts.map((p) => [p.id, p]));
  return layout.branches.flatMap((branch) => {
    const middle = parts.get(branch.parts[Math.floor(branch.parts.length / 2)] ?? "");
    const joint = middle && joints.get(middle.from);
    if (!joint) return [];
    const at = toPicture(view, size, [joint.x, joint.y]);
    return [{ id: branch.id, text: branch.id, kind: "branch", at, gap: 12, size: 14 } as const];
  });
}

function zoneLabels(plan: Plan, view: View, size: Size): (LabelWish & { readonly ground: XY })[] {
  if (size.width === 0) return [];
  const [west, north] = toGround(view, size, [0, 0]);
  const [east, south] = toGround(view, size, [size.width, size.height]);
  const inView: Extent = [west, south, east, north];
  const drawn = drawingOrder(plan.zones);
  return drawn.flatMap((zone, i) => {
    const above = drawn.slice(i + 1).filter((z) => z.use !== "parcel");
    const text = zoneLabel(zone);
    const half = textWidth(text, ZONE_SIZE) / 2 / view.scale;
    const ground =
      zone.use === "parcel"
        ? null
        : labelPoint(
            zone.polygons,
            above.map((z) => z.polygons),
            inView,
            half,
          );
    if (!ground) return [];
    const kind = zoneKinds[zone.use] ?? "quiet";
    return [{ id: zone.id, text, kind, at: [0, 0], gap: 0, size: ZONE_SIZE, ground } as const];
  });
}

interface LabelProps {
  readonly kind: LabelKind;
  readonly text: string;
  readonly size: number;
  readonly x: number;
  readonly y: number;
}

const Label = memo(function Label({ kind, text, size, x, y }: LabelProps) {
  return (
    <text className={`label label-${kind}`} x={x} y={y + size * 0.34} fontSize={size} textAnchor="middle">
      {text}
    </text>
  );
});
