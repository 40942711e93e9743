import { DomainError } from "../units/index.ts";

/** A square matrix, row by row. */
export interface Square {
  readonly size: number;
  readonly values: Float64Array;
}

/** Makes a matrix from a function of row and column. */
export function square(size: number, entry: (row: number, column: number) => number): Square {
  const values = new Float64Array(size * size);
  for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) values[i * size + j] = entry(i, j);
  return { size, values };
}

/**
 * Lower triangle L of a symmetric matrix, with L L' equal to it. Only the lower triangle is read.
 *
 * `slack` is what a pivot may fall short of zero by rounding, as a share of the largest diagonal entry: such a pivot
 * counts as zero and its column as empty, so that two rows that say the same do no harm. Throws `DomainError` on a
 * matrix that is not positive.
 */
export function cholesky(matrix: Square, slack = 0): Square {
  const { size: n, values: a } = matrix;
  const l = new Float64Array(n * n);
  let largest = 0;
  for (let i = 0; i < n; i++) largest = Math.max(largest, Math.abs(a[i * n + i]!));
  const least = slack * largest;
  for (let j = 0; j < n; j++) {
    let pivot = a[j * n + j]!;
    for (let k = 0; k < j; k++) pivot -= l[j * n + k]! ** 2;
    const isEmpty = slack > 0 && Math.abs(pivot) <= least;
    if (!isEmpty && !(pivot > 0)) throw new DomainError("not-positive-definite", { row: j, pivot });
    if (isEmpty) continue;
    const root = Math.sqrt(pivot);
    l[j * n + j] = root;
    for (let i = j + 1; i < n; i++) {
      let sum = a[i * n + j]!;
      for (let k = 0; k < j; k++) sum -= l[i * n + k]! * l[j * n + k]!;
      l[i * n + j] = sum / root;
    }
  }
  return { size: n, values: l };
}

/** Solves L y = v for the lower triangle L. Throws `DomainError` where L has an empty column. */
export function forward({ size: n, values: l }: Square, v: ArrayLike<number>): Float64Array {
  const y = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let sum = v[i]!;
    for (let k = 0; k < i; k++) sum -= l[i * n + k]! * y[k]!;
    const pivot = l[i * n + i]!;
    if (pivot === 0) throw new DomainError("singular", { row: i });
    y[i] = sum / pivot;
  }
  return y;
}

/** Solves L L' x = v. */
export function solve(lower: Square, v: ArrayLike<number>): Float64Array {
  const { size: n, values: l } = lower;
  const x = forward(lower, v);
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i]!;
    for (let k = i + 1; k < n; k++) sum -= l[k * n + i]! * x[k]!;
    x[i] = sum / l[i * n + i]!;
  }
  return x;
}

/** Product L z of a lower triangle and a vector. */
export function lowerTimes({ size: n, values: l }: Square, z: ArrayLike<number>): Float64Array {
  const y = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let sum = 0;
    for (let k = 0; k <= i; k++) sum += l[i * n + k]! * z[k]!;
    y[i] = sum;
  }
  return y;
}

/** Sum of products of two vectors of one length. */
export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
