import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** Whether the tools that read a PDF back are installed; says so on the console when they are not. */
export function hasPoppler(): boolean {
  try {
    execFileSync("pdftotext", ["-v"], { stdio: "ignore" });
    return true;
  } catch {
    console.warn("pdftotext is not installed: the tests that read the PDF back are left out");
    return false;
  }
}

function withFile<T>(bytes: Uint8Array, use: (folder: string, file: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), "causey-papers-"));
  try {
    const file = join(folder, "set.pdf");
    writeFileSync(file, bytes);
    return use(folder, file);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The words of every page, as a reader copies them. */
export const pdfPages = (bytes: Uint8Array): string[] =>
  withFile(bytes, (_, file) =>
    execFileSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" }).split("\f").slice(0, -1),
  );

export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  /** 0 = black, row by row from the top. */
  readonly grey: Uint8Array;
}

/** One page as grey pixels. */
export const pdfPicture = (bytes: Uint8Array, page: number, dpi: number): GreyPicture =>
  withFile(bytes, (folder, file) => {
    const out = join(folder, "page");
    execFileSync("pdftoppm", ["-gray", "-r", String(dpi), "-f", String(page), "-singlefile", file, out]);
    const pgm = readFileSync(`${out}.pgm`);
    const [head, width, height] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(0, 40).toString("latin1"))!;
    return { width: Number(width), height: Number(height), grey: new Uint8Array(pgm.subarray(head.length)) };
  });
