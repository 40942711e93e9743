import { readFile } from "node:fs/promises";
import { dirname, resolve } from "node:path";
import { calculations } from "@causey/engine/plan";
import {
  inputProblem,
  type Calculation,
  type Json,
  type JsonObject,
  type Problem,
} from "@causey/engine/formula";
import type { CalcContext } from "@causey/engine/materials";
import { tables } from "@causey/data/tables";
import { loadSolver } from "@causey/runtime/solver";
import { problemLines, readArgs, UsageError, type Shell } from "../shell/index.ts";

const form = "causey calc --list [--json]   or   causey calc ID --in FILE [--json]";
/** A file named by an input key is read whole; larger ones are refused. */
const MOST_BYTES = 64 * 1024 * 1024;

export async function runCalc(args: readonly string[], shell: Shell): Promise<number> {
  const isList = args.includes("--list");
  const { values, places } = readArgs(
    args,
    { list: { type: "boolean" }, json: { type: "boolean" }, in: { type: "string" } },
    isList ? [] : ["ID"],
    form,
  );
  if (isList) {
    list(values["json"] === true, shell);
    return 0;
  }
  const found = calculations.find((c) => c.id === places[0]);
  if (!found)
    throw new UsageError(`No calculation is named "${places[0]}". "causey calc --list" names them all.`);
  if (typeof values["in"] !== "string") {
    shell.out(values["json"] === true ? JSON.stringify(shown(found)) : explain(found));
    return 0;
  }
  const read = await readInput(values["in"], found);
  const outcome =
    read.problems.length > 0
      ? { ok: false as const, problems: read.problems }
      : found.run(read.input, { tables, solver: await loadSolver() });
  if (values["json"] === true) shell.out(JSON.stringify(outcome));
  else if (outcome.ok) shell.out(describe(outcome));
  else shell.error(problemLines(outcome.problems));
  return outcome.ok ? 0 : 2;
}

const shown = ({ id, title, kind, inputs, outputs, sources }: (typeof calculations)[number]) => ({
  id,
  title,
  kind,
  inputs,
  outputs,
  sources,
});

/** One calculation in words: what goes in, what comes out, where it comes from, how far it holds. */
function explain(c: (typeof calculations)[number]): string {
  const fields = (list: typeof c.inputs): string[] =>
    list.map((f) => `  ${f.key.padEnd(28)} ${f.title}${f.optional ? " (may be left out)" : ""}`);
  return [
    `${c.id}: ${c.title}`,
    "inputs:",
    ...fields(c.inputs),
    "outputs:",
    ...fields(c.outputs),
    "sources:",
    ...c.sources.map((s) => `  ${s.title}${s.at ? `, ${s.at}` : ""} (${s.status})`),
    `holds: ${c.validity}`,
  ].join("\n");
}

function list(json: boolean, shell: Shell): void {
  const rows = calculations.map(shown);
  shell.out(
    json
      ? JSON.stringify(rows)
      : rows.map((r) => `${r.id.padEnd(44)} ${r.kind.padEnd(8)} ${r.title}`).join("\n"),
  );
}

function describe(outcome: {
  readonly outputs: JsonObject;
  readonly working: readonly {
    title: string;
    symbol: string;
    text: string;
    value: number;
    unit: string;
    source: { title: string };
  }[];
}): string {
  const outputs = Object.entries(outcome.outputs).map(
    ([k, v]) => `${k}: ${typeof v === "object" ? JSON.stringify(v) : String(v)}`,
  );
  const working = outcome.working.map(
    (s) => `  ${s.title}: ${s.symbol} = ${s.text} = ${s.value} ${s.unit}  [${s.source.title}]`,
  );
  return [...outputs, ...(working.length > 0 ? ["working:", ...working] : [])].join("\n");
}

/** Keys ending in `_file` are resolved here and nowhere else: `map_file` becomes `map` with the file's text. */
async function readInput(
  place: string,
  calculation: Calculation<CalcContext>,
): Promise<{ input: JsonObject; problems: Problem[] }> {
  const text =
    place === "-"
      ? await readAll(process.stdin)
      : await readFile(place, "utf8").catch((e: unknown) => e as Error);
  if (text instanceof Error)
    return {
      input: {},
      problems: [
        inputProblem(place, "", `the file cannot be read (${text.message})`, "Give a file that is there."),
      ],
    };
  let parsed: Json;
  try {
    parsed = JSON.parse(text) as Json;
  } catch (error) {
    return {
      input: {},
      problems: [
        inputProblem(place, text, `is not JSON (${(error as Error).message})`, "Give one JSON object."),
      ],
    };
  }
  if (typeof parsed !== "object" || parsed === null || Array.isArray(parsed))
    return {
      input: {},
      problems: [
        inputProblem(
          place,
          parsed,
          "must be one JSON object",
          `Give its inputs: ${calculation.inputs.map((f) => f.key).join(", ")}.`,
        ),
      ],
    };
  const base = place === "-" ? process.cwd() : dirname(resolve(place));
  return resolveFiles(parsed as JsonObject, base);
}

async function resolveFiles(
  input: JsonObject,
  base: string,
): Promise<{ input: JsonObject; problems: Problem[] }> {
  const out: Record<string, Json> = {};
  const problems: Problem[] = [];
  for (const [key, value] of Object.entries(input)) {
    if (!key.endsWith("_file") || typeof value !== "string") {
      out[key] = value;
      continue;
    }
    try {
      const bytes = await readFile(resolve(base, value));
      if (bytes.length > MOST_BYTES)
        throw new Error(`it holds ${bytes.length} bytes, more than ${MOST_BYTES}`);
      out[key.slice(0, -"_file".length)] = bytes.toString("utf8");
    } catch (error) {
      problems.push(
        inputProblem(
          key,
          value,
          `the file cannot be read (${(error as Error).message})`,
          "Give a path from the folder of the input file.",
        ),
      );
    }
  }
  return { input: out, problems };
}

async function readAll(stream: AsyncIterable<Uint8Array | string>): Promise<string> {
  let text = "";
  for await (const chunk of stream)
    text += typeof chunk === "string" ? chunk : new TextDecoder().decode(chunk);
  return text;
}
