import type { Fastener, LumberSize } from "../materials/tables.ts";
import { panelRun, sheetWidth, type MeshDeck } from "./deck.ts";
import { platformStringers } from "./frame.ts";
import { panelItem, panelSheet, sheetRun } from "./panels.ts";
import type { PlatformEdge } from "./platform-pieces.ts";
import { platformSheetPlan } from "./platform-sheets.ts";
import { rampScrews } from "./ramp-pieces.ts";
import { moduleScrews, platformScrews, type ScrewPoint } from "./screw-points.ts";
import type { Kit, SupportKind } from "./types.ts";

/** A thing that is counted, not sawn, as one part of the kit needs it. */
export interface Counted {
  readonly item: string;
  readonly name: string;
  readonly count: number;
}

/** Item id under which the price list sells a kit's mesh: length by sheared width in whole millimetres. */
export const meshPanelItem = (deck: MeshDeck): string =>
  `mesh ${Math.round(deck.panel_length_mm)}x${Math.round(sheetWidth(deck))}`;

/** Screws, clips, mesh sheets and panels of one module. Names come from the fastener table, else the item id stands. */
export function moduleCounts(
  kit: Kit,
  length_mm: number,
  sizes: readonly LumberSize[],
  fasteners: readonly Fastener[] = [],
): Counted[] {
  return total(listed(moduleScrews(kit, length_mm, sizes), sheets(kit, runCount(kit, length_mm))), fasteners);
}

/** Screws, clips, sheets and panels of one ramp. */
export function rampCounts(
  kit: Kit,
  length_mm: number,
  sizes: readonly LumberSize[],
  fasteners: readonly Fastener[] = [],
): Counted[] {
  return total(listed(rampScrews(kit, length_mm, sizes), sheets(kit, runCount(kit, length_mm))), fasteners);
}

/** Screws, clips, mesh sheets and panels of one platform; `closed` as in `platformPieces`. */
export function platformCounts(
  kit: Kit,
  sizes: readonly LumberSize[],
  closed: readonly PlatformEdge[] = [],
  fasteners: readonly Fastener[] = [],
): Counted[] {
  const { deck } = kit;
  const bought =
    deck.kind === "boards" ? 0 : platformSheetPlan(kit, deck, platformStringers(kit, sizes)).sheets;
  return total(listed(platformScrews(kit, sizes, closed), sheets(kit, bought)), fasteners);
}

/** Screws of one support, and its screw piles or floats. */
export const supportCounts = (kind: SupportKind, fasteners: readonly Fastener[] = []): Counted[] =>
  total(
    [
      ...kind.screws.map(({ screw, count }) => ({ item: screw, name: screw, count })),
      ...[kind.piles, kind.floats].flatMap((v) =>
        v ? [{ item: v.item, name: v.item, count: v.count }] : [],
      ),
    ],
    fasteners,
  );

function runCount({ deck }: Kit, length_mm: number): number {
  if (deck.kind === "boards") return 0;
  return deck.kind === "mesh" ? panelRun(deck, length_mm).count : sheetRun(panelSheet(deck), length_mm).count;
}

/** Sheets to buy as the price list names them. */
function sheets({ deck }: Kit, count: number): Counted[] {
  if (deck.kind === "boards") return [];
  const item = deck.kind === "mesh" ? meshPanelItem(deck) : panelItem(deck);
  return [{ item, name: deck.name, count }];
}

/** Screws of the frame, then the sheets, then what holds deck and curbs. */
const listed = (points: readonly ScrewPoint[], bought: readonly Counted[]): Counted[] => [
  ...counted(points.filter((p) => p.from === "side")),
  ...bought,
  ...counted(points.filter((p) => p.from === "above")),
];

const counted = (points: readonly ScrewPoint[]): Counted[] =>
  points.map(({ item }) => ({ item, name: item, count: 1 }));

/** Adds up equal items, drops what is not needed, and names them from the table. */
export function total(lines: readonly Counted[], fasteners: readonly Fastener[]): Counted[] {
  const sums = new Map<string, Counted>();
  for (const line of lines)
    sums.set(line.item, { ...line, count: line.count + (sums.get(line.item)?.count ?? 0) });
  return [...sums.values()]
    .filter((line) => line.count > 0)
    .map((line) => ({ ...line, name: fasteners.find((f) => f.id === line.item)?.name ?? line.name }));
}
