import { inputProblem, type JsonObject, type Trace } from "../formula/index.ts";
import { metres, pascals, qty } from "../units/index.ts";
import {
  groundFrom,
  groundMethod,
  isRefusal,
  metresOf,
  number,
  numberOf,
  optional,
  output,
  refused,
  rowsOf,
  side,
  terrainFields,
  type Answer,
} from "./method-fields.ts";
import { fitPlates, plateFault, type Fitted, type PlatePoint } from "./plate-test.ts";
import {
  hydraulicDiameter,
  muskegPressure,
  muskegSinkage,
  pressureOf,
  RIGID_PLASTIC_N,
  sinkageOf,
  USE_BEARING_CAPACITY,
  type BekkerGround,
} from "./sinkage.ts";
import { bekker, muskegSource, plateFit, rigidFootTilt } from "./sources.ts";
import { footTilt } from "./tilt.ts";
import type { GroundContext } from "./types.ts";

/** Sinkage beyond this is a foot gone in: the tests that the laws rest on do not reach there [m]. */
const DEEP = 0.5;
/** Ground and snow lie between 0 and 2: beyond this the points are no plate test. */
const STEEPEST = 5;
const TOO_DEEP = "More than 0.5 m: the foot goes in. The law does not reach there.";

const bothOrNone = (): Answer =>
  refused(
    inputProblem(
      "pressure_pa",
      undefined,
      "give a pressure or a sinkage, one of the two",
      'Give "pressure_pa" or "sinkage_mm".',
    ),
  );

function onMuskeg(input: JsonObject, id: string, context: GroundContext, trace: Trace): Answer {
  const row = context.tables.ground.muskegs.find((m) => m.id === id);
  const ids = context.tables.ground.muskegs.map((m) => m.id).join(", ");
  if (!row) return refused(inputProblem("muskeg", id, "is not in the table", `Give one of ${ids}.`));
  const [a, b] = [metres(metresOf(input, "width_mm")), metres(metresOf(input, "length_mm"))];
  const Dh = hydraulicDiameter({ a, b }, trace);
  const kp = qty(row.kp_kn_m3 * 1000, "N/m3");
  const mm = qty(row.mm_kn_m3 * 1000, "N/m3");
  const pressure = numberOf(input, "pressure_pa");
  const p =
    pressure === null
      ? muskegPressure({ kp, mm, Dh, z: metres(metresOf(input, "sinkage_mm")) }, trace)
      : pascals(pressure);
  const z = pressure === null ? metresOf(input, "sinkage_mm") : muskegSinkage({ p, kp, mm, Dh }, trace);
  const words = [
    "The values of muskeg are from memory: confirm them before use.",
    ...(z > DEEP ? [TOO_DEEP] : []),
  ];
  return {
    pressure_pa: p,
    sinkage_mm: z * 1000,
    tilt_rad: null,
    edge_pressure_pa: null,
    use_bearing: false,
    words,
  };
}

function onTerrain(input: JsonObject, ground: BekkerGround, trace: Trace): Answer {
  const [w, l] = [metresOf(input, "width_mm"), metresOf(input, "length_mm")];
  const b = Math.min(w, l);
  const given = numberOf(input, "pressure_pa");
  const p =
    given === null ? pressureOf(ground, b, metres(metresOf(input, "sinkage_mm")), trace) : pascals(given);
  const z = given === null ? metresOf(input, "sinkage_mm") : sinkageOf(ground, b, pascals(given), trace);
  if (p === null || z === null)
    return refused(
      inputProblem(
        input["terrain"] === undefined ? "kc_n_per_m" : "terrain",
        input["terrain"] ?? input["kc_n_per_m"],
        "gives this foot no stiffness, or a sinkage over 10 m: it goes in",
        "Look at the units, or give values that hold for this size of foot.",
      ),
    );
  const off = (numberOf(input, "off_width_mm") ?? 0) / 1000;
  if (off >= w / 2)
    return refused(
      inputProblem(
        "off_width_mm",
        off * 1000,
        "the load stands outside the foot",
        "Give less than half of the width.",
      ),
    );
  const load = p * w * l;
  const tilt = off > 0 && load > 0 ? footTilt(ground, { side_m: w, other_m: l }, load, off, trace) : null;
  const isRigid = ground.n < RIGID_PLASTIC_N;
  return {
    pressure_pa: p,
    sinkage_mm: z * 1000,
    tilt_rad: tilt?.rotation ?? null,
    edge_pressure_pa: tilt?.edge_pa ?? null,
    use_bearing: isRigid,
    words: [...(isRigid ? [USE_BEARING_CAPACITY] : []), ...(z > DEEP ? [TOO_DEEP] : [])],
  };
}

