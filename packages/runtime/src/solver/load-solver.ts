import type { Solver } from "@causey/engine/fabrication";
import loadHighs, { type InitOptions } from "highs";
import { solveWithHighs } from "./solve-with-highs.ts";

export interface SolverOptions {
  /**
   * Gives the address of the solver's WebAssembly file. Node finds the file by itself; a bundled page passes
   * the address of its asset: `import wasm from "highs/runtime?url"`, then `{ locateFile: () => wasm }`.
   */
  readonly locateFile?: (file: string) => string;
  /** The WebAssembly file itself, where it is already in memory. */
  readonly wasmBinary?: ArrayBuffer | ArrayBufferView;
}

/**
 * Loads HiGHS (linear and whole-number programs) behind the engine's `Solver` port. Works in Node, in a page
 * and in a worker. Fixed seed, one thread, and every model is freed again: the same program gives the same
 * answer. A call to `solve` blocks its thread, so a page calls it from a worker.
 *
 * Rejects when the WebAssembly file cannot be found or started.
 */
export async function loadSolver(options: SolverOptions = {}): Promise<Solver> {
  const init: InitOptions = {
    ...(options.locateFile ? { locateFile: options.locateFile } : {}),
    ...(options.wasmBinary ? { wasmBinary: options.wasmBinary } : {}),
  };
  const highs = await loadHighs(init);
  return {
    name: `HiGHS ${highs.version.string}`,
    solve: (program) => solveWithHighs(highs, program),
  };
}
