import { expect, test } from "vitest";
import { plotAt, smallInput, smallSite, smallTerrain, zone } from "../../test/support/small-site.ts";
import { finish } from "../formula/index.ts";
import type { Site, Zone } from "../site/index.ts";
import { deadEnds } from "./dead-ends.ts";
import { evaluateLayout } from "./evaluate.ts";
import { routeFacts } from "./route-facts.ts";
import { searchNetwork } from "./search.ts";
import { spareModules } from "./spares.ts";
import type { Layout } from "./types.ts";

const flat = smallTerrain(40, 30, () => 1);
const kit = smallInput(smallSite(flat, [])).facts;
const lay = (site: Site): Layout => finish(searchNetwork(smallInput(site)));

/** From (5, 5) north to (5, 16): 11 m of walkway, 0.6 m wide. */
const straight = (zones: readonly Zone[]): { site: Site; layout: Layout } => {
  const site = smallSite(flat, [plotAt("p", 5, 18)], zones);
  return { site, layout: lay(site) };
};

test("parcels are listed with owner, length and area, and the rest of the length is in none (hand sums)", () => {
  const { site, layout } = straight([
    zone("ann", "parcel", 0, 0, 40, 10, { owner: "A. Reed" }),
    zone("common", "parcel", 0, 10, 40, 14),
    zone("far", "parcel", 20, 0, 40, 30, { owner: "nobody here" }),
  ]);
  const facts = routeFacts(layout, site, kit);
  expect(facts.parcels.map((p) => [p.zone, p.owner, p.length_m.toFixed(6), p.area_m2.toFixed(6)])).toEqual([
    ["ann", "A. Reed", "5.000000", "3.000000"],
    ["common", null, "4.000000", "2.400000"],
  ]);
  expect(facts.no_parcel_m).toBeCloseTo(2, 9);
  expect(facts.length_m).toBeCloseTo(11, 9);
  expect(facts.length_m).toBeCloseTo(
    evaluateLayout({
      layout,
      site,
      weights: { money: 1, shade_per_m2: 0, contact_per_m2: 0, crossing: 0 },
      depth_m: 0.15,
      gap_m: 0,
      money: 0,
    }).length_m,
    9,
  );
});

test("sensitive length counts overlapping habitats once, as the more sensitive; plain ground is not sensitive", () => {
  const { site, layout } = straight([
    zone("low", "habitat", 0, 0, 40, 8, { sensitivity: 1.5 }),
    zone("rush", "habitat", 0, 6, 40, 12, { sensitivity: 3 }),
    zone("grass", "habitat", 0, 12, 40, 30, { sensitivity: 1 }),
  ]);
  const facts = routeFacts(layout, site, kit);
  expect(facts.sensitive.map((s) => [s.zone, s.length_m.toFixed(6)])).toEqual([
    ["rush", "6.000000"],
    ["low", "1.000000"],
  ]);
  expect(facts.sensitive_m).toBeCloseTo(7, 9);
});

test("water is listed with its kind and clear width: a channel under 3 m is a ditch", () => {
  const ditch = zone("gut", "channel", 0, 9.2, 40, 10.4);
  const { site, layout } = straight([ditch]);
  expect(routeFacts(layout, site, kit).crossings.map((c) => [c.zone, c.type, c.width_m.toFixed(6)])).toEqual([
    ["gut", "ditch", "1.200000"],
  ]);
  const module = layout.parts[0]!;
  const wide = zone("river", "channel", 0, 0, 40, 30);
  const beside = zone("pan", "pool", 5.2, 5, 8, 9);
  const bridging = {
    ...layout,
    parts: [{ ...module, bridges: ["river", "pan"] }],
  };
  const long = routeFacts(
    { ...bridging, joints: layout.joints.map((j) => (j.id === "J2" ? { ...j, y: 9 } : j)) },
    { ...site, zones: [wide, beside] },
    kit,
  );
  expect(long.crossings.map((c) => [c.zone, c.type, c.width_m])).toEqual([
    ["river", "channel", 4],
    ["pan", "pool", 0],
  ]);
});

test("the walkway overlaps no keep-off circle, and a part laid into one is told with its area", () => {
  const { site, layout } = straight([]);
  const [clear] = routeFacts(layout, site, kit).plots;
  expect(clear).toMatchObject({ plot: "p", keep_off_m: 0.5, overlap_m2: 0 });
  // The last joint lies 2 m south of the plot, and a sleeper reaches 0.05 m beyond it.
  expect(clear!.nearest_m).toBeCloseTo(1.95, 9);
  const trodden = { ...site, plots: [plotAt("p", 5, 10, 0.2)] };
  const circle = Math.PI * 0.2 ** 2;
  expect(routeFacts(layout, trodden, kit).plots[0]!.overlap_m2).toBeCloseTo(circle, 3);
  expect(routeFacts(layout, trodden, kit).plots[0]!.nearest_m).toBe(0);
});

test("every dead end names the last platform to turn on, and how far it is to go back", () => {
  const site = smallSite(flat, [plotAt("p", 10, 24), plotAt("q", 22, 20), plotAt("r", 30, 12)]);
  const layout = lay(site);
  expect(layout.reached).toHaveLength(3);
  const ends = deadEnds(layout);
  // The way to one plot may lead past another: that one is no dead end.
  const last = layout.reached.filter((r) => !layout.parts.some((p) => p.from === r.joint));
  expect(last.length).toBeGreaterThan(1);
  expect(ends.flatMap((e) => e.plots).sort()).toEqual(last.map((r) => r.plot).sort());
  for (const end of ends) {
    const platform = layout.parts.find((p) => p.id === end.last_turn)!;
    expect(platform.kind).toBe("platform");
    const [sign, tip] = [end.sign_at, end.joint].map((id) => layout.joints.find((j) => j.id === id)!);
    // Between the sign and the end the walkway is straight: no platform, so no turn.
    expect(Math.hypot(tip!.x - sign!.x, tip!.y - sign!.y)).toBeCloseTo(end.back_m, 9);
    expect(Object.values(platform.kind === "platform" ? platform.exits : {})).toContain(end.sign_at);
  }
});

test("a walkway without a platform has its last place to turn at the start", () => {
  const { layout } = straight([]);
  expect(deadEnds(layout)).toEqual([
    { joint: "J5", branch: "A", plots: ["p"], last_turn: null, sign_at: "J1", back_m: 11 },
  ]);
});

test("spares are the share of each length, rounded up to whole modules (hand arithmetic)", () => {
  const { layout } = straight([]);
  // Three of 3 m and one of 2 m: 34 % of three is 1.02, so two; of one 0.34, so one.
  expect(spareModules(layout, 0.34)).toEqual([
    { length_m: 3, in_layout: 3, spares: 2 },
    { length_m: 2, in_layout: 1, spares: 1 },
  ]);
  expect(spareModules(layout, 0).map((s) => s.spares)).toEqual([0, 0]);
  // A third of three is one, not two by rounding.
  expect(spareModules(layout, 1 / 3)[0]!.spares).toBe(1);
});

test("a part of a size that the kit lacks is told by its tag; whole parts of the kit are not", () => {
  const { site, layout } = straight([]);
  expect(routeFacts(layout, site, kit).custom_parts).toEqual([]);
  const [first, ...rest] = layout.parts;
  const cut = { ...layout, parts: [{ ...first!, length_m: 1.234 } as typeof first & object, ...rest] };
  const told = routeFacts(cut, site, kit);
  expect(told.custom_parts).toEqual([first!.id]);
  expect(told.custom_because).toContain(first!.id);
});
