export { en338 } from "./en-338.ts";
export { tableFourA } from "./table-four-a.ts";
export { tableFourB } from "./table-four-b.ts";
export { lumberSizes } from "./sizes.ts";
export { labour } from "./labour.ts";
export { preservatives } from "./preservatives.ts";
export { usedTimber } from "./used-timber.ts";
