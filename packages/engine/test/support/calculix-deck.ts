import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A grillage of slender rectangular beams for the finite-element program CalculiX, E 1e10, Poisson's ratio 0. */
export interface SlenderCase {
  readonly length: number;
  readonly stringers_y: readonly number[];
  readonly rows_x: readonly number[];
  /** Width and depth [m]. */
  readonly stringer: readonly [number, number];
  readonly row: readonly [number, number];
  /** Along, stringer, force down [N]. */
  readonly loads: readonly (readonly [number, number, number])[];
  /** Settlement of the first bearing [m]. */
  readonly settled: number;
}

export interface Solved {
  /** Sag of every stringer at a quarter and at half of the length [m]. */
  readonly quarter: readonly number[];
  readonly half: readonly number[];
  /** Starts of the stringers, then their ends [N]. */
  readonly reactions: readonly number[];
}

export const hasCalculix = (): boolean => spawnSync("ccx", ["-v"], { stdio: "ignore" }).status !== null;

const ALONG = 80;
const ACROSS = 16;

/** Nodes by place, numbered from 1 in order of first mention. */
function numbering() {
  const known = new Map<string, number>();
  const lines: string[] = [];
  const of = (x: number, y: number): number => {
    const key = `${x.toFixed(6)},${y.toFixed(6)}`;
    let id = known.get(key);
    if (id === undefined) {
      known.set(key, (id = known.size + 1));
      lines.push(`${id},${key},0.`);
    }
    return id;
  };
  return { of, lines };
}

type Point = readonly [number, number];

/** Three-node beams along a straight line. */
function elements(nodes: ReturnType<typeof numbering>, a: Point, b: Point, halves: number): string[] {
  const at = (i: number): number =>
    nodes.of(a[0] + ((b[0] - a[0]) * i) / halves, a[1] + ((b[1] - a[1]) * i) / halves);
  return Array.from({ length: halves / 2 }, (_, e) => `${at(2 * e)},${at(2 * e + 1)},${at(2 * e + 2)}`);
}

/** The input deck: B32R beams, bearings held in height, the first one lowered by its settlement. */
export function calculixDeck(c: SlenderCase): {
  text: string;
  bearings: number[];
  at: (x: number, y: number) => number;
} {
  const nodes = numbering();
  const y = c.stringers_y;
  const stringers = y.flatMap((v) => elements(nodes, [0, v], [c.length, v], ALONG));
  const rows = c.rows_x.flatMap((x) =>
    y.slice(1).flatMap((v, i) => elements(nodes, [x, y[i]!], [x, v], ACROSS)),
  );
  const bearings = [0, c.length].flatMap((x) => y.map((v) => nodes.of(x, v)));
  const [first] = y;
  const text = [
    "*NODE,NSET=ALL",
    ...nodes.lines,
    "*ELEMENT,TYPE=B32R,ELSET=ST",
    ...stringers.map((e, i) => `${i + 1},${e}`),
    "*ELEMENT,TYPE=B32R,ELSET=RW",
    ...rows.map((e, i) => `${stringers.length + i + 1},${e}`),
    "*MATERIAL,NAME=WOOD",
    "*ELASTIC",
    "1.E10,0.0",
    "*BEAM SECTION,ELSET=ST,MATERIAL=WOOD,SECTION=RECT",
    `${c.stringer.join(",")}`,
    "0.,1.,0.",
    "*BEAM SECTION,ELSET=RW,MATERIAL=WOOD,SECTION=RECT",
    `${c.row.join(",")}`,
    "1.,0.,0.",
    `*NSET,NSET=SUP`,
    bearings.join(","),
    "*BOUNDARY",
    `${nodes.of(0, first!)},1,2`,
    `${nodes.of(c.length, first!)},2,2`,
    "*STEP",
    "*STATIC",
    "*BOUNDARY",
    ...bearings.map((b, i) => `${b},3,3,${i === 0 ? -c.settled : 0}.0`.replace(/\.(\d+)\.0$/, ".$1")),
    "*CLOAD",
    ...c.loads.map(([x, s, P]) => `${nodes.of(x, y[s]!)},3,${-P}`),
    "*NODE PRINT,NSET=ALL",
    "U",
    "*NODE PRINT,NSET=SUP",
    "RF",
    "*END STEP",
    "",
  ].join("\n");
  return { text, bearings, at: nodes.of };
}

/** Runs CalculiX on a case in a folder of its own. */
export function solveByCalculix(c: SlenderCase): Solved {
  const folder = mkdtempSync(join(tmpdir(), "causey-frame-"));
  try {
    const { text, bearings, at } = calculixDeck(c);
    writeFileSync(join(folder, "frame.inp"), text);
    execFileSync("ccx", ["frame"], { cwd: folder, stdio: "ignore" });
    const [sags, forces] = readFileSync(join(folder, "frame.dat"), "utf8").split("forces");
    const column = (part: string): Map<number, number> =>
      new Map(
        part
          .split("\n")
          .map((line) => line.trim().split(/\s+/))
          .filter((words) => words.length === 4 && /^\d+$/.test(words[0]!))
          .map((words) => [Number(words[0]), Number(words[3])] as const),
      );
    const down = column(sags!);
    const up = column(forces!);
    const sag = (x: number): number[] => c.stringers_y.map((v) => -down.get(at(x, v))!);
    return {
      quarter: sag(c.length / 4),
      half: sag(c.length / 2),
      reactions: bearings.map((b) => up.get(b)!),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
