import { metres, qty } from "../../units/index.ts";
import { tapeAlong, tapeOffset } from "../setting-out-formulas.ts";
import type { AsLaidReport, Joint, LaidDeviation, LaidJoint, LaidParts, Part } from "../types.ts";

/** How far a joint lies from where it was planned [m]; `dz_m` null = the deck was not read. */
export interface Shift {
  readonly dx_m: number;
  readonly dy_m: number;
  readonly dz_m: number | null;
}

/** Which joints and parts of a layout lie in the field, and how far off their places. */
export interface LaidState {
  /** Every joint that lies there, read back or between two that were. */
  readonly shifts: ReadonlyMap<string, Shift>;
  readonly kept: ReadonlySet<string>;
  readonly deviations: readonly LaidDeviation[];
  readonly unknown: AsLaidReport["unknown"];
  /** Joints that lie there but were not read. */
  readonly guessed: readonly string[];
}

/** Joints that a part leads to. */
export const endsOf = (part: Part): string[] =>
  part.kind === "module" ? [part.to] : [part.exits.ahead, part.exits.left, part.exits.right];

/** The part that leads to each joint. */
export const leadingTo = (laid: LaidParts): Map<string, Part> =>
  new Map(laid.parts.flatMap((p) => endsOf(p).map((id) => [id, p] as const)));

/**
 * Reads the field's joints against a layout. Of several readings of a joint the one of the latest date counts, of one
 * date the last. A joint before one that was read lies there too: its shift is blended along the way between the
 * readings before and after it. A part lies there when a joint that it leads to does.
 */
export function laidState(layout: LaidParts, readings: readonly LaidJoint[], slop_m: number): LaidState {
  const joints = new Map(layout.joints.map((j) => [j.id, j]));
  const latest = new Map<string, LaidJoint>();
  for (const r of readings) {
    const known = latest.get(r.joint);
    if (joints.has(r.joint) && (!known || r.date >= known.date)) latest.set(r.joint, r);
  }
  const read = new Map(
    [...latest.values()].map((r) => {
      const j = joints.get(r.joint)!;
      const dz_m = r.deck_m === null ? null : r.deck_m - j.deck_m;
      return [r.joint, { dx_m: r.x - j.x, dy_m: r.y - j.y, dz_m }] as const;
    }),
  );
  const lead = leadingTo(layout);
  const shifts = new Map<string, Shift>(read);
  for (const id of read.keys()) blendBefore(id, lead, joints, read, shifts);
  const kept = layout.parts.filter((p) => endsOf(p).some((id) => shifts.has(id))).map((p) => p.id);
  return {
    shifts,
    kept: new Set(kept),
    deviations: layout.joints.flatMap((j) =>
      read.has(j.id) ? [deviationOf(j, read.get(j.id)!, slop_m)] : [],
    ),
    unknown: [...new Set(readings.map((r) => r.joint))].filter((id) => !joints.has(id)),
    guessed: layout.joints.map((j) => j.id).filter((id) => shifts.has(id) && !read.has(id)),
  };
}

/** Gives every joint on the way to a read one a shift, until the next read one before it or the start. */
function blendBefore(
  id: string,
  lead: ReadonlyMap<string, Part>,
  joints: ReadonlyMap<string, Joint>,
  read: ReadonlyMap<string, Shift>,
  shifts: Map<string, Shift>,
): void {
  const way = [id];
  for (let part = lead.get(id); part; part = lead.get(part.from)) {
    way.push(part.from);
    if (read.has(part.from)) break;
  }
  const place = way.map((w) => joints.get(w)!);
  const off = place.map((j, n) => (n === 0 ? 0 : Math.hypot(j.x - place[n - 1]!.x, j.y - place[n - 1]!.y)));
  const along = off.map((_, n) => off.slice(0, n + 1).reduce((a, b) => a + b, 0));
  const after = read.get(id)!;
  const before = read.get(way.at(-1)!) ?? after;
  way.forEach((w, n) => {
    if (read.has(w) || shifts.has(w)) return;
    const t = along[n]! / Math.max(1e-9, along.at(-1)!);
    const blend = (a: number, b: number): number => a + (b - a) * t;
    shifts.set(w, { dx_m: blend(after.dx_m, before.dx_m), dy_m: blend(after.dy_m, before.dy_m), dz_m: null });
  });
}

export function deviationOf(joint: Joint, { dx_m, dy_m, dz_m }: Shift, slop_m: number): LaidDeviation {
  const h = (joint.heading_deg * Math.PI) / 180;
  const off = { dx: metres(dx_m), dy: metres(dy_m), e_x: qty(Math.sin(h), "1"), e_y: qty(Math.cos(h), "1") };
  const [along_m, across_m]: [number, number] = [tapeAlong(off), tapeOffset(off)];
  const most = Math.max(Math.abs(along_m), Math.abs(across_m), Math.abs(dz_m ?? 0));
  return { joint: joint.id, dx_m, dy_m, along_m, across_m, dz_m, within_slop: most <= slop_m + 1e-9 };
}
