import type { StoredFile } from "./port.ts";
import type { StoreParts } from "./parts.ts";
import { planRowOf } from "./read-plan.ts";

/** Lays a file beside a plan: the bytes first, then the row that names them. */
export async function addFile(
  parts: StoreParts,
  planId: string,
  name: string,
  bytes: Uint8Array,
): Promise<StoredFile> {
  await planRowOf(parts.db, planId);
  const blob = await parts.blobs.put(bytes);
  return parts.db.transaction().execute(async (trx) => {
    const rows = await trx
      .selectFrom("plan_file")
      .select(["name", "sha256"])
      .where("plan_id", "=", planId)
      .execute();
    const taken = new Map(rows.map((row) => [row.name, row.sha256]));
    const free = freeName(name, (n) => taken.has(n) && taken.get(n) !== blob.sha256);
    if (!taken.has(free))
      await trx
        .insertInto("plan_file")
        .values({ plan_id: planId, name: free, ...blob })
        .execute();
    return { name: free, ...blob };
  });
}

/** The name itself, or with the first number that is free before its ending. */
function freeName(name: string, isTaken: (name: string) => boolean): string {
  if (!isTaken(name)) return name;
  const dot = name.lastIndexOf(".");
  const [stem, ending] = dot > 0 ? [name.slice(0, dot), name.slice(dot)] : [name, ""];
  for (let n = 2; ; n++) if (!isTaken(`${stem}-${n}${ending}`)) return `${stem}-${n}${ending}`;
}
