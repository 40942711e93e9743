export { readFolder } from "./read-folder.ts";
export { writeFolder, type WriteFolderOptions } from "./write-folder.ts";
export { FolderWriteError } from "./write-fault.ts";
