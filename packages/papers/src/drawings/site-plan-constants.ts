/** Ground beside the walkway that the work may touch [m]; a decision of this project, for crews work from the laid deck. */
export const WORK_BESIDE_M = 1;
