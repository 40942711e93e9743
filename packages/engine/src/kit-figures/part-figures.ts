import { recordValue, type Source } from "../formula/index.ts";
import {
  moduleCounts,
  moduleOpenShare,
  modulePieces,
  moduleScrews,
  platformCounts,
  platformHalves,
  platformOpenShare,
  platformPieces,
  platformScrews,
  rampCounts,
  rampPieces,
  type Counted,
  type Kit,
  type OpenShare,
  type PlacedPiece,
} from "../kit/index.ts";
import { partCosts, type PartCosts } from "../cost/index.ts";
import {
  moduleMasses,
  ovenDryGravity,
  timberRow,
  type PartMass,
  type PartMasses,
  type Price,
  type Tables,
} from "../materials/index.ts";
import { metres, qty, type Qty } from "../units/index.ts";
import { costFigure, figureOf, massFigure, missingFigure, pieceLines } from "./figure.ts";
import { costPerFoot, costPerMetre, massPerCarrier, steepestRise } from "./formulas.ts";
import type { KitFigure, KitFigures, PartFigures } from "./types.ts";

/** What all parts of one kit share, worked out once. */
export interface KitSetting {
  readonly kit: Kit;
  readonly tables: Tables;
  readonly carriers: number;
  readonly gravity: Qty<"1"> | null;
  readonly masses: PartMasses;
  readonly costs: PartCosts;
}

export function kitSetting(kit: Kit, tables: Tables, prices: readonly Price[], carriers: number): KitSetting {
  const { species, grade } = kit.lumber;
  const row = timberRow(tables, species, grade);
  return {
    kit,
    tables,
    carriers,
    gravity: row ? ovenDryGravity(row.density) : null,
    masses: moduleMasses(kit, tables.sizes),
    costs: partCosts(kit, prices, tables.sizes),
  };
}

const boxes: Source = {
  id: "causey-kit",
  title: "Project method: pieces placed as boxes from the kit's recipe (docs/methods/kit.md)",
  at: "outline cut at every edge of every piece, light straight down",
  status: "project",
};

function openFigures(share: OpenShare): NonNullable<PartFigures["open"]> {
  const one = (title: string, value: number): KitFigure =>
    figureOf(title, "1", (trace) => {
      const how = "open area over the outline, cell by cell";
      recordValue(trace, { id: "kit.open-share", title, symbol: "o", value, unit: "1", source: boxes, how });
      return value;
    });
  return {
    deck: one("Open share of the deck", share.deck),
    whole: one("Open share past deck, frame and curbs", share.whole),
    share,
  };
}

function costFigures(
  { costs }: KitSetting,
  amount: number | null,
  counted: readonly Counted[],
  length: Qty<"m">,
): NonNullable<PartFigures["cost"]> {
  const material = costFigure("Materials", amount, counted, costs.missing);
  const each = (title: string, of: (a: Qty<"money">, trace: KitFigure["working"]) => number): KitFigure =>
    material.value === null
      ? missingFigure(title, "money", material.missing)
      : figureOf(title, "money", (trace) => of(qty(material.value!, "money"), trace));
  return {
    material,
    per_m: each("Materials for one metre", (A, trace) => costPerMetre({ A, L: length }, trace)),
    per_ft: each("Materials for one foot", (A, trace) =>
      costPerFoot({ a: costPerMetre({ A, L: length }, trace) }, trace),
    ),
  };
}

type Named = Pick<PartFigures, "id" | "kind" | "name" | "length_mm" | "counted" | "screws" | "open" | "cost">;

