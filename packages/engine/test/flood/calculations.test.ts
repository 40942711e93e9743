import { tables } from "@causey/data/tables";
import { describe, expect, test } from "vitest";
import type { JsonObject } from "../../src/formula/index.ts";
import { dragOnAll } from "../../src/flood/index.ts";
import { calculations } from "../../src/plan/index.ts";
import { metres, qty } from "../../src/units/index.ts";

const run = (id: string, input: JsonObject): JsonObject => {
  const outcome = calculations.find((c) => c.id === id)!.run(input, { tables });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.outputs;
};
const near = (value: unknown, expected: number, share = 0.005): void =>
  expect(Math.abs((value as number) - expected)).toBeLessThanOrEqual(share * Math.abs(expected));

const post = {
  shape: "square-post",
  along_mm: 89,
  across_mm: 89,
  bottom_mm: 0,
  top_mm: 900,
  depth_mm: 600,
  speed_m_s: 1,
  angle_deg: 90,
  water_kg_m3: 1025,
};

describe("flood.drag", () => {
  test("a square post under water up to 0.6 m: 54.7 N at half of that height, with both bounds of the speed", () => {
    const found = run("flood.drag", post);
    near(found["force_n"], 54.7);
    near(found["acts_at_mm"], 300);
    near(found["lower_speed_m_s"], 0.6);
    near(found["upper_speed_m_s"], Math.sqrt(9.80665 * 0.6));
    near(found["extra_depth_mm"], (1.25 * 1000) / (2 * 9.80665));
  });

  test("the working names the table's own source and status of the coefficient", () => {
    const outcome = calculations.find((c) => c.id === "flood.drag")!.run(post, { tables });
    const step = outcome.ok ? outcome.working.find((s) => s.id === "flood.drag.coefficient") : undefined;
    expect(step?.source).toMatchObject({ title: expect.stringContaining("FEMA P-55"), status: "seen" });
  });

  test("drag on several bodies adds up at the height of its resultant; a table without the row answers nothing", () => {
    const flow = {
      depth: metres(1),
      speed: qty(1, "m/s"),
      angle: qty(Math.PI / 2, "rad"),
      rho_w: qty(1000, "kg/m3"),
    };
    const body = { count: 2, shape: { kind: "own", cd: 2 }, along_m: 0.1, across_m: 0.1 } as const;
    const posts = { ...body, name: "posts", bottom_m: 0, top_m: 1 };
    const edge = { ...body, name: "edge", count: 1, along_m: 2, bottom_m: 0.8, top_m: 1.2 };
    const all = dragOnAll([posts, edge], flow, tables)!;
    near(all.force_n, 2 * 100 + 400, 1e-9);
    near(all.acts_at_m, (200 * 0.5 + 400 * 0.9) / 600, 1e-9);
    const bare = { ...tables, drag_coefficients: [] };
    expect(dragOnAll([{ ...posts, shape: { kind: "square-post" } }], flow, bare)).toBeNull();
  });

  test("a square post turned shows its diagonal, a round one looks alike from every side", () => {
    const turned = run("flood.drag", { ...post, angle_deg: 45 });
    near(turned["area_m2"], 0.089 * Math.SQRT2 * 0.6);
    const round = { ...post, shape: "round-post", across_mm: 0 };
    expect(run("flood.drag", { ...round, angle_deg: 10 })["force_n"]).toBe(
      run("flood.drag", round)["force_n"],
    );
  });

  test("a stringer reads its coefficient by thickness over height: 38 by 140 mm lies between 0.1 and 0.5", () => {
    const stringer = {
      ...post,
      shape: "stringer",
      along_mm: 2400,
      across_mm: 38,
      bottom_mm: 300,
      top_mm: 440,
    };
    near(run("flood.drag", stringer)["coefficient"], 1.9 + (0.6 * (38 / 140 - 0.1)) / 0.4, 1e-9);
  });

  test("corners take drag off a square post, down to the row of the roundest", () => {
    const rounded = (corner_mm: number) => run("flood.drag", { ...post, shape: "rounded-post", corner_mm });
    near(rounded(0)["coefficient"], 2.2);
    near(rounded(0.17 * 89)["coefficient"], 1.2);
    near(rounded(40)["coefficient"], 1);
  });

  test("clean open mesh drags by its solid area, clogged mesh as a plate", () => {
    const mesh = (clogged_share: number) =>
      run("flood.drag", {
        ...post,
        shape: "mesh",
        along_mm: 1000,
        across_mm: 0,
        open_share: 0.8,
        clogged_share,
      });
    near(mesh(0)["coefficient"], 1.6 * 0.2);
    near(mesh(1)["coefficient"], 1.98);
  });

  test("what the water does not reach is not dragged; over 3.05 m/s no depth stands for the flow", () => {
    expect(run("flood.drag", { ...post, bottom_mm: 700 })["force_n"]).toBe(0);
    expect(run("flood.drag", { ...post, speed_m_s: 4 })["extra_depth_mm"]).toBeNull();
  });
});

