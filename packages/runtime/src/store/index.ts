export { backupStore, databaseOf } from "./data-folder.ts";
export { isDiskFull } from "./disk-full.ts";
export { openSqliteStore } from "./open-sqlite-store.ts";
export { StoreError } from "./port.ts";
export type {
  BackupReport,
  Clock,
  Conflict,
  LoadedPlan,
  PlanSummary,
  RevisionRecord,
  SaveOutcome,
  Step,
  StepOutcome,
  Store,
  StoredFile,
  StoreFault,
} from "./port.ts";
