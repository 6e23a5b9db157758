import { describe, expect, test } from "vitest";
import { bracketTurn } from "./bracket-turn.ts";
import { leastThrustAngle } from "./dead-centre.ts";
import { greatestLever, leastLever, leverArm } from "./lever-arm.ts";
import { crankOf, deadCentreAngles, lengthRange, pinToPin } from "./pin-to-pin.ts";
import type { Placement, Travel } from "./pins.ts";
import { turnSign } from "./pins.ts";

const degrees = (angle: number) => (angle * 180) / Math.PI;
const toward: Travel = { swing: "toward", openAngle: Math.PI / 2 };
const away: Travel = { swing: "away", openAngle: Math.PI / 2 };
const pins = (along: number, out: number, d: number, e: number, rise = 0): Placement => ({
  postPin: { along, out },
  leafPin: { along: d, off: e },
  rise,
});

// Given with the rules of placement: two gates worked by an independent program, printed to 0.1 mm with pins
// rounded to 0.1 mm as well, so that 0.1 mm may separate the two.
const printed = 1e-4;
const narrow = pins(-0.15, 0.15, 0.9072, 0.085);
const wide = pins(-0.2, 0.16, 0.9112, 0.085);

describe("check values of the placement rules", () => {
  test("[G5] lengths closed and open", () => {
    for (const [placement, closed, open] of [
      [narrow, 1.0592, 0.76],
      [wide, 1.1138, 0.76],
    ] as const) {
      expect(Math.abs(lengthRange(placement, toward).closed - closed)).toBeLessThan(printed);
      expect(Math.abs(lengthRange(placement, toward).open - open)).toBeLessThan(printed);
    }
  });

  test("[G6] lever arms", () => {
    expect(leastLever(narrow, toward)).toMatchObject({ atAngle: 0 });
    expect(leastLever(narrow, toward).value).toBeCloseTo(0.1405, 4);
    expect(greatestLever(narrow, toward).value).toBeCloseTo(0.2121, 4);
    expect(leastLever(wide, toward)).toMatchObject({ atAngle: 0 });
    expect(leastLever(wide, toward).value).toBeCloseTo(0.1462, 4);
  });
});

describe("[G2] which way the leaf turns", () => {
  test("toward the ram is counter-clockwise", () => {
    expect(turnSign(toward)).toBe(1);
    expect(turnSign(away)).toBe(-1);
    // Leaf pin 1 m along: opened by 90° toward it lies at (0, 1), 0.5 m from a post pin at (0, 0.5).
    expect(pinToPin(pins(0, 0.5, 1, 0), toward, Math.PI / 2)).toBeCloseTo(0.5, 12);
    expect(pinToPin(pins(0, 0.5, 1, 0), away, Math.PI / 2)).toBeCloseTo(1.5, 12);
  });
});

describe("[G5] true length", () => {
  test("a rise is the third side", () => {
    // 3-4-12-13: 3 and 4 in plan, 12 up.
    expect(pinToPin(pins(0, 3, 4, 0, 12), toward, 0)).toBeCloseTo(13, 12);
    expect(pinToPin(pins(0, 3, 4, 0, -12), toward, 0)).toBeCloseTo(13, 12);
  });

  test("pins that meet are zero apart, whatever the rounding", () => {
    expect(pinToPin(pins(0.3, 0.4, 0.5, 0), toward, Math.atan2(0.4, 0.3))).toBeLessThan(1e-15);
  });
});

describe("[G6] dead centre inside the travel", () => {
  // Post pin at 45° on the open side: the leaf pin passes the line through the hinge half-way.
  const crossing = pins(-0.2, -0.2, 1, 0);

  test("is found, stops monotony and takes the lever to zero", () => {
    const range = lengthRange(crossing, toward);
    expect(deadCentreAngles(crankOf(crossing, toward)).map(degrees)).toEqual([expect.closeTo(45, 10)]);
    expect(range.monotonic).toBe(false);
    expect(range.greatest).toBeCloseTo(1 + Math.hypot(0.2, 0.2), 12);
    expect(degrees(range.greatestAt)).toBeCloseTo(45, 10);
    expect(leastLever(crossing, toward)).toEqual({ value: 0, atAngle: expect.closeTo(Math.PI / 4, 12) });
    expect(leastThrustAngle(crossing, toward)).toEqual({
      value: 0,
      atAngle: expect.closeTo(Math.PI / 4, 12),
    });
  });

  test("at an end of the travel it still stops monotony", () => {
    expect(lengthRange(pins(-0.2, 0, 1, 0), toward).monotonic).toBe(false);
    expect(lengthRange(pins(0, 0.2, 1, 0), toward).monotonic).toBe(false);
  });

  test("a pin on the hinge axis has no lever at all", () => {
    const onAxis = pins(0, 0, 1, 0.1);
    expect(lengthRange(onAxis, toward).monotonic).toBe(false);
    expect(leastLever(onAxis, toward).value).toBe(0);
    expect(greatestLever(onAxis, toward).value).toBe(0);
    expect(leastThrustAngle(onAxis, toward).value).toBe(0);
  });
});

describe("[G6] greatest lever", () => {
  test("never exceeds the smaller radius, and reaches it where the ram is square to that crank", () => {
    // cos ψ = ρ/g: the thrust line is square to the post pin's radius. ρ = 3, g = 5: lever 3 at ψ = 53.13°.
    const square = pins(0, 3, 5, 0);
    expect(greatestLever(square, toward).value).toBeCloseTo(3, 12);
    expect(degrees(greatestLever(square, toward).atAngle)).toBeCloseTo(90 - degrees(Math.acos(3 / 5)), 9);
    expect(leverArm(square, toward, Math.PI / 2 - Math.acos(3 / 5))).toBeCloseTo(3, 12);
  });
});

describe("[G8] bracket turn", () => {
  test("toward: post bracket and leaf bracket by hand", () => {
    // Post pin (−0.2, 0.2), leaf pin (1, 0): the ram points from atan2(−0.2, 1.2) to atan2(0.8, 0.2).
    const turn = bracketTurn(pins(-0.2, 0.2, 1, 0), toward);
    expect(degrees(turn.postPin.from)).toBeCloseTo(degrees(Math.atan2(-0.2, 1.2)), 10);
    expect(degrees(turn.postPin.to)).toBeCloseTo(degrees(Math.atan2(0.8, 0.2)), 10);
    expect(turn.postPin.through).toBeCloseTo(turn.postPin.to - turn.postPin.from, 12);
    // Against the leaf it starts and ends at −9.46° and −14.04°, but swings to −asin(ρ/g) between.
    expect(degrees(turn.leafPin.from)).toBeCloseTo(-degrees(Math.asin(Math.hypot(0.2, 0.2))), 10);
    expect(degrees(turn.leafPin.to)).toBeCloseTo(degrees(Math.atan2(-0.2, 1.2)), 10);
  });

  test("a direction that passes ±180° stays one range", () => {
    // Post pin in front of the leaf pin: the ram points backward, past 180°, all the way.
    const turn = bracketTurn(pins(1.5, 0.3, 0.5, 0), toward);
    expect(turn.postPin.through).toBeLessThan(Math.PI);
    expect(turn.leafPin.through).toBeLessThan(Math.PI);
    expect(degrees(turn.postPin.through)).toBeGreaterThan(10);
  });
});
