import fc from "fast-check";
import { Matrix, solve } from "ml-matrix";
import { expect, test } from "vitest";
import { between } from "../../independent/arbitrary-gate.ts";
import { greatestSlack, newRows } from "./linear-program.ts";

// Against every corner of the feasible set in turn: five of all constraints made equalities and solved with
// ml-matrix 6.15.1. Slow, and without any idea of pivoting.

interface Row {
  readonly a: readonly number[];
  readonly b: number;
  readonly w: number;
}

function choose(from: number, count: number): number[][] {
  if (count === 0) return [[]];
  return Array.from({ length: from }, (_, i) => i).flatMap((last) =>
    choose(last, count - 1).map((rest) => [...rest, last]),
  );
}

/** Largest s with a·x + b ≥ w·s and |x_j| ≤ half_j. */
function byCorners(rows: readonly Row[], half: readonly number[]): number {
  // Each constraint as c·(x, s) ≤ d.
  const constraints = [
    ...rows.map(({ a, b, w }) => ({ c: [...a.map((v) => -v), w], d: b })),
    ...half.flatMap((h, j) =>
      [1, -1].map((sign) => ({ c: [0, 1, 2, 3, 4].map((k) => (k === j ? sign : 0)), d: h })),
    ),
  ];
  let best = Number.NEGATIVE_INFINITY;
  for (const active of choose(constraints.length, 5)) {
    const chosen = active.map((i) => constraints[i] as { c: number[]; d: number });
    const c = new Matrix(chosen.map((row) => row.c));
    let corner: number[];
    try {
      corner = solve(c, Matrix.columnVector(chosen.map((row) => row.d))).to1DArray();
    } catch {
      continue;
    }
    const holds = constraints.every(
      (row) => row.c.reduce((sum, v, k) => sum + v * (corner[k] ?? 0), 0) <= row.d + 1e-9,
    );
    if (holds) best = Math.max(best, corner[4] ?? Number.NEGATIVE_INFINITY);
  }
  return best;
}

const arbitraryRow: fc.Arbitrary<Row> = fc.record({
  a: fc.tuple(between(-1, 1), between(-1, 1), between(-1, 1), between(-1, 1)),
  b: between(-0.1, 0.2),
  w: between(0.1, 4),
});

test("[G12] the linear program against every corner of its feasible set", () => {
  fc.assert(
    fc.property(
      fc.array(arbitraryRow, { minLength: 1, maxLength: 4 }),
      fc.array(fc.oneof(between(0, 0.2), fc.constant(0)), { minLength: 4, maxLength: 4 }),
      (program, half) => {
        const rows = newRows();
        program.forEach(({ a, b, w }, i) => {
          rows.a.set(a, 4 * i);
          rows.b[i] = b;
          rows.w[i] = w;
        });
        rows.count = program.length;
        const x = new Float64Array(4);
        const s = greatestSlack(rows, Float64Array.from(half), x);
        expect(Math.abs(s - byCorners(program, half))).toBeLessThan(1e-9);
        x.forEach((value, j) => {
          expect(Math.abs(value)).toBeLessThanOrEqual((half[j] ?? 0) + 1e-12);
        });
        for (const { a, b, w } of program) {
          const left = a.reduce((sum, v, j) => sum + v * (x[j] ?? Number.NaN), b);
          expect(left).toBeGreaterThanOrEqual(w * s - 1e-9);
        }
      },
    ),
    { numRuns: 60, seed: 71, endOnFailure: true },
  );
});

test("[G12] many rows at once: what is found holds, and no drawn point does better", () => {
  fc.assert(
    fc.property(
      fc.array(arbitraryRow, { minLength: 20, maxLength: 60 }),
      fc.array(fc.tuple(between(-0.2, 0.2), between(-0.2, 0.2), between(-0.2, 0.2), between(-0.2, 0.2)), {
        minLength: 50,
        maxLength: 50,
      }),
      (program, points) => {
        const rows = newRows();
        program.forEach(({ a, b, w }, i) => {
          rows.a.set(a, 4 * i);
          rows.b[i] = b;
          rows.w[i] = w;
        });
        rows.count = program.length;
        const x = new Float64Array(4);
        const s = greatestSlack(rows, new Float64Array(4).fill(0.2), x);
        const least = (point: ArrayLike<number>) =>
          Math.min(
            ...program.map(
              ({ a, b, w }) => a.reduce((sum, v, j) => sum + v * (point[j] ?? Number.NaN), b) / w,
            ),
          );
        expect(Math.abs(least(x) - s)).toBeLessThan(1e-9);
        for (const point of points) expect(least(point)).toBeLessThanOrEqual(s + 1e-9);
        // Nor a step from the answer in any direction of a cube.
        for (const [k, v] of [0, 1, 2, 3].flatMap(
          (j) =>
            [
              [j, 1e-3],
              [j, -1e-3],
            ] as const,
        )) {
          const near = Array.from(x, (value, j) => Math.min(0.2, Math.max(-0.2, value + (j === k ? v : 0))));
          expect(least(near)).toBeLessThanOrEqual(s + 1e-9);
        }
      },
    ),
    { numRuns: 200, seed: 72, endOnFailure: true },
  );
});