function partOf(
  setting: KitSetting,
  pieces: readonly PlacedPiece[],
  mass: PartMass,
  rest: Named,
): PartFigures {
  const { gravity, carriers } = setting;
  const [mass_new, mass_soaked] = [
    massFigure("Mass, new and dry", mass, gravity, "new"),
    massFigure("Mass, soaked", mass, gravity, "soaked"),
  ];
  const share = (title: string, of: KitFigure): KitFigure =>
    of.value === null
      ? missingFigure(title, "kg", of.missing)
      : figureOf(title, "kg", (trace) =>
          massPerCarrier({ m: qty(of.value!, "kg"), n: qty(carriers, "1") }, trace),
        );
  return {
    ...rest,
    pieces: pieceLines(pieces),
    mass_new,
    mass_soaked,
    carrier_new: share("For each carrier, new and dry", mass_new),
    carrier_soaked: share("For each carrier, soaked", mass_soaked),
  };
}

export function moduleFigures(setting: KitSetting, length_mm: number): PartFigures {
  const { kit, tables, masses, costs } = setting;
  const { sizes, fasteners } = tables;
  const counted = moduleCounts(kit, length_mm, sizes, fasteners);
  return partOf(setting, modulePieces(kit, length_mm, sizes), masses.module(length_mm / 1000), {
    id: `module-${length_mm}`,
    kind: "module",
    name: `Module ${length_mm} mm`,
    length_mm,
    counted,
    screws: moduleScrews(kit, length_mm, sizes).length,
    open: openFigures(moduleOpenShare(kit, length_mm, sizes)),
    cost: costFigures(
      setting,
      costs.module(length_mm),
      counted,
      metres((length_mm + kit.joint_gap_mm) / 1000),
    ),
  });
}

export function platformFigures(setting: KitSetting): PartFigures {
  const { kit, tables, masses, costs } = setting;
  const { sizes, fasteners } = tables;
  const { side_mm } = kit.platform;
  const counted = platformCounts(kit, sizes, [], fasteners);
  return partOf(setting, platformPieces(kit, sizes), masses.platform, {
    id: "platform",
    kind: "platform",
    name: `Platform ${side_mm} mm`,
    length_mm: side_mm,
    counted,
    screws: platformScrews(kit, sizes).length,
    open: openFigures(platformOpenShare(kit, sizes)),
    cost: costFigures(setting, costs.platform, counted, metres((side_mm + kit.joint_gap_mm) / 1000)),
  });
}

/** Right and left half of a platform in two pieces; none for a whole one. Screws of the joint are the whole's. */
export function halfFigures(setting: KitSetting): PartFigures[] {
  const { kit, tables, masses } = setting;
  if (kit.platform.pieces === 1) return [];
  const screws = platformScrews(kit, tables.sizes).filter((s) => s.holds !== "halves");
  return platformHalves(kit, tables.sizes).map((pieces, i) =>
    partOf(setting, pieces, masses.platform_parts[i]!, {
      id: `platform-half-${i === 0 ? "right" : "left"}`,
      kind: "platform-half",
      name: `Platform, ${i === 0 ? "right" : "left"} half`,
      length_mm: kit.platform.side_mm,
      counted: [],
      screws: screws.filter((s) => s.y_mm < 0 === (i === 0)).length,
      open: null,
      cost: null,
    }),
  );
}

export function rampFigures(setting: KitSetting, length_mm: number): KitFigures["ramps"][number] {
  const { kit, tables, masses, costs } = setting;
  const { sizes, fasteners } = tables;
  const counted = rampCounts(kit, length_mm, sizes, fasteners);
  const part = partOf(setting, rampPieces(kit, length_mm, sizes), masses.ramp(length_mm), {
    id: `ramp-${length_mm}`,
    kind: "ramp",
    name: `Ramp ${length_mm} mm`,
    length_mm,
    counted,
    screws: counted
      .filter((c) => fasteners.some((f) => f.id === c.item))
      .reduce((sum, c) => sum + c.count, 0),
    open: null,
    cost: costFigures(setting, costs.ramp(length_mm), counted, metres(length_mm / 1000)),
  });
  const rise = figureOf("Rise at its steepest", "m", (trace) =>
    steepestRise({ L: metres(length_mm / 1000), s: qty(kit.ramp!.max_grade, "1") }, trace),
  );
  return { ...part, rise };
}
