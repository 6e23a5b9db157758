import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import { anyPlacement, arbitraryTravel, between } from "../../independent/arbitrary-gate.ts";
import { bracketTurn } from "./bracket-turn.ts";
import { leastThrustAngle } from "./dead-centre.ts";
import { greatestLever, leastLever, leverArm } from "./lever-arm.ts";
import { lengthRange, pinToPin } from "./pin-to-pin.ts";
import type { Placement, Travel } from "./pins.ts";

// Many draws on a machine that may be busy: slow is no failure.
vi.setConfig({ testTimeout: 120_000 });

// Laws tried against plain co-ordinates and dense sampling, written here without the closed forms.

const linkage = fc.record({ placement: anyPlacement, travel: arbitraryTravel });
const samples = 2000;
const angles = ({ openAngle }: Travel) =>
  Array.from({ length: samples + 1 }, (_, i) => (openAngle * i) / samples);

/** Both pins in the fixed frame, from the rotation matrix alone. */
function pinsAt({ postPin, leafPin }: Placement, { swing }: Travel, theta: number) {
  const phi = swing === "toward" ? theta : -theta;
  const bx = leafPin.along * Math.cos(phi) - leafPin.off * Math.sin(phi);
  const by = leafPin.along * Math.sin(phi) + leafPin.off * Math.cos(phi);
  return { ax: postPin.along, ay: postPin.out, bx, by, phi };
}

function sampledLength(placement: Placement, travel: Travel, theta: number): number {
  const { ax, ay, bx, by } = pinsAt(placement, travel, theta);
  return Math.hypot(bx - ax, by - ay, placement.rise);
}

/** Dense samples cannot meet a smooth extreme closer than this: half a step squared, times a generous curvature. */
const samplingError = (curvature: number, { openAngle }: Travel) =>
  0.125 * curvature * (openAngle / samples) ** 2 + 1e-12;

describe("against plain co-ordinates", () => {
  test("[G5] length at any angle", () => {
    fc.assert(
      fc.property(linkage, between(0, 1), ({ placement, travel }, share) => {
        const theta = share * travel.openAngle;
        expect(pinToPin(placement, travel, theta)).toBeCloseTo(sampledLength(placement, travel, theta), 12);
      }),
      { numRuns: 500, seed: 21, endOnFailure: true },
    );
  });

  test("[G6] lever arm is |dL/dφ|", () => {
    fc.assert(
      fc.property(linkage, between(0, 1), ({ placement, travel }, share) => {
        const theta = share * travel.openAngle;
        const h = 1e-5;
        if (sampledLength(placement, travel, theta) < 0.05) return;
        const slope =
          (sampledLength(placement, travel, theta + h) - sampledLength(placement, travel, theta - h)) /
          (2 * h);
        expect(Math.abs(leverArm(placement, travel, theta) - Math.abs(slope))).toBeLessThan(2e-7);
      }),
      { numRuns: 500, seed: 22, endOnFailure: true },
    );
  });

  test("[G6] lever arm is the distance of the thrust line from the hinge, in plan", () => {
    fc.assert(
      fc.property(linkage, between(0, 1), ({ placement, travel }, share) => {
        const theta = share * travel.openAngle;
        const { ax, ay, bx, by } = pinsAt(placement, travel, theta);
        const flat = { ...placement, rise: 0 };
        const plan = Math.hypot(bx - ax, by - ay);
        if (plan < 1e-3) return;
        expect(leverArm(flat, travel, theta)).toBeCloseTo(Math.abs(ax * by - ay * bx) / plan, 9);
        // With a rise only the level share of the thrust turns the leaf.
        const level = plan / Math.hypot(plan, placement.rise);
        expect(leverArm(placement, travel, theta)).toBeCloseTo(leverArm(flat, travel, theta) * level, 9);
      }),
      { numRuns: 500, seed: 23, endOnFailure: true },
    );
  });
});

