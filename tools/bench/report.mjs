import { cpus } from "node:os";

console.log(`${cpus().length} cores, ${cpus()[0]?.model ?? "unknown"}, Node ${process.version}`);

/** Runs the rows of one bench and prints them as they come. */
export async function report(name, rows) {
  console.log(`\n${name}`);
  for await (const row of rows())
    console.log(
      Object.entries(row)
        .map(([k, v]) => `${k} ${typeof v === "number" ? show(v) : v}`)
        .join(" · "),
    );
}

const show = (v) => (Number.isInteger(v) ? String(v) : v.toPrecision(4));

/** Milliseconds of one run, its value, and the best of `times` runs. */
export function clock(work, times = 1) {
  let best = Infinity;
  let value;
  for (let k = 0; k < times; k++) {
    const from = performance.now();
    value = work();
    best = Math.min(best, performance.now() - from);
  }
  return { ms: best, value };
}
