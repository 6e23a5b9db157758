import { describe, expect, test } from "vitest";
import type { Placement } from "../linkage/pins.ts";
import { type AsBuiltReadings, estimateAsBuilt } from "./estimate.ts";
import { everyMeasure, madeUpGate, madeUpPlan, readingsOf, seededNumbers } from "./made-up-gate.ts";
import type { Measure, Reading } from "./reading.ts";
import { findSolutions, solveFrom } from "./solutions.ts";

const gate = madeUpGate("toward");
/** What was built: a few millimetres off the plan. */
const built: Placement = {
  ...madeUpPlan,
  postPin: { along: -0.156, out: 0.153 },
  leafPin: { along: 0.9102, off: 0.0883 },
};

function asked(readings: readonly Reading[], more: Partial<AsBuiltReadings> = {}) {
  return estimateAsBuilt({ ...gate, plan: madeUpPlan, readings, estimateOpenAngle: false, ...more });
}

function estimated(readings: readonly Reading[], more: Partial<AsBuiltReadings> = {}) {
  const outcome = asked(readings, more);
  if (!outcome.ok) throw new Error(`an estimate expected, ${outcome.reason} found`);
  return outcome.value;
}

describe("what a set of readings says", () => {
  test("[G18] readings straight from the faces carry their own error to the pin, and nothing checks them", () => {
    const measures: Measure[] = [
      { kind: "postPinFromRamFace" },
      { kind: "postPinFromGatewayFace" },
      { kind: "leafPinFromLeafFace" },
      { kind: "leafPinFromHeel" },
    ];
    const readings = readingsOf(measures, built, gate).map((reading, i) => ({
      ...reading,
      standardError: 0.001 * (i + 1),
    }));
    const estimate = estimated(readings);
    expect(estimate.standardErrors.postPin.out).toBeCloseTo(0.001, 12);
    expect(estimate.standardErrors.postPin.along).toBeCloseTo(0.002, 12);
    expect(estimate.standardErrors.leafPin.off).toBeCloseTo(0.003, 12);
    expect(estimate.standardErrors.leafPin.along).toBeCloseTo(0.004, 12);
    const { major, minor, direction } = estimate.postPinSpread.ellipse;
    expect(major).toBeCloseTo(0.002, 12);
    expect(minor).toBeCloseTo(0.001, 12);
    expect(direction).toBeCloseTo(0, 12);
    expect(estimate.degreesOfFreedom).toBe(0);
    expect(estimate.readingsAgree).toBeNull();
    expect(estimate.residuals.map(({ normalised }) => normalised)).toEqual([null, null, null, null]);
  });

  test("[G18] without a standard error 2 mm is taken", () => {
    const readings = readingsOf(everyMeasure, built, gate);
    const stated = readings.map((reading) => ({ ...reading, standardError: 0.002 }));
    expect(estimated(readings)).toEqual(estimated(stated));
  });

  test("[G18] the open angle is estimated only when asked for and when the open leaf was measured", () => {
    const readings = readingsOf(everyMeasure, built, gate, [], 1.62);
    expect(estimated(readings, { estimateOpenAngle: true }).openAngle).toMatchObject({ kind: "estimated" });
    expect(estimated(readings, { estimateOpenAngle: false }).openAngle).toEqual({
      kind: "asStated",
      value: Math.PI / 2,
    });
    const closedOnly = readings.filter((reading) => reading.kind !== "pinToPin" || reading.leafAt !== "open");
    expect(estimated(closedOnly, { estimateOpenAngle: true }).openAngle).toEqual({
      kind: "noOpenReading",
      value: Math.PI / 2,
    });
  });

  test("[G18] a wrong open angle that is taken as stated shows as readings that disagree", () => {
    expect(estimated(readingsOf(everyMeasure, built, gate, [], 1.75)).readingsAgree).toBe(false);
  });

  test("[G18] every fault is told at once with its path", () => {
    const readings: Reading[] = [
      { id: "a", kind: "hingeToPostPin", value: Number.NaN },
      { id: "a", kind: "hingeToLeafPin", value: -0.9 },
      { id: "b", kind: "pinToPin", leafAt: { angle: Number.POSITIVE_INFINITY }, value: 0.01 },
      { id: "c", kind: "postPinFromRamFace", value: 0.08, standardError: 0 },
    ];
    const outcome = asked(readings, { postFaces: null });
    expect(outcome.ok || outcome.reason !== "badReadings" || outcome.faults.map(({ path }) => path)).toEqual([
      "readings[0].value",
      "readings[1].id",
      "readings[1].value",
      "readings[2].value",
      "readings[2].leafAt.angle",
      "readings[3].standardError",
      "readings[3].kind",
    ]);
  });

  test("[G18] at the iteration limit it says so and returns no guess", () => {
    const readings = readingsOf(everyMeasure, built, gate);
    expect(asked(readings, { iterationLimit: 1 })).toEqual({
      ok: false,
      reason: "iterationLimit",
      iterations: 1,
    });
  });
});

