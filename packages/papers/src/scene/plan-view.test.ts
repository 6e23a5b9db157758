import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { onDrawing, planView, turnOnDrawing } from "./plan-view.ts";

// Worked out on paper: a person on the ram's side looks across the page from its foot; what is at their right
// hand is at the right of the page. A left-hand hinge is at their left, so the leaf runs to the right.
describe("[I1][G1] where the job's frame lies on the page", () => {
  test.each([
    ["left", "ramSide", { x: 1, y: 2 }],
    ["right", "ramSide", { x: -1, y: 2 }],
    ["left", "otherSide", { x: -1, y: -2 }],
    ["right", "otherSide", { x: 1, y: -2 }],
  ] as const)("hinge on the %s, reader on the %s", (hingeSide, standsOn, expected) => {
    expect(onDrawing(planView(hingeSide, standsOn), { x: 1, y: 2 })).toEqual(expected);
  });

  test("going round the gate turns the page and mirrors nothing", () => {
    for (const hingeSide of ["left", "right"] as const) {
      const here = planView(hingeSide, "ramSide");
      const there = planView(hingeSide, "otherSide");
      expect(here.alongSign * here.outSign).toBe(there.alongSign * there.outSign);
    }
  });

  test("a direction is turned as the points are", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("left" as const, "right" as const),
        fc.constantFrom("ramSide" as const, "otherSide" as const),
        fc.double({ min: -3.1, max: 3.1, noNaN: true }),
        (hingeSide, standsOn, angle) => {
          const view = planView(hingeSide, standsOn);
          const on = onDrawing(view, { x: Math.cos(angle), y: Math.sin(angle) });
          const turned = turnOnDrawing(view, angle);
          expect(Math.hypot(Math.cos(turned) - on.x, Math.sin(turned) - on.y)).toBeLessThan(1e-12);
        },
      ),
      { seed: 11, numRuns: 200 },
    );
  });
});
