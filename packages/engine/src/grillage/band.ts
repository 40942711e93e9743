/** A symmetric matrix kept as its lower band: row i holds columns i - width to i. */
export interface Band {
  readonly size: number;
  readonly width: number;
  readonly values: Float64Array;
}

export const emptyBand = (size: number, width: number): Band => ({
  size,
  width,
  values: new Float64Array(size * (width + 1)),
});

export const copyBand = (band: Band): Band => ({ ...band, values: band.values.slice() });

/** Place of element (i, j), j <= i, in the band. */
export const placeIn = (band: Band, i: number, j: number): number =>
  i * (band.width + 1) + (j - i + band.width);

export function addTo(band: Band, i: number, j: number, value: number): void {
  const [row, column] = i >= j ? [i, j] : [j, i];
  band.values[placeIn(band, row, column)]! += value;
}

/**
 * Cholesky-like factors L D L' in place, without pivoting: right for a positive definite matrix.
 *
 * Returns the smallest pivot over the diagonal that stood there: near zero, the matrix is singular.
 */
export function factorBand(band: Band): number {
  const { size, width, values } = band;
  const step = width + 1;
  let least = Infinity;
  for (let j = 0; j < size; j++) {
    const row = j * step + width;
    const before = values[row]!;
    const first = Math.max(0, j - width);
    for (let i = first; i < j; i++) {
      let sum = values[row - j + i]!;
      const other = i * step + width;
      for (let m = Math.max(first, i - width); m < i; m++)
        sum -= values[row - j + m]! * values[other - i + m]!;
      values[row - j + i] = sum;
    }
    let pivot = before;
    for (let m = first; m < j; m++) {
      const scaled = values[row - j + m]! / values[m * step + width]!;
      pivot -= scaled * values[row - j + m]!;
      values[row - j + m] = scaled;
    }
    values[row] = pivot;
    least = Math.min(least, before > 0 ? pivot / before : 0);
  }
  return least;
}

/** Solves in place with factors from `factorBand`. */
export function solveBand(band: Band, rhs: Float64Array): void {
  const { size, width, values } = band;
  const step = width + 1;
  for (let i = 0; i < size; i++) {
    const row = i * step + width - i;
    let sum = rhs[i]!;
    for (let m = Math.max(0, i - width); m < i; m++) sum -= values[row + m]! * rhs[m]!;
    rhs[i] = sum;
  }
  for (let i = 0; i < size; i++) rhs[i]! /= values[i * step + width]!;
  for (let i = size - 1; i >= 0; i--) {
    const row = i * step + width - i;
    const value = rhs[i]!;
    for (let m = Math.max(0, i - width); m < i; m++) rhs[m]! -= values[row + m]! * value;
  }
}
