export { layingHours, longCarryShare, removalHours } from "./crew-hours.ts";
export { labourHours, type LabourInput } from "./labour.ts";
export { layingCalculations, layingFormulas } from "./calculations.ts";
