import type { Counted, PlacedPiece } from "../kit/index.ts";
import type { LumberSize } from "./tables.ts";
import type { TakeOff, TimberLine } from "./types.ts";

/** Equal pieces: lengths alike to a hundredth of a millimetre are one line of the saw. */
const lengthKey = (mm: number): number => Math.round(mm * 100) / 100;

interface MutableLine {
  readonly size: string;
  readonly length_mm: number;
  readonly uses: Map<string, number>;
}

/** Adds up pieces and counted things over many parts; what is taken twice is counted twice. */
export class Tally {
  readonly #timber = new Map<string, MutableLine>();
  readonly #counted = new Map<string, Counted>();

  /** Adds `times` copies of one part. Mesh is counted, not sawn, so only lumber makes timber lines. */
  add(pieces: readonly PlacedPiece[], counted: readonly Counted[], times = 1): void {
    for (const p of pieces) if (p.size !== null) this.#addPiece(p.size, p.length_mm, p.role, times);
    for (const c of counted) {
      const before = this.#counted.get(c.item)?.count ?? 0;
      this.#counted.set(c.item, { ...c, count: before + c.count * times });
    }
  }

  #addPiece(size: string, length_mm: number, use: string, times: number): void {
    const length = lengthKey(length_mm);
    const key = `${size} ${length}`;
    const line = this.#timber.get(key) ?? { size, length_mm: length, uses: new Map<string, number>() };
    line.uses.set(use, (line.uses.get(use) ?? 0) + times);
    this.#timber.set(key, line);
  }

  /** Lines in the order of the size table, longest first; counted things by item. */
  takeOff(sizes: readonly LumberSize[]): TakeOff {
    const rank = (id: string): number => sizes.findIndex((s) => s.id === id);
    const timber = [...this.#timber.values()]
      .map(timberLine)
      .sort((a, b) => rank(a.size) - rank(b.size) || b.length_mm - a.length_mm);
    const counted = [...this.#counted.values()].sort((a, b) => (a.item < b.item ? -1 : 1));
    return { timber, counted };
  }
}

const timberLine = (line: MutableLine): TimberLine => {
  const uses = [...line.uses]
    .map(([use, count]) => ({ use, count }))
    .sort((a, b) => (a.use < b.use ? -1 : 1));
  return {
    size: line.size,
    length_mm: line.length_mm,
    count: uses.reduce((sum, u) => sum + u.count, 0),
    uses,
  };
};
