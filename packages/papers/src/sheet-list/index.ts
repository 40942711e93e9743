/** Kinds of sheets with what they show: light, so that a page can list them without the code that draws them. */
export const sheetList = [
  {
    id: "summary",
    title: "Summary",
    about: "One page for the director: length, width, height, harm, money, dates, cautions.",
  },
  {
    id: "alternatives",
    title: "Alternatives",
    about: "Every kind of walkway, no structure among them: what was decided, and why.",
  },
  {
    id: "site-plan",
    title: "Site plan",
    about: "Ground, regulated areas under their own symbols, walkway, water lines, parcels, limit of work.",
  },
  {
    id: "cross-section",
    title: "Cross-section",
    about: "Support and module over the lowest ground of the line, with the water levels.",
  },
  {
    id: "long-section",
    title: "Long section",
    about: "Ground, deck, joints and water levels along every branch.",
  },
  {
    id: "route",
    title: "What the route crosses",
    about: "Owners, crossings, sensitive ground and plots; water lines with their sources.",
  },
  {
    id: "parts",
    title: "Parts",
    about: "Modules, platform and supports with dimensions and screw positions.",
  },
  {
    id: "checks",
    title: "Check summary",
    about: "Every check with its share of the limit, rule and source.",
  },
  {
    id: "calculations",
    title: "Calculations",
    about: "Assumptions, loads, results by part, modules as structures, and the workings that govern.",
  },
  { id: "order", title: "Order list", about: "What is bought, and how it is sawn." },
  { id: "budget", title: "Budget", about: "Every line in the year it is paid." },
  {
    id: "setting-out",
    title: "Setting-out",
    about:
      "Every joint by baseline, offset and two ties that a tape can measure; diagonals of the platforms.",
  },
  { id: "labels", title: "Module labels", about: "Tag, distance along and QR code of every part." },
  {
    id: "limits-card",
    title: "Limits of use",
    about: "A card for the box in the field: how many and how heavy, the proof load, what to look for.",
  },
  { id: "workings", title: "Calculation appendix", about: "The working of every figure and check." },
  { id: "request-form", title: "Access request", about: "A blank form for researchers." },
  { id: "field-sheets", title: "Field sheet", about: "Blank rows for stations, strengths and check shots." },
] as const;

export type SheetId = (typeof sheetList)[number]["id"];
