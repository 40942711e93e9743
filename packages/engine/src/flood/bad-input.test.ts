import { describe, expect, test } from "vitest";
import { calculations } from "../plan/index.ts";
import type { JsonObject } from "../formula/index.ts";
import { yardTables } from "../../test/support/yard-tables.ts";

const problemsOf = (id: string, input: JsonObject) => {
  const outcome = calculations.find((c) => c.id === id)!.run(input, { tables: yardTables });
  return outcome.ok ? [] : outcome.problems;
};

const piece = { name: "board", bottom_mm: 0, top_mm: 38, volume_m3: 0.01, density_kg_m3: 500 };
const buoyancy = { pieces: [piece], water_kg_m3: 1000, level_mm: 20, use: "uplift" };
const drag = {
  shape: "own",
  cd: 2,
  along_mm: 89,
  across_mm: 89,
  bottom_mm: 0,
  top_mm: 600,
  depth_mm: 600,
  speed_m_s: 1,
  angle_deg: 90,
  water_kg_m3: 1025,
};
const wave = { height_mm: 300, period_s: 2, depth_mm: 600, water_kg_m3: 1000 };
const stake = {
  shape: "round",
  size_mm: 50,
  embedment_mm: 900,
  su_kpa: 8,
  force_at_mm: 300,
  head: "free",
  sway: false,
};
const needed = {
  uplift_n: 400,
  horizontal_n: 100,
  force_at_mm: 300,
  above_mm: 350,
  su_kpa: 8,
  state: "set",
  sway: false,
  safety_pull: 1.5,
  safety_lateral: 2,
  most: 8,
  stakes: [{ name: "a", shape: "round", size_mm: 50, lengths_mm: [500, 1200], bending_mpa: 10 }],
};
const wrack = {
  obstacles: [{ name: "posts", count: 20, width_mm: 89, bottom_mm: 0, top_mm: 600 }],
  line_mm: 24_000,
  depth_mm: 500,
  speed_m_s: 0.5,
  clogged_share: 0.2,
  water_kg_m3: 1000,
};
const ice = { diameter_mm: 100, ice_mm: 200, water_kg_m3: 1000 };

test("the inputs that the faults are made of are good", () => {
  const good = {
    "flood.buoyancy": buoyancy,
    "flood.drag": drag,
    "flood.wave": wave,
    "flood.wrack": wrack,
    "flood.ice": ice,
    "anchor.lateral": stake,
    "anchor.stakes-needed": { ...needed, stakes: [{ ...needed.stakes[0]!, lengths_mm: [1200] }] },
  };
  for (const [id, input] of Object.entries(good)) expect(problemsOf(id, input), id).toEqual([]);
});

describe("bad input is a problem at its field, with a mend", () => {
  test.each<[string, string, JsonObject, string, RegExp, RegExp]>([
    [
      "a piece of no density",
      "flood.buoyancy",
      { ...buoyancy, pieces: [{ ...piece, density_kg_m3: 0 }] },
      "pieces[0].density_kg_m3",
      /at least 1/,
      /density_kg_m3/,
    ],
    [
      "a piece of negative density",
      "flood.buoyancy",
      { ...buoyancy, pieces: [{ ...piece, density_kg_m3: -5 }] },
      "pieces[0].density_kg_m3",
      /at least 1/,
      /density_kg_m3/,
    ],
    [
      "a piece without height",
      "flood.buoyancy",
      { ...buoyancy, pieces: [{ ...piece, top_mm: 0 }] },
      "pieces[0].top_mm",
      /not over the bottom/,
      /bottom_mm/,
    ],
    [
      "a piece without volume",
      "flood.buoyancy",
      { ...buoyancy, pieces: [{ ...piece, volume_m3: 0 }] },
      "pieces[0].volume_m3",
      /at least/,
      /volume_m3/,
    ],
    [
      "a volume and a box",
      "flood.buoyancy",
      { ...buoyancy, pieces: [{ ...piece, length_mm: 100 }] },
      "pieces[0].volume_m3",
      /either a volume or a box/,
      /width_mm/,
    ],
    ["no pieces", "flood.buoyancy", { ...buoyancy, pieces: [] }, "pieces", /empty/, /one entry/],
    ["a post without size", "flood.drag", { ...drag, along_mm: 0 }, "along_mm", /at least 1/, /along_mm/],
    ["a negative speed", "flood.drag", { ...drag, speed_m_s: -0.1 }, "speed_m_s", /at least 0/, /speed_m_s/],
    [
      "a shape that the table lacks",
      "flood.drag",
      { ...drag, shape: "round-post" },
      "shape",
      /no row/,
      /own/,
    ],
    [
      "mesh without its openings",
      "flood.drag",
      { ...drag, shape: "mesh" },
      "open_share",
      /missing/,
      /open_share/,
    ],
    [
      "a wave higher than the depth carries",
      "flood.wave",
      { ...wave, height_mm: 500 },
      "height_mm",
      /468 mm/,
      /468 at most/,
    ],
    [
      "half a piece in the wave",
      "flood.wave",
      { ...wave, piece_cd: 2 },
      "piece_facing_mm",
      /companions/,
      /piece_shape/,
    ],
    [
      "a stake in the ignored top",
      "anchor.lateral",
      { ...stake, embedment_mm: 200 },
      "embedment_mm",
      /top 200 mm/,
      /more than 200 mm/,
    ],
    [
      "a wide stake in its own 1.5 widths",
      "anchor.lateral",
      { ...stake, size_mm: 400, embedment_mm: 600 },
      "embedment_mm",
      /top 600 mm/,
      /more than 600/,
    ],
    [
      "a stake that is too short for what stays over the ground",
      "anchor.stakes-needed",
      needed,
      "stakes[0].lengths_mm[0]",
      /does not hold/,
      /more than 550 mm/,
    ],
    [
      "two sides of a round stake",
      "anchor.lateral",
      { ...stake, along_mm: 60 },
      "along_mm",
      /one size/,
      /square/,
    ],
    [
      "rushing shallow water",
      "flood.wrack",
      { ...wrack, depth_mm: 20, speed_m_s: 1 },
      "speed_m_s",
      /Froude/,
      /deeper/,
    ],
    [
      "a dammed line",
      "flood.wrack",
      { ...wrack, clogged_share: 0.9 },
      "clogged_share",
      /acts as a dam/,
      /break away/,
    ],
    ["a month that is none", "flood.ice", { ...ice, ice_months: [13] }, "ice_months", /months/, /1 to 12/],
    [
      "days the wrong way round",
      "flood.ice",
      { ...ice, stands_from: "2027-06-01", stands_to: "2027-05-01" },
      "stands_to",
      /before the first/,
      /after/,
    ],
  ])("%s", (_name, id, input, place, message, mend) => {
    const found = problemsOf(id, input).find((p) => p.place === place);
    expect(found?.message).toMatch(message);
    expect(found?.mend).toMatch(mend);
  });

  test("all faults at once", () => {
    const places = problemsOf("flood.buoyancy", {
      ...buoyancy,
      pieces: [{ ...piece, density_kg_m3: 0 }, { ...piece, top_mm: -5 }, 3],
    }).map((p) => p.place);
    expect(places).toEqual(["pieces[0].density_kg_m3", "pieces[1].top_mm", "pieces[2]"]);
  });
});
