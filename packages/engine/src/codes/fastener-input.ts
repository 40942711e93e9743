import { inputProblem, type JsonObject, type Problem } from "../formula/index.ts";
import type { Coating, Fastener, HoleRow, Tables } from "../materials/index.ts";
import { PA_PER_PSI } from "../units/index.ts";
import type { Found, LoadDuration } from "./contract.ts";
import type { FastenerJoint, FastenerRules, JointMoisture, WoodPiece } from "./fastener-contract.ts";
import { freeFields } from "./fastener-fields.ts";
import { freshHole } from "./fastener-holes.ts";
import { fastenerRules } from "./fastener-registry.ts";

/** Reads the shared fields into a joint and the rules of its code; every problem at once. */
export function readJoint(
  input: JsonObject,
  tables: Tables,
): Found<{ readonly rules: FastenerRules; readonly joint: FastenerJoint }> {
  const rules = fastenerRules.find((r) => r.id === input["code"])!;
  const fastener = readFastener(input, tables);
  const hole = readHole(input, tables);
  const problems = [...(fastener.ok ? [] : fastener.problems), ...(hole.ok ? [] : hole.problems)];
  if (!fastener.ok || !hole.ok) return { ok: false, problems };
  return { ok: true, value: { rules, joint: jointOf(input, fastener.value, hole.value) } };
}

const given = <K extends string>(key: K, value: number | undefined, factor = 1) =>
  (value === undefined ? {} : { [key]: value * factor }) as { readonly [P in K]?: number };

function jointOf(input: JsonObject, fastener: Fastener, hole: HoleRow): FastenerJoint {
  const number = (key: string): number => input[key] as number;
  const maybe = (key: string): number | undefined => input[key] as number | undefined;
  const wood = (at: "side" | "main"): WoodPiece => ({
    material: "wood",
    thickness_m: number(`${at}_mm`) / 1000,
    ...given("gravity", maybe(`${at}_gravity`)),
    ...given("density_k", maybe(`${at}_density_kg_m3`)),
    ...given("angle_deg", maybe(`${at}_angle_deg`)),
    ...given("stiffness_n", maybe(`${at}_ea_n`)),
  });
  const plate = {
    material: "steel",
    thickness_m: number("side_mm") / 1000,
    ...given("stiffness_n", maybe("side_ea_n")),
  } as const;
  const predrilled = input["predrilled"] as boolean | undefined;
  return {
    fastener,
    count: number("count"),
    per_row: number("per_row"),
    ...given("row_spacing_m", maybe("row_spacing_mm"), 1 / 1000),
    side: input["side"] === "steel" ? plate : wood("side"),
    main: wood("main"),
    shear: input["shear"] as "single" | "double",
    grain: input["grain"] as "side" | "end",
    toe_nail: input["toe_nail"] as boolean,
    moisture: input["moisture"] as JointMoisture,
    duration: input["load_duration"] as LoadDuration,
    short_reach: (input["short_reach"] as "equations" | "table" | undefined) ?? "equations",
    ...(predrilled === undefined ? {} : { predrilled }),
    rope: input["rope_effect"] === true,
    hole,
  };
}

function readFastener(input: JsonObject, tables: Tables): Found<Fastener> {
  const id = input["fastener"] as string | undefined;
  return id === undefined ? freeFastener(input) : listedFastener(id, input, tables);
}

function listedFastener(id: string, input: JsonObject, tables: Tables): Found<Fastener> {
  const row = tables.fasteners.find((f) => f.id === id);
  const problems: Problem[] = freeFields
    .filter(({ key }) => input[key] !== undefined)
    .map(({ key }) =>
      inputProblem(
        key,
        input[key],
        `stands beside the fastener "${id}"`,
        `Remove "${key}", or remove "fastener" and give every size.`,
      ),
    );
  if (!row) {
    const known = tables.fasteners.filter((f) => f.kind !== "clip").map((f) => f.id);
    problems.push(
      inputProblem("fastener", id, "is not in the fastener table", `Use one of: ${known.join(", ")}.`),
    );
  }
  return row && problems.length === 0 ? { ok: true, value: row } : { ok: false, problems };
}

function freeFastener(input: JsonObject): Found<Fastener> {
  const problems = ["kind", "diameter_mm", "length_mm"]
    .filter((key) => input[key] === undefined)
    .map((key) =>
      inputProblem(key, undefined, "is missing", `Give "fastener", or "${key}" and the other sizes.`),
    );
  const maybe = (key: string): number | undefined => input[key] as number | undefined;
  const [diameter, root, length] = [maybe("diameter_mm"), maybe("root_mm"), maybe("length_mm")];
  const tooLong = (key: string): Problem =>
    inputProblem(key, input[key], "longer than the fastener", "Give at most the length of the fastener.");
  if (root !== undefined && diameter !== undefined && root > diameter)
    problems.push(
      inputProblem("root_mm", root, "thicker than the fastener itself", "Give the root of the thread."),
    );
  for (const key of ["thread_mm", "tip_mm"])
    if (length !== undefined && (maybe(key) ?? 0) > length) problems.push(tooLong(key));
  if (problems.length > 0) return { ok: false, problems };
  return {
    ok: true,
    value: {
      id: "asked",
      name: "Fastener as given",
      kind: input["kind"] as Fastener["kind"],
      length_mm: length!,
      diameter_mm: diameter!,
      coating: (input["coating"] as Coating | undefined) ?? "none",
      shank: input["ring_shank"] === true ? "ring" : "smooth",
      hardened: input["hardened"] === true,
      ...given("root_mm", root),
      ...given("thread_mm", maybe("thread_mm")),
      ...given("tip_mm", maybe("tip_mm")),
      ...given("head_mm", maybe("head_mm")),
      ...given("fyb_psi", maybe("fyb_mpa"), 1e6 / PA_PER_PSI),
      ...given("fu_mpa", maybe("fu_mpa")),
      source: "asked",
      status: "project",
    },
  };
}

function readHole(input: JsonObject, tables: Tables): Found<HoleRow> {
  const id = (input["hole"] as string | undefined) ?? freshHole.id;
  const value = id === freshHole.id ? freshHole : tables.holes.find((h) => h.id === id);
  if (value) return { ok: true, value };
  const known = [...new Set([freshHole.id, ...tables.holes.map((h) => h.id)])].join(", ");
  return {
    ok: false,
    problems: [inputProblem("hole", id, "is not in the table of holes", `Use one of: ${known}.`)],
  };
}
