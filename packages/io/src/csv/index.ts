export { guessHeads, type WantedHead } from "./guess-heads.ts";
export { columnsOf, readCsv, type CsvRow, type CsvTable } from "./read-csv.ts";
export { csvBytes, defuse, undefuse, type CsvCell } from "./write-csv.ts";
