import type { SupportKind } from "../../kit/index.ts";
import {
  groundAt,
  isShut,
  ruledArea,
  signedDistance,
  type Raster,
  type Ring,
  type Zone,
} from "../../site/index.ts";
import { overlappingPairs } from "../overlap.ts";
import { PreparedArea } from "../prepared-area.ts";
import type { SearchInput } from "../search-input.ts";
import { MOST_FALL_M } from "../standing.ts";
import type { BrokenRule, Joint, ModulePart, Part } from "../types.ts";
import type { Spot } from "./guide.ts";

/** Ground is read this far apart, under a foot and along a module [m]. */
const READ_FOOT = 0.05;
const READ_MODULE = 0.1;
/** Heights that differ by less than this are the same [m]. */
const LEVEL = 1e-6;

export interface Laid {
  readonly joints: readonly Joint[];
  readonly parts: readonly Part[];
}

/**
 * Every hard rule that a laid-out walkway breaks, part by part and joint by joint: where, what it means, how to mend it.
 * Geometry is exact; ground under feet is read every 50 mm, under modules every 100 mm.
 */
export function brokenRules(laid: Laid, input: SearchInput): BrokenRule[] {
  const marker = new Marker(laid, input);
  return marker.mark();
}

class Marker {
  private readonly found: BrokenRule[] = [];
  private readonly laid: Laid;
  private readonly input: SearchInput;
  private readonly joints: ReadonlyMap<string, Joint>;
  private readonly areas = new Map<Zone, PreparedArea>();

  constructor(laid: Laid, input: SearchInput) {
    this.laid = laid;
    this.input = input;
    this.joints = new Map(laid.joints.map((j) => [j.id, j]));
  }

  mark(): BrokenRule[] {
    for (const part of this.laid.parts) {
      this.outlines(part.id, middleOf(part.outline[0]![0]!), [part.outline[0]![0]!]);
      if (part.kind === "module") this.module(part);
    }
    for (const joint of this.laid.joints) this.joint(joint);
    this.overlaps();
    return this.found;
  }

  private add(rule: string, what: string, place: Spot, message: string, mend: string): void {
    this.found.push({ rule, part_or_joint: what, place, message, mend });
  }

  private areaOf(zone: Zone): PreparedArea {
    const known = this.areas.get(zone) ?? new PreparedArea(ruledArea(zone));
    this.areas.set(zone, known);
    return known;
  }

  /** What no part and no foot may touch. */
  private outlines(what: string, place: Spot, rings: readonly Ring[]): void {
    const { site, laying } = this.input;
    for (const zone of site.zones)
      if (isShut(zone, laying.from, laying.to) && rings.some((ring) => this.areaOf(zone).touches(ring)))
        this.add(
          "shut-zone",
          what,
          place,
          `${what} touches ${zone.use} "${zone.name}", which is shut while laying.`,
          "Lead the line around it, or lay at another time.",
        );
    for (const plot of site.plots)
      if (
        plot.keep_off_m > 0 &&
        rings.some((ring) => signedDistance([[ring]], plot.x, plot.y) < plot.keep_off_m - LEVEL)
      )
        this.add(
          "keep-off",
          what,
          place,
          `${what} lies nearer to plot "${plot.name}" than ${metres(plot.keep_off_m)}.`,
          "End the line earlier, or lead it past farther off.",
        );
  }

  private joint(joint: Joint): void {
    const place: Spot = [joint.x, joint.y];
    const kind = this.input.facts.supports.find((k) => k.id === joint.support);
    if (!kind) return;
    this.supportHeight(joint, kind);
    this.feet(joint, kind);
    const clear = joint.deck_m - this.input.facts.depth_m - joint.ground_m;
    if (clear < this.input.choice.min_clear_mm / 1000 - LEVEL)
      this.add(
        "clear-height",
        joint.id,
        place,
        `At ${joint.id} the underside lies ${metres(clear)} above the ground; ${metres(this.input.choice.min_clear_mm / 1000)} are asked for.`,
        "Use a higher support, or allow less clearance.",
      );
  }

  private supportHeight(joint: Joint, kind: SupportKind): void {
    const mm = joint.support_height_m * 1000;
    if (mm >= kind.height_min_mm - 1e-3 && mm <= kind.height_max_mm + 1e-3) return;
    this.add(
      "support-height",
      joint.id,
      [joint.x, joint.y],
      `At ${joint.id} the support would have to be ${metres(mm / 1000)} high; "${kind.name}" is made from ${metres(kind.height_min_mm / 1000)} to ${metres(kind.height_max_mm / 1000)}.`,
      "Move the line to ground of another height, or put a taller kind of support in the kit.",
    );
  }

