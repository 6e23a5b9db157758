import { Matrix, pseudoInverse, SVD } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { estimateAsBuilt } from "./estimate.ts";
import { everyMeasure, madeUpGate, madeUpPlan, readingsOf } from "./made-up-gate.ts";
import { whatWouldSettle } from "./missing-reading.ts";
import { type Measure, predictReading } from "./reading.ts";

const gate = madeUpGate("toward");
const { postPin, leafPin } = madeUpPlan;
const unknowns = [postPin.along, postPin.out, leafPin.along, leafPin.off];

function missingFrom(measures: readonly Measure[], postFaces = gate.postFaces) {
  const outcome = estimateAsBuilt({
    leaf: gate.leaf,
    postFaces,
    plan: madeUpPlan,
    readings: readingsOf(measures, madeUpPlan, gate),
    estimateOpenAngle: false,
  });
  if (outcome.ok || outcome.reason !== "notSettled") throw new Error("notSettled expected");
  return outcome.missing;
}

/** Gradient rows by central differences: independent of the closed forms that the code under test uses. */
function differences(measure: Measure): number[] {
  const valueAt = ([along, out, leafAlong, off]: number[]) =>
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
  return unknowns.map((_, i) => {
    const moved = (by: number) => valueAt(unknowns.map((value, j) => (i === j ? value + by : value)));
    return (moved(1e-5) - moved(-1e-5)) / 2e-5;
  });
}

