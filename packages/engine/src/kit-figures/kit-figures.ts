import { carrierLimit } from "../checks/index.ts";
import type { Kit } from "../kit/index.ts";
import type { Price, Tables } from "../materials/index.ts";
import { DomainError } from "../units/index.ts";
import { figureOf } from "./figure.ts";
import { halfFigures, kitSetting, moduleFigures, platformFigures, rampFigures } from "./part-figures.ts";
import { supportFigures } from "./support-figures.ts";
import type { KitFigures } from "./types.ts";

/**
 * Every part of a kit in figures: pieces, screws, masses, open share, material cost, supports; each with its working.
 *
 * prices    all in one currency; a part with an unpriced item has no cost, and says what is missing
 * carriers  people who carry one part, a whole number >= 1
 *
 * Ask `validateKit` first: throws `DomainError` for sizes that the tables lack or a faulty ramp. Masses leave out
 * screws and clips (under 2 %); costs leave out waste, whole packs, tax and labour.
 */
export function kitFigures(kit: Kit, tables: Tables, prices: readonly Price[], carriers: number): KitFigures {
  if (!Number.isInteger(carriers) || carriers < 1) throw new DomainError("not-a-crew", { carriers });
  const setting = kitSetting(kit, tables, prices, carriers);
  return {
    kit: kit.id,
    carriers,
    carrier_limit: figureOf("What one carrier may lift", "kg", (trace) => carrierLimit(trace)),
    modules: kit.lengths_mm.map((l) => moduleFigures(setting, l)),
    platform: platformFigures(setting),
    halves: halfFigures(setting),
    ramps: (kit.ramp?.lengths_mm ?? []).map((l) => rampFigures(setting, l)),
    supports: kit.supports.map((kind) => supportFigures(setting, kind)),
    unpriced: setting.costs.missing,
  };
}
