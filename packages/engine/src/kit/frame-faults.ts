import { catchBoardSpan, crossPlaces, sameLength } from "./cross-places.ts";
import { say, type Faults } from "./faults.ts";
import { startPieceUnderside } from "./module-pieces.ts";
import { lying } from "./section.ts";
import type { CrossPieceException } from "./types.ts";

/** Least width between stringers that a cross piece and a hand with a driver need [mm]; a decision of this project. */
const LEAST_BAY_MM = 100;
/** What must stay of a catch board inside its own module to hold its screws [mm]; a decision of this project. */
const LEAST_HOLD_MM = 38;

/** Lengths and joint gap. */
export function lengthFaults(f: Faults): void {
  const { lengths_mm, joint_gap_mm } = f.kit;
  if (lengths_mm.length === 0)
    f.add("length", "lengths_mm", lengths_mm, "the kit has no module length", "Give at least one length.");
  lengths_mm.forEach((l, i) => {
    f.positive(`lengths_mm[${i}]`, l, "a module length");
    if (lengths_mm.findIndex((other) => sameLength(other, l)) < i)
      f.add("length", `lengths_mm[${i}]`, l, `length ${say(l)} is given twice`, "Remove one of them.");
  });
  f.notNegative("joint_gap_mm", joint_gap_mm, "the joint gap");
}

/** Stringers, cross pieces and the module's end. */
export function frameFaults(f: Faults): void {
  const { stringers } = f.kit;
  const section = f.section("stringers.size", stringers.size);
  const isWide = f.positive("stringers.overall_mm", stringers.overall_mm, "the overall width");
  if (stringers.count !== 2 && stringers.count !== 3)
    f.add("number", "stringers.count", stringers.count, "a module has 2 or 3 stringers", "Give 2 or 3.");
  if (section && isWide) {
    const bay = (stringers.overall_mm - stringers.count * section.thickness_mm) / (stringers.count - 1);
    if (bay < LEAST_BAY_MM)
      f.add(
        "stringers",
        "stringers.overall_mm",
        stringers.overall_mm,
        `only ${say(bay)} is left between the stringers`,
        `Widen the module or use fewer stringers: at least ${say(LEAST_BAY_MM)} between them.`,
      );
  }
  crossPieceFaults(f, section?.width_mm ?? null, section?.thickness_mm ?? null);
}

function crossPieceFaults(f: Faults, depth_mm: number | null, thickness_mm: number | null): void {
  const c = f.kit.cross_pieces;
  const section = f.section("cross_pieces.size", c.size);
  const isSpaced = f.positive("cross_pieces.spacing_mm", c.spacing_mm, "the spacing of cross pieces");
  f.whole("cross_pieces.screws_per_end", c.screws_per_end, 1, "screws per end");
  f.fastener("cross_pieces.screw", c.screw, thickness_mm);
  if (section && isSpaced && lying(section, c.lay).along > c.spacing_mm)
    f.add(
      "cross-piece",
      "cross_pieces.spacing_mm",
      c.spacing_mm,
      "the spacing is less than the width of a cross piece, so that neighbours would overlap",
      `Space them at least ${say(lying(section, c.lay).along)} apart.`,
    );
  c.exceptions.forEach((e, i) => exceptionFaults(f, e, i));
  if (depth_mm !== null) depthFaults(f, depth_mm);
  endFaults(f);
}

/** Cross pieces must not hang below the stringers. */
function depthFaults(f: Faults, depth_mm: number): void {
  const { size, lay, exceptions } = f.kit.cross_pieces;
  const all = [
    { place: "cross_pieces.size", id: size },
    ...exceptions.map((e, i) => ({ place: `cross_pieces.exceptions[${i}].size`, id: e.size ?? size })),
  ];
  for (const { place, id } of all) {
    const section = f.known(id);
    if (!section) continue;
    const { high } = lying(section, lay);
    if (high > depth_mm + 0.05)
      f.add(
        "cross-piece",
        place,
        id,
        `a cross piece laid ${lay} is ${say(high)} high and hangs below the stringers (${say(depth_mm)})`,
        "Use a smaller size, or lay it flat.",
      );
  }
}

