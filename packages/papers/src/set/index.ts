export { sharedContext, type PaperContext } from "./context.ts";
export type { Draft, Room, Sheet } from "./sheet.ts";
export { allSheets, paperPdf, paperSet, PERMIT_SET, type PaperSet } from "./paper-set.ts";
