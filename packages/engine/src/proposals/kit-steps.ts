import { deeperSizes, stouterSizes } from "../checks/index.ts";
import type { Kit, SupportKind } from "../kit/index.ts";
import type { LumberSize, Tables } from "../materials/index.ts";
import type { Family, Step } from "./types.ts";

/** Words and recipe of one change of the kit. */
const step = (words: string, kit: Kit, keepsLayout = true): Step => ({
  words,
  edit: { type: "set-kit", kit },
  keepsLayout,
});

/** Deeper stringers of the same thickness, in modules and platforms alike: their decks meet on one support. */
export const deeperStringers = (kit: Kit, sizes: readonly LumberSize[]): Family => ({
  id: "deeper-stringers",
  steps: deeperSizes(sizes, kit.stringers.size).map(({ id }) =>
    step(`${id} stringers`, {
      ...kit,
      stringers: { ...kit.stringers, size: id },
      platform: { ...kit.platform, stringers: { ...kit.platform.stringers, size: id } },
    }),
  ),
});

/** More stringers in each platform, evenly in both halves of one that is carried in two pieces. */
export const morePlatformStringers = (kit: Kit): Family => ({
  id: "more-platform-stringers",
  steps: [1, 2, 3].map((more) => {
    const count = kit.platform.stringers.count + more * kit.platform.pieces;
    return step(`${count} stringers in each platform`, {
      ...kit,
      platform: { ...kit.platform, stringers: { ...kit.platform.stringers, count } },
    });
  }),
});

/** One more stringer in each module. */
export const thirdStringer = (kit: Kit): Family => ({
  id: "third-stringer",
  steps:
    kit.stringers.count === 2
      ? [step("a third stringer", { ...kit, stringers: { ...kit.stringers, count: 3 } })]
      : [],
});

/** Better grades of the same wood that a yard may have: those with more bending strength, the weakest first. */
export function betterGrades(kit: Kit, tables: Tables): Family {
  const { species, grade } = kit.lumber;
  const rows = [
    ...tables.grades.map((g) => ({
      ...g,
      strength: Math.max(...Object.values(g.fb_psi).map((v) => v.value)),
    })),
    ...tables.strength_classes.map((c) => ({ ...c, strength: c.fm_k_mpa.value })),
  ].filter((row) => row.species === species);
  const own = rows.find((row) => row.grade === grade);
  if (!own) return { id: "better-grade", steps: [] };
  return {
    id: "better-grade",
    steps: rows
      .filter((row) => row.strength > own.strength)
      .sort((a, b) => a.strength - b.strength)
      .map((row) => step(`${row.name} timber`, { ...kit, lumber: { ...kit.lumber, grade: row.grade } })),
  };
}

/** Cross pieces set closer, by whole rows more in the longest module. */
export function closerCrossPieces(kit: Kit): Family {
  const { spacing_mm } = kit.cross_pieces;
  const longest = Math.max(...kit.lengths_mm);
  const bays = Math.ceil(longest / spacing_mm);
  return {
    id: "closer-cross-pieces",
    steps: [1, 2, 3, 4].map((more) => {
      const closer = Math.round((longest / (bays + more)) * 10) / 10;
      return step(`cross pieces ${Math.round(closer)} mm apart`, {
        ...kit,
        cross_pieces: { ...kit.cross_pieces, spacing_mm: closer },
      });
    }),
  };
}

export function stouterCrossPieces(
  kit: Kit,
  sizes: readonly LumberSize[],
  where: "module" | "platform",
): Family {
  const own = where === "module" ? kit.cross_pieces.size : kit.platform.cross_pieces.size;
  const withSize = (size: string): Kit =>
    where === "module"
      ? { ...kit, cross_pieces: { ...kit.cross_pieces, size } }
      : { ...kit, platform: { ...kit.platform, cross_pieces: { ...kit.platform.cross_pieces, size } } };
  const name = where === "module" ? "cross pieces" : "cross pieces in the platforms";
  return {
    id: "stouter-cross-pieces",
    steps: stouterSizes(sizes, own).map(({ id }) => step(`${id} ${name}`, withSize(id))),
  };
}

export const crossPiecesOnEdge = (kit: Kit): Family => ({
  id: "cross-pieces-on-edge",
  steps:
    kit.cross_pieces.lay === "flat"
      ? [step("cross pieces laid on edge", { ...kit, cross_pieces: { ...kit.cross_pieces, lay: "edge" } })]
      : [],
});

