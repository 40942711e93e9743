import { FILE_LIMITS } from "./plan-files.ts";

/** Device names that Windows reserves, with any ending. */
const RESERVED = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])(\.|$)/i;

/**
 * Why a file name must not enter a plan folder, or null when it may: a name from an archive is a claim, and
 * "../" or "/etc" would write outside the folder. The rules hold on Windows, macOS and Linux alike.
 */
export function fileNameFault(name: string): string | null {
  if (name.length === 0) return "the name is empty";
  if (name.length > FILE_LIMITS.name_characters)
    return `the name is longer than ${FILE_LIMITS.name_characters} characters`;
  if (/\p{Cc}/u.test(name)) return "the name holds a control character";
  if (name.includes("\\")) return 'the name holds a backslash; "/" parts folders';
  if (name.startsWith("/")) return "the name is an absolute path";
  if (/[<>:"|?*]/.test(name)) return "the name holds a character that not every system allows";
  return (
    name
      .split("/")
      .map(partFault)
      .find((f) => f !== null) ?? null
  );
}

function partFault(part: string): string | null {
  if (part === "..") return 'the name climbs out of the folder with ".."';
  if (part === "" || part === ".") return "the name has an empty part";
  if (part === "__proto__") return "the name is reserved";
  if (/[. ]$/.test(part)) return "a part of the name ends in a dot or a blank";
  return RESERVED.test(part) ? "the name is reserved on Windows" : null;
}
