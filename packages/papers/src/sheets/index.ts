export { alternativeBlocks, alternativesSheet } from "./alternatives-sheet.ts";
export { routeSheet } from "./route-sheet.ts";
export { summarySheet } from "./summary-sheet.ts";
export { checkSheet, workingSheet } from "./check-sheets.ts";
export { budgetSheet, orderSheet } from "./material-sheets.ts";
export { fieldSheets, requestForm } from "./form-sheets.ts";
export { labelSheets } from "./label-sheets.ts";
export { settingOutSheet } from "./setting-out-sheet.ts";
