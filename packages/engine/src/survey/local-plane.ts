import type { Neighbours } from "./neighbours.ts";
import type { Tin } from "./tin.ts";

/** Fewer neighbours than this, and their neighbours are asked too. */
const FEW = 5;
/** A plane that reaches out further than this (leverage) tells nothing of the place. */
const MOST_LEVERAGE = 5;

/**
 * Height of a corner above the plane through its neighbours, over what chance alone makes of it [m].
 *
 * The plane is fitted by least squares to the neighbours without the corner itself and without the corners `isOut`.
 * The difference is divided by sqrt(1 + leverage), so that it spreads alike at the border and inside. NaN where the
 * neighbours lie on one line or the plane would reach out too far.
 */
export function planeResidual(tin: Tin, near: Neighbours, corner: number, isOut: Uint8Array): number {
  const around = usable(near, corner, isOut);
  if (around.length < 3) return NaN;
  const [x, y, z] = [tin.xy[2 * corner]!, tin.xy[2 * corner + 1]!, tin.z[corner]!];
  const s = new Float64Array(9);
  for (const c of around) {
    const [u, v, w] = [tin.xy[2 * c]! - x, tin.xy[2 * c + 1]! - y, tin.z[c]! - z];
    [1, u, v, u * u, u * v, v * v, w, u * w, v * w].forEach((term, k) => (s[k] = s[k]! + term));
  }
  return standardised(s);
}

/** Solves the three normal equations for the plane's height at the place itself; the sums as gathered above. */
function standardised(s: Float64Array): number {
  const [n, u, v, uu, uv, vv, w, uw, vw] = s as unknown as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const a = uu * vv - uv * uv;
  const b = uv * v - u * vv;
  const c = u * uv - uu * v;
  const det = n * a + u * b + v * c;
  const size = n * (uu + vv) ** 2;
  if (!(det > 1e-9 * size)) return NaN;
  const leverage = a / det;
  if (leverage > MOST_LEVERAGE) return NaN;
  return -((a * w + b * uw + c * vw) / det) / Math.sqrt(1 + leverage);
}

function usable({ start, list }: Neighbours, corner: number, isOut: Uint8Array): readonly number[] {
  const ring = (c: number): readonly number[] => Array.from(list.subarray(start[c]!, start[c + 1]!));
  const isFit = (c: number): boolean => c !== corner && isOut[c] === 0;
  const first = ring(corner);
  const near = first.filter(isFit);
  if (near.length >= FEW) return near;
  return [...new Set([...first, ...first.flatMap(ring)])].filter(isFit);
}
