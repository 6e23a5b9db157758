import Flatten from "@flatten-js/core";
import fc from "fast-check";
import { expect, test, vi } from "vitest";
import type { ClearanceCheck, Placement, Situation } from "../src/index.ts";
import { clearanceChecks, gapAt, leastGap, turnSign } from "../src/index.ts";
import { anySituation, between } from "./arbitrary-gate.ts";
import { polygonGap } from "./brute-reserve.ts";

// @flatten-js/core 1.6.15: plane geometry by other people. Bodies are laid out here from the rules, in the fixed
// frame (the core measures against the leaf in the leaf's own axes).

vi.setConfig({ testTimeout: 120_000 });

/** The library takes closer numbers than a millionth for equal, and its distances show it. */
const libraryTolerance = 2e-6;

type Corner = readonly [number, number];

function turned(corners: readonly Corner[], phi: number): Corner[] {
  return corners.map(([x, y]) => [
    x * Math.cos(phi) - y * Math.sin(phi),
    x * Math.sin(phi) + y * Math.cos(phi),
  ]);
}

/** The bars of the ram that a check is about, in the fixed frame; without a rod that is not out. */
function bars(situation: Situation, placement: Placement, phi: number, ofRod: boolean): Corner[][] {
  const { postPin, leafPin, rise } = placement;
  const a: Corner = [postPin.along, postPin.out];
  const [b] = turned([[leafPin.along, leafPin.off]], phi) as [Corner];
  const plan = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const level = plan / Math.hypot(plan, rise);
  const [ux, uy] = [(b[0] - a[0]) / plan, (b[1] - a[1]) / plan];
  const bar = (from: number, to: number, half: number): Corner[] => [
    [a[0] + from * ux + half * uy, a[1] + from * uy - half * ux],
    [a[0] + to * ux + half * uy, a[1] + to * uy - half * ux],
    [a[0] + to * ux - half * uy, a[1] + to * uy + half * ux],
    [a[0] + from * ux - half * uy, a[1] + from * uy + half * ux],
  ];
  const { tube, rodHalfWidth } = situation.ram;
  if (!ofRod) return tube.map(({ from, to, halfWidth }) => bar(from * level, to * level, halfWidth));
  const start = Math.max(...tube.map(({ to }) => to)) * level;
  const end = plan - 0.08 * level;
  return end > start ? [bar(start, end, rodHalfWidth)] : [];
}

function obstacles({ leaf, fixed }: Situation, check: ClearanceCheck, phi: number): Corner[][] {
  if (!check.inLeafFrame) {
    return fixed
      .filter(({ name }) => check.id === "rod.contact" || check.id === `clearance.${name}`)
      .map(({ outline }) => outline.map(({ x, y }): Corner => [x, y]));
  }
  const panel = {
    alongFrom: leaf.heel,
    alongTo: leaf.length,
    offFrom: leaf.face - leaf.thickness,
    offTo: leaf.face,
  };
  return [panel, ...leaf.boxes].map(({ alongFrom, alongTo, offFrom, offTo }) =>
    turned(
      [
        [alongFrom, offFrom],
        [alongTo, offFrom],
        [alongTo, offTo],
        [alongFrom, offTo],
      ],
      phi,
    ),
  );
}

const polygon = (corners: readonly Corner[]) =>
  new Flatten.Polygon(corners.map(([x, y]) => new Flatten.Point(x, y)));

/** Least distance of any two; 0 where some two overlap or one lies in the other. */
function flattenDistance(rams: readonly Corner[][], things: readonly Corner[][]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const ram of rams.map(polygon)) {
    for (const thing of things.map(polygon)) {
      const [distance] = ram.distanceTo(thing);
      const inside =
        ram.vertices.some((p) => thing.contains(p)) || thing.vertices.some((p) => ram.contains(p));
      least = Math.min(least, inside ? 0 : distance);
    }
  }
  return least;
}

test("[G7] gaps at an angle are the distances of a plane-geometry library, overlaps its overlaps", () => {
  const seen = { parted: 0, overlapping: 0 };
  fc.assert(
    fc.property(anySituation, between(0, 1), ({ situation, placement }, share) => {
      const { travel } = situation.leaf;
      const theta = share * travel.openAngle;
      const phi = turnSign(travel) * theta;
      for (const check of clearanceChecks(situation)) {
        const own = gapAt(check, placement, travel, theta);
        const rams = bars(situation, placement, phi, check.id === "rod.contact");
        const other = flattenDistance(rams, obstacles(situation, check, phi));
        if (Math.abs(own) < 2 * libraryTolerance) continue;
        if (own > 0) {
          seen.parted++;
          if (other === Number.POSITIVE_INFINITY) expect(own).toBe(other);
          else expect(Math.abs(own - other)).toBeLessThan(libraryTolerance);
        } else {
          seen.overlapping++;
          expect(other).toBeLessThan(libraryTolerance);
        }
      }
    }),
    { numRuns: 400, seed: 51, endOnFailure: true },
  );
  expect(seen.parted).toBeGreaterThan(400);
  expect(seen.overlapping).toBeGreaterThan(50);
});

test("[G7] the place that is reported lies on the ram, as far from the obstacle as the gap", () => {
  let compared = 0;
  fc.assert(
    fc.property(anySituation, ({ situation, placement }) => {
      const { travel } = situation.leaf;
      for (const check of clearanceChecks(situation)) {
        const least = leastGap(check, placement, travel);
        if (least === null || least.gap < 1e-5) continue;
        compared++;
        const phi = turnSign(travel) * least.atAngle;
        const point = new Flatten.Point(least.where.x, least.where.y);
        const away = obstacles(situation, check, phi).map((thing) => point.distanceTo(polygon(thing))[0]);
        expect(Math.abs(Math.min(...away) - least.gap)).toBeLessThan(1e-6);
        const rams = bars(situation, placement, phi, check.id === "rod.contact");
        expect(Math.min(...rams.map((ram) => point.distanceTo(polygon(ram))[0]))).toBeLessThan(1e-6);
      }
    }),
    { numRuns: 200, seed: 52, endOnFailure: true },
  );
  expect(compared).toBeGreaterThan(150);
});

test("the brute force's own distance agrees with the library too", () => {
  const corner = fc.tuple(between(-1, 1), between(-1, 1));
  const triangle = fc
    .tuple(corner, corner, corner)
    .filter(([a, b, c]) => Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) > 0.02);
  fc.assert(
    fc.property(triangle, triangle, between(0, 2), (one, two, shift) => {
      const other = two.map(([x, y]): Corner => [x + shift, y]);
      const own = polygonGap(one.flat(), other.flat());
      const distance = flattenDistance([one.map(([x, y]): Corner => [x, y])], [other]);
      if (own > 1e-5) expect(Math.abs(own - distance)).toBeLessThan(libraryTolerance);
      if (own < -1e-5) expect(distance).toBeLessThan(libraryTolerance);
    }),
    { numRuns: 500, seed: 53, endOnFailure: true },
  );
});
