import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Placement } from "../linkage/pins.ts";
import { type AsBuiltReadings, estimateAsBuilt } from "./estimate.ts";
import {
  everyMeasure,
  madeUpGate,
  madeUpPlan,
  measureName,
  readingsOf,
  seededNormal,
} from "./made-up-gate.ts";
import type { Measure } from "./reading.ts";

const offBy = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
const near = (value: number, most: number) => offBy(most).map((by) => value + by);
/** Pins within 40 mm of the plan. */
const builtPins = fc.record({
  postPin: fc.record({ along: near(-0.15, 0.04), out: near(0.15, 0.04) }),
  leafPin: fc.record({ along: near(0.9072, 0.04), off: near(0.085, 0.04) }),
  rise: fc.constant(madeUpPlan.rise),
});
const swings = fc.constantFrom("toward" as const, "away" as const);

/** Sets that settle both pins; the last leaves nothing to spare. */
const settlingSets: readonly (readonly Measure[])[] = [
  everyMeasure,
  everyMeasure.filter(({ kind }) => kind !== "pinToPin"),
  [
    { kind: "hingeToPostPin" },
    { kind: "postPinFromClosedLine" },
    { kind: "leafPinFromLeafFace" },
    { kind: "pinToPin", leafAt: "closed" },
    { kind: "pinToPin", leafAt: "open" },
  ],
  [
    { kind: "hingeToPostPin" },
    { kind: "hingeToLeafPin" },
    { kind: "pinToPin", leafAt: "closed" },
    { kind: "pinToPin", leafAt: "open" },
    { kind: "leafPinFromLeafFace" },
  ],
  [
    { kind: "postPinFromRamFace" },
    { kind: "postPinFromGatewayFace" },
    { kind: "leafPinFromLeafFace" },
    { kind: "pinToPin", leafAt: "closed" },
  ],
];

function estimated(question: AsBuiltReadings) {
  const outcome = estimateAsBuilt(question);
  if (!outcome.ok) throw new Error(`an estimate expected, ${outcome.reason} found`);
  return outcome.value;
}