  /** All feet of one support: each rule is marked once, at its worst. */
  private feet(joint: Joint, kind: SupportKind): void {
    const place: Spot = [joint.x, joint.y];
    const { site } = this.input;
    const ground = joint.feet.map((foot) => groundUnder(site.terrain, foot[0]!));
    const low = Math.min(...ground.map((g) => g.low));
    const fall = Math.max(...ground.map((g) => g.high - g.low));
    const least = kind.stands.ground_above_m;
    if (Number.isNaN(low))
      this.add(
        "foot-ground",
        joint.id,
        place,
        `Support ${joint.id} stands where the ground is not known.`,
        "Survey there, or move the line.",
      );
    else if (least !== null && low < least)
      this.add(
        "foot-ground",
        joint.id,
        place,
        `Support ${joint.id} stands on ground at ${metres(low)}; "${kind.name}" needs ground above ${metres(least)}.`,
        "Move the line, or put a support in the kit that may stand lower.",
      );
    if (fall > MOST_FALL_M)
      this.add(
        "foot-level",
        joint.id,
        place,
        `Under support ${joint.id} the ground falls by ${metres(fall)} across a foot; a crew can level ${metres(MOST_FALL_M)}.`,
        "Move the line back from the edge.",
      );
    const rings = joint.feet.map((foot) => foot[0]!);
    for (const zone of site.zones)
      if (kind.stands.not_in.includes(zone.use) && rings.some((ring) => this.areaOf(zone).touches(ring)))
        this.add(
          "foot-zone",
          joint.id,
          place,
          `Support ${joint.id} stands in ${zone.use} "${zone.name}", where "${kind.name}" must not stand.`,
          "Move the line, or put a support in the kit that may stand there.",
        );
    this.outlines(joint.id, place, rings);
  }

  private module(part: ModulePart): void {
    const from = this.joints.get(part.from)!;
    const to = this.joints.get(part.to)!;
    const place: Spot = [(from.x + to.x) / 2, (from.y + to.y) / 2];
    const { choice, facts, site } = this.input;
    const grade = Math.abs(to.deck_m - from.deck_m) / (part.length_m + facts.gap_m);
    if (grade > choice.max_grade + LEVEL)
      this.add(
        "grade",
        part.id,
        place,
        `${part.id} rises ${percent(grade)}; at most ${percent(choice.max_grade)} is allowed.`,
        "Lead the line along the slope, or allow steeper modules.",
      );
    const ground = alongModule(site.terrain, from, to);
    if (ground.some(({ z }) => Number.isNaN(z)))
      this.add(
        "ground-unknown",
        part.id,
        place,
        `Ground under ${part.id} is not known.`,
        "Survey there, or move the line.",
      );
    const under = ground.map(({ z, t }) => from.deck_m + (to.deck_m - from.deck_m) * t - facts.depth_m - z);
    const least = Math.min(...under.slice(1, -1).filter((v) => !Number.isNaN(v)));
    if (least < choice.min_clear_mm / 1000 - LEVEL)
      this.add(
        "clear-height",
        part.id,
        place,
        `Between its joints ${part.id} comes to ${metres(least)} above the ground; ${metres(choice.min_clear_mm / 1000)} are asked for.`,
        "Use higher supports at its ends, or shorter modules.",
      );
  }

  private overlaps(): void {
    const { parts, joints } = this.laid;
    for (const [a, b] of overlappingPairs(parts.map((p) => p.outline)))
      this.add(
        "part-overlap",
        parts[b]!.id,
        middleOf(parts[b]!.outline[0]![0]!),
        `${parts[a]!.id} and ${parts[b]!.id} lie in one place.`,
        "Draw the lines farther apart, or let one branch off the other.",
      );
    for (const [a, b] of overlappingPairs(joints.map((j) => j.feet)))
      this.add(
        "support-overlap",
        joints[b]!.id,
        [joints[b]!.x, joints[b]!.y],
        `The supports of ${joints[a]!.id} and ${joints[b]!.id} stand in one place.`,
        "Draw the lines farther apart, or let one branch off the other.",
      );
  }
}

function groundUnder(terrain: Raster, ring: Ring): { low: number; high: number } {
  const [a, b, , d] = ring as readonly [Spot, Spot, Spot, Spot];
  const pieces = (p: Spot, q: Spot): number =>
    Math.max(1, Math.ceil(Math.hypot(q[0] - p[0], q[1] - p[1]) / READ_FOOT));
  const [across, along] = [pieces(a, b), pieces(a, d)];
  let [low, high] = [Infinity, -Infinity];
  for (let p = 0; p <= across; p++)
    for (let q = 0; q <= along; q++) {
      const x = a[0] + ((b[0] - a[0]) * p) / across + ((d[0] - a[0]) * q) / along;
      const y = a[1] + ((b[1] - a[1]) * p) / across + ((d[1] - a[1]) * q) / along;
      const z = groundAt(terrain, x, y);
      if (Number.isNaN(z)) return { low: NaN, high: NaN };
      low = Math.min(low, z);
      high = Math.max(high, z);
    }
  return { low, high };
}

function alongModule(terrain: Raster, from: Joint, to: Joint): { z: number; t: number }[] {
  const pieces = Math.max(2, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / READ_MODULE));
  return Array.from({ length: pieces + 1 }, (_, k) => {
    const t = k / pieces;
    return { z: groundAt(terrain, from.x + (to.x - from.x) * t, from.y + (to.y - from.y) * t), t };
  });
}

const middleOf = (ring: Ring): Spot => [(ring[0]![0] + ring[2]![0]) / 2, (ring[0]![1] + ring[2]![1]) / 2];
const metres = (m: number): string => `${m.toFixed(2)} m`;
const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
