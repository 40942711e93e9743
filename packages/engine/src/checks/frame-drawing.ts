import type { Peak, Peaks } from "../module-frame/index.ts";
import {
  largestDeflection,
  largestMoment,
  largestReaction,
  trainMoment,
  type Extreme,
  type Train,
} from "../structure/index.ts";
import { areaDemand } from "./area-load.ts";
import { shareOn, type Frame } from "./frame.ts";
import type { ModuleGroup } from "./plan-frames.ts";
import type { Setting } from "./setting.ts";
import type { StringerModel } from "./stringer-model.ts";
import type { CaseLoad, LoadCase } from "./walk-demand.ts";

/** One load as it stands on the drawing: from the part's start and from its middle line [m], downward [N]. */
export interface DrawnLoad {
  readonly x_m: number;
  readonly y_m: number;
  readonly weight_n: number;
  /** A wheel of a cart, or feet. */
  readonly is_wheel: boolean;
}

/** The largest of one effect, with the loads in the place that makes it. */
export interface DrawnPeak {
  /** Own weight included, except in a sag [N*m, N or m]. */
  readonly value: number;
  readonly at_m: number;
  readonly stringer: number;
  readonly load: string;
  readonly ends: "hinged" | "stiff";
  readonly loads: readonly DrawnLoad[];
}

/** Largest and least value at each station, one list per stringer from right to left. */
export interface DrawnLines {
  readonly most: readonly (readonly number[])[];
  readonly least: readonly (readonly number[])[];
}

/** One length of module as a structure: envelopes along its stringers and what makes their peaks. */
export interface FrameDrawing {
  readonly id: string;
  readonly name: string;
  readonly length_m: number;
  readonly parts: readonly string[];
  readonly stringers_y_m: readonly number[];
  readonly clear_width_m: number;
  readonly rows_x_m: readonly number[];
  readonly stations_m: readonly number[];
  readonly moment: DrawnLines;
  readonly shear: DrawnLines;
  readonly sag: DrawnLines;
  readonly peaks: { readonly moment: DrawnPeak; readonly shear: DrawnPeak; readonly sag: DrawnPeak };
}

const KINDS = ["moment", "shear", "sag"] as const;
type Kind = (typeof KINDS)[number];

/** Loads of a case where they stand, a cart as its two wheels an axle; those off the part are left out. */
function drawnLoads(
  loads: readonly CaseLoad[],
  placeOf: (load: CaseLoad) => { readonly x_m: number; readonly y_m: number },
  length_m: number,
): DrawnLoad[] {
  return loads.flatMap((load): DrawnLoad[] => {
    const { x_m, y_m } = placeOf(load);
    if (x_m < -1e-9 || x_m > length_m + 1e-9) return [];
    if (!load.cart) return [{ x_m, y_m, weight_n: load.weight, is_wheel: false }];
    const half = load.cart.track_mm / 2000;
    return [y_m - half, y_m + half].map((y) => ({
      x_m,
      y_m: y,
      weight_n: load.weight / 2,
      is_wheel: true,
    }));
  });
}

/** Peak of a stringer by itself between hinged cross pieces. */
function alonePeak(kind: Kind, model: StringerModel, cases: readonly LoadCase[]): DrawnPeak {
  const { frame } = model;
  let best: { extreme: Extreme; load: LoadCase; stringer: number; value: number } | undefined;
  for (const load of cases)
    for (const stringer of frame.positions_m.keys()) {
      const extreme = aloneExtreme(kind, model, load, stringer);
      const value = kind === "sag" ? extreme.value / model.stiffness : extreme.value;
      if (!best || value > best.value) best = { extreme, load, stringer, value };
    }
  const { extreme, load, stringer, value } = best!;
  const dead = kind === "moment" ? model.dead.bending : kind === "shear" ? model.dead.shear : 0;
  const placeOf = (l: CaseLoad) => ({
    x_m: extreme.origin + l.at,
    y_m: shareOn(frame, stringer, l.cart).at,
  });
  return {
    value: value + dead,
    at_m: extreme.section,
    stringer,
    load: load.name,
    ends: "hinged",
    loads: drawnLoads(load.loads, placeOf, frame.span_m),
  };
}

const trainOf = ({ share }: StringerModel, stringer: number, { loads }: LoadCase): Train =>
  loads.map((l) => ({ at: l.at, weight: l.weight * share(stringer, l) }));

