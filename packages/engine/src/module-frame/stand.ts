import { findContact, isRight, keyOf, type Contact, type NodeLoad } from "../grillage/index.ts";
import {
  effectsOf,
  influenceOf,
  type EffectKind,
  type Effects,
  type FrameModel,
  type Influence,
} from "./influence.ts";
import type { AcrossPlace, FrameCase, LoadFactors, Placement } from "./recipe.ts";
import { alongStringers, sharesOf } from "./spread.ts";

/** One load that stands on the part. */
export interface StandingLoad {
  readonly x_m: number;
  readonly weight_n: number;
  readonly kind: string;
}

/** Effects of own weight and loads together, for the bearings that then touch. */
export interface Standing {
  readonly contact: Contact;
  /** True when some bearing has lost its part. */
  readonly lifted: boolean;
  readonly read: (kind: EffectKind, index: number) => number;
}

/** Places a case on the part: its first load `front_m` from the start, the others behind it or ahead of it. */
export const standAt = (
  { loads }: FrameCase,
  front_m: number,
  way: 1 | -1,
  length_m: number,
): StandingLoad[] =>
  loads
    .map((l) => ({ x_m: front_m + way * l.at_m, weight_n: l.weight_n, kind: l.kind }))
    .filter((l) => l.x_m >= -1e-9 && l.x_m <= length_m + 1e-9);

/** Station before a place, and how far the place lies towards the next, by share. */
function stationBefore(stations: readonly number[], x: number): readonly [number, number] {
  let low = 0;
  let high = stations.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (stations[middle]! <= x) low = middle;
    else high = middle - 1;
  }
  const [a, b] = [stations[low]!, stations[low + 1]!];
  return [low, Math.min(1, Math.max(0, (x - a) / (b - a)))];
}

/** A unit load of one kind, at its place across, over every station: the sum of what its nodes feel. */
type Surface = readonly Effects[];

function surfaceOf(model: FrameModel, unit: (node: number) => Effects, place: AcrossPlace): Surface {
  return model.mesh.stations_m.map((_, station) => {
    const out = new Float64Array(model.layout.size);
    for (const [node, share] of sharesOf(model.spread, station, place)) {
      const column = unit(node);
      for (let i = 0; i < out.length; i++) out[i]! += share * column[i]!;
    }
    return out;
  });
}

/** Own weight, settlement and standing loads as columns with weights: any effect is their weighted sum. */
interface Sum {
  readonly columns: readonly Effects[];
  readonly weights: readonly number[];
}

function sumAt({ columns, weights }: Sum, index: number): number {
  let sum = 0;
  for (let i = 0; i < columns.length; i++) sum += weights[i]! * columns[i]![index]!;
  return sum;
}

/** Stands trains on one part at one placement across. */
export interface Runner {
  readonly model: FrameModel;
  readonly placement: Placement;
  /** Null when no set of bearings holds the loads: the part tips. */
  readonly stand: (loads: readonly StandingLoad[], area_n_m?: readonly number[]) => Standing | null;
}

/** Times a set of bearings is met before its influence is worked out for good. */
const OFTEN = 12;

/** A set of bearings with its influence and the surfaces made from it. */
interface Known {
  readonly influence: Influence;
  readonly surfaces: Map<string, Surface>;
  readonly areas: Map<readonly number[], Effects>;
}

/** Even loads along the stringers: the sum of what every node of a stringer feels. */
function areaEffects(
  { mesh, layout }: FrameModel,
  unit: (node: number) => Effects,
  n_m: readonly number[],
): Effects {
  const out = new Float64Array(layout.size);
  for (const { node, down } of alongStringers(mesh, n_m)) {
    const column = unit(node);
    for (let i = 0; i < out.length; i++) out[i]! += down * column[i]!;
  }
  return out;
}

/**
 * Loads at one placement across. The sets of bearings that touch often keep their influence; a load is first tried
 * on those, and only where none of them is right are its bearings searched for.
 */
export function runner(model: FrameModel, placement: Placement, factors: LoadFactors): Runner {
  const { mesh, layout } = model;
  const { bearings } = mesh.grillage;
  const placeOf = new Map(placement.places.map((p) => [p.kind, p] as const));
  const own = model.own.map((l) => ({ ...l, down: l.down * factors.own }));
  const known: Known[] = [];
  const met = new Map<string, number>();
  const keep = (contact: Contact): void => {
    const influence = influenceOf(model, contact);
    if (influence) known.push({ influence, surfaces: new Map(), areas: new Map() });
  };
  keep(model.factors.all);

  const sumOf = (
    { influence, surfaces, areas }: Known,
    loads: readonly StandingLoad[],
    area?: readonly number[],
  ): Sum => {
    const columns: Effects[] = [influence.own, influence.settled];
    const weights: number[] = [factors.own, 1];
    if (area) {
      let all = areas.get(area);
      if (!all) areas.set(area, (all = areaEffects(model, influence.unit, area)));
      columns.push(all);
      weights.push(factors.live);
    }
    for (const { x_m, weight_n, kind } of loads) {
      let over = surfaces.get(kind);
      if (!over) surfaces.set(kind, (over = surfaceOf(model, influence.unit, placeOf.get(kind)!)));
      const [s, t] = stationBefore(mesh.stations_m, x_m);
      columns.push(over[s]!, over[s + 1]!);
      weights.push(factors.live * weight_n * (1 - t), factors.live * weight_n * t);
    }
    return { columns, weights };
  };

  const byKnown = (loads: readonly StandingLoad[], area?: readonly number[]): Standing | null => {
    for (const one of known) {
      const sum = sumOf(one, loads, area);
      const { contact } = one.influence;
      const isFine = isRight(
        contact,
        (b) => sumAt(sum, layout.push + b),
        (b) => bearings[b]!.settled_m - sumAt(sum, layout.over + b),
      );
      if (isFine)
        return { contact, lifted: contact.includes(false), read: (kind, i) => sumAt(sum, layout[kind] + i) };
    }
    return null;
  };

  const bySearch = (loads: readonly StandingLoad[], area: readonly number[] = []): Standing | null => {
    const spread = alongStringers(mesh, area).map((l) => ({ ...l, down: l.down * factors.live }));
    const onNodes = [...own, ...spread, ...nodeLoads(model, placeOf, factors.live, loads)];
    const contact = findContact(model.factors, onNodes, known[0]?.influence.contact);
    if (!contact) return null;
    const key = keyOf(contact);
    const times = (met.get(key) ?? 0) + 1;
    met.set(key, times);
    if (times === OFTEN) keep(contact);
    const effects = effectsOf(model.factors.exact(contact), model, onNodes, true);
    return { contact, lifted: contact.includes(false), read: (kind, i) => effects[layout[kind] + i]! };
  };
  return { model, placement, stand: (loads, area) => byKnown(loads, area) ?? bySearch(loads, area) };
}

/** Standing loads on the nodes that carry them. */
function nodeLoads(
  model: FrameModel,
  placeOf: ReadonlyMap<string, AcrossPlace>,
  factor: number,
  loads: readonly StandingLoad[],
): NodeLoad[] {
  return loads.flatMap(({ x_m, weight_n, kind }) => {
    const [s, t] = stationBefore(model.mesh.stations_m, x_m);
    const place = placeOf.get(kind)!;
    return (
      [
        [s, 1 - t],
        [s + 1, t],
      ] as const
    ).flatMap(([station, share]) =>
      share === 0
        ? []
        : sharesOf(model.spread, station, place).map(([node, part]) => ({
            node,
            down: factor * weight_n * share * part,
          })),
    );
  });
}
