/**
 * A process of its own for the crash tests: saves edits one after another and writes the number of each revision to
 * standard output once the store has confirmed it.
 *
 * save-many.ts DATABASE COUNT [NAME]   with `NAME` it competes with others: a lost race is tried again
 */
import { randomUUID } from "node:crypto";
import { writeSync } from "node:fs";
import { applyEdit, type Edit } from "@causey/engine/plan";
import { openSqliteStore } from "../src/store/index.ts";

const [database, count, name = "Edit"] = process.argv.slice(2);
const store = await openSqliteStore(database!, { clock: Date, newId: randomUUID });
const id = (await store.listPlans())[0]!.id;
let { plan, revision } = (await store.loadPlan(id))!;
for (let saved = 0; saved < Number(count);) {
  const edit: Edit = { type: "rename", name: `${name} ${revision + 1}` };
  const result = applyEdit(plan, edit);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  const answer = await store.saveEdit(id, revision, edit, result.inverse, result.plan);
  if (answer.ok) {
    saved++;
    ({ revision } = answer);
    ({ plan } = result);
    writeSync(1, `${revision}\n`);
  } else ({ plan, revision } = answer.conflict);
}
await store.close();