describe("what is missing", () => {
  const lengthsOnly: Measure[] = [
    { kind: "hingeToPostPin" },
    { kind: "hingeToLeafPin" },
    { kind: "pinToPin", leafAt: "closed" },
    { kind: "pinToPin", leafAt: "open" },
  ];

  test("[G18] four lengths between hinge and pins leave both pins free to turn about the hinge together", () => {
    const missing = missingFrom(lengthsOnly);
    expect(missing.count).toBe(1);
    // By hand: turning both about the hinge by one small angle moves P by (−out, along) and G by (−off, along).
    const turning = [-postPin.out, postPin.along, -leafPin.off, leafPin.along];
    const size = Math.hypot(...turning);
    const along = missing.directions[0]!.reduce((sum, value, i) => sum + (value * turning[i]!) / size, 0);
    expect(Math.abs(along)).toBeCloseTo(1, 9);
    // The leaf pin is the farther from the hinge, so its offset from the leaf shows that turn best.
    expect(missing.best?.measures).toEqual([{ kind: "leafPinFromLeafFace" }]);
    expect(missing.free).toEqual(["postPin.along", "postPin.out", "leafPin.along", "leafPin.off"]);
  });

  test("[G18] the ranking of one more reading agrees with ml-matrix on differenced gradients", () => {
    const missing = missingFrom(lengthsOnly);
    const rows = lengthsOnly.map(differences);
    for (const { measures, largestStandardError } of missing.single) {
      const all = new Matrix([...rows, ...measures.map(differences)]).div(0.002);
      const singular = new SVD(all).diagonal;
      if (Math.min(...singular) < 1) {
        expect(largestStandardError).toBeNull();
        continue;
      }
      const inverted = pseudoInverse(all);
      const covariance = inverted.mmul(inverted.transpose());
      const largest = Math.sqrt(Math.max(...covariance.diagonal()));
      expect(largestStandardError).not.toBeNull();
      expect(Math.abs(largestStandardError! / largest - 1)).toBeLessThan(1e-6);
    }
    const ranks = missing.single.map(
      ({ largestStandardError }) => largestStandardError ?? Number.POSITIVE_INFINITY,
    );
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(ranks.filter(Number.isFinite).length).toBe(5);
  });

  test("[G18] taking the reading that was named settles the pins, with the error that was foretold", () => {
    const missing = missingFrom(lengthsOnly);
    const readings = readingsOf([...lengthsOnly, ...missing.best!.measures], madeUpPlan, gate);
    const outcome = estimateAsBuilt({ ...gate, plan: madeUpPlan, readings, estimateOpenAngle: false });
    expect(outcome.ok).toBe(true);
    if (!outcome.ok) return;
    const { postPin: post, leafPin: leaf } = outcome.value.standardErrors;
    expect(Math.max(post.along, post.out, leaf.along, leaf.off)).toBeCloseTo(
      missing.best!.largestStandardError!,
      9,
    );
  });

  test("[G18] one reading is not enough when three are missing: it says how many, and the best three", () => {
    const missing = missingFrom([{ kind: "hingeToPostPin" }]);
    expect(missing.count).toBe(3);
    expect(missing.single.every(({ largestStandardError }) => largestStandardError === null)).toBe(true);
    const readings = readingsOf([{ kind: "hingeToPostPin" }, ...missing.best!.measures], madeUpPlan, gate);
    expect(missing.best!.measures).toHaveLength(3);
    expect(estimateAsBuilt({ ...gate, plan: madeUpPlan, readings, estimateOpenAngle: false }).ok).toBe(true);
  });

  test("[G18] with no reading at all, one from each face settles everything with its own error", () => {
    const missing = missingFrom([]);
    expect(missing.count).toBe(4);
    expect(missing.best?.largestStandardError).toBeCloseTo(0.002, 12);
  });

  test("[G18] many readings of one pin say nothing about the other: the plan is not a reading", () => {
    const missing = missingFrom([
      { kind: "hingeToPostPin" },
      { kind: "postPinFromClosedLine" },
      { kind: "postPinFromRamFace" },
      { kind: "postPinFromGatewayFace" },
    ]);
    expect(missing.free).toEqual(["leafPin.along", "leafPin.off"]);
    expect(missing.count).toBe(2);
  });

  test("[G18] readings from post faces are not asked for when the faces are not known", () => {
    const missing = missingFrom([{ kind: "hingeToPostPin" }], null);
    const kinds = missing.single.flatMap(({ measures }) => measures.map(({ kind }) => kind));
    expect(kinds).not.toContain("postPinFromRamFace");
    expect(kinds).not.toContain("postPinFromGatewayFace");
  });

  test("[G18] pins in line with the hinge: the tape cannot feel the post pin move square to the line, and it says so", () => {
    // By hand: P (−0.2, 0), G (0.9, 0) measured from the hinge and from G with the leaf closed; both directions run along x.
    const plan = { postPin: { along: -0.2, out: 0 }, leafPin: { along: 0.9, off: 0 }, rise: 0 };
    const measures: Measure[] = [
      { kind: "hingeToPostPin" },
      { kind: "pinToPin", leafAt: "closed" },
      { kind: "leafPinFromLeafFace" },
      { kind: "leafPinFromHeel" },
    ];
    const readings = readingsOf(measures, plan, gate);
    const outcome = estimateAsBuilt({ ...gate, plan, readings, estimateOpenAngle: false });
    expect(outcome).toMatchObject({
      ok: false,
      reason: "notSettled",
      missing: { count: 1, free: ["postPin.out"] },
    });
  });

  test("[G18] lengths too short to meet contradict each other and settle nothing: both are said", () => {
    // By hand: 0.2 m from the hinge and 0.6 m from a leaf pin 0.9 m away: 0.1 m is missing. Split evenly, as both readings are
    // equally good: 50 mm each, (50 / 2)² twice; the post pin lies on the line, free to move square to it.
    const { leaf } = gate;
    const outcome = estimateAsBuilt({
      ...gate,
      plan: { ...madeUpPlan, rise: 0 },
      readings: [
        { id: "hinge to post pin", kind: "hingeToPostPin", value: 0.2 },
        { id: "pin to pin", kind: "pinToPin", leafAt: "closed", value: 0.6 },
        { id: "leaf face", kind: "leafPinFromLeafFace", value: -leaf.face, standardError: 1e-6 },
        { id: "heel", kind: "leafPinFromHeel", value: 0.9 - leaf.heel, standardError: 1e-6 },
      ],
      estimateOpenAngle: false,
    });
    if (outcome.ok || outcome.reason !== "notSettled") throw new Error("notSettled expected");
    expect(outcome.missing.free).toContain("postPin.out");
    expect(outcome.chiSquared).toBeCloseTo(1250, 1);
  });

  test("[G18] where nothing is missing it ranks what would help most", () => {
    const problem = {
      gate,
      plan: madeUpPlan,
      readings: readingsOf(everyMeasure, madeUpPlan, gate),
      openAngleUnknown: false,
      iterationLimit: 500,
    };
    const missing = whatWouldSettle(problem, unknowns);
    expect(missing.count).toBe(0);
    expect(missing.directions).toEqual([]);
    // The leaf pin's offset is the weakest unknown of the full set, and only its own reading feels it well.
    expect(missing.best?.measures).toEqual([{ kind: "leafPinFromLeafFace" }]);
  });
});
