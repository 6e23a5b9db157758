import { describe, expect, test } from "vitest";
import tape from "../../../../reference/as-built/tape-class-case-25.json" with { type: "json" };
import t1 from "../../../../reference/as-built/trilateration-t1.json" with { type: "json" };
import t2 from "../../../../reference/as-built/trilateration-t2.json" with { type: "json" };
import t3 from "../../../../reference/as-built/trilateration-t3.json" with { type: "json" };
import { locatePoint, type PointDistance } from "./locate-point.ts";
import { type TapeClass, tapeMaximumError, tapeStandardUncertainty } from "./tape-class.ts";

interface TapeLengths {
  readonly metresPerUnit: number;
  readonly standardError?: number;
  readonly distances: readonly { readonly x: number; readonly y: number; readonly distance: number }[];
}

/** The located point in the case's own unit. Standard errors are one unit when the case states none. */
function located({ metresPerUnit: m, standardError = 1, distances }: TapeLengths) {
  const tapes: PointDistance[] = distances.map(({ x, y, distance }) => ({
    from: { x: x * m, y: y * m },
    distance: distance * m,
    standardError: standardError * m,
  }));
  const outcome = locatePoint(tapes);
  if (!outcome.ok) throw new Error(`a point expected, ${outcome.reason} found`);
  const { point, residuals, spread, chiSquared } = outcome.value;
  return {
    x: point.x / m,
    y: point.y / m,
    residuals: residuals.map((residual) => residual / m),
    covariance: Object.values(spread.covariance).map((value) => value / m ** 2),
    chiSquared,
  };
}

const offBy = (found: readonly number[], expected: readonly number[]): number =>
  Math.max(...expected.map((value, i) => Math.abs(value - (found[i] ?? Number.NaN))));

describe("[G18] reference cases", () => {
  test(t1.id, () => {
    const { x, y, residuals } = located(t1.input);
    expect(offBy([x, y], [t1.expected.x, t1.expected.y])).toBeLessThan(t1.tolerance.point);
    expect(
      offBy(
        residuals,
        residuals.map(() => t1.expected.largestResidual),
      ),
    ).toBeLessThan(t1.tolerance.residual);
  });

  test(t2.id, () => {
    const { x, y, chiSquared } = located(t2.input);
    const sumAt = (px: number, py: number): number =>
      t2.input.distances.reduce(
        (sum, from) => sum + (from.distance - Math.hypot(px - from.x, py - from.y)) ** 2,
        0,
      );
    expect(chiSquared).toBeGreaterThan(t2.expected.leastSumOfSquares);
    expect(Math.abs(chiSquared - sumAt(x, y))).toBeLessThan(1e-9);
    // No better point anywhere on a blind grid, and the answer of the linear short cut is worse.
    for (let px = 0; px <= 50; px += 0.25) {
      for (let py = 10; py <= 60; py += 0.25)
        if (sumAt(px, py) < chiSquared - 1e-9) throw new Error(`better at (${px}, ${py})`);
    }
    const linear = t2.expected.linearDifferenceSolution;
    const [a, b, c] = t2.input.distances as [
      TapeLengths["distances"][number],
      TapeLengths["distances"][number],
      TapeLengths["distances"][number],
    ];
    for (const p of [b, c]) {
      const left = 2 * (p.x - a.x) * linear.x + 2 * (p.y - a.y) * linear.y;
      const right = a.distance ** 2 - p.distance ** 2 + p.x ** 2 - a.x ** 2 + p.y ** 2 - a.y ** 2;
      // The equations' coefficients are about 50, so that much of the printed rounding shows.
      expect(Math.abs(left - right)).toBeLessThan(100 * t2.tolerance.linear);
    }
    expect(sumAt(linear.x, linear.y)).toBeGreaterThan(chiSquared);
  });

  test(t3.id, () => {
    const { x, y, residuals, covariance } = located(t3.input);
    const { expected, tolerance } = t3;
    expect(offBy([x, y], [expected.x, expected.y])).toBeLessThanOrEqual(tolerance.point);
    // T3 prints magnitudes.
    expect(offBy(residuals.map(Math.abs), expected.residuals)).toBeLessThanOrEqual(tolerance.residual);
    expect(offBy(covariance, expected.covariance)).toBeLessThanOrEqual(tolerance.covariance);
    const errors = [Math.sqrt(covariance[0]!), Math.sqrt(covariance[2]!)];
    expect(offBy(errors, expected.standardErrors)).toBeLessThanOrEqual(tolerance.standardError);
  });

  test(tape.id, () => {
    const errors = tape.input.lengths.map(
      ({ tapeClass, length, fromHook }) =>
        tapeMaximumError(tapeClass as TapeClass, length, { fromHook }) * 1000,
    );
    expect(offBy(errors, tape.expected.maximumErrorsMm)).toBeLessThan(tape.tolerance.maximumErrorMm);
    const uncertainty = tapeStandardUncertainty("II", 1.803, { fromHook: true }) * 1000;
    expect(Math.abs(uncertainty - tape.expected.standardUncertaintyOfFirstMm)).toBeLessThan(
      tape.tolerance.standardUncertaintyMm,
    );
    expect(() => tapeMaximumError("II", 0, { fromHook: true })).toThrow(/finite and > 0/);
  });
});