/** More screws at each end, and stouter or longer ones. */
export function crossPieceScrews(kit: Kit, tables: Tables, where: "module" | "platform"): Family[] {
  const now = where === "module" ? kit.cross_pieces : kit.platform;
  const withScrews = (screw: string, screws_per_end: number): Kit =>
    where === "module"
      ? { ...kit, cross_pieces: { ...kit.cross_pieces, screw, screws_per_end } }
      : { ...kit, platform: { ...kit.platform, screw, screws_per_end } };
  const own = tables.fasteners.find((f) => f.id === now.screw);
  const others = tables.fasteners
    .filter((f) => f.kind === "wood-screw" && f.id !== now.screw && f.coating === own?.coating)
    .filter((f) => !own || (f.diameter_mm >= own.diameter_mm && f.length_mm >= own.length_mm))
    .sort((a, b) => a.diameter_mm - b.diameter_mm || a.length_mm - b.length_mm);
  return [
    {
      id: "more-screws",
      steps: [1, 2, 3].map((more) =>
        step(
          `${now.screws_per_end + more} screws at each end`,
          withScrews(now.screw, now.screws_per_end + more),
        ),
      ),
    },
    {
      id: "stouter-screws",
      steps: others.map((f) => step(f.name, withScrews(f.id, now.screws_per_end))),
    },
  ];
}

/** Thicker deck boards. */
export function thickerBoards(kit: Kit, sizes: readonly LumberSize[]): Family {
  const { deck } = kit;
  const own = deck.kind === "boards" ? sizes.find((s) => s.id === deck.size) : undefined;
  if (deck.kind !== "boards" || !own) return { id: "thicker-boards", steps: [] };
  return {
    id: "thicker-boards",
    steps: stouterSizes(sizes, deck.size)
      .filter((s) => s.thickness_in > own.thickness_in)
      .map(({ id }) => step(`${id} deck boards`, { ...kit, deck: { ...deck, size: id } })),
  };
}

/** The kit without one length: shorter modules take its place, on a line that is sought anew. */
export const withoutLength = (kit: Kit, length_mm: number): Family => ({
  id: "shorter-modules",
  steps:
    kit.lengths_mm.length > 1
      ? [
          step(
            `no ${Math.round(length_mm)} mm modules: shorter ones take their place`,
            { ...kit, lengths_mm: kit.lengths_mm.filter((l) => Math.abs(l - length_mm) > 1) },
            false,
          ),
        ]
      : [],
});

const withSupports = (kit: Kit, change: (kind: SupportKind) => SupportKind): Kit => ({
  ...kit,
  supports: kit.supports.map(change),
});

const STAKE_STEP_MM = 150;

/** Longer stakes, all of the added length in the ground, and more of them. */
export function strongerStakes(kit: Kit): Family[] {
  if (kit.supports.every((s) => s.anchor === null)) return [];
  const longer = (by: number): Kit =>
    withSupports(kit, (s) =>
      s.anchor
        ? {
            ...s,
            anchor: {
              ...s.anchor,
              length_mm: s.anchor.length_mm + by,
              embedment_mm: s.anchor.embedment_mm + by,
            },
          }
        : s,
    );
  const more = (by: number): Kit =>
    withSupports(kit, (s) => (s.anchor ? { ...s, anchor: { ...s.anchor, count: s.anchor.count + by } } : s));
  return [
    {
      id: "longer-stakes",
      steps: [1, 2, 3, 4, 5, 6].map((n) =>
        step(`stakes ${n * STAKE_STEP_MM} mm longer and deeper in the ground`, longer(n * STAKE_STEP_MM)),
      ),
    },
    {
      id: "more-stakes",
      steps: [1, 2, 3, 4].map((n) =>
        step(`${n} more ${n === 1 ? "stake" : "stakes"} at each support`, more(n)),
      ),
    },
  ];
}

/** Wider sills: a longer seat for every module end, and a stouter beam. */
export function widerSills(kit: Kit, sizes: readonly LumberSize[]): Family {
  const [first] = kit.supports;
  if (!first) return { id: "wider-sills", steps: [] };
  return {
    id: "wider-sills",
    steps: stouterSizes(sizes, first.sill.size).map(({ id }) =>
      step(
        `${id} sills`,
        withSupports(kit, (s) => ({ ...s, sill: { ...s.sill, size: id } })),
      ),
    ),
  };
}

/** A catch board that projects further. */
export const longerCatchBoard = (kit: Kit): Family => ({
  id: "longer-catch-board",
  steps:
    kit.end.kind === "catch-board"
      ? [12.7, 25.4, 38.1].map((by) => {
          const { end } = kit;
          if (end.kind !== "catch-board") return step("", kit);
          const projection_mm = end.projection_mm + by;
          return step(`a catch board that projects ${Math.round(projection_mm)} mm`, {
            ...kit,
            end: { ...end, projection_mm },
          });
        })
      : [],
});