function exceptionFaults(f: Faults, e: CrossPieceException, i: number): void {
  const place = `cross_pieces.exceptions[${i}]`;
  if (e.size !== undefined) f.section(`${place}.size`, e.size);
  const meant = f.kit.lengths_mm.filter((l) => e.length_mm === undefined || sameLength(l, e.length_mm));
  if (e.length_mm !== undefined && meant.length === 0)
    f.add(
      "cross-piece",
      `${place}.length_mm`,
      e.length_mm,
      "no module of the kit has this length",
      `Use one of: ${f.kit.lengths_mm.map(say).join(", ")}.`,
    );
  else if (!Number.isFinite(e.at_mm) || e.at_mm < 0 || !meant.some((l) => e.at_mm <= l))
    f.add(
      "cross-piece",
      `${place}.at_mm`,
      e.at_mm,
      `the place lies off the module (${meant.map(say).join(", ")})`,
      "Give a distance from the module's start that lies on it.",
    );
  else if (canPlaceRows(f)) effectFault(f, e, i, meant);
}

/** Whether every size that decides where cross pieces lie is known, so that the rows can be laid out. */
export function canPlaceRows(f: Faults): boolean {
  const { cross_pieces: c, end, stringers } = f.kit;
  const ids = [c.size, stringers.size, ...c.exceptions.map((e) => e.size ?? c.size)];
  if (end.kind === "catch-board") ids.push(end.size);
  if (!ids.every((id) => f.known(id) !== null)) return false;
  return c.spacing_mm >= lying(f.known(c.size)!, c.lay).along;
}

/** An exception that changes no module was meant for another place. */
function effectFault(f: Faults, e: CrossPieceException, i: number, meant: readonly number[]): void {
  const without = {
    ...f.kit,
    cross_pieces: { ...f.kit.cross_pieces, exceptions: f.kit.cross_pieces.exceptions.toSpliced(i, 1) },
  };
  const acts = meant.some(
    (l) =>
      JSON.stringify(crossPlaces(f.kit, l, f.sizes)) !== JSON.stringify(crossPlaces(without, l, f.sizes)),
  );
  if (!acts)
    f.add(
      "cross-piece",
      `cross_pieces.exceptions[${i}]`,
      e.at_mm,
      e.omit ? "there is no cross piece here to leave out" : "this exception changes no module",
      "Remove it, or give the place of the cross piece that is meant.",
      "warning",
    );
}

function endFaults(f: Faults): void {
  const { end, joint_gap_mm } = f.kit;
  if (end.kind === "plain") return;
  const board = f.section("end.size", end.size);
  const isLong = f.positive("end.projection_mm", end.projection_mm, "the projection of the catch board");
  if (!board || !isLong || !canPlaceRows(f)) return;
  const under = startPieceUnderside(f.kit, f.sizes);
  if (under < board.thickness_mm - 0.05)
    f.add(
      "end",
      "end.size",
      end.size,
      `under the first cross piece only ${say(Math.max(0, under))} is left, and the catch board is ${say(board.thickness_mm)} thick`,
      "Lay the cross pieces flat, use deeper stringers, or give the module a plain end.",
    );
  if (end.projection_mm <= joint_gap_mm)
    f.add(
      "end",
      "end.projection_mm",
      end.projection_mm,
      `the catch board does not reach the next module over the joint gap of ${say(joint_gap_mm)}`,
      "Let it project farther.",
    );
  if (end.projection_mm > board.width_mm - LEAST_HOLD_MM)
    f.add(
      "end",
      "end.projection_mm",
      end.projection_mm,
      `less than ${say(LEAST_HOLD_MM)} of the catch board stays inside its module to hold the screws`,
      `Let it project at most ${say(board.width_mm - LEAST_HOLD_MM)}, or use a wider board.`,
    );
  f.kit.lengths_mm.forEach((l, i) => {
    if ((catchBoardSpan(f.kit, l, f.sizes)?.[0] ?? 0) < 0)
      f.add("end", `lengths_mm[${i}]`, l, "the module is shorter than its catch board", "Lengthen it.");
  });
}
