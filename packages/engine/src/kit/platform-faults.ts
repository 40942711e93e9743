import { underPlatformEdge } from "./edge-sill.ts";
import { say, type Faults } from "./faults.ts";
import { platformStringers } from "./frame.ts";
import { SHEET_BEARING_MM } from "./panel-faults.ts";
import { sheetSpan } from "./panels.ts";
import { stringersOnSill } from "./platform-pieces.ts";
import { platformSheetPlan, widestStrip, type PlatformSheets } from "./platform-sheets.ts";
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
    halvesFault(f),
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
  edgeSillFault(f);
  levelFault(f, stringer.width_mm);
  bearingFaults(f);
  if (f.kit.deck.kind !== "boards" && f.kit.deck.panel_length_mm > 0) sheetFaults(f);
}

/** Two halves need two stringers each, and nothing that reaches over their middle line from a module. */
function halvesFault(f: Faults): boolean {
  const { pieces, stringers } = f.kit.platform;
  if (pieces !== 1 && pieces !== 2) {
    f.add("number", "platform.pieces", pieces, "a platform is carried in 1 or 2 pieces", "Give 1 or 2.");
    return false;
  }
  if (pieces === 2 && (stringers.count < 4 || stringers.count % 2 !== 0)) {
    f.add(
      "number",
      "platform.stringers.count",
      stringers.count,
      "a platform in two pieces has as many stringers in one half as in the other, at least two",
      "Give 4, or another even number.",
    );
    return false;
  }
  if (pieces === 2 && f.kit.end.kind === "catch-board")
    f.add(
      "platform",
      "platform.pieces",
      pieces,
      "the two stringers under the middle line stand where the catch board of a module comes to lie",
      "Give the modules a plain end, or build the platform in one piece.",
    );
  return true;
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

/** A sill under an edge carries the module that leaves there too, and reaches no farther than the platform. */
function edgeSillFault(f: Faults): void {
  const { side_mm, edge_sill_mm } = f.kit.platform;
  if (edge_sill_mm === undefined) return;
  if (!f.positive("platform.edge_sill_mm", edge_sill_mm, "the length of the sills under its edges")) return;
  const least = f.kit.stringers.overall_mm;
  if (edge_sill_mm >= least && edge_sill_mm <= side_mm + 0.05) return;
  f.add(
    "platform",
    "platform.edge_sill_mm",
    edge_sill_mm,
    edge_sill_mm < least
      ? `the sills under its edges are shorter than the module is wide (${say(least)})`
      : `the sills under its edges reach past the platform (${say(side_mm)})`,
    `Make them ${say(least)} to ${say(side_mm)} long, or leave the length out.`,
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
    if (stringersOnSill(lines, underPlatformEdge(f.kit, kind).sill.length_mm) < 2)
      f.add(
        "platform",
        `supports[${i}].sill.length_mm`,
        kind.sill.length_mm,
        "fewer than two stringers of the platform come to lie on this sill under the edge",
        "Lengthen the sill, or set the platform's stringers closer.",
      );
  });
}

function sheetFaults(f: Faults): void {
  const { deck, platform } = f.kit;
  if (deck.kind === "boards") return;
  const plan = platformSheetPlan(f.kit, deck, platformStringers(f.kit, f.sizes));
  const widest = widestStrip(plan.seams);
  const what = deck.kind === "mesh" ? "mesh" : "panel";
  if (widest > plan.sheet.width_mm + 0.05)
    f.add(
      "platform",
      "platform.stringers.count",
      platform.stringers.count,
      `a strip of ${what} between two stringers is ${say(widest)} wide, and a sheet only ${say(plan.sheet.width_mm)}`,
      "Set more stringers in the platform.",
    );
  rowFault(f, plan, what);
}

/** Where sheets are cut, a row of cross pieces must lie under both ends. */
function rowFault(f: Faults, { run, sheet }: PlatformSheets, what: "mesh" | "panel"): void {
  const { platform } = f.kit;
  const { count } = platform.cross_pieces;
  if (what === "mesh" ? (count - 1) % run.count === 0 : isBorne(f, run, sheet.gap_mm)) return;
  f.add(
    "platform",
    "platform.cross_pieces.count",
    count,
    `the ${what} is cut every ${say(run.length_mm)}, and no row of cross pieces lies under that joint`,
    `Use ${run.count + 1} rows, or another multiple of ${run.count} and one more${what === "mesh" ? "" : ", wide enough for two ends"}.`,
  );
}

function isBorne(f: Faults, run: PlatformSheets["run"], gap_mm: number): boolean {
  const { side_mm, cross_pieces } = f.kit.platform;
  const { along } = lying(f.known(cross_pieces.size)!, f.kit.cross_pieces.lay);
  const step = (side_mm - along) / (cross_pieces.count - 1);
  return Array.from({ length: run.count - 1 }, (_, k) => k + 1).every((k) => {
    const from = sheetSpan(run, gap_mm, k - 1)[1] - SHEET_BEARING_MM;
    const to = sheetSpan(run, gap_mm, k)[0] + SHEET_BEARING_MM;
    return Array.from({ length: cross_pieces.count }, (_, row) => row * step).some(
      (x) => x <= from + 0.05 && x + along >= to - 0.05,
    );
  });
}
