import { crossSection, longSection, partSheets, sitePlan } from "../drawings/index.ts";
import { framed, roomOf } from "../frame/index.ts";
import type { Scene } from "../scene/index.ts";
import { toPdf, type Fonts } from "../scene-pdf/index.ts";
import {
  alternativesSheet,
  budgetSheet,
  calculationSheet,
  checkSheet,
  fieldSheets,
  labelSheets,
  limitsCard,
  orderSheet,
  requestForm,
  routeSheet,
  settingOutSheet,
  summarySheet,
  workingSheet,
} from "../sheets/index.ts";
import { sharedContext, type PaperContext } from "./context.ts";
import type { Sheet } from "./sheet.ts";

/** Every kind of sheet, in the order of a set. */
export const allSheets: readonly Sheet[] = [
  summarySheet,
  alternativesSheet,
  sitePlan,
  crossSection,
  longSection,
  routeSheet,
  partSheets,
  checkSheet,
  calculationSheet,
  orderSheet,
  budgetSheet,
  settingOutSheet,
  labelSheets,
  limitsCard,
  workingSheet,
  requestForm,
  fieldSheets,
];

/** Sheets that a permit office asks for. */
export const PERMIT_SET: readonly string[] = [
  "summary",
  "alternatives",
  "site-plan",
  "cross-section",
  "long-section",
  "route",
  "parts",
  "checks",
];

export interface PaperSet {
  readonly pages: readonly Scene[];
  /** Which pages belong to which sheet, by number from 0. */
  readonly sheets: readonly {
    readonly id: string;
    readonly title: string;
    readonly pages: readonly number[];
  }[];
}

/**
 * The pages of a set of sheets, numbered through. Hidden zones are taken out first; `results` must be what
 * `withoutHidden` gives, so that no text names one.
 *
 * which     ids of the wanted sheets, in any order
 * revision  letter of the sealed revision that stands behind the papers; null for a draft
 */
export function paperSet(
  context: PaperContext,
  which: readonly string[],
  revision: string | null = null,
): PaperSet {
  const shared = sharedContext(context);
  const paper = shared.plan.papers.sheet;
  const drafted = allSheets
    .filter((sheet) => which.includes(sheet.id))
    .map((sheet) => ({ sheet, drafts: sheet.drafts(shared, roomOf(paper)) }));
  const sheets = drafted.reduce((sum, { drafts }) => sum + drafts.length, 0);
  const pages: Scene[] = [];
  const index = drafted.map(({ sheet, drafts }) => ({
    id: sheet.id,
    title: sheet.title,
    pages: drafts.map((draft, n) => {
      const about = { plan: shared.plan, results: shared.results, sheet: pages.length + 1, sheets, revision };
      pages.push(framed(`${sheet.id}-${n + 1}`, draft, paper, about));
      return pages.length - 1;
    }),
  }));
  return { pages, sheets: index };
}

/** A set as one PDF. */
export const paperPdf = ({ pages }: PaperSet, { plan }: PaperContext, fonts: Fonts): Promise<Uint8Array> =>
  toPdf(pages, fonts, {
    title: `${plan.name}, ${plan.site_name}`,
    author: plan.papers.prepared_by || plan.papers.applicant || "Causey",
    date: plan.papers.date,
  });
