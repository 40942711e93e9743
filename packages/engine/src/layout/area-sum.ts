/**
 * Summed areas: prefix sums along both headings of the lattice, so that the sum over any rectangle of points costs
 * four reads. Counts stay exact; harm is summed in double precision.
 */
export class AreaSum {
  private readonly sums: Float64Array | Int32Array;
  private readonly width: number;

  constructor(nx: number, ny: number, value: (point: number) => number, whole: boolean) {
    this.width = nx + 1;
    this.sums = whole ? new Int32Array(this.width * (ny + 1)) : new Float64Array(this.width * (ny + 1));
    for (let j = 0; j < ny; j++) {
      let row = 0;
      for (let i = 0; i < nx; i++) {
        row += value(j * nx + i);
        this.sums[(j + 1) * this.width + i + 1] = this.sums[j * this.width + i + 1]! + row;
      }
    }
  }

  /** Sum over i0..i1, j0..j1, both inclusive; the caller keeps them on the lattice. */
  over(i0: number, j0: number, i1: number, j1: number): number {
    const low = j0 * this.width;
    const high = (j1 + 1) * this.width;
    const s = this.sums;
    return s[high + i1 + 1]! - s[low + i1 + 1]! - s[high + i0]! + s[low + i0]!;
  }
}
