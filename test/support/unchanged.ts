import { createHash } from "node:crypto";
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join, relative } from "node:path";

/** Every file under a folder, hidden ones too, with the digest of its bytes: two are equal when nothing was touched. */
export function contentsOf(folder: string): Readonly<Record<string, string>> {
  const found: Record<string, string> = {};
  const visit = (dir: string): void => {
    for (const name of readdirSync(dir)) {
      const path = join(dir, name);
      if (statSync(path).isDirectory()) visit(path);
      else found[relative(folder, path)] = createHash("sha256").update(readFileSync(path)).digest("hex");
    }
  };
  visit(folder);
  return found;
}
