// Rows 1 and 2 of the feature list: the access request, and doing without a structure.
import { join } from "node:path";
import { readFolder, writeFolder } from "@causey/io/folder";
import { requestGaps } from "@causey/engine/request";
import type { Plan } from "@causey/engine/plan";
import { PERMIT_SET } from "@causey/papers/set";
import { readWholePlan } from "@causey/runtime/derive";
import { beforeAll, describe, expect, test } from "vitest";
import { flatPlan, folderFiles, paperWords, planned, type Planned } from "../support/feature-plan.ts";
import { causey, temporaryFolder } from "../support/shell.ts";

const asked: Plan["request"] = {
  requester: "Ysolde Marn",
  organisation: "Field station",
  contact: "Post box 4",
  purpose: "Traps on two plots, emptied every week.",
  received: "2026-09-14",
  wet_feet_ok: false,
  options: [
    {
      kind: "no-structure",
      status: "rejected",
      reason: "Last year's trial left ruts that still hold water.",
    },
  ],
};
const cart: NonNullable<Plan["visits"][number]["cart"]> = {
  name: "Hand cart",
  empty_kg: 21.5,
  load_kg: 62,
  wet_kg: 8,
  width_mm: 620,
  length_mm: 1450,
  track_mm: 480,
  axle_distance_mm: 0,
  axles: 1,
  wheel_width_mm: 50,
  wheel_contact_mm: 70,
};
const base = flatPlan();
const visit = { ...base.visits[0]!, people: 3, cart, per_year: 60, from: "2027-05-01", to: "2027-10-15" };
const plots = [{ ...base.plots[0]!, arrive_from: "west" as const }];
const plan = flatPlan({ request: asked, visits: [visit], plots, removal: { by: "2027-10-29" } });

/** Written to disk, read back from disk. */
async function reloaded(kept: Plan): Promise<{ readonly plan: Plan; readonly folder: string }> {
  const folder = join(temporaryFolder(), "kept");
  await writeFolder(folder, folderFiles(kept));
  const read = await readWholePlan(await readFolder(folder));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return { plan: read.plan, folder };
}

describe("1 hold an access request: people, cart load, visits, dates, plots, end date", () => {
  test("1 save, reload: all fields equal (fields of US FWS form 3-1383-R)", async () => {
    const { plan: back } = await reloaded(plan);
    expect(back.request).toEqual(asked);
    expect(back.visits).toEqual([visit]);
    expect(back.plots).toEqual(plots);
    expect(back.removal).toEqual({ by: "2027-10-29" });
    expect(back).toEqual(plan);
    expect(requestGaps(back)).toEqual([]);
  });

  test("1 a missing end date is flagged on the page and in the shell", async () => {
    const open = { ...plan, visits: [{ ...visit, to: null }] };
    const { plan: back, folder } = await reloaded(open);
    expect(back.visits[0]!.to).toBeNull();
    expect(requestGaps(back).map((g) => g.place)).toEqual(["visits[0].to"]);
    const ran = causey(["check", folder, "--json"]);
    const { problems } = JSON.parse(ran.out) as { problems: { code: string; place: string }[] };
    expect(problems.map((p) => [p.code, p.place])).toContainEqual(["visit-open-end", "visits[0].to"]);
  });
});

describe('2 report "no structure" as an option with reasons (avoid first: small-dock guidance)', () => {
  let done: Planned;
  beforeAll(async () => {
    done = await planned(folderFiles(plan));
  });

  test("2 the option list contains it, first, with the reason given and its source", () => {
    const [first] = done.results.options;
    expect(first).toMatchObject({
      kind: "no-structure",
      status: "rejected",
      reason: asked.options[0]!.reason,
    });
    expect(first!.notes.join(" ")).toContain("footfalls a year");
    expect(first!.source.title).toContain("small docks");
  });

  test("2 the permit text cites it, and says what is still to be settled", () => {
    const words = paperWords(done.papers, ...PERMIT_SET);
    expect(words).toContain("No structure");
    for (const word of asked.options[0]!.reason.split(" ")) expect(words).toContain(word);
    expect(words).toContain("Management of small docks and piers");
    expect(words).toContain("To be settled before the papers go out: Another season, By boat");
  });
});
