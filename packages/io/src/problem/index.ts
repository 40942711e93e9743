export { Findings, fault, quote, type FaultParts } from "./findings.ts";
