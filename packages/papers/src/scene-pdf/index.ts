export type { Fonts } from "./fonts.ts";
export { toPdf, type PdfInfo } from "./to-pdf.ts";
