import { sheetWidth } from "./deck.ts";
import { say, type Faults } from "./faults.ts";
import { platformStringers } from "./frame.ts";
import { platformMeshPlan, stringersOnSill } from "./platform-pieces.ts";
import { lying } from "./section.ts";

/** Parts whose decks or undersides differ by more than this do not meet [mm]. */
const LEVEL_MM = 1;

/** The turning platform against the modules that meet it and the supports that carry it. */
export function platformFaults(f: Faults): void {
  const { platform } = f.kit;
  const stringer = f.section("platform.stringers.size", platform.stringers.size);
  const cross = f.section("platform.cross_pieces.size", platform.cross_pieces.size);
  f.fastener("platform.screw", platform.screw, stringer?.thickness_mm ?? null);
  const ok = [
    f.positive("platform.side_mm", platform.side_mm, "the platform's side"),
    f.whole("platform.stringers.count", platform.stringers.count, 2, "the count of platform stringers"),
    f.whole(
      "platform.cross_pieces.count",
      platform.cross_pieces.count,
      2,
      "the rows of platform cross pieces",
    ),
    f.whole("platform.screws_per_end", platform.screws_per_end, 1, "screws per end"),
  ].every(Boolean);
  if (!ok || !stringer || !cross) return;
  const { high } = lying(cross, f.kit.cross_pieces.lay);
  if (high > stringer.width_mm + 0.05)
    f.add(
      "platform",
      "platform.cross_pieces.size",
      platform.cross_pieces.size,
      `a cross piece ${say(high)} high hangs below the platform's stringers (${say(stringer.width_mm)})`,
      "Use a smaller size.",
    );
  sizeFault(f);
  levelFault(f, stringer.width_mm);
  bearingFaults(f);
  if (f.kit.deck.kind === "mesh" && f.kit.deck.panel_length_mm > 0) meshFaults(f);
}

function sizeFault(f: Faults): void {
  const widest = Math.max(f.kit.deck.width_mm, f.kit.stringers.overall_mm);
  if (f.kit.platform.side_mm < widest)
    f.add(
      "platform",
      "platform.side_mm",
      f.kit.platform.side_mm,
      `the platform is smaller than the walkway is wide (${say(widest)})`,
      `Make its side at least ${say(widest)}.`,
    );
}

function levelFault(f: Faults, depth_mm: number): void {
  const module = f.known(f.kit.stringers.size);
  if (module && Math.abs(module.width_mm - depth_mm) > LEVEL_MM)
    f.add(
      "platform",
      "platform.stringers.size",
      f.kit.platform.stringers.size,
      `its stringers are ${say(depth_mm)} deep and the modules' ${say(module.width_mm)}, so that on one support the decks do not meet`,
      `Use the modules' size, ${f.kit.stringers.size}.`,
    );
}

function bearingFaults(f: Faults): void {
  const lines = platformStringers(f.kit, f.sizes);
  if (lines.bays.some(([a, b]) => b - a <= 0)) {
    const { count } = f.kit.platform.stringers;
    f.add("platform", "platform.stringers.count", count, "the stringers leave no space", "Use fewer.");
    return;
  }
  f.kit.supports.forEach((kind, i) => {
    if (stringersOnSill(lines, kind.sill.length_mm) < 2)
      f.add(
        "platform",
        `supports[${i}].sill.length_mm`,
        kind.sill.length_mm,
        "fewer than two stringers of the platform come to lie on this sill under the edge",
        "Lengthen the sill, or set the platform's stringers closer.",
      );
  });
}

function meshFaults(f: Faults): void {
  const { deck, platform } = f.kit;
  if (deck.kind !== "mesh") return;
  const plan = platformMeshPlan(f.kit, deck, platformStringers(f.kit, f.sizes));
  const widest = Math.max(...plan.seams.slice(1).map((y, i) => y - plan.seams[i]!));
  if (widest > sheetWidth(deck) + 0.05)
    f.add(
      "platform",
      "platform.stringers.count",
      platform.stringers.count,
      `a strip of mesh between two stringers is ${say(widest)} wide, and a sheet only ${say(sheetWidth(deck))}`,
      "Set more stringers in the platform.",
    );
  if ((platform.cross_pieces.count - 1) % plan.pieces !== 0)
    f.add(
      "platform",
      "platform.cross_pieces.count",
      platform.cross_pieces.count,
      `the mesh is cut every ${say(plan.piece_mm)}, and no row of cross pieces lies under that joint`,
      `Use ${plan.pieces + 1} rows, or another multiple of ${plan.pieces} and one more.`,
    );
}
