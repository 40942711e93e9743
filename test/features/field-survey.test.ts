// Rows 9 to 11 of the feature list: vane shear, probe depths, field sheets.
import { applyEdit, type Plan } from "@causey/engine/plan";
import { PA_PER_PSF } from "@causey/engine/units";
import { columnHeads } from "@causey/io/points";
import { paperSet } from "@causey/papers/set";
import { sceneTexts } from "@causey/papers/scene";
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { guessColumns, importKinds, type ImportKind } from "../../packages/web/src/site-page/import-kinds.ts";
import { ProfilePicture } from "../../packages/web/src/site-page/probe-profile.tsx";
import {
  previewImport,
  startChoice,
  type ImportChoice,
} from "../../packages/web/src/site-page/readings-import.ts";
import { flatPlan, folderFiles, planned } from "../support/feature-plan.ts";

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

/** What the Site page does with a file: columns by their heads, then the edit of the plan. */
function broughtIn(plan: Plan, kind: ImportKind, text: string, some: Partial<ImportChoice> = {}): Plan {
  const columns = guessColumns(kind, columnHeads("field.csv", utf8(text)));
  const preview = previewImport(kind, "field.csv", utf8(text), { ...startChoice, columns, ...some }, plan);
  expect(preview.problems.filter((p) => p.severity === "error")).toEqual([]);
  const done = applyEdit(plan, preview.edit!);
  if (!done.ok) throw new Error(JSON.stringify(done));
  return done.plan;
}
const vane: Partial<ImportChoice> = { correction: 1, source: "Hand vane, 2027-02-03, corrected" };

describe("9 import vane-shear peak/remoulded, vane size (soil checks: common practice, no source)", () => {
  const rows = [
    "station,x,y,depth,peak,remoulded,vane",
    "A,10,20,0.3,8,2,55 x 110",
    "A,10,20,0.6,12,4,55 x 110",
    "B,30,20,0.3,20,,65",
  ].join("\n");

  test("9 strength and sensitivity are reported per station, weakest first to count", async () => {
    const { results } = await planned(folderFiles(broughtIn(flatPlan(), "shear", rows, vane)));
    const [a, b, ...more] = results.survey.shear;
    expect(more).toEqual([]);
    expect(a).toMatchObject({ x: 10, y: 20, least_su_kpa: 8, sensitivity: 4 });
    expect(a!.readings.map((r) => [r.depth_m, r.su_kpa, r.remoulded_kpa, r.sensitivity, r.vane_mm])).toEqual([
      [0.3, 8, 2, 4, "55 x 110"],
      [0.6, 12, 4, 3, "55 x 110"],
    ]);
    expect(b).toMatchObject({ least_su_kpa: 20, sensitivity: null });
    expect(b!.readings[0]).toMatchObject({ remoulded_kpa: null, vane_mm: "65" });
    expect(b!.readings[0]!.source).toContain("Hand vane, 2027-02-03");
  });

  test("9 pounds per square foot and a correction for peat give the strength in kPa, and the source says so", async () => {
    const plan = broughtIn(flatPlan(), "shear", rows, { ...vane, strength_unit: "psf", correction: 0.5 });
    const { results } = await planned(folderFiles(plan));
    expect(results.survey.shear[1]!.least_su_kpa).toBeCloseTo((20 * PA_PER_PSF * 0.5) / 1000, 9);
    expect(results.survey.shear[1]!.readings[0]!.source).toContain("x 0.5");
  });
});

describe("10 accept probe depth to firm layer and show profile (US Forest Service wetland trails: test holes)", () => {
  test("10 the profile picture has all stations, each probe down to its firm layer", async () => {
    const probes = Array.from(
      { length: 24 },
      (_, i) => `T${i + 1},${6 + 2 * i},20,1,${i === 7 ? "" : 0.3 + i / 20}`,
    );
    const text = ["name,x,y,ground,probe", ...probes].join("\n");
    const { results, plan } = await planned(folderFiles(broughtIn(flatPlan(), "stations", text)));
    const { stations } = results.survey;
    expect(stations).toHaveLength(24);
    expect(stations[23]).toMatchObject({ along_m: 46, probe_m: 1.45 });
    expect(stations[23]!.firm_m).toBeCloseTo(-0.45, 9);
    expect(stations[7]).toMatchObject({ probe_m: null, firm_m: null });
    const svg = renderToStaticMarkup(createElement(ProfilePicture, { stations, plan, width: 640 }));
    const drawn = [...svg.matchAll(/data-station="(T\d+)"(.*?)<\/g>/g)];
    expect(drawn.map((m) => m[1])).toEqual(stations.map((s) => s.id));
    expect(drawn.filter((m) => m[2]!.includes("profile-probe")).map((m) => m[1])).toEqual(
      stations.filter((s) => s.firm_m !== null).map((s) => s.id),
    );
  });
});

