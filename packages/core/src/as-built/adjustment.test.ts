import fc from "fast-check";
import { inverse, Matrix, solve } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { estimateAsBuilt } from "./estimate.ts";
import { everyMeasure, madeUpGate, madeUpPlan, readingsOf, seededNormal } from "./made-up-gate.ts";
import { type Measure, predictReading } from "./reading.ts";

const gate = madeUpGate("away");

/** Rows of weighted gradients by central differences, and weighted residuals: what a surveyor would hand to a matrix program. */
function linearised(
  at: number[],
  readings: readonly (Measure & { value: number })[],
  standardErrors: number[],
) {
  const read = (measure: Measure, [along, out, leafAlong, off]: number[]) =>
    predictReading(
      measure,
      {
        postPin: { along: along!, out: out! },
        leafPin: { along: leafAlong!, off: off! },
        rise: madeUpPlan.rise,
      },
      Math.PI / 2,
      gate,
    ).value;
  const rows = readings.map((reading, k) =>
    at.map((_, i) => {
      const moved = (by: number) => at.map((value, j) => (i === j ? value + by : value));
      return (read(reading, moved(1e-5)) - read(reading, moved(-1e-5))) / 2e-5 / standardErrors[k]!;
    }),
  );
  const right = readings.map((reading, k) => (reading.value - read(reading, at)) / standardErrors[k]!);
  return { rows: new Matrix(rows), right: Matrix.columnVector(right) };
}

// Whole estimates, and seconds on a busy machine.
describe("the adjustment against ml-matrix", { timeout: 60_000 }, () => {
  test("[G18] the linearised system at the answer asks for no further step, and has the same covariance and residual spread", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const normal = seededNormal(seed);
        const standardErrors = everyMeasure.map((_, i) => 0.001 + 0.001 * (i % 3));
        const readings = readingsOf(
          everyMeasure,
          madeUpPlan,
          gate,
          standardErrors.map((standardError) => standardError * normal()),
        ).map((reading, i) => ({ ...reading, standardError: standardErrors[i]! }));
        const outcome = estimateAsBuilt({ ...gate, plan: madeUpPlan, readings, estimateOpenAngle: false });
        if (!outcome.ok) throw new Error(`an estimate expected, ${outcome.reason} found`);
        const { placement, postPinSpread, leafPinSpread, residuals, chiSquared } = outcome.value;
        const { postPin, leafPin } = placement;
        const { rows, right } = linearised(
          [postPin.along, postPin.out, leafPin.along, leafPin.off],
          readings,
          standardErrors,
        );

        // Differenced gradients are good to 1e-9, so the step they ask for is that share of the 2 mm residuals.
        const step = solve(rows, right, true).to1DArray();
        expect(Math.max(...step.map(Math.abs))).toBeLessThan(1e-10);

        const covariance = inverse(rows.transpose().mmul(rows));
        const ours = [postPinSpread.covariance, leafPinSpread.covariance].flatMap(Object.values);
        const theirs = [0, 2].flatMap((i) => [
          covariance.get(i, i),
          covariance.get(i, i + 1),
          covariance.get(i + 1, i + 1),
        ]);
        ours.forEach((value, i) => {
          expect(Math.abs(value - theirs[i]!)).toBeLessThan(1e-6 * covariance.get(3, 3));
        });

        expect(Math.abs(chiSquared - right.norm("frobenius") ** 2)).toBeLessThan(1e-9);
        const spread = Matrix.eye(10).sub(rows.mmul(covariance).mmul(rows.transpose()));
        residuals.forEach(({ redundancy, normalised }, i) => {
          expect(Math.abs(redundancy - spread.get(i, i))).toBeLessThan(1e-7);
          if (normalised !== null)
            expect(Math.abs(normalised - right.get(i, 0) / Math.sqrt(spread.get(i, i)))).toBeLessThan(1e-4);
        });
      }),
      { seed: 18_030, numRuns: 40 },
    );
  });
});