describe("two answers", () => {
  const measures: Measure[] = [
    { kind: "hingeToPostPin" },
    { kind: "postPinFromClosedLine" },
    { kind: "leafPinFromLeafFace" },
    { kind: "leafPinFromHeel" },
  ];

  test("[G18] a length and an offset place the post pin on both sides of the hinge: nearest the plan, and the other told", () => {
    const { placement, ambiguity } = estimated(readingsOf(measures, built, gate));
    expect(placement.postPin.along).toBeCloseTo(-0.156, 9);
    expect(ambiguity?.others).toHaveLength(1);
    expect(ambiguity?.others[0]?.placement.postPin.along).toBeCloseTo(0.156, 9);
    // By hand: the gateway face is at −40 mm, so the pin is 116 mm behind it or 196 mm before it; no other reading differs by
    // the whole 312 mm, for only this one runs along the line between the two answers.
    expect(ambiguity?.settledBy?.measure).toEqual({ kind: "postPinFromGatewayFace" });
    expect(ambiguity?.settledBy?.chosen).toBeCloseTo(0.116, 9);
    expect(ambiguity?.settledBy?.others[0]).toBeCloseTo(-0.196, 9);
  });

  test("[G18] the plan only breaks the tie: planned on the other side, the other answer is chosen", () => {
    const plan = { ...madeUpPlan, postPin: { along: 0.15, out: 0.15 } };
    expect(estimated(readingsOf(measures, built, gate), { plan }).placement.postPin.along).toBeCloseTo(
      0.156,
      9,
    );
  });

  test("[G18] the reading that was named settles it", () => {
    const readings = readingsOf([...measures, { kind: "postPinFromGatewayFace" }], built, gate);
    expect(estimated(readings).ambiguity).toBeNull();
  });

  test("[G18] mirrored starts find every exact answer that a blind search from 400 places finds", () => {
    const sets: Measure[][] = [
      measures,
      [
        { kind: "hingeToPostPin" },
        { kind: "hingeToLeafPin" },
        { kind: "pinToPin", leafAt: "closed" },
        { kind: "postPinFromRamFace" },
      ],
      [
        { kind: "hingeToPostPin" },
        { kind: "leafPinFromLeafFace" },
        { kind: "pinToPin", leafAt: "closed" },
        { kind: "pinToPin", leafAt: "open" },
      ],
      [
        { kind: "postPinFromClosedLine" },
        { kind: "hingeToLeafPin" },
        { kind: "pinToPin", leafAt: "closed" },
        { kind: "pinToPin", leafAt: { angle: 0.7 } },
      ],
      [
        { kind: "postPinFromRamFace" },
        { kind: "postPinFromGatewayFace" },
        { kind: "pinToPin", leafAt: "closed" },
        { kind: "pinToPin", leafAt: "open" },
      ],
    ];
    for (const set of sets) {
      const problem = {
        gate,
        plan: madeUpPlan,
        readings: readingsOf(set, built, gate),
        openAngleUnknown: false,
        iterationLimit: 500,
      };
      const found = findSolutions(problem).map(({ unknowns }) => unknowns);
      const next = seededNumbers(18_020);
      let exact = 0;
      for (let i = 0; i < 400; i++) {
        const blind = solveFrom(problem, [
          0.6 * next() - 0.3,
          0.6 * next() - 0.3,
          2.4 * next() - 1.2,
          2.4 * next() - 1.2,
        ]);
        if (blind === null || blind.chiSquared > 1e-9) continue;
        exact++;
        const misses = found.map((unknowns) =>
          Math.hypot(...unknowns.map((value, k) => value - blind.unknowns[k]!)),
        );
        expect(Math.min(...misses)).toBeLessThan(1e-6);
      }
      expect(exact).toBeGreaterThan(50);
    }
  });
});

