/** A symmetric positive definite matrix by its lower band: row i holds columns i − width … i. */
export interface Banded {
  readonly size: number;
  readonly width: number;
  /** Of (width + 1) · size. */
  readonly rows: Float64Array;
}

export function banded(size: number, width: number): Banded {
  return { size, width, rows: new Float64Array(size * (width + 1)) };
}

/**
 * Solves A x = b in place by Cholesky's method within the band: `A` becomes its factor, `b` the solution.
 *
 * @returns false if A is not positive definite; then both are of no use
 * Source: G. H. Golub, C. F. Van Loan, Matrix Computations, section 4.3 (from memory).
 */
export function solveBanded({ size, width, rows }: Banded, b: Float64Array): boolean {
  const stride = width + 1;
  for (let i = 0; i < size; i++) {
    const first = Math.max(0, i - width);
    const own = i * stride + width - i;
    let diagonal = rows[own + i]!;
    for (let j = first; j < i; j++) {
      const other = j * stride + width - j;
      let sum = rows[own + j]!;
      for (let k = Math.max(first, j - width); k < j; k++) sum -= rows[own + k]! * rows[other + k]!;
      const factor = sum / rows[other + j]!;
      rows[own + j] = factor;
      diagonal -= factor * factor;
    }
    if (!(diagonal > 0)) return false;
    rows[own + i] = Math.sqrt(diagonal);
  }
  for (let i = 0; i < size; i++) {
    const own = i * stride + width - i;
    let sum = b[i]!;
    for (let k = Math.max(0, i - width); k < i; k++) sum -= rows[own + k]! * b[k]!;
    b[i] = sum / rows[own + i]!;
  }
  for (let i = size - 1; i >= 0; i--) {
    const own = i * stride + width - i;
    b[i] = b[i]! / rows[own + i]!;
    for (let k = Math.max(0, i - width); k < i; k++) b[k] = b[k]! - rows[own + k]! * b[i]!;
  }
  return true;
}
