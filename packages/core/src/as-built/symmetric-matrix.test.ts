import fc from "fast-check";
import { EigenvalueDecomposition, Matrix, inverse as oracleInverse } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { cholesky, inverse, symmetricEigen, weightedGram } from "./symmetric-matrix.ts";

/** Gram matrices of 8 random gradient rows, of any size that the as-built problem has. */
const anyGram = fc.integer({ min: 1, max: 5 }).chain((size) =>
  fc
    .array(fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: size, maxLength: size }), {
      minLength: 8,
      maxLength: 8,
    })
    .map((rows) =>
      weightedGram(
        rows,
        rows.map((_, i) => 1 + i),
        size,
      ),
    ),
);

const farthest = (a: readonly (readonly number[])[], b: readonly (readonly number[])[]): number =>
  Math.max(...a.flatMap((row, i) => row.map((value, j) => Math.abs(value - b[i]![j]!))));

describe("small symmetric matrices, against ml-matrix", () => {
  test("[G18] eigenvalues and eigenvectors", () => {
    fc.assert(
      fc.property(anyGram, (gram) => {
        const oracle = new EigenvalueDecomposition(new Matrix(gram), { assumeSymmetric: true });
        const expected = [...oracle.realEigenvalues].sort((a, b) => a - b);
        const pairs = symmetricEigen(gram);
        expect(farthest([pairs.map(({ value }) => value)], [expected])).toBeLessThan(1e-11);
        for (const { value, vector } of pairs) {
          const image = new Matrix(gram).mmul(Matrix.columnVector([...vector])).to1DArray();
          expect(farthest([image], [vector.map((component) => component * value)])).toBeLessThan(1e-11);
        }
      }),
      { seed: 18_002, numRuns: 300 },
    );
  });

  test("[G18] inverse", () => {
    fc.assert(
      fc.property(anyGram, (gram) => {
        fc.pre(symmetricEigen(gram)[0]!.value > 1e-3);
        // Entries reach 1/0.001, and the condition number 1e5: seven digits are left of sixteen, with room.
        expect(farthest(inverse(gram)!, oracleInverse(new Matrix(gram)).to2DArray())).toBeLessThan(1e-7);
      }),
      { seed: 18_003, numRuns: 300 },
    );
  });

  test("[G18] a matrix that is not positive definite has no factor and no inverse", () => {
    expect(
      cholesky([
        [1, 2],
        [2, 1],
      ]),
    ).toBeNull();
    expect(
      inverse([
        [0, 0],
        [0, 1],
      ]),
    ).toBeNull();
  });

  test("a matrix that is not finite is refused", () => {
    expect(() =>
      symmetricEigen([
        [Number.NaN, 1],
        [1, 0],
      ]),
    ).toThrow(/finite symmetric matrix/);
  });
});