function aloneExtreme(kind: Kind, model: StringerModel, load: LoadCase, stringer: number): Extreme {
  const { span_m } = model.frame;
  if (load.area_pa !== undefined) {
    const check = ({ moment: "bending", shear: "shear", sag: "deflection" } as const)[kind];
    const value = areaDemand(check, model, stringer, load.area_pa);
    const section = kind === "shear" ? 0 : span_m / 2;
    return { value: kind === "sag" ? value * model.stiffness : value, section, origin: 0 };
  }
  const train = trainOf(model, stringer, load);
  if (kind === "moment") return largestMoment(train, span_m);
  return kind === "shear" ? largestReaction(train, span_m) : largestDeflection(train, span_m);
}

/** Peak of the frame with stiff cross pieces, as it is drawn. */
function stiffPeak(peak: Peak, cases: readonly LoadCase[], length_m: number): DrawnPeak {
  const load = cases.find((c) => c.name === peak.load.name)!;
  const offs = new Map(peak.placed.placement.places.map((p) => [p.kind, p.off_m]));
  const placeOf = (l: CaseLoad) => ({
    x_m: peak.front_m + peak.way * l.at,
    y_m: offs.get(l.cart ? `cart ${l.cart.name}` : "feet") ?? 0,
  });
  return {
    value: peak.value,
    at_m: peak.at_m,
    stringer: peak.member,
    load: load.name,
    ends: "stiff",
    loads: drawnLoads(load.loads, placeOf, length_m),
  };
}

const round = (v: number): number => Number(v.toPrecision(6));

/** Largest moment at a section of a stringer by itself: some load of the case stands there. */
function momentAt(model: StringerModel, cases: readonly LoadCase[], stringer: number, x: number): number {
  const { span_m } = model.frame;
  let most = 0;
  for (const load of cases) {
    if (load.area_pa !== undefined) {
      const middle = areaDemand("bending", model, stringer, load.area_pa);
      most = Math.max(most, (4 * middle * x * (span_m - x)) / span_m ** 2);
    }
    const forth = trainOf(model, stringer, load);
    const back = forth.map((l) => ({ ...l, at: -l.at }));
    for (const train of [forth, back])
      for (const { at } of train) most = Math.max(most, trainMoment(train, span_m, x - at, x));
  }
  const own = (4 * model.dead.bending * x * (span_m - x)) / span_m ** 2;
  return most + own;
}

function linesOf(
  kind: Kind,
  model: StringerModel,
  cases: readonly LoadCase[],
  stiff: Peaks,
  stations: readonly number[],
): DrawnLines {
  const S = stations.length;
  const list = (values: Float64Array, stringer: number): number[] =>
    Array.from(values.subarray(stringer * S, stringer * S + S), round);
  const most = model.frame.positions_m.map((_, i) => {
    const line = list(stiff.lines[kind].most, i);
    if (kind !== "moment") return line;
    return line.map((v, s) => round(Math.max(v, momentAt(model, cases, i, stations[s]!))));
  });
  return { most, least: model.frame.positions_m.map((_, i) => list(stiff.lines[kind].least, i)) };
}

/** Every length of module of the layout as a structure; none where its timber or build is not known. */
export function frameDrawings(setting: Setting, groups: readonly ModuleGroup[]): FrameDrawing[] {
  return groups.flatMap((group) => {
    const model = setting.modelOf(group.frame);
    if (!model.ok) return [];
    const stiff = model.value.stiff(setting.cases);
    if (!stiff?.largest.moment) return [];
    return [drawingOf(group, model.value, stiff, setting.cases)];
  });
}

function drawingOf(
  { frame, parts, length_mm }: ModuleGroup,
  model: StringerModel,
  stiff: Peaks,
  cases: readonly LoadCase[],
): FrameDrawing {
  const { stations_m } = stiff.largest.moment!.placed.model.mesh;
  const peakOf = (kind: Kind): DrawnPeak => {
    const alone = alonePeak(kind, model, cases);
    const found = stiff.largest[kind];
    return found && found.value > alone.value * (1 + 1e-9) ? stiffPeak(found, cases, frame.span_m) : alone;
  };
  const [moment, shear, sag] = KINDS.map((kind) => linesOf(kind, model, cases, stiff, stations_m));
  return {
    id: `module.${Math.round(length_mm)}mm`,
    name: frame.name,
    length_m: frame.span_m,
    parts: parts.map((p) => p.id),
    stringers_y_m: frame.positions_m,
    clear_width_m: frame.clear_width_m,
    rows_x_m: rowsOf(frame),
    stations_m: stations_m.map(round),
    moment: moment!,
    shear: shear!,
    sag: sag!,
    peaks: { moment: peakOf("moment"), shear: peakOf("shear"), sag: peakOf("sag") },
  };
}

const rowsOf = ({ build }: Frame): number[] => build?.rows.map((r) => round(r.x_m)) ?? [];