describe("flood.wave", () => {
  const wave = { height_mm: 300, period_s: 2, depth_mm: 600, water_kg_m3: 1000 };

  test("worked out apart: H 0.3 m, T 2 s, d 0.6 m is 4.36 m long, 0.67 m/s at the surface and 0.48 at the bed", () => {
    const found = run("flood.wave", wave);
    near(found["length_mm"], 4360, 0.002);
    near(found["surface_speed_m_s"], 0.67, 0.01);
    near(found["bed_speed_m_s"], 0.48, 0.01);
    near(found["crest_mm"], 750);
    expect(found["force_n"]).toBeUndefined();
  });

  test("uplift by hand: a crest 50 mm over the underside, 2 m2 solid, slamming twice: 2 x 1000 g x 0.05 x 2", () => {
    const deck = { deck_solid_m2: 2, deck_underside_mm: 700, slam: 2, undersides_mm: [500, 700, 750, 900] };
    const found = run("flood.wave", { ...wave, ...deck });
    near(found["uplift_n"], 2 * 1000 * 9.80665 * 0.05 * 2, 1e-9);
    const each = (found["uplift_by_height"] as readonly JsonObject[]).map((p) =>
      Math.round(p["uplift_n"] as number),
    );
    expect(each).toEqual([5884, 1961, 0, 0]);
  });
});

describe("drifting things", () => {
  const links = [
    { name: "anchors", capacity_n: 3000 },
    { name: "stakes in bending", capacity_n: 1200 },
    { name: "screws", capacity_n: 4000 },
  ];

  test("worked out apart: 20 to 50 kg at 1 m/s hit with 1.05 to 2.6 kN; the stakes bend first, the rest holds", () => {
    near(run("flood.log-impact", { mass_kg: 20, speed_m_s: 1, links })["force_n"], 1050, 0.01);
    const found = run("flood.log-impact", { mass_kg: 50, speed_m_s: 1, links });
    near(found["force_n"], 2618);
    expect(found).toMatchObject({
      weakest: "stakes in bending",
      breaks: true,
      over: ["stakes in bending"],
      energy_n_m: 25,
    });
  });

  test("a slow log breaks nothing, and the weakest is named all the same", () => {
    const found = run("flood.log-impact", { mass_kg: 20, speed_m_s: 0.2, links });
    expect(found).toMatchObject({ weakest: "stakes in bending", breaks: false, over: [] });
  });

  test("a rope of twice the rise pulls 1 / cos 30 of the drag and lets the module drift sqrt 3 of the rise", () => {
    const found = run("flood.tether", {
      rise_mm: 800,
      area_m2: 0.4,
      cd: 2,
      speed_m_s: 1,
      water_kg_m3: 1000,
      factor: 3,
    });
    near(found["rope_mm"], 1600);
    near(found["drag_n"], 400);
    near(found["pull_n"], 400 / Math.cos(Math.PI / 6));
    near(found["strength_n"], (3 * 400) / Math.cos(Math.PI / 6));
    near(found["radius_mm"], 800 * Math.sqrt(3));
  });
});

test("flood.wrack by hand: 20 posts of 100 mm on 40 m dam 5 %, with 20 % clogged 24 %, coefficient 1.9", () => {
  const found = run("flood.wrack", {
    obstacles: [{ name: "posts", count: 20, width_mm: 100, bottom_mm: 0, top_mm: 900 }],
    line_mm: 40_000,
    depth_mm: 500,
    speed_m_s: 0.5,
    clogged_share: 0.2,
    water_kg_m3: 1000,
  });
  near(found["solid_share"], 0.05, 1e-9);
  near(found["dammed_share"], 0.24, 1e-9);
  near(found["coefficient"], 1.9, 1e-9);
  near(found["force_n"], 0.5 * 1000 * 1.9 * 0.24 * 20 * 0.25, 1e-9);
  near(found["rise_mm"], (1000 * 1.9 * 0.24 * (0.5 / 0.76) ** 2) / (2 * 9.80665), 1e-9);
});

describe("flood.floats-first", () => {
  const board = (density_kg_m3: number, bottom_mm: number) => ({
    name: "board",
    bottom_mm,
    top_mm: bottom_mm + 100,
    volume_m3: 0.05,
    density_kg_m3,
  });
  const part = (id: string, density: number, bottom: number, hold_n = 0) => ({
    id,
    pieces: [board(density, bottom)],
    weight_share: 1,
    hold_n,
  });

  test("the lower of two like parts floats first, what sinks never does, and anchors hold the third", () => {
    const found = run("flood.floats-first", {
      parts: [
        part("high", 500, 400),
        part("low", 500, 200),
        part("steel", 7850, 0),
        part("held", 500, 0, 300),
      ],
      water_kg_m3: 1000,
    });
    expect(found["first"]).toBe("low");
    near(found["first_level_mm"], 250, 1e-9);
    const order = found["order"] as readonly JsonObject[];
    expect(order.map((p) => [p["id"], p["floats_at_mm"] === null])).toEqual([
      ["low", false],
      ["high", false],
      ["held", true],
      ["steel", true],
    ]);
    expect(order[2]!["missing_n"]).toBe(0);
  });

  test("timber counts at its driest, and one of two states is taken by the use", () => {
    const { density_kg_m3, ...rest } = board(1, 0);
    const wood = { ...rest, gravity: 0.42, driest: "dry-19", wettest: "waterlogged" };
    const at = (use: string) =>
      run("flood.buoyancy", { pieces: [wood], water_kg_m3: 1000, level_mm: 50, use });
    expect(density_kg_m3).toBe(1);
    near(at("uplift")["weight_n"], 0.05 * 466.3 * 9.80665, 1e-3);
    expect(at("carrying")["floats_at_mm"]).toBeNull();
    near(at("uplift")["floats_at_mm"], 46.63, 1e-3);
  });
});

