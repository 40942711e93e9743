import type { Problem } from "../formula/index.ts";
import { timberRow, timberRows } from "../materials/timber-rows.ts";
import { deckFaults } from "./deck-faults.ts";
import { underPlatformEdge } from "./edge-sill.ts";
import { faultsOf, say, type Faults, type KitTables } from "./faults.ts";
import { canPlaceRows, frameFaults, lengthFaults } from "./frame-faults.ts";
import { betweenTenths, latticeLengths, latticeStep, SHORTEST_STEP_MM, shortenedByGap } from "./lattice.ts";
import { modulePieces } from "./module-pieces.ts";
import { overlaps, type PlacedPiece } from "./piece.ts";
import { platformFaults } from "./platform-faults.ts";
import { platformPieces } from "./platform-pieces.ts";
import { rampFaults } from "./ramp-faults.ts";
import { supportFaults } from "./support-faults.ts";
import { supportPieces } from "./support-pieces.ts";
import { supportHeights } from "./support-tiers.ts";
import { preservativeFaults } from "./preservative-faults.ts";
import type { Kit } from "./types.ts";

/**
 * Every fault of a recipe, all at once, each with its place in the plan file and how to mend it.
 *
 * tables   lumber sizes, grades and fasteners the recipe may name
 * returns  empty for a kit that can be built; warnings do not stop a plan
 *
 * Holds the recipe against itself (carpentry, lattice, supports); whether it carries a load is for the checks.
 */
export function validateKit(kit: Kit, tables: KitTables): Problem[] {
  const f = faultsOf(kit, tables);
  lumberFault(f, tables);
  lengthFaults(f);
  frameFaults(f);
  deckFaults(f, canPlaceRows(f));
  supportFaults(f);
  platformFaults(f);
  rampFaults(f);
  spareFault(f);
  latticeFaults(f);
  overlapFaults(f);
  return f.problems;
}

function lumberFault(f: Faults, tables: KitTables): void {
  preservativeFaults(f, tables);
  const { species, grade } = f.kit.lumber;
  if (timberRow(tables, species, grade)) return;
  const known = timberRows(tables)
    .map((g) => `${g.species} ${g.grade}`)
    .join(", ");
  f.add(
    "lumber",
    "lumber",
    `${species} ${grade}`,
    "this species and grade is not in the tables",
    `Use one of: ${known}.`,
  );
}

function spareFault(f: Faults): void {
  const { spares_share: share } = f.kit;
  if (!(share >= 0 && share <= 1))
    f.add(
      "number",
      "spares_share",
      share,
      "the share of spare modules must be from 0 to 1",
      "Give 0.03 for 3 %.",
    );
}

function latticeFaults(f: Faults): void {
  const lengths = latticeLengths(f.kit);
  if (!lengths.every((l) => Number.isFinite(l) && l > 0)) return;
  const fine = betweenTenths(lengths);
  if (fine.length > 0)
    f.add(
      "lattice",
      "lengths_mm",
      fine.map((l) => l.toFixed(3)).join(", "),
      "a pitch, or half the platform's, is no whole number of tenths of a millimetre",
      "Give lengths and joint gap so that length plus gap, and half of side plus gap, end at a tenth of a millimetre.",
    );
  const step = latticeStep(f.kit);
  if (step >= SHORTEST_STEP_MM) return;
  f.add(
    "lattice",
    "joint_gap_mm",
    f.kit.joint_gap_mm,
    `the pitches (${lengths.slice(0, -1).map(say).join(", ")}) and half the platform's (${say(lengths.at(-1)!)}) share no step longer than ${say(step)}; the layout needs one of at least ${say(SHORTEST_STEP_MM)}`,
    latticeMend(f.kit),
  );
}

/** What would mend the lattice of this very kit, with the numbers. */
function latticeMend(kit: Kit): string {
  const closed: Kit = { ...kit, joint_gap_mm: 0 };
  const step = latticeStep(closed);
  if (kit.joint_gap_mm > 0 && step >= SHORTEST_STEP_MM) {
    const short = shortenedByGap(kit);
    return `Saw the modules shorter by the gap (${short.lengths_mm.map(say).join(", ")}; platform ${say(short.platform.side_mm)}), so that length plus gap is a multiple of ${say(step)}; or set the joint gap to 0.`;
  }
  return "Choose lengths, platform side and joint gap so that length plus gap, and half of side plus gap, are multiples of one length such as 304.8 mm (1 ft) or 300 mm.";
}

/** Faults of these kinds leave no boxes worth looking at. */
const NOT_PLACED = ["number", "size", "length", "stringers", "cross-piece", "end", "deck", "curb"];

/** Two pieces in one place: the last look, at the finished boxes of what could be placed. */
function overlapFaults(f: Faults): void {
  const errors = f.problems.filter((p) => p.severity === "error");
  const isPlaced = !errors.some((p) => NOT_PLACED.includes(p.code.slice("kit-".length)));
  if (isPlaced) walkwayOverlaps(f);
  f.kit.supports.forEach((kind, i) => {
    const place = `supports[${i}]`;
    if (errors.some((p) => p.place.startsWith(`kit.${place}.`))) return;
    const forms = [...new Set([kind, underPlatformEdge(f.kit, kind)])];
    for (const h of supportHeights(kind))
      if (
        forms.some((form) =>
          report(f, place, supportPieces(f.kit, form, h / 1000, f.sizes), `"${kind.name}" at ${say(h)}`),
        )
      )
        break;
  });
}

function walkwayOverlaps(f: Faults): void {
  const { kit, sizes } = f;
  kit.lengths_mm.forEach((l, i) => {
    const pieces = modulePieces(kit, l, sizes);
    report(f, `lengths_mm[${i}]`, pieces, `a module of ${say(l)}`);
    report(
      f,
      "end",
      [...arrivingBoards(pieces, l + kit.joint_gap_mm), ...pieces],
      "the joint of two modules",
    );
  });
  const first = kit.lengths_mm[0]!;
  const arriving = arrivingBoards(modulePieces(kit, first, sizes), first + kit.joint_gap_mm);
  for (const closed of [[], ["back", "ahead", "left", "right"]] as const)
    if (report(f, "platform", [...arriving, ...platformPieces(kit, sizes, closed)], "the platform")) break;
}

/** Catch boards of a module as the next part finds them, in the next part's frame. */
const arrivingBoards = (pieces: readonly PlacedPiece[], pitch_mm: number): PlacedPiece[] =>
  pieces
    .filter((p) => p.role === "catch board")
    .map((p) => ({
      ...p,
      role: "arriving catch board",
      x0: p.x0 - pitch_mm / 1000,
      x1: p.x1 - pitch_mm / 1000,
    }));

const named = (p: PlacedPiece): string => (p.size === null ? p.role : `${p.role} (${p.size})`);

/** Reports the first overlap of a part; true when there is one. */
function report(f: Faults, place: string, pieces: readonly PlacedPiece[], what: string): boolean {
  const found = overlaps(pieces).find(([a, b]) => !(a.role === b.role && a.role === "arriving catch board"));
  if (!found) return false;
  const [a, b] = found;
  const at = (Math.max(a.x0, b.x0) * 1000).toFixed(0);
  f.add(
    "overlap",
    place,
    `${a.role}, ${b.role}`,
    `in ${what} a ${named(a)} and a ${named(b)} stand in the same place, ${at} mm along`,
    "Change a size, a spacing or a count so that both fit.",
  );
  return true;
}
