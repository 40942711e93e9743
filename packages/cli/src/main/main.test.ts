import { expect, test } from "vitest";
import { main } from "./index.ts";

async function run(...args: readonly string[]): Promise<{ code: number; out: string; error: string }> {
  const [out, error]: [string[], string[]] = [[], []];
  const code = await main(args, { out: (text) => out.push(text), error: (text) => error.push(text) });
  return { code, out: out.join("\n"), error: error.join("\n") };
}

test("every command tells its form when it is asked for help, and does nothing else", async () => {
  const help = (await run("help")).out;
  const names = [...new Set([...help.matchAll(/^ {2}causey (\w+)/gm)].map((m) => m[1]!))];
  expect(names).toEqual(
    expect.arrayContaining(["new", "import", "check", "plan", "papers", "audit", "calc", "serve", "backup"]),
  );
  for (const name of names) {
    const ran = await run(name, "--help");
    expect(ran, name).toMatchObject({ code: 0, error: "" });
    expect(ran.out, name).toMatch(new RegExp(`^Form: causey ${name} `));
  }
  expect((await run("check", "-h")).out).toMatch(/^Form: causey check /);
});

test("an option that there is not is still refused, with the form", async () => {
  expect(await run("check", "--fast", "marsh")).toMatchObject({
    code: 2,
    error: expect.stringContaining("Form: causey check DIR") as string,
  });
});
