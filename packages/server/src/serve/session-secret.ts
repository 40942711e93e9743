import { randomBytes } from "node:crypto";
import { chmod, mkdir, readFile, rename, writeFile } from "node:fs/promises";
import { join } from "node:path";

const SECRET = /^[0-9a-f]{64}$/;

/** 256 random bits in hexadecimal. */
export const freshSecret = (): string => randomBytes(32).toString("hex");

/**
 * The secret that browsers which were let in carry in their cookie. It lies in the data folder, readable by its owner
 * alone, so that a page that is open goes on working when the server was started again. Whoever deletes the file
 * signs every browser out.
 */
export async function sessionSecret(dataFolder: string): Promise<string> {
  const path = join(dataFolder, "session");
  const kept = await readFile(path, "utf8").catch(() => "");
  if (SECRET.test(kept)) {
    await chmod(path, 0o600);
    return kept;
  }
  await mkdir(dataFolder, { recursive: true, mode: 0o700 });
  const secret = freshSecret();
  const aside = `${path}.${secret.slice(0, 8)}`;
  await writeFile(aside, secret, { mode: 0o600, flag: "wx" });
  await rename(aside, path);
  return secret;
}
