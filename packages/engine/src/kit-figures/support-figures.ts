import { recordValue } from "../formula/index.ts";
import { engineerBecause, supportCounts, supportPieces, type SupportKind } from "../kit/index.ts";
import { millimetres, qty } from "../units/index.ts";
import { costFigure, figureOf, massFigure, pieceLines } from "./figure.ts";
import { shaftContact } from "./formulas.ts";
import type { KitSetting } from "./part-figures.ts";
import type { KitFigure, SupportAtHeight, SupportFigures } from "./types.ts";

/** One kind of support, at the ends of its range of heights. */
export function supportFigures(setting: KitSetting, kind: SupportKind): SupportFigures {
  return {
    id: kind.id,
    name: kind.name,
    form: kind.form,
    height_min_mm: kind.height_min_mm,
    height_max_mm: kind.height_max_mm,
    height_step_mm: kind.height_step_mm,
    contact: contactFigure(kind),
    lowest: atHeight(setting, kind, kind.height_min_mm),
    highest: atHeight(setting, kind, kind.height_max_mm),
    engineer: engineerBecause(kind),
  };
}

/** Ground that one support covers: its feet, the shafts of its piles; floats cover it only when aground. */
function contactFigure({ feet, piles, form }: SupportKind): KitFigure {
  const title = form === "float" ? "Ground under it when aground" : "Ground under it";
  return figureOf(title, "m2", (trace) => {
    if (piles) return shaftContact({ n: qty(piles.count, "1"), d: millimetres(piles.shaft_mm) }, trace);
    const value = feet.reduce((sum, f) => sum + (f.along_mm * f.across_mm) / 1e6, 0);
    recordValue(trace, {
      id: "kit.contact",
      title,
      symbol: "A",
      value,
      unit: "m2",
      source: { id: "kit-recipe", title: "The kit's recipe: its feet", status: "project" },
      how: `sum of ${feet.length} feet, along times across`,
    });
    return value;
  });
}

function atHeight(setting: KitSetting, kind: SupportKind, height_mm: number): SupportAtHeight {
  const { kit, tables, masses, gravity, costs } = setting;
  const mass = masses.support(kind, height_mm / 1000);
  const counted = supportCounts(kind, tables.fasteners);
  return {
    height_mm,
    pieces: pieceLines(supportPieces(kit, kind, height_mm / 1000, tables.sizes)),
    counted,
    mass_new: massFigure("Mass, new and dry", mass, gravity, "new"),
    mass_soaked: massFigure("Mass, soaked", mass, gravity, "soaked"),
    cost: costFigure("Materials", costs.support(kind.id, height_mm / 1000), counted, costs.missing),
  };
}