describe("a reading that was misread", () => {
  const withSlip = (id: string, by: (value: number) => number): Reading[] =>
    readingsOf(everyMeasure, built, gate).map((reading) =>
      reading.id === id ? { ...reading, value: by(reading.value) } : reading,
    );

  test("[G18] is named with its expected value and the slip that explains it", () => {
    // 1068 mm on the tape, written down as 1086.
    const readings = withSlip("pinToPin@closed", (value) => {
      expect(Math.round(value * 1000)).toBe(1068);
      return 1.086;
    });
    const { misread } = estimated(readings);
    expect(misread).toMatchObject({ kind: "reading", suspect: { id: "pinToPin@closed", value: 1.086 } });
    if (misread?.kind !== "reading") return;
    expect(misread.suspect.expected?.value).toBeCloseTo(1.0683, 4);
    expect(misread.suspect.slips[0]).toEqual({ kind: "digitsSwapped", intended: 1.068 });
  });

  test("[G18] 100 mm too much is explained as such", () => {
    const { misread } = estimated(withSlip("leafPinFromHeel", (value) => value + 0.1));
    expect(misread).toMatchObject({
      kind: "reading",
      suspect: { id: "leafPinFromHeel", slips: [{ kind: "offBy", by: 0.1 }] },
    });
  });

  test("[G18] good readings raise no suspicion", () => {
    expect(
      estimated(readingsOf(everyMeasure, built, gate, [0.001, -0.002, 0.001, 0.002, -0.001])).misread,
    ).toBeNull();
  });

  test("[G18] with one reading to spare it cannot be told which one is wrong, and it says so", () => {
    // Two readings of the same offset, 30 mm apart, and one each of the rest: either of the two may be wrong.
    const measures: Measure[] = [
      { kind: "postPinFromRamFace" },
      { kind: "postPinFromClosedLine" },
      { kind: "postPinFromGatewayFace" },
      { kind: "leafPinFromLeafFace" },
      { kind: "leafPinFromHeel" },
    ];
    const { misread } = estimated(readingsOf(measures, built, gate, [0.03]));
    expect(misread?.kind).toBe("oneOf");
    if (misread?.kind !== "oneOf") return;
    expect(misread.suspects.map(({ id }) => id).sort()).toEqual([
      "postPinFromClosedLine",
      "postPinFromRamFace",
    ]);
    // By hand: w = 30 / (2·√2) for both, the other sign for the other; each expects what the other read, moved by 70 mm.
    for (const { normalised } of misread.suspects)
      expect(Math.abs(normalised)).toBeCloseTo(30 / Math.sqrt(8), 9);
    const ramFace = misread.suspects.find(({ id }) => id === "postPinFromRamFace");
    expect(ramFace?.expected?.value).toBeCloseTo(0.083, 9);
    expect(ramFace?.expected?.standardError).toBeCloseTo(0.002, 9);
  });
});