export const sinkageCalculation = groundMethod(
  {
    id: "ground.sinkage",
    title: "How deep a foot sinks, or what pressure a sinkage needs",
    inputs: [
      side("width_mm", "Side of the foot"),
      side("length_mm", "Other side of the foot"),
      ...terrainFields,
      { key: "muskeg", title: "Muskeg of the table, by id (from memory)", type: "string", optional: true },
      optional(number("pressure_pa", "Pressure under the foot", 0, 1e7)),
      optional(number("sinkage_mm", "Sinkage", 0, 5000)),
      optional(number("off_width_mm", "Load off the middle, along the width", 0, 10_000)),
    ],
    outputs: [
      output("pressure_pa", "Pressure", "number"),
      output("sinkage_mm", "Sinkage", "number"),
      output("tilt_rad", "Rotation under an off-centre load; null without one"),
      output("edge_pressure_pa", "Pressure under the pressed edge; null without an off-centre load"),
      output("use_bearing", "The ground is almost rigid-plastic: the bearing capacity counts", "boolean"),
      output("words", "What to know", "array"),
    ],
    validity: "First loading, stiff foot, size near that of the test plates; sinkage within about 0.5 m.",
    sources: [bekker, muskegSource, rigidFootTilt],
  },
  (input, context, trace) => {
    if ((numberOf(input, "pressure_pa") === null) === (numberOf(input, "sinkage_mm") === null))
      return bothOrNone();
    const ground = groundFrom(input, context.tables.ground);
    if (isRefusal(ground)) return ground;
    const muskeg = input["muskeg"] as string | undefined;
    if ((ground === null) === (muskeg === undefined))
      return refused(
        inputProblem(
          "terrain",
          input["terrain"],
          "one kind of ground is needed",
          'Give "terrain", or kc, kphi and n, or "muskeg".',
        ),
      );
    return ground ? onTerrain(input, ground, trace) : onMuskeg(input, muskeg!, context, trace);
  },
);

const shown = (f: Fitted): JsonObject => ({ value: f.value, low: f.low, high: f.high });

export const plateCalculation = groundMethod(
  {
    id: "ground.plate-test-fit",
    title: "Sinkage law of a ground from plate tests",
    inputs: [{ key: "points", title: "Points of the tests: { b_mm, z_mm, p_pa }", type: "array" }],
    outputs: [
      output("n", "Exponent with its 95 % band", "object"),
      output("plates", "Stiffness of each plate with its band", "array"),
      output("kc_n_per_m", "kc with its band; null for plates of one size"),
      output("kphi_pa", "kphi with its band; null for plates of one size"),
      output("residual_ln", "What the fit leaves of ln p", "number"),
      output("residual_share", "What the fit leaves of p, as a share of its mean", "number"),
      output("words", "What to know", "array"),
    ],
    validity:
      "Plates pressed in undisturbed ground, pressure rising with sinkage; two sizes for kc and kphi.",
    sources: [plateFit],
  },
  (input) => {
    const fields = [
      number("b_mm", "Smaller side of the plate", 5, 2000),
      number("z_mm", "Sinkage", 0.1, 2000),
      number("p_pa", "Pressure", 1, 1e7),
    ];
    const rows = rowsOf("points", input["points"] as readonly JsonObject[], fields, 5000);
    if (isRefusal(rows)) return rows;
    const points: PlatePoint[] = rows.map((r) => ({
      b_m: metresOf(r, "b_mm"),
      z_m: metresOf(r, "z_mm"),
      p_pa: r["p_pa"] as number,
    }));
    const fault = plateFault(points);
    if (fault !== null) return refused(inputProblem("points", rows.length, fault, "Give more points."));
    const fit = fitPlates(points);
    if (!(Math.abs(fit.n.value) <= STEEPEST))
      return refused(
        inputProblem(
          "points",
          rows.length,
          `would need n = ${fit.n.value.toPrecision(3)}: no ground answers so`,
          "Look at the units and the order of the points.",
        ),
      );
    return {
      n: shown(fit.n),
      plates: fit.plates.map((p) => ({ b_mm: p.b_m * 1000, points: p.points, k_pa: shown(p.k_pa) })),
      kc_n_per_m: fit.kc_n_per_m && shown(fit.kc_n_per_m),
      kphi_pa: fit.kphi_pa && shown(fit.kphi_pa),
      residual_ln: fit.residual_ln,
      residual_share: fit.residual_share,
      words: fit.words,
    };
  },
);
