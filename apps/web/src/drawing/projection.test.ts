import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { pannedBy, projection, viewOf, zoomedAt } from "./projection.ts";

const paper = { width: 800, height: 600 };
const view = { centre: { x: 100, y: 50 }, scale: 0.4 };
const spot = fc.record({
  x: fc.double({ min: -5000, max: 5000, noNaN: true }),
  y: fc.double({ min: -5000, max: 5000, noNaN: true }),
});
const sides = fc.record({ hinge: fc.constantFrom("left" as const, "right" as const), other: fc.boolean() });

describe("plan and screen", () => {
  test("[I1] from plan to screen and back is where it began", () => {
    fc.assert(
      fc.property(spot, sides, (at, { hinge, other }) => {
        const on = projection(view, paper, hinge, other);
        const back = on.toPlan(on.toScreen(at));
        expect(back.x).toBeCloseTo(at.x, 6);
        expect(back.y).toBeCloseTo(at.y, 6);
      }),
      { seed: 7 },
    );
  });

  test("[I1] the ram's side is at the foot of the page for a reader on it, the hinge on the side that it is", () => {
    const left = projection(view, paper, "left", false);
    const hinge = left.toScreen({ x: 0, y: 0 });
    expect(left.toScreen({ x: 900, y: 140 }).x).toBeGreaterThan(hinge.x);
    expect(left.toScreen({ x: 900, y: 140 }).y).toBeGreaterThan(hinge.y);
    const right = projection(view, paper, "right", false);
    expect(right.toScreen({ x: 900, y: 140 }).x).toBeLessThan(right.toScreen({ x: 0, y: 0 }).x);
  });

  test("[I1] from the other side the plan is turned by half a turn, not mirrored", () => {
    const [here, there] = [false, true].map((other) => projection(view, paper, "left", other));
    const turnSense = (on: typeof here) => {
      const [o, x, y] = [
        { x: 0, y: 0 },
        { x: 1, y: 0 },
        { x: 0, y: 1 },
      ].map((each) => (on as NonNullable<typeof on>).toScreen(each)) as [
        typeof view.centre,
        typeof view.centre,
        typeof view.centre,
      ];
      return Math.sign((x.x - o.x) * (y.y - o.y) - (x.y - o.y) * (y.x - o.x));
    };
    expect(turnSense(there)).toBe(turnSense(here));
    expect(there?.flipX).toBe(-1);
  });

  test("[I1] zooming keeps the point under the finger where it is; panning moves it with the finger", () => {
    fc.assert(
      fc.property(
        spot,
        sides,
        fc.double({ min: 0.5, max: 2, noNaN: true }),
        (at, { hinge, other }, factor) => {
          const on = projection(view, paper, hinge, other);
          const finger = on.toScreen(at);
          const zoomed = projection(zoomedAt(view, on, finger, factor), paper, hinge, other);
          expect(zoomed.toScreen(at).x).toBeCloseTo(finger.x, 6);
          const panned = projection(pannedBy(view, on, 30, -20), paper, hinge, other);
          expect(panned.toScreen(at).x).toBeCloseTo(finger.x + 30, 6);
          expect(panned.toScreen(at).y).toBeCloseTo(finger.y - 20, 6);
        },
      ),
      { seed: 7 },
    );
  });

  test("[I1] a fitted view shows every point inside its margin", () => {
    const spots = [
      { x: -500, y: -300 },
      { x: 1200, y: 1100 },
    ];
    const on = projection(viewOf(spots, paper, 40), paper, "right", true);
    for (const each of spots) {
      const { x, y } = on.toScreen(each);
      expect(x).toBeGreaterThanOrEqual(39.9);
      expect(x).toBeLessThanOrEqual(760.1);
      expect(y).toBeGreaterThanOrEqual(39.9);
      expect(y).toBeLessThanOrEqual(560.1);
    }
  });
});
