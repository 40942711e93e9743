import {
  kitLength,
  moduleCounts,
  modulePieces,
  platformCounts,
  platformPieces,
  rampCounts,
  rampPieces,
  supportCounts,
  supportKind,
  supportPieces,
  underPlatformEdge,
  type Kit,
  type PlatformEdge,
} from "../kit/index.ts";
import { stringerEdgeJoints } from "../layout/edge-joints.ts";
import type { Layout, PlatformPart } from "../layout/types.ts";
import { DomainError } from "../units/index.ts";
import type { Fastener, LumberSize } from "./tables.ts";
import { Tally } from "./tally.ts";
import type { TakeOff } from "./types.ts";

/** What of a layout the take-off counts: its parts, and one support at every joint. */
export type CountedLayout = Pick<Layout, "parts" | "joints"> & {
  readonly ramps?: Layout["ramps"];
  /** Spare modules by length [m]. */
  readonly spares?: readonly { readonly length_m: number; readonly spares: number }[];
};

/**
 * Everything a layout is made of: timber by size and saw length, and what is counted.
 *
 * layout     modules and platforms of this kit; each joint carries one support of its kind and height
 * fasteners  names for counted things; their item ids stand when left out
 *
 * Exact: the pieces are the boxes of the drawings. Throws `DomainError` when a part's length or a joint's support
 * is not the kit's, or a size is not in the table.
 */
export function takeOff(
  kit: Kit,
  layout: CountedLayout,
  sizes: readonly LumberSize[],
  fasteners: readonly Fastener[] = [],
): TakeOff {
  const tally = new Tally();
  for (const [length, times] of countBy(modulesOf(kit, layout)))
    tally.add(modulePieces(kit, length, sizes), moduleCounts(kit, length, sizes, fasteners), times);
  for (const { length_m, spares } of layout.spares ?? []) {
    const length = kitLength(kit, length_m);
    tally.add(modulePieces(kit, length, sizes), moduleCounts(kit, length, sizes, fasteners), spares);
  }
  for (const { length_m } of layout.ramps ?? []) {
    if (length_m === null) continue;
    const length = rampLengthOf(kit, length_m);
    tally.add(rampPieces(kit, length, sizes), rampCounts(kit, length, sizes, fasteners));
  }
  for (const [edges, times] of countBy(platformsOf(layout))) {
    const closed = edges.split(" ").filter((e): e is PlatformEdge => e !== "");
    tally.add(platformPieces(kit, sizes, closed), platformCounts(kit, sizes, closed, fasteners), times);
  }
  for (const [support, times] of countBy(supportsOf(layout))) {
    const [id, height, isEdge] = JSON.parse(support) as [string, number, boolean];
    const kind = isEdge ? underPlatformEdge(kit, supportKind(kit, id)) : supportKind(kit, id);
    tally.add(supportPieces(kit, kind, height / 1e5, sizes), supportCounts(kind, fasteners), times);
  }
  return tally.takeOff(sizes);
}

function countBy<K>(keys: readonly K[]): Map<K, number> {
  const counts = new Map<K, number>();
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1);
  return counts;
}

const modulesOf = (kit: Kit, { parts }: CountedLayout): number[] =>
  parts.flatMap((p) => (p.kind === "module" ? [kitLength(kit, p.length_m)] : []));

/** The kit's own ramp body of a laid ramp [mm]. Throws `DomainError` when it has none so long. */
function rampLengthOf({ ramp, id }: Kit, length_m: number): number {
  const length = ramp?.lengths_mm.find((mm) => Math.abs(mm / 1000 - length_m) < 1e-4);
  if (length === undefined) throw new DomainError("unknown-ramp", { kit: id, length_m });
  return length;
}

const platformsOf = ({ parts }: CountedLayout): string[] => {
  const begun = new Set(parts.map((p) => p.from));
  return parts.flatMap((p) => (p.kind === "platform" ? [closedEdges(p, begun).join(" ")] : []));
};

/** Edges of a platform that no part leaves from. */
export const closedEdges = (platform: PlatformPart, begun: ReadonlySet<string>): PlatformEdge[] =>
  (["ahead", "left", "right"] as const).filter((edge) => !begun.has(platform.exits[edge]));

/** Support kind, height in whole hundredths of a millimetre, and whether a platform ends on it: equal ones share a key. */
function supportsOf({ joints, parts }: CountedLayout): string[] {
  const edges = stringerEdgeJoints(parts);
  return joints.map((j) =>
    JSON.stringify([j.support, Math.round(j.support_height_m * 1e5), edges.has(j.id)]),
  );
}
