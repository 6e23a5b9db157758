/** Rows of a small dense matrix. The as-built problems have at most five unknowns, so nothing here is blocked or packed. */
export type Matrix = readonly (readonly number[])[];

/** One entry, or a thrown RangeError when the matrix is smaller than the caller believes. */
export function entry(matrix: Matrix, row: number, column: number): number {
  const value = matrix[row]?.[column];
  if (value === undefined) throw new RangeError(`entry (${row}, ${column}) expected, the matrix is smaller`);
  return value;
}

export function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

export function times(matrix: Matrix, vector: readonly number[]): number[] {
  return matrix.map((row) => dot(row, vector));
}

/** Jᵀ W J for rows J and one weight a row: the normal matrix of a least-squares problem, or the Gram matrix for weights 1. */
export function weightedGram(rows: Matrix, weights: readonly number[], size: number): number[][] {
  const gram = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  rows.forEach((row, k) => {
    for (let i = 0; i < size; i++) {
      const target = gram[i] as number[];
      const scaled = (weights[k] as number) * (row[i] as number);
      for (let j = 0; j < size; j++) target[j] = (target[j] as number) + scaled * (row[j] as number);
    }
  });
  return gram;
}

/** Lower Cholesky factor of a symmetric matrix, or null when it is not positive definite to working precision. */
export function cholesky(matrix: Matrix): number[][] | null {
  const size = matrix.length;
  const lower = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  for (let i = 0; i < size; i++) {
    const row = lower[i] as number[];
    for (let j = 0; j <= i; j++) {
      let sum = entry(matrix, i, j);
      for (let k = 0; k < j; k++) sum -= (row[k] as number) * entry(lower, j, k);
      if (i === j) {
        if (!(sum > 0)) return null;
        row[i] = Math.sqrt(sum);
      } else row[j] = sum / entry(lower, j, j);
    }
  }
  return lower;
}

/** Solution of (lower · lowerᵀ) x = right. */
export function solveCholesky(lower: Matrix, right: readonly number[]): number[] {
  const size = lower.length;
  const x = [...right];
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) x[i] = (x[i] as number) - entry(lower, i, k) * (x[k] as number);
    x[i] = (x[i] as number) / entry(lower, i, i);
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) x[i] = (x[i] as number) - entry(lower, k, i) * (x[k] as number);
    x[i] = (x[i] as number) / entry(lower, i, i);
  }
  return x;
}

/** Inverse of a symmetric positive definite matrix, or null when it is not positive definite. */
export function inverse(matrix: Matrix): number[][] | null {
  const lower = cholesky(matrix);
  if (lower === null) return null;
  return matrix.map((_, i) =>
    solveCholesky(
      lower,
      matrix.map((_, j) => (i === j ? 1 : 0)),
    ),
  );
}

/** An eigenvalue and its unit eigenvector. */
interface EigenPair {
  readonly value: number;
  readonly vector: readonly number[];
}

/**
 * Eigenvalues (rising) and eigenvectors of a symmetric matrix, by Jacobi's cyclic rotations.
 *
 * Rotations are used because they find a zero eigenvalue of a tiny matrix to working precision, which is
 * exactly what tells a missing reading from a merely weak one. Source: Golub and Van Loan, Matrix
 * Computations, "Jacobi methods" (from memory).
 */
export function symmetricEigen(matrix: Matrix): EigenPair[] {
  const size = matrix.length;
  const a = matrix.map((row) => [...row]);
  const v = matrix.map((_, i) => matrix.map((_, j) => (i === j ? 1 : 0)));
  const scale = Math.hypot(...a.flat());
  for (let sweep = 0; ; sweep++) {
    let offDiagonal = 0;
    for (let i = 0; i < size; i++)
      for (let j = 0; j < i; j++) offDiagonal = Math.max(offDiagonal, Math.abs(entry(a, i, j)));
    if (offDiagonal <= 1e-15 * scale) break;
    // Quadratic convergence: five sweeps are usual at this size, so fifty mean that the input was not a finite symmetric matrix.
    if (sweep === 50) throw new RangeError("symmetricEigen expected a finite symmetric matrix");
    for (let p = 0; p < size; p++) for (let q = p + 1; q < size; q++) rotate(a, v, p, q);
  }
  return a
    .map((row, k) => ({ value: row[k] as number, vector: v.map((line) => line[k] as number) }))
    .sort((left, right) => left.value - right.value);
}

function rotate(a: number[][], v: number[][], p: number, q: number): void {
  const apq = entry(a, p, q);
  if (apq === 0) return;
  const tau = (entry(a, q, q) - entry(a, p, p)) / (2 * apq);
  const t = (tau >= 0 ? 1 : -1) / (Math.abs(tau) + Math.hypot(1, tau));
  const c = 1 / Math.hypot(1, t);
  const s = t * c;
  const turnColumns = (m: number[][]): void => {
    for (const row of m) {
      const [mp, mq] = [row[p] as number, row[q] as number];
      row[p] = c * mp - s * mq;
      row[q] = s * mp + c * mq;
    }
  };
  turnColumns(a);
  const [rowP, rowQ] = [a[p] as number[], a[q] as number[]];
  for (let k = 0; k < a.length; k++) {
    const [mp, mq] = [rowP[k] as number, rowQ[k] as number];
    rowP[k] = c * mp - s * mq;
    rowQ[k] = s * mp + c * mq;
  }
  // The rotation is chosen to make these zero; what rounding leaves of them would never vanish.
  rowP[q] = 0;
  rowQ[p] = 0;
  turnColumns(v);
}
