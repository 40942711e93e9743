export { editSchema } from "./edit-schema.ts";
export { readEdit } from "./read-edit.ts";
export { movesSomething, siteFaults } from "./site-faults.ts";
export { upgradeEdit } from "./stored-edit.ts";
