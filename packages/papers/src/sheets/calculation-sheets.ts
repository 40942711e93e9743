import type { PaperContext } from "../set/context.ts";
import type { Sheet } from "../set/sheet.ts";
import type { Block } from "../text/index.ts";
import { assumptionBlocks, loadBlocks } from "./calculation-basis.ts";
import { governingWorkings, resultBlocks, toConfirmBlocks } from "./calculation-results.ts";
import { structurePages } from "./structure-pages.ts";
import { textDrafts } from "./text-sheet.ts";

/**
 * What an engineer or officer reads to follow the checks: assumptions, loads, results by part, the modules as
 * structures, and the whole working of what governs. The calculation appendix holds every other working.
 */
export const calculationSheet: Sheet = {
  id: "calculations",
  title: "Calculations",
  about: "Assumptions, loads, results by part, modules as structures, and the workings that govern.",
  drafts: (context, room) => [
    ...textDrafts("Calculations", basisBlocks(context), room),
    ...structurePages(context),
    ...textDrafts("Governing workings", workingBlocks(context), room),
  ],
};

const basisBlocks = (context: PaperContext): Block[] => [
  ...assumptionBlocks(context),
  ...loadBlocks(context),
  ...resultBlocks(context),
  { kind: "head", text: "Values from memory, to confirm in print" },
  ...toConfirmBlocks(context, "memory"),
  { kind: "head", text: "Common practice without a source" },
  ...toConfirmBlocks(context, "practice"),
  { kind: "head", text: "Cautions" },
  ...context.results.cautions.map((text): Block => ({ kind: "text", bullet: true, text })),
];

const workingBlocks = (context: PaperContext): Block[] => [
  {
    kind: "text",
    text: "Of each kind of check the one nearest to its limit, or farthest over it, in full. The calculation appendix holds the others.",
  },
  ...governingWorkings(context),
];
