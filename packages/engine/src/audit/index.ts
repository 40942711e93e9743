export { auditLayout } from "./audit.ts";
export type {
  AuditInput,
  AuditKit,
  AuditPlot,
  AuditReport,
  AuditStart,
  AuditSupportKind,
  AuditTerrain,
  AuditZone,
  RuleReport,
} from "./types.ts";
