import { ProblemError, type Problem } from "@causey/engine/formula";
import type { Plan } from "@causey/engine/plan";
import type { PlanFiles } from "@causey/io/files";
import type { PlanFormat } from "../src/app/index.ts";

/** A plan format for tests of the server alone: `plan.json` is the document, an archive is a JSON list of files. */
const problem = (place: string, message: string): Problem => ({
  code: "fake",
  severity: "error",
  file: "plan.json",
  place,
  value: "",
  message,
  mend: "Mend it.",
});

const encode = (value: unknown): Uint8Array => new TextEncoder().encode(JSON.stringify(value));
const decode = (bytes: Uint8Array): unknown => JSON.parse(new TextDecoder().decode(bytes));

export const writeFakeArchive = (files: PlanFiles): Uint8Array =>
  encode([...files].map(([name, bytes]) => [name, [...bytes]]));

export function readFakeArchive(bytes: Uint8Array): PlanFiles {
  try {
    return new Map((decode(bytes) as [string, number[]][]).map(([name, b]) => [name, Uint8Array.from(b)]));
  } catch {
    throw new ProblemError([problem("file", "This is not an archive.")]);
  }
}

export const folderOf = (plan: Plan, files: PlanFiles): PlanFiles =>
  new Map([...files, ["plan.json", encode(plan)]]);

export const fakeFormat: PlanFormat = {
  read: (files) => {
    const bytes = files.get("plan.json");
    const plan = bytes ? (decode(bytes) as Plan) : null;
    const problems = [
      ...(plan ? [] : [problem("plan.json", "plan.json is missing")]),
      ...(files.has("terrain.asc") ? [] : [problem("terrain", "the terrain is missing")]),
      ...(files.has("prices.csv") ? [] : [problem("prices", "the prices are missing")]),
    ];
    return Promise.resolve(
      plan && problems.length === 0 ? { ok: true, plan, warnings: [] } : { ok: false, problems },
    );
  },
  check: async (plan, edit, beside) => {
    const problems = plan.name === "Refused" ? [problem("name", "this name is refused")] : [];
    if (edit.type !== "move-plot" || (await beside.read("terrain.asc"))) return problems;
    return [...problems, problem("terrain", "the terrain is missing")];
  },
  takesIn: (name) => name === "plan.json",
  beside: (_plan, files) => new Map([...files].filter(([name]) => name !== "plan.json")),
  write: (plan) => new Map([["plan.json", encode(plan)]]),
  readArchive: readFakeArchive,
  writeArchive: writeFakeArchive,
};