interface Printed {
  readonly heads: readonly string[];
  readonly codes: readonly string[];
}

/** The blank tables of the printed sheet: heads and codes, as somebody keys them; heads are printed anew on each page. */
function printedTables(words: readonly string[]): Printed[] {
  const tables = new Map<string, string[]>();
  words.forEach((word, at) => {
    if (word !== "Code") return;
    const rest = words.slice(at);
    const first = rest.findIndex((w) => /^[TRC]\d+$/.test(w));
    const heads = rest.slice(0, first).join("|");
    const end = rest.indexOf("Code", 1);
    const codes = rest
      .slice(first, end < 0 ? undefined : end)
      .filter((w) => w[0] === rest[first]![0] && /^.\d+$/.test(w));
    tables.set(heads, [...(tables.get(heads) ?? []), ...codes]);
  });
  return [...tables].map(([heads, codes]) => ({ heads: heads.split("|"), codes }));
}

describe("11 make printable field sheet and read it back (field note sheets of the US Forest Service handbook)", () => {
  const kinds = ["stations", "shear", "check-shots"] as const;
  /** What is written into the sheet, by head. */
  const written: Readonly<Record<string, (n: number) => string>> = {
    East: (n) => String(8 + 2 * n),
    North: () => "20",
    "Ground level": () => "1.02",
    "Probe sank": (n) => (0.4 + n / 10).toFixed(1),
    "Water level": () => "0.90",
    Photo: (n) => `IMG_${n}`,
    Depth: () => "0.3",
    Peak: (n) => String(6 + n),
    Remoulded: () => "2",
    Vane: () => "55 x 110",
    Height: () => "0.98",
    Accuracy: () => "0.01",
  };
  const sheetOf = async (plan: Plan) => {
    const { papers } = await planned(folderFiles(plan));
    const { pages } = paperSet(papers, ["field-sheets"]);
    return printedTables(
      pages.flatMap((page) => sceneTexts(page.shapes).map((t) => t.trim())).filter((t) => t !== ""),
    );
  };
  const keyed = ({ heads, codes }: Printed): string =>
    [
      heads.join(","),
      ...codes.map((code, n) => [code, ...heads.slice(1).map((head) => written[head]!(n))].join(",")),
    ].join("\n");

  test("11 printed sheet codes round-trip: every code and figure comes back under the printed heads, no column chosen by hand", async () => {
    const tables = await sheetOf(flatPlan());
    expect(tables.map((t) => t.codes.length)).toEqual([16, 8, 8]);
    kinds.forEach((kind, i) => {
      const guess = guessColumns(kind, columnHeads("field.csv", utf8(keyed(tables[i]!))));
      for (const { key, label } of importKinds[kind].columns)
        if (key !== "date") expect(guess[key], `${kind}: ${label}`).not.toBeNull();
    });
    const back = kinds.reduce((plan, kind, i) => broughtIn(plan, kind, keyed(tables[i]!), vane), flatPlan());
    expect(back.survey.stations.map((s) => s.id)).toEqual(tables[0]!.codes);
    expect(back.survey.stations[3]).toMatchObject({
      x: 14,
      y: 20,
      ground_m: 1.02,
      probe_m: 0.7,
      water_m: 0.9,
    });
    expect(back.ground.readings.map((r) => r.source.split(", ").at(-1))).toEqual(tables[1]!.codes);
    expect(back.ground.readings[2]).toMatchObject({ su_kpa: 8, remoulded_kpa: 2, vane_mm: "55 x 110" });
    expect(back.survey.check_shots.map((s) => s.id)).toEqual(tables[2]!.codes);
    expect(back.survey.check_shots[0]).toMatchObject({ z_m: 0.98, accuracy_m: 0.01 });
  });

  test("11 the next sheet goes on where the last one ended, so that a second day writes over nothing", async () => {
    const first = await sheetOf(flatPlan());
    const back = kinds.reduce((plan, kind, i) => broughtIn(plan, kind, keyed(first[i]!), vane), flatPlan());
    const next = await sheetOf(back);
    expect(next.map((t) => t.codes[0])).toEqual(["T17", "R9", "C9"]);
    const twice = broughtIn(back, "stations", keyed(next[0]!));
    expect(twice.survey.stations).toHaveLength(32);
  });
});
