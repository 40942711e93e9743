import type { Solver } from "@causey/engine/fabrication";
import { Deriver } from "@causey/runtime/derive";
import { loadSolver } from "@causey/runtime/solver";
import type { Derive } from "./protocol.ts";

let solver: Promise<Solver> | null = null;
const deriver = new Deriver(() => (solver ??= loadSolver()));

/** The one place where the page's worker meets the pipeline: one solver and one cache of stages for its life. */
export const derive: Derive = (request, hooks) => deriver.derive(request, hooks);
