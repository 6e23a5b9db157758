import fc from "fast-check";
import { expect, test, vi } from "vitest";
import { anySituation, between } from "../../independent/arbitrary-gate.ts";
import { lengthRange } from "../linkage/pin-to-pin.ts";
import { turnSign } from "../linkage/pins.ts";
import { clearanceChecks } from "./clearance-check.ts";
import { gapFloor } from "./gap-floor.ts";
import { gapSlope, slopeSize } from "./gap-slope.ts";
import { sweepGaps } from "./leaf-sweep.ts";
import { gapAt, gapTolerance, leastGap, nearestContact, poseAt } from "./least-gap.ts";
import { convexPieces } from "./outline.ts";
import { nearerGap, newContact } from "./ram-gap.ts";
import { newPose, poseInFixedFrame, poseInLeafFrame } from "./ram-pose.ts";
import { travelRates } from "./travel-rates.ts";

// Many draws on a machine that may be busy: slow is no failure.
vi.setConfig({ testTimeout: 120_000 });

const inTravel = (openAngle: number, theta: number) => Math.min(Math.max(theta, 0), openAngle);

test("[G7] the least gap is attained, and no sample lies a micrometre below it", () => {
  let compared = 0;
  fc.assert(
    fc.property(anySituation, ({ situation, placement }) => {
      const { travel } = situation.leaf;
      for (const check of clearanceChecks(situation)) {
        const least = leastGap(check, placement, travel);
        const samples = Array.from({ length: 801 }, (_, i) =>
          gapAt(check, placement, travel, (travel.openAngle * i) / 800),
        );
        if (least === null) {
          expect(Math.min(...samples)).toBe(Number.POSITIVE_INFINITY);
          continue;
        }
        compared++;
        expect(Math.min(...samples)).toBeGreaterThanOrEqual(least.gap - 1.01 * gapTolerance);
        expect(gapAt(check, placement, travel, least.atAngle)).toBeCloseTo(least.gap, 12);
        expect(least.atAngle).toBe(inTravel(travel.openAngle, least.atAngle));
      }
    }),
    { numRuns: 250, seed: 31, endOnFailure: true },
  );
  expect(compared).toBeGreaterThan(500);
});

test("[G9] the least sweep gap is never above a sample", () => {
  fc.assert(
    fc.property(anySituation, ({ situation: { leaf, fixed } }) => {
      const gaps = sweepGaps(leaf, fixed);
      for (const { name, gap } of gaps) {
        const outlines = fixed
          .filter((thing) => thing.name === name)
          .flatMap((thing) => convexPieces(thing.outline));
        const panel = {
          alongFrom: leaf.heel,
          alongTo: leaf.length,
          offFrom: leaf.face - leaf.thickness,
          offTo: leaf.face,
        };
        for (let i = 0; i <= 400; i++) {
          const phi = (turnSign(leaf.travel) * leaf.travel.openAngle * i) / 400;
          for (const box of [panel, ...leaf.boxes]) {
            // A box is a ram's section about its own middle line.
            const middle = (box.offFrom + box.offTo) / 2;
            const pose = {
              ...newPose(),
              ux: Math.cos(phi),
              uy: Math.sin(phi),
              ax: -middle * Math.sin(phi),
              ay: middle * Math.cos(phi),
            };
            const section = {
              from: box.alongFrom,
              to: box.alongTo,
              toCountsFromLeafPin: false,
              halfWidth: (box.offTo - box.offFrom) / 2,
            };
            const contact = newContact();
            for (const outline of outlines) nearerGap(pose, section, outline, contact);
            if (contact.gap < gap - 1.01 * gapTolerance)
              throw new Error(`${contact.gap} below ${gap} at ${phi}`);
          }
        }
      }
    }),
    { numRuns: 60, seed: 32, endOnFailure: true },
  );
});

test("[G7] the floor between samples is a floor, and gives little away", () => {
  let close = 0;
  fc.assert(
    fc.property(
      anySituation,
      between(0, 1),
      fc.constantFrom(0.001, 0.01, 0.05),
      fc.array(between(-1, 1), { minLength: 6, maxLength: 12 }),
      ({ situation, placement }, share, halfTurn, offsets) => {
        const { travel } = situation.leaf;
        const theta = share * travel.openAngle;
        const rates = travelRates(placement, lengthRange(placement, travel));
        for (const check of clearanceChecks(situation)) {
          for (const section of check.sections) {
            for (const outline of check.outlines) {
              const one = { ...check, sections: [section], outlines: [outline] };
              const pose = newPose();
              const contact = newContact();
              poseAt(pose, placement, turnSign(travel), theta, check.inLeafFrame);
              nearerGap(pose, section, outline, contact);
              if (contact.section === null) continue;
              const floor = gapFloor(pose, contact, rates, check.inLeafFrame, halfTurn);
              let lowest = contact.gap;
              for (const offset of [-1, 1, ...offsets]) {
                const near = inTravel(travel.openAngle, theta + offset * halfTurn);
                const gap = gapAt(one, placement, travel, near);
                lowest = Math.min(lowest, gap);
                if (gap < floor - 1e-12) throw new Error(`${check.id}: ${gap} below its floor ${floor}`);
              }
              // Second order where one corner is in question: that is what makes the descent end.
              if (lowest - floor < 40 * halfTurn * halfTurn) close++;
              else close--;
            }
          }
        }
      },
    ),
    { numRuns: 600, seed: 33, endOnFailure: true },
  );
  expect(close).toBeGreaterThan(0);
});

test("[G7] [G10] the slope of a gap against central differences, in all four pin numbers and the turn", () => {
  let compared = 0;
  fc.assert(
    fc.property(anySituation, between(0, 1), ({ situation, placement }, share) => {
      const phi = turnSign(situation.leaf.travel) * share * situation.leaf.travel.openAngle;
      const { postPin, leafPin, rise } = placement;
      const numbers = [postPin.along, postPin.out, leafPin.along, leafPin.off, phi];
      for (const check of clearanceChecks(situation)) {
        const look = (at: readonly number[]) => {
          const [px, py, d, e, turn] = at as [number, number, number, number, number];
          const pose = newPose();
          const contact = newContact();
          (check.inLeafFrame ? poseInLeafFrame : poseInFixedFrame)(
            pose,
            px,
            py,
            d,
            e,
            rise,
            Math.cos(turn),
            Math.sin(turn),
          );
          nearestContact(pose, check, contact);
          return { pose, contact };
        };
        const { pose, contact } = look(numbers);
        if (contact.section === null) continue;
        const slope = new Float64Array(slopeSize);
        gapSlope(pose, contact, check.inLeafFrame, Math.cos(phi), Math.sin(phi), slope);
        const h = 1e-6;
        for (let j = 0; j < slopeSize; j++) {
          const moved = (by: number) =>
            look(numbers.map((value, k) => (k === j ? value + by : value))).contact.gap;
          const [forward, back] = [(moved(h) - contact.gap) / h, (contact.gap - moved(-h)) / h];
          // On a kink, where another corner takes over, there is no one slope to compare with.
          if (Math.abs(forward - back) > 1e-3) continue;
          compared++;
          expect(Math.abs((forward + back) / 2 - (slope[j] ?? Number.NaN))).toBeLessThan(2e-4);
        }
      }
    }),
    { numRuns: 400, seed: 34, endOnFailure: true },
  );
  expect(compared).toBeGreaterThan(4000);
});
