import { expect, test } from "vitest";
import { isDiskFull } from "./index.ts";

const withCode = (code: string, cause?: unknown): Error =>
  Object.assign(new Error("no", cause === undefined ? {} : { cause }), { code });

test.each([
  ["the system", withCode("ENOSPC")],
  ["a quota", withCode("EDQUOT")],
  ["SQLite", withCode("SQLITE_FULL")],
  ["what lies behind another fault", withCode("X", withCode("ENOSPC"))],
])("no room left, said by %s", (_by, error) => expect(isDiskFull(error)).toBe(true));

test.each([[withCode("EACCES")], [new Error("disk is full")], ["ENOSPC"], [null]])(
  "another fault is not taken for it: %s",
  (error) => expect(isDiskFull(error)).toBe(false),
);
