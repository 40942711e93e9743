import { DomainError, metres, qty } from "../units/index.ts";
import { tapeAlong, tapeOffset, tapeTie } from "./setting-out-formulas.ts";
import type { Diagonal, Mark, SetJoint, SettingLine, SettingOut, Tie } from "./setting-out-types.ts";
import type { Joint, Layout } from "./types.ts";

/** What crews carry: ties are not longer than this [m]. */
const TAPE_M = 30;
/** Tapes that cross at this angle or more fix a place well enough; of such pairs the nearest is taken. */
const GOOD_CROSSING_DEG = 30;

/**
 * How a crew with tapes sets a layout out: every joint on a straight baseline, with two ties to places that are set
 * out already and the diagonals of each platform.
 *
 * marks    known marks near the line, such as benchmarks; the ties of joints may go to them
 * returns  joints in the order of setting out, and the closing error of the list
 *
 * Horizontal lengths: on sloping ground the tape is held level. Throws `DomainError` when a part names a joint that
 * the layout does not have.
 */
export function settingOut(layout: Layout, marks: readonly Mark[] = []): SettingOut {
  const setter = new Setter(layout, marks);
  setter.setAll();
  return {
    lines: setter.lines,
    joints: setter.set,
    diagonals: diagonalsOf(layout),
    closing_error_m: closingError(setter.lines, setter.set),
  };
}

class Setter {
  readonly lines: SettingLine[] = [];
  readonly set: SetJoint[] = [];
  private readonly layout: Layout;
  private readonly marks: readonly Mark[];
  private readonly joints: ReadonlyMap<string, Joint>;
  private readonly lineOf = new Map<string, SettingLine>();

  constructor(layout: Layout, marks: readonly Mark[]) {
    this.layout = layout;
    this.marks = marks;
    this.joints = new Map(layout.joints.map((j) => [j.id, j]));
  }

  setAll(): void {
    for (const part of this.layout.parts) {
      // A walkway begins at a start: the first joint there, and of any walkway apart from it, is known by coordinates.
      if (!this.lineOf.has(part.from)) this.place(part.from, this.begin(this.find(part.from)));
      const ends = part.kind === "module" ? [part.to] : [part.exits.ahead, part.exits.left, part.exits.right];
      const line = this.lineAlong(part.from, part.heading_deg);
      for (const end of ends) this.place(end, line);
    }
  }

  /** The baseline that a joint is on, or a new one from there when the way has turned. */
  private lineAlong(id: string, heading_deg: number): SettingLine {
    const known = this.lineOf.get(id) ?? this.begin(this.find(id));
    if (known.heading_deg === rounded(heading_deg, ANGLES)) return known;
    const from = this.lines.find((l) => l.from === id && l.heading_deg === rounded(heading_deg, ANGLES));
    return from ?? this.begin({ ...this.find(id), heading_deg });
  }

  private begin(joint: Joint): SettingLine {
    const line = {
      id: `L${this.lines.length + 1}`,
      from: joint.id,
      heading_deg: rounded(joint.heading_deg, ANGLES),
    };
    this.lines.push(line);
    return line;
  }

  private place(id: string, line: SettingLine): void {
    if (this.lineOf.has(id)) return;
    const joint = this.find(id);
    const origin = this.find(line.from);
    const h = (line.heading_deg * Math.PI) / 180;
    const from = {
      dx: metres(joint.x - origin.x),
      dy: metres(joint.y - origin.y),
      e_x: qty(Math.sin(h), "1"),
      e_y: qty(Math.cos(h), "1"),
    };
    const { ties, crossing_deg } = this.tiesTo(joint);
    const { feet: _feet, id: tag, ...facts } = joint;
    this.set.push({
      joint: tag,
      ...facts,
      line: line.id,
      distance_m: rounded(tapeAlong(from), LENGTHS),
      offset_m: rounded(tapeOffset(from), LENGTHS),
      ties,
      crossing_deg,
    });
    this.lineOf.set(id, line);
  }

  /** The two best places to measure from: tapes that cross well, then the nearest. */
  private tiesTo(joint: Joint): Pick<SetJoint, "ties" | "crossing_deg"> {
    const near = [...this.marks, ...this.set.map((s) => ({ id: s.joint, x: s.x, y: s.y }))]
      .map((p) => ({ to: p.id, dx: joint.x - p.x, dy: joint.y - p.y }))
      .map((p) => ({ ...p, distance: tapeTie({ dx: metres(p.dx), dy: metres(p.dy) }) }))
      .filter((p) => p.distance > 0.05 && p.distance <= TAPE_M)
      .sort((a, b) => a.distance - b.distance)
      .slice(0, 12);
    let best: { pair: typeof near; crossing: number } | null = null;
    for (const [n, a] of near.entries())
      for (const b of near.slice(n + 1)) {
        const sine = Math.abs(a.dx * b.dy - a.dy * b.dx) / (a.distance * b.distance);
        const crossing = (Math.asin(Math.min(1, sine)) * 180) / Math.PI;
        if (best === null || (best.crossing < GOOD_CROSSING_DEG && crossing > best.crossing + 1e-6))
          best = { pair: [a, b], crossing };
      }
    const chosen = best?.pair ?? near.slice(0, 1);
    return {
      ties: chosen.map((p): Tie => ({ to: p.to, distance_m: rounded(p.distance, LENGTHS) })),
      crossing_deg: best === null ? null : rounded(best.crossing, 10),
    };
  }

  private find(id: string): Joint {
    const joint = this.joints.get(id);
    if (!joint) throw new DomainError("no-such-joint", { joint: id });
    return joint;
  }
}

const diagonalsOf = (layout: Layout): Diagonal[] => {
  const joints = new Map(layout.joints.map((j) => [j.id, j]));
  return layout.parts.flatMap((part) => {
    if (part.kind !== "platform") return [];
    const { ahead, left, right } = part.exits;
    const pairs = [
      [part.from, left],
      [part.from, right],
      [ahead, left],
      [ahead, right],
    ] as const;
    return pairs.map(([from, to]): Diagonal => {
      const [a, b] = [joints.get(from)!, joints.get(to)!];
      const distance = tapeTie({ dx: metres(b.x - a.x), dy: metres(b.y - a.y) });
      return { part: part.id, from, to, distance_m: rounded(distance, LENGTHS) };
    });
  });
};

/** Sums the list line by line from the first joint, as it is written, and holds every place against its coordinates. */
function closingError(lines: readonly SettingLine[], joints: readonly SetJoint[]): number {
  const summed = new Map<string, readonly [number, number]>();
  const byId = new Map(lines.map((l) => [l.id, l]));
  let most = 0;
  for (const j of joints) {
    const line = byId.get(j.line)!;
    const [x, y] = summed.get(line.from) ?? [j.x, j.y];
    const h = (line.heading_deg * Math.PI) / 180;
    const at = [
      x + j.distance_m * Math.sin(h) + j.offset_m * Math.cos(h),
      y + j.distance_m * Math.cos(h) - j.offset_m * Math.sin(h),
    ] as const;
    summed.set(j.joint, at);
    most = Math.max(most, Math.hypot(at[0] - j.x, at[1] - j.y));
  }
  return most;
}

/** Steps in one metre, and in one degree, to which the list is written. */
const LENGTHS = 1e4;
const ANGLES = 1e4;
const rounded = (value: number, steps: number): number => Math.round(value * steps) / steps + 0;
