/** Whether the system or SQLite refused to write because no room is left. A write that failed so has changed nothing. */
export function isDiskFull(error: unknown): boolean {
  if (!(error instanceof Error)) return false;
  const code = "code" in error ? String(error.code) : "";
  return code === "ENOSPC" || code === "EDQUOT" || code.startsWith("SQLITE_FULL") || isDiskFull(error.cause);
}
