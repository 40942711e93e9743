// Writes docs/validation.md from the titles of the tests that hold calculations against published cases.
//   node tools/validation.mjs            run the published tests and write the page
//   node tools/validation.mjs --check F  compare the page with a test report F; exit code 1 on a difference
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { basename, join, relative, resolve } from "node:path";
import { root, run } from "./setup.mjs";

const page = join(root, "docs/validation.md");
const checked = process.argv[2] === "--check" ? process.argv[3] : undefined;
const report = checked ?? join(root, ".test-out", "published.json");
if (!checked)
  run("npx", ["vitest", "run", "test/published", "--reporter=json", `--outputFile.json=${report}`]);

const results = JSON.parse(readFileSync(report, "utf8")).testResults.filter((r) =>
  r.name.includes("/test/published/"),
);
const text = render(results);
if (!checked) writeFileSync(page, text);
else if (!agrees(readFileSync(page, "utf8"), text)) {
  console.error("docs/validation.md is out of date: run `npm run validation` and commit it.");
  process.exitCode = 1;
}

/** Without the open data some tests are left out: then every line there is must stand on the page. */
function agrees(written, made) {
  if (existsSync(resolve(root, process.env.CAUSEY_DATA ?? "../shared/data"))) return written === made;
  const lines = new Set(written.split("\n"));
  return made.split("\n").every((line) => lines.has(line));
}

function render(files) {
  const parts = files
    .map((f) => ({ file: relative(root, f.name), tests: f.assertionResults }))
    .sort((a, b) => (a.file < b.file ? -1 : 1))
    .map(({ file, tests }) => {
      const title = basename(file, ".test.ts").replaceAll("-", " ");
      const list = tests
        .filter((t) => !t.meta?.published)
        .map((t) => `- ${t.fullName.trim()}`)
        .join("\n");
      return [`## ${title}`, citation(file), `\`${file}\``, figures(tests), list]
        .filter(Boolean)
        .join("\n\n");
    });
  return `# Validation\n\nWritten by \`npm run validation\` from the tests; do not edit. Each line is a test that holds a calculation against\nsomething outside the project. All of them pass before anything lands.\n\n${parts.join("\n\n")}\n`;
}

/** Tests of one figure each: expected, got and tolerance side by side. */
function figures(tests) {
  const rows = tests.filter((t) => t.meta?.published);
  if (rows.length === 0) return "";
  const lines = rows.map((t) => {
    const { id, unit, expected, got, tolerance } = t.meta.published;
    const title = t.fullName
      .trim()
      .replace(/: [^:]*$/, "")
      .replaceAll("|", "/");
    return `| ${id} | ${title} | ${expected} | ${show(got)} | ${show(tolerance)} | ${unit} |`;
  });
  return [
    "| row | what, after which source | expected | got | tolerance | unit |",
    "|---|---|---|---|---|---|",
    ...lines,
  ].join("\n");
}

/** Five figures, without trailing zeros. */
function show(v) {
  return String(Number(v.toPrecision(5)));
}

/** The comment at the head of a test file names its sources. */
function citation(file) {
  const text = readFileSync(join(root, file), "utf8");
  const block = /^\/\*\*([\s\S]*?)\*\//.exec(text);
  const lines = block ? block[1].split("\n") : text.slice(0, text.search(/^(?!\/\/)/m)).split("\n");
  return lines
    .map((l) => l.replace(/^\s*(?:\/\/|\*) ?/, "").trim())
    .join("\n")
    .trim();
}
