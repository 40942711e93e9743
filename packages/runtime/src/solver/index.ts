export { loadSolver, type SolverOptions } from "./load-solver.ts";