describe("ice and frost", () => {
  test("flood.ice: ice of half the post's thickness per diameter grips with 420 kPa, or with what the sheet can lift", () => {
    const ice = { diameter_mm: 100, ice_mm: 200, water_kg_m3: 1025, holds_n: 2000 };
    const grip = run("flood.ice", ice);
    near(grip["lift_n"], 420_000 * Math.PI * 0.1 * 0.2);
    expect(grip).toMatchObject({ lifts_post: true, verdict: "cannot-check" });
    const sheet = run("flood.ice", { ...ice, ice_area_m2: 4 });
    near(sheet["lift_n"], 1060 * 0.2 * 4, 0.001);
    expect(sheet["lifts_post"]).toBe(false);
  });

  test("flood.ice: dates across the months with ice give the day to lift out by", () => {
    const found = run("flood.ice", {
      diameter_mm: 100,
      ice_mm: 200,
      water_kg_m3: 1000,
      stands_from: "2027-04-01",
      stands_to: "2028-03-31",
      ice_months: [12, 1, 2],
      lifts_out: true,
    });
    expect(found).toMatchObject({
      verdict: "lift-out",
      by: "2027-11-30",
      words: expect.stringContaining("Lift out by"),
    });
  });

  const stake = { shape: "square", size_mm: 89, su_kpa: 10, load_n: 0, material: "wood", frost_mm: 600 };
  test("anchor.frost: a stake that ends in the frost heaves, a deep one in stiff ground stays", () => {
    const short = run("anchor.frost", { ...stake, embedment_mm: 500 });
    expect(short).toMatchObject({ heaves: true, ends_in_frost: true });
    near(short["heave_n"], 65_000 * 4 * 0.089 * 0.5);
    const deep = run("anchor.frost", { ...stake, embedment_mm: 3000, su_kpa: 25 });
    expect(deep).toMatchObject({ heaves: false, ends_in_frost: false });
    near(deep["hold_n"], 25_000 * 4 * 0.089 * 2.4);
  });
});

describe("one stake", () => {
  const stake = { shape: "round", size_mm: 50, embedment_mm: 1200, su_kpa: 10, state: "set", tapered: false };

  test("anchor.pullout: 1 m grips, the tip adds 9 su A, fresh and loosened stakes hold less, a taper is told", () => {
    const set = run("anchor.pullout", { ...stake, rake_deg: 30 });
    near(set["pull_n"], 10_000 * Math.PI * 0.05, 1e-9);
    near(set["press_n"], 10_000 * Math.PI * 0.05 + 9 * 10_000 * (Math.PI / 4) * 0.0025, 1e-9);
    near(set["pair_n"], 10_000 * Math.PI * 0.05, 1e-9);
    near(
      run("anchor.pullout", { ...stake, state: "fresh" })["pull_n"],
      0.3 * (set["pull_n"] as number),
      1e-9,
    );
    near(
      run("anchor.pullout", { ...stake, state: "loosened" })["pull_n"],
      0.5 * (set["pull_n"] as number),
      1e-9,
    );
    expect(set["note"]).toBeNull();
    expect(run("anchor.pullout", { ...stake, tapered: true })["note"]).toContain("tapered");
  });

  test("anchor.lateral: weak wood governs, and the moment at that force is what the wood carries", () => {
    const { state: _state, tapered: _tapered, ...rest } = stake;
    const side = { ...rest, force_at_mm: 300, sway: false, bending_mpa: 10, modulus_mpa: 8000 };
    const free = run("anchor.lateral", { ...side, head: "free" });
    const wood = (Math.PI / 32) * 0.05 ** 3 * 10e6;
    expect(free).toMatchObject({ governs: "wood", short: false, note: null });
    const { bending_mpa: _bending, ...unknown } = side;
    expect(run("anchor.lateral", { ...unknown, head: "free" })["note"]).toContain("Give the bending stress");
    expect(run("anchor.lateral", { ...unknown, head: "free", embedment_mm: 700 })).toMatchObject({
      short: true,
      note: null,
    });
    near(free["moment_n_m"], wood, 1e-9);
    near(run("anchor.lateral", { ...side, head: "fixed" })["moment_n_m"], wood, 1e-9);
    near(
      run("anchor.lateral", { ...side, head: "free", sway: true })["ground_n"],
      (free["ground_n"] as number) / 2,
      1e-9,
    );
  });
});