describe("extremes over the travel against dense sampling", () => {
  test("[G5] lengths", () => {
    fc.assert(
      fc.property(linkage, ({ placement, travel }) => {
        const range = lengthRange(placement, travel);
        const sampled = angles(travel).map((theta) => sampledLength(placement, travel, theta));
        const [low, high] = [Math.min(...sampled), Math.max(...sampled)];
        expect(range.least).toBeLessThanOrEqual(low + 1e-12);
        expect(range.greatest).toBeGreaterThanOrEqual(high - 1e-12);
        // A length may turn as sharply as a distance to a point; its slope never exceeds the radii.
        expect(range.least).toBeGreaterThan(low - travel.openAngle / samples);
        expect(range.greatest).toBeLessThan(high + samplingError(10, travel));
        expect(pinToPin(placement, travel, range.leastAt)).toBe(range.least);
        expect(pinToPin(placement, travel, range.greatestAt)).toBe(range.greatest);
        const rises = sampled.slice(1).map((value, i) => value - (sampled[i] ?? 0));
        const oneWay = rises.every((rise) => rise > 0) || rises.every((rise) => rise < 0);
        if (range.monotonic) expect(oneWay).toBe(true);
        else if (Math.min(range.leastAt, range.greatestAt) > 0.01) expect(oneWay).toBe(false);
      }),
      { numRuns: 300, seed: 24, endOnFailure: true },
    );
  });

  test("[G6] [G10] least and greatest lever", () => {
    fc.assert(
      fc.property(linkage, ({ placement, travel }) => {
        const [least, greatest] = [leastLever(placement, travel), greatestLever(placement, travel)];
        const sampled = angles(travel).map((theta) => leverArm(placement, travel, theta));
        expect(least.value).toBeLessThanOrEqual(Math.min(...sampled) + 1e-12);
        expect(greatest.value).toBeGreaterThanOrEqual(Math.max(...sampled) - 1e-12);
        expect(leverArm(placement, travel, least.atAngle)).toBeCloseTo(least.value, 9);
        expect(leverArm(placement, travel, greatest.atAngle)).toBeCloseTo(greatest.value, 12);
        for (const { atAngle } of [least, greatest]) {
          expect(atAngle).toBeGreaterThanOrEqual(0);
          expect(atAngle).toBeLessThanOrEqual(travel.openAngle);
        }
      }),
      { numRuns: 300, seed: 25, endOnFailure: true },
    );
  });

  test("[G10] least angle to dead centre", () => {
    fc.assert(
      fc.property(linkage, ({ placement, travel }) => {
        const least = leastThrustAngle(placement, travel);
        const between = (theta: number) => {
          const { ax, ay, bx, by } = pinsAt(placement, travel, theta);
          const [ux, uy] = [ax - bx, ay - by];
          return Math.atan2(Math.abs(ux * by - uy * bx), Math.abs(ux * bx + uy * by));
        };
        const sampled = angles(travel).map(between);
        expect(least.value).toBeLessThanOrEqual(Math.min(...sampled) + 1e-9);
        // Attained, save at a dead centre, where rounding leaves a trace of an angle.
        expect(Math.abs(between(least.atAngle) - least.value)).toBeLessThan(1e-6);
      }),
      { numRuns: 300, seed: 26, endOnFailure: true },
    );
  });

  test("[G8] bracket turns", () => {
    fc.assert(
      fc.property(linkage, ({ placement, travel }) => {
        // Pins that pass through each other spin the ram faster than any sampling follows.
        const plan = lengthRange({ ...placement, rise: 0 }, travel).least;
        if (plan < 0.03) return;
        const turn = bracketTurn(placement, travel);
        let previous: number | null = null;
        const ranges = { post: [Infinity, -Infinity], leaf: [Infinity, -Infinity] } as Record<
          "post" | "leaf",
          [number, number]
        >;
        for (const theta of angles(travel)) {
          const { ax, ay, bx, by, phi } = pinsAt(placement, travel, theta);
          let direction = Math.atan2(by - ay, bx - ax);
          if (previous !== null)
            direction += 2 * Math.PI * Math.round((previous - direction) / (2 * Math.PI));
          previous = direction;
          for (const [pin, value] of [
            ["post", direction],
            ["leaf", direction - phi],
          ] as const) {
            ranges[pin] = [Math.min(ranges[pin][0], value), Math.max(ranges[pin][1], value)];
          }
        }
        for (const [found, [from, to]] of [
          [turn.postPin, ranges.post],
          [turn.leafPin, ranges.leaf],
        ] as const) {
          expect(found.through).toBeGreaterThanOrEqual(to - from - 1e-9);
          expect(found.through).toBeLessThan(to - from + 1e-4);
          const whole = (found.from - from) / (2 * Math.PI);
          expect(Math.abs(whole - Math.round(whole))).toBeLessThan(1e-4);
        }
      }),
      { numRuns: 300, seed: 27, endOnFailure: true },
    );
  });
});
