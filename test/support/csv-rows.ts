import Papa from "papaparse";

/** Rows of a CSV file by the heads of its first line, read by a library that the writers do not use. */
export const csvRows = (bytes: Uint8Array): Record<string, string>[] =>
  Papa.parse<Record<string, string>>(new TextDecoder().decode(bytes).trim(), { header: true }).data;
