import { existsSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Problem } from "@causey/engine/formula";
import { writeArchive } from "@causey/io/archive";
import { serve, type Serving } from "@causey/server/serve";
import { badPlans, type BadPlan, type Files } from "./support/bad-plans.ts";
import { causey, folderOf, temporaryFolder } from "./support/shell.ts";

const bytesOf = (files: Files): Map<string, Uint8Array> =>
  new Map(
    [...files].map(([name, content]) => [
      name,
      typeof content === "string" ? new TextEncoder().encode(content) : content,
    ]),
  );

/** One of the problems is the one that was made; every one of them says file, place, what is wrong and how to mend it. */
function expectNamed(problems: readonly Problem[], bad: BadPlan): void {
  for (const p of problems)
    for (const text of [p.file, p.place, p.message, p.mend]) expect(text, JSON.stringify(p)).toMatch(/\S/);
  const words = (p: Problem): string => `${p.place} ${p.value} ${p.message}`;
  const mine = problems.filter(
    (p) => p.file === bad.file && bad.says.test(words(p)) && bad.mends.test(p.mend),
  );
  expect(mine.length, JSON.stringify(problems, null, 1)).toBeGreaterThan(0);
}

describe("in the shell", () => {
  test.each(badPlans)("$title: named with file, place, value and mend; nothing is written", (bad) => {
    const folder = folderOf(bad.files());
    const ran = causey(["check", folder, "--json"]);
    expect(ran.code, ran.error).toBe(2);
    expectNamed((JSON.parse(ran.out) as { problems: Problem[] }).problems, bad);
    const out = join(temporaryFolder(), "out");
    expect(causey(["plan", folder, "--out", out]).code).toBe(2);
    expect(existsSync(out)).toBe(false);
  });
});

describe("on the page: the answer that its list of problems shows", () => {
  let serving: Serving;
  let cookie: string;
  const origin = (): string => new URL(serving.url).origin;

  beforeAll(async () => {
    serving = await serve({
      dataFolder: temporaryFolder(),
      port: 0,
      open: false,
      staticFolder: temporaryFolder(),
    });
    const first = await fetch(serving.url, { redirect: "manual" });
    cookie = first.headers.get("set-cookie")!.split(";")[0]!;
  });
  afterAll(() => serving.close());

  test.each(badPlans)("$title: refused whole, every problem named", async (bad) => {
    const answer = await fetch(`${origin()}/api/plans`, {
      method: "POST",
      headers: { cookie, origin: origin(), "content-type": "application/zip" },
      body: writeArchive(bytesOf(bad.files())) as Uint8Array<ArrayBuffer>,
    });
    expect(answer.status).toBe(422);
    expectNamed(((await answer.json()) as { problems: Problem[] }).problems, bad);
    const plans = await fetch(`${origin()}/api/plans`, { headers: { cookie } });
    expect(((await plans.json()) as { plans: unknown[] }).plans).toEqual([]);
  });
});
