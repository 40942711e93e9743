import { anchorCalculations } from "../anchors/index.ts";
import { checkCalculations, ruleCalculations } from "../checks/index.ts";
import { codeCalculations } from "../codes/index.ts";
import { costCalculations } from "../cost/index.ts";
import { fabricationCalculations } from "../fabrication/index.ts";
import { floodCalculations } from "../flood/index.ts";
import { formulaCalculation, type Calculation } from "../formula/index.ts";
import { groundCalculations } from "../ground/index.ts";
import { kitCalculations } from "../kit/index.ts";
import { kitFigureCalculations } from "../kit-figures/index.ts";
import { layingCalculations } from "../laying/index.ts";
import { layoutCalculations } from "../layout/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { moduleFrameCalculations } from "../module-frame/index.ts";
import { optionCalculations } from "../options/index.ts";
import { structureCalculations } from "../structure/index.ts";
import { surveyCalculations } from "../survey/index.ts";
import { waterCalculations } from "../water/index.ts";
import { deckOverGround } from "./highest-deck.ts";
import { nearClosure } from "./visit-closures.ts";

/** Every registered calculation, by id. Two of one id are a bug that a test finds. */
export const calculations: readonly Calculation<CalcContext>[] = [
  ...structureCalculations,
  ...moduleFrameCalculations,
  ...codeCalculations,
  ...groundCalculations,
  ...floodCalculations,
  ...anchorCalculations,
  ...checkCalculations,
  ...fabricationCalculations,
  ...costCalculations,
  ...layingCalculations,
  ...waterCalculations,
  ...surveyCalculations,
  ...layoutCalculations,
  ...kitCalculations,
  ...kitFigureCalculations,
  ...ruleCalculations,
  ...optionCalculations,
  formulaCalculation(deckOverGround),
  formulaCalculation(nearClosure),
].sort((a, b) => (a.id < b.id ? -1 : 1));
