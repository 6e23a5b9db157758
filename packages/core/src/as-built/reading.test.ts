import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { everyMeasure, madeUpGate } from "./made-up-gate.ts";
import { type Measure, predictReading } from "./reading.ts";

const anyGate = fc.constantFrom("toward" as const, "away" as const).map(madeUpGate);
const anyPins = fc.record({
  postPin: fc.record({
    along: fc.double({ min: -0.4, max: -0.1, noNaN: true }),
    out: fc.double({ min: 0.1, max: 0.4, noNaN: true }),
  }),
  leafPin: fc.record({
    along: fc.double({ min: 0.7, max: 1.5, noNaN: true }),
    off: fc.double({ min: -0.1, max: 0.2, noNaN: true }),
  }),
  rise: fc.double({ min: -0.1, max: 0.1, noNaN: true }),
});

describe("predicted tape readings", () => {
  // Expected lengths: the check values of the placement rules (P (−150, 150), G (907.2, 85) and P (−200, 160), G (911.2, 85), mm).
  test.each([
    [-0.15, 0.15, 0.9072, 1.0592, 0.76],
    [-0.2, 0.16, 0.9112, 1.1138, 0.76],
  ])(
    "[G18] pin to pin of P (%d, %d) with the leaf closed and open",
    (along, out, leafAlong, closed, open) => {
      const pins = { postPin: { along, out }, leafPin: { along: leafAlong, off: 0.085 }, rise: 0 };
      const read = (leafAt: "closed" | "open") =>
        predictReading({ kind: "pinToPin", leafAt }, pins, Math.PI / 2, madeUpGate("toward")).value;
      // The check values are printed to 0.1 mm for a G that was itself rounded to 0.1 mm: 0.1 mm is what they can show.
      expect(Math.abs(read("closed") - closed)).toBeLessThan(1e-4);
      expect(Math.abs(read("open") - open)).toBeLessThan(1e-4);
    },
  );

  test("[G18] a pin that is higher lengthens pin to pin along the slope, and no reading from the hinge", () => {
    // 3-4-5 triangle by hand: 4 m in plan, 3 m of rise.
    const pins = { postPin: { along: -1, out: 0 }, leafPin: { along: 3, off: 0 }, rise: 3 };
    const gate = madeUpGate("toward");
    expect(predictReading({ kind: "pinToPin", leafAt: "closed" }, pins, 1, gate).value).toBe(5);
    expect(predictReading({ kind: "hingeToPostPin" }, pins, 1, gate).value).toBe(1);
    expect(predictReading({ kind: "hingeToLeafPin" }, pins, 1, gate).value).toBe(3);
  });

  test("[G18] a leaf that swings away turns the leaf pin the other way", () => {
    // By hand: G (1, 0) turned −90° is (0, −1); from P (0, 2) that is 3 m.
    const pins = { postPin: { along: 0, out: 2 }, leafPin: { along: 1, off: 0 }, rise: 0 };
    const open = { kind: "pinToPin", leafAt: "open" } as const;
    expect(predictReading(open, pins, Math.PI / 2, madeUpGate("away")).value).toBeCloseTo(3, 12);
    expect(predictReading(open, pins, Math.PI / 2, madeUpGate("toward")).value).toBeCloseTo(1, 12);
  });

  test("[G18] offsets are measured from the faces, positive where a tape would be held", () => {
    // By hand, from the faces of the made-up gate: post face at out 0.07, gateway face at along −0.04, leaf face 0.025, heel 0.03.
    const pins = { postPin: { along: -0.15, out: 0.16 }, leafPin: { along: 0.9, off: 0.085 }, rise: 0 };
    const read = (kind: Exclude<Measure["kind"], "pinToPin">) =>
      predictReading({ kind }, pins, 1, madeUpGate("toward")).value;
    expect(read("postPinFromClosedLine")).toBeCloseTo(0.16, 12);
    expect(read("postPinFromRamFace")).toBeCloseTo(0.09, 12);
    expect(read("postPinFromGatewayFace")).toBeCloseTo(0.11, 12);
    expect(read("leafPinFromLeafFace")).toBeCloseTo(0.06, 12);
    expect(read("leafPinFromHeel")).toBeCloseTo(0.87, 12);
  });

  test("[G18] a reading from a post face throws when the faces are not given", () => {
    const pins = { postPin: { along: -0.15, out: 0.16 }, leafPin: { along: 0.9, off: 0.085 }, rise: 0 };
    const gate = { ...madeUpGate("toward"), postFaces: null };
    expect(() => predictReading({ kind: "postPinFromRamFace" }, pins, 1, gate)).toThrow(
      /postPinFromRamFace expects postFaces/,
    );
  });

  test("[G18] gradients agree with central differences, for every kind, both swings and any rise", () => {
    fc.assert(
      fc.property(
        anyGate,
        anyPins,
        fc.constantFrom(...everyMeasure),
        fc.double({ min: 0.8, max: 2, noNaN: true }),
        (gate, pins, measure, openAngle) => {
          const unknowns = [
            pins.postPin.along,
            pins.postPin.out,
            pins.leafPin.along,
            pins.leafPin.off,
            openAngle,
          ];
          const valueAt = ([along, out, leafAlong, off, angle]: number[]) =>
            predictReading(
              measure,
              {
                postPin: { along: along!, out: out! },
                leafPin: { along: leafAlong!, off: off! },
                rise: pins.rise,
              },
              angle!,
              gate,
            ).value;
          const { gradient } = predictReading(measure, pins, openAngle, gate);
          const h = 1e-5;
          unknowns.forEach((_, i) => {
            const moved = (by: number) => valueAt(unknowns.map((value, j) => (i === j ? value + by : value)));
            const slope = (moved(h) - moved(-h)) / (2 * h);
            // Central differences err by h² × third derivative (≤ about 1 / (0.1 m)²) and by rounding / h.
            expect(Math.abs(slope - gradient[i]!)).toBeLessThan(1e-7);
          });
        },
      ),
      { seed: 18_001, numRuns: 500 },
    );
  });
});