// Hundreds of whole estimates take seconds on a busy machine.
describe("pins from tape readings", { timeout: 60_000 }, () => {
  test("[G18] exact readings give the pins back, of all answers the one that was built", () => {
    fc.assert(
      fc.property(builtPins, swings, fc.constantFrom(...settlingSets), (built, swing, measures) => {
        const gate = madeUpGate(swing);
        const { placement, chiSquared, ambiguity } = estimated({
          ...gate,
          plan: madeUpPlan,
          readings: readingsOf(measures, built, gate),
          estimateOpenAngle: false,
        });
        // A set may have two exact answers that are both near the plan; then the one built must be among them.
        const answers = [placement, ...(ambiguity?.others ?? []).map((other) => other.placement)];
        const misses = answers.map(({ postPin, leafPin }) =>
          Math.hypot(
            postPin.along - built.postPin.along,
            postPin.out - built.postPin.out,
            leafPin.along - built.leafPin.along,
            leafPin.off - built.leafPin.off,
          ),
        );
        expect(Math.min(...misses)).toBeLessThan(1e-9);
        expect(chiSquared).toBeLessThan(1e-9);
        if (ambiguity === null) expect(misses[0]).toBeLessThan(1e-9);
      }),
      { seed: 18_010, numRuns: 400 },
    );
  });

  test("[G18] the open angle comes back with the pins when it is asked for", () => {
    fc.assert(
      fc.property(builtPins, swings, near(Math.PI / 2, 0.15), (built, swing, openAngle) => {
        const gate = madeUpGate(swing);
        const estimate = estimated({
          ...gate,
          plan: madeUpPlan,
          readings: readingsOf(everyMeasure, built, gate, [], openAngle),
          estimateOpenAngle: true,
        });
        expect(estimate.openAngle.kind).toBe("estimated");
        const answers = [
          estimate.openAngle.value,
          ...(estimate.ambiguity?.others ?? []).map((other) => other.openAngle!),
        ];
        expect(Math.min(...answers.map((angle) => Math.abs(angle - openAngle)))).toBeLessThan(1e-8);
        expect(Math.abs(estimate.placement.postPin.along - built.postPin.along)).toBeLessThan(1e-9);
      }),
      { seed: 18_011, numRuns: 200 },
    );
  });

  test("[G18] errors scatter as the standard errors say", () => {
    const trials = 600;
    const normal = seededNormal(18_012);
    const gate = madeUpGate("toward");
    const squared = [0, 0, 0, 0];
    let cross = 0;
    let chiSquared = 0;
    let freedom = 0;
    let disagreements = 0;
    for (let trial = 0; trial < trials; trial++) {
      const standardErrors = everyMeasure.map((_, i) => 0.001 + 0.0005 * (i % 4));
      const errors = standardErrors.map((standardError) => standardError * normal());
      const readings = readingsOf(everyMeasure, madeUpPlan, gate, errors).map((reading, i) => ({
        ...reading,
        standardError: standardErrors[i]!,
      }));
      const estimate = estimated({ ...gate, plan: madeUpPlan, readings, estimateOpenAngle: false });
      const { postPin, leafPin } = estimate.placement;
      const { standardErrors: stated, postPinSpread } = estimate;
      const along = postPin.along - madeUpPlan.postPin.along;
      const out = postPin.out - madeUpPlan.postPin.out;
      squared[0]! += (along / stated.postPin.along) ** 2;
      squared[1]! += (out / stated.postPin.out) ** 2;
      squared[2]! += ((leafPin.along - madeUpPlan.leafPin.along) / stated.leafPin.along) ** 2;
      squared[3]! += ((leafPin.off - madeUpPlan.leafPin.off) / stated.leafPin.off) ** 2;
      const { alongAlong, alongAcross, acrossAcross } = postPinSpread.covariance;
      cross +=
        (acrossAcross * along ** 2 - 2 * alongAcross * along * out + alongAlong * out ** 2) /
        (alongAlong * acrossAcross - alongAcross ** 2);
      chiSquared += estimate.chiSquared;
      freedom = estimate.degreesOfFreedom;
      if (estimate.readingsAgree === false) disagreements++;
    }
    // A mean of n squared normal deviates has standard deviation √(2/n); four of them is one chance in 16 000.
    for (const sum of squared) expect(Math.abs(sum / trials - 1)).toBeLessThan(4 * Math.sqrt(2 / trials));
    expect(freedom).toBe(6);
    expect(Math.abs(cross / trials - 2)).toBeLessThan(4 * Math.sqrt(4 / trials));
    expect(Math.abs(chiSquared / trials - freedom)).toBeLessThan(4 * Math.sqrt((2 * freedom) / trials));
    // χ² with 6 degrees of freedom exceeds 6 + 3√12 = 16.39 in 1.18 % of cases: e^(−x/2)(1 + x/2 + x²/8), x = 16.39.
    const expectedShare = Math.exp(-8.196) * (1 + 8.196 + 8.196 ** 2 / 2);
    const scatter = Math.sqrt((expectedShare * (1 - expectedShare)) / trials);
    expect(Math.abs(disagreements / trials - expectedShare)).toBeLessThan(4 * scatter);
  });

  test("[G18] a reading that is 40 mm out is the one pointed at, and what it should have been is said", () => {
    // The leaf pin's offset from the leaf is checked by no other reading of this set, so it is measured twice more.
    const measures: Measure[] = [...everyMeasure, { kind: "pinToPin", leafAt: { angle: 1.2 } }];
    const checked = everyMeasure
      .map((_, i) => i)
      .filter((i) => everyMeasure[i]!.kind !== "leafPinFromLeafFace");
    fc.assert(
      fc.property(
        builtPins,
        swings,
        fc.constantFrom(...checked),
        fc.constantFrom(0.04, -0.04),
        fc.integer({ min: 1, max: 1e6 }),
        (built, swing, wrong, by, seed) => {
          const gate = madeUpGate(swing);
          const normal = seededNormal(seed);
          const errors = measures.map((_, i) => 0.001 * normal() + (i === wrong ? by : 0));
          const readings = readingsOf(measures, built, gate, errors);
          const { misread, readingsAgree } = estimated({
            ...gate,
            plan: madeUpPlan,
            readings,
            estimateOpenAngle: false,
          });
          expect(readingsAgree).toBe(false);
          expect(misread?.kind).toBe("reading");
          if (misread?.kind !== "reading") return;
          expect(misread.suspect.id).toBe(measureName(measures[wrong]!));
          const { expected } = misread.suspect;
          const right = readings[wrong]!.value - errors[wrong]!;
          expect(Math.abs(expected!.value - right)).toBeLessThan(5 * expected!.standardError);
        },
      ),
      { seed: 18_013, numRuns: 150 },
    );
  });

  test("[G18] the mirror image of a gate, measured alike, gives the mirror image of the pins", () => {
    const mirrored = ({ postPin, leafPin, rise }: Placement): Placement => ({
      postPin: { along: postPin.along, out: -postPin.out },
      leafPin: { along: leafPin.along, off: -leafPin.off },
      rise,
    });
    const measures = everyMeasure.filter(
      ({ kind }) => kind === "pinToPin" || kind.startsWith("hinge") || kind === "postPinFromClosedLine",
    );
    fc.assert(
      fc.property(builtPins, fc.integer({ min: 1, max: 1e6 }), (built, seed) => {
        const normal = seededNormal(seed);
        const errors = measures.map(() => 0.002 * normal());
        const toward = madeUpGate("toward");
        const readings = readingsOf(measures, built, toward, errors);
        const seenMirrored = readings.map((reading) =>
          reading.kind === "postPinFromClosedLine" ? { ...reading, value: -reading.value } : reading,
        );
        const one = estimated({ ...toward, plan: madeUpPlan, readings, estimateOpenAngle: false });
        const other = estimated({
          ...madeUpGate("away"),
          plan: mirrored(madeUpPlan),
          readings: seenMirrored,
          estimateOpenAngle: false,
        });
        const back = mirrored(other.placement);
        expect(Math.abs(back.postPin.along - one.placement.postPin.along)).toBeLessThan(1e-9);
        expect(Math.abs(back.postPin.out - one.placement.postPin.out)).toBeLessThan(1e-9);
        expect(Math.abs(back.leafPin.along - one.placement.leafPin.along)).toBeLessThan(1e-9);
        expect(Math.abs(back.leafPin.off - one.placement.leafPin.off)).toBeLessThan(1e-9);
      }),
      { seed: 18_014, numRuns: 100 },
    );
  });

  test("[G18] whatever the readings, the outcome is data with finite numbers", () => {
    const anyReading = fc.record({
      measure: fc.constantFrom(...everyMeasure),
      value: fc.double({ min: 0.03, max: 20, noNaN: true }),
      standardError: fc.constantFrom(1e-6, 0.0005, 0.002, 1),
    });
    const reasons = new Set<string>();
    fc.assert(
      fc.property(
        fc.array(anyReading, { maxLength: 9 }),
        swings,
        fc.boolean(),
        (list, swing, estimateOpenAngle) => {
          const readings = list.map(({ measure, value, standardError }, i) => ({
            ...measure,
            id: String(i),
            value,
            standardError,
          }));
          const outcome = estimateAsBuilt({
            ...madeUpGate(swing),
            plan: madeUpPlan,
            readings,
            estimateOpenAngle,
          });
          reasons.add(outcome.ok ? "ok" : outcome.reason);
          const numbers: number[] = [];
          JSON.stringify(outcome, (_, value) => {
            if (typeof value === "number") numbers.push(value);
            return value;
          });
          expect(numbers.filter((value) => !Number.isFinite(value))).toEqual([]);
        },
      ),
      { seed: 18_015, numRuns: 150 },
    );
    expect([...reasons]).toEqual(expect.arrayContaining(["ok", "notSettled"]));
  });
});
