export { judge, type Backwards, type CheckBase, type CheckKind, type CheckResult } from "./types.ts";
