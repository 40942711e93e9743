import { recordValue, type Trace } from "../formula/index.ts";
import { DomainError, metres, qty, type Qty } from "../units/index.ts";
import {
  cloggedOpening,
  dragForce,
  facingArea,
  familyCoefficient,
  meshCoefficient,
  shapeCoefficient,
  type DragTables,
} from "./drag.ts";
import { statics } from "./sources.ts";

/** What stands in the flow: its kind decides where the drag coefficient is read. */
export type FlowShape =
  | { readonly kind: "round-post" }
  | { readonly kind: "square-post" }
  /** A square post with corners of this radius [m]. */
  | { readonly kind: "rounded-post"; readonly corner_m: number }
  /** Lies along the line; its thickness over its height picks the coefficient. */
  | { readonly kind: "stringer" }
  | { readonly kind: "deck-edge" }
  /** Standing mesh: open share when clean, and the share of its openings that wrack has clogged [1]. */
  | { readonly kind: "mesh"; readonly open: number; readonly clogged: number }
  | { readonly kind: "own"; readonly cd: number };

/** A body in the flow. Sizes > 0 [m], `across_m` 0 where its ends are hidden; levels over the ground. */
export interface FlowBody {
  readonly name: string;
  readonly count: number;
  readonly shape: FlowShape;
  /** Along the walkway's line; the diameter of a round post. */
  readonly along_m: number;
  readonly across_m: number;
  readonly bottom_m: number;
  readonly top_m: number;
}
/** Sheet flow past the line. Depth > 0, speed >= 0, angle to the line [rad], a quarter turn = square onto it. */
export interface Flow {
  readonly depth: Qty<"m">;
  readonly speed: Qty<"m/s">;
  readonly angle: Qty<"rad">;
  readonly rho_w: Qty<"kg/m3">;
}
export interface BodyDrag {
  /** All of them together [N]. */
  readonly force_n: number;
  readonly coefficient: number;
  /** Area under water that the flow sees, one of them [m2]. */
  readonly area_m2: number;
  /** Half the height of the wetted part, over the ground [m]. */
  readonly acts_at_m: number;
}

const ROWS = { "round-post": "post-round", "square-post": "post-square", "deck-edge": "plate-long" } as const;

/** Drag coefficient on the area that the flow sees; null when the tables lack the row. */
export function bodyCoefficient(body: FlowBody, tables: DragTables, trace?: Trace): Qty<"1"> | null {
  const { shape } = body;
  switch (shape.kind) {
    case "own":
      return qty(shape.cd, "1");
    case "rounded-post":
      return familyCoefficient(tables, "rod-corner", shape.corner_m / body.along_m, trace);
    case "stringer":
      return familyCoefficient(tables, "rectangle", body.across_m / (body.top_m - body.bottom_m), trace);
    case "mesh": {
      const C_m = shapeCoefficient(tables, "mesh-open", trace);
      const C_p = shapeCoefficient(tables, "plate-long", trace);
      if (C_m === null || C_p === null) return null;
      const p_c = cloggedOpening({ p: qty(shape.open, "1"), c: qty(shape.clogged, "1") }, trace);
      return meshCoefficient({ p_c, C_m, C_p }, trace);
    }
    default:
      return shapeCoefficient(tables, ROWS[shape.kind], trace);
  }
}

/**
 * Drag of the flow on a body: 0 while the water stays under it; null when the tables lack its row. Bodies behind each
 * other each take the full flow. Throws `DomainError` when the top is not over the bottom.
 */
export function dragOnBody(body: FlowBody, flow: Flow, tables: DragTables, trace?: Trace): BodyDrag | null {
  if (!(body.top_m > body.bottom_m)) throw new DomainError("body-without-height", { ...body });
  const C_d = bodyCoefficient(body, tables, trace);
  if (C_d === null) return null;
  const round = body.shape.kind === "round-post";
  const top = Math.min(body.top_m, flow.depth);
  const A = facingArea(
    {
      h: metres(Math.max(0, top - body.bottom_m)),
      l: metres(body.along_m),
      w: metres(round ? 0 : body.across_m),
      theta: round ? qty(Math.PI / 2, "rad") : flow.angle,
    },
    trace,
    round ? "a round post looks alike from every side" : body.name,
  );
  const one = dragForce({ rho_w: flow.rho_w, C_d, A, V: flow.speed }, trace, body.name);
  return {
    force_n: body.count * one,
    coefficient: C_d,
    area_m2: A,
    acts_at_m: (body.bottom_m + Math.max(body.bottom_m, top)) / 2,
  };
}

export interface AllDrag {
  readonly force_n: number;
  /** Height of the resultant over the ground [m]; 0 without any force. */
  readonly acts_at_m: number;
}

/** Drag on several bodies together, with the height of the resultant; null when the tables lack a row. */
export function dragOnAll(
  bodies: readonly FlowBody[],
  flow: Flow,
  tables: DragTables,
  trace?: Trace,
): AllDrag | null {
  const each = bodies.map((body) => dragOnBody(body, flow, tables, trace));
  if (!each.every((d) => d !== null)) return null;
  const force = each.reduce((sum, d) => sum + d.force_n, 0);
  const moment = each.reduce((sum, d) => sum + d.force_n * d.acts_at_m, 0);
  recordValue(trace, {
    id: "flood.drag.all",
    title: "Drag on all that stands in the flow",
    symbol: "F_all",
    value: force,
    unit: "N",
    source: statics("sum over the bodies"),
    how: "sum of count times drag",
  });
  return { force_n: force, acts_at_m: force > 0 ? moment / force : 0 };
}
