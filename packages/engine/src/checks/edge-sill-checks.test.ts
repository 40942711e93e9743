import { tables } from "@causey/data/tables";
import { readyKits } from "@causey/data/kits";
import { describe, expect, test } from "vitest";
import { checkedPlan, checksInput, straightLayout } from "../../test/support/straight-walkway.ts";
import type { Kit } from "../kit/index.ts";
import type { Layout, PlatformPart } from "../layout/index.ts";
import { moduleMasses } from "../materials/index.ts";
import { runChecks, type CheckResult } from "./index.ts";

/** One module, then a platform, every joint on one kind of support at its greatest height. */
function layoutOf(kit: Kit, kind: Kit["supports"][number]): Layout {
  const straight = straightLayout([kit.lengths_mm[0]! / 1000]);
  const standing = straight.joints.map((j) => ({
    ...j,
    support: kind.id,
    support_height_m: kind.height_max_mm / 1000,
  }));
  const last = standing.at(-1)!;
  const platform: PlatformPart = {
    id: "P1",
    kind: "platform",
    use: "turning",
    branch: "B1",
    side_m: kit.platform.side_mm / 1000,
    x: 0,
    y: 0,
    heading_deg: 90 as PlatformPart["heading_deg"],
    from: last.id,
    exits: { ahead: "ahead", left: "left", right: "right" },
    along_m: 0,
    outline: [],
    bridges: [],
  };
  const exits = ["ahead", "left", "right"].map((id) => ({ ...last, id }));
  return { ...straight, joints: [...standing, ...exits], parts: [...straight.parts, platform] };
}

const checksOf = (kit: Kit, kind: Kit["supports"][number]): readonly CheckResult[] =>
  runChecks(
    checksInput({
      plan: checkedPlan({ kit }),
      layout: layoutOf(kit, kind),
      masses: moduleMasses(kit, tables.sizes),
    }),
  );
const statusOf = (results: readonly CheckResult[], id: string) => results.find((r) => r.id === id)?.status;
const withoutSill = (kit: Kit): Kit => {
  const { edge_sill_mm: _, ...platform } = kit.platform;
  return { ...kit, platform };
};

describe("sills under a platform's edges in the ready kits", () => {
  for (const kit of readyKits)
    test(`${kit.id}: a load at the platform's corner is held on every kind of support that is not a float`, () => {
      for (const kind of kit.supports.filter((s) => s.form !== "float"))
        expect(statusOf(checksOf(kit, kind), "platform.corner"), kind.id).toBe("pass");
    });

  const mesh = readyKits.find((k) => k.id === "light-mesh")!;
  test("light-mesh without them fails at the corner and names the length", () => {
    const corner = checksOf(withoutSill(mesh), mesh.supports[0]!).find((r) => r.id === "platform.corner")!;
    if (corner.status !== "fail") throw new Error(corner.status);
    expect(corner.backwards.change).toContain("edge_sill_mm");
  });

  test("the support with the longer sill is judged apart from the others, at the joints that have it", () => {
    const results = checksOf(mesh, mesh.supports[1]!);
    const of = (id: string) => results.find((r) => r.id === id)!;
    expect(of("supports.sill-bending.open-crate.edge").parts).toEqual(["J1", "ahead"]);
    expect(of("supports.sill-bending.open-crate").parts).toEqual(["J0", "left", "right"]);
    expect(
      statusOf(checksOf(withoutSill(mesh), mesh.supports[1]!), "supports.sill-bending.open-crate.edge"),
    ).toBe(undefined);
  });
});
