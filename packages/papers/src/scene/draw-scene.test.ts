import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawDimension } from "./draw-dimension.ts";
import { drawScene } from "./draw-scene.ts";
import type { Drawn, DrawnText } from "./drawn.ts";
import { hatchStrokes } from "./hatch.ts";
import type { DimensionShape, Scene } from "./scene.ts";

const scene = (...shapes: Scene["shapes"]): Scene => ({
  shapes,
  extent: { left: 0, top: 0, right: 1, bottom: 1 },
});
const dimension: DimensionShape = {
  kind: "dimension",
  role: "dimension",
  from: { x: 0, y: 0 },
  to: { x: 100, y: 30 },
  direction: 0,
  base: { x: 0, y: 40 },
  away: 8,
  text: "1000",
};
const textOf = (items: readonly Drawn[]) => items.find((item): item is DrawnText => item.kind === "text");
const tips = (items: readonly Drawn[]) =>
  items.flatMap((item) => (item.kind === "path" ? [item.spots.slice(0, 2)] : []));

describe("[I1] dimensions as a drafter draws them", () => {
  test("the line stands off its base, arrows touch its ends, the text is above its middle", () => {
    const items = drawDimension(dimension);
    expect(tips(items).map(([tip]) => tip)).toEqual([
      { x: 0, y: 48 },
      { x: 100, y: 48 },
    ]);
    expect(textOf(items)?.at.x).toBeCloseTo(50, 9);
    expect(textOf(items)?.at.y).toBeCloseTo(48 - 0.9, 9);
  });

  test("extension lines keep clear of the body and run past the line", () => {
    const [strokes] = drawDimension(dimension);
    if (strokes?.kind !== "strokes") throw new Error("no strokes");
    expect(strokes.strokes.slice(0, 2)).toEqual([
      [
        { x: 0, y: 1 },
        { x: 0, y: 49.5 },
      ],
      [
        { x: 100, y: 31 },
        { x: 100, y: 49.5 },
      ],
    ]);
  });

  test("a text that does not fit goes outside and the arrows point inward", () => {
    const items = drawDimension({ ...dimension, to: { x: 6, y: 0 } });
    expect(textOf(items)?.at.x).toBeGreaterThan(6 + 4);
    // Shaft of the first arrow to the left of its tip, of the second to the right.
    const shafts = tips(items).map(([tip, side]) => Math.sign((side?.x ?? 0) - (tip?.x ?? 0)));
    expect(shafts).toEqual([-1, 1]);
  });

  test("texts read from the foot or from the right, whichever way a dimension runs", () => {
    fc.assert(
      fc.property(fc.double({ min: -7, max: 7, noNaN: true }), fc.boolean(), (direction, swapped) => {
        const ends = {
          from: { x: 0, y: 0 },
          to: { x: 200 * Math.cos(direction), y: 200 * Math.sin(direction) },
        };
        const shape = { ...dimension, ...(swapped ? { from: ends.to, to: ends.from } : ends), direction };
        const turn = textOf(drawDimension({ ...shape, base: { x: 0, y: 0 } }))?.turn ?? Number.NaN;
        expect(turn).toBeGreaterThanOrEqual(-Math.PI / 2 - 1e-9);
        expect(turn).toBeLessThan(Math.PI / 2);
      }),
      { seed: 5, numRuns: 200 },
    );
  });
});

describe("[I1] hatches", () => {
  const corner = fc.double({ min: -50, max: 50, noNaN: true });
  test("every stroke lies in the outline's box, at 45°, on one grid", () => {
    fc.assert(
      fc.property(corner, corner, corner, corner, (a, b, c, d) => {
        const [left, right] = [Math.min(a, b), Math.max(a, b)];
        const [top, bottom] = [Math.min(c, d), Math.max(c, d)];
        const outline = [
          { x: left, y: top },
          { x: right, y: top },
          { x: right, y: bottom },
          { x: left, y: bottom },
        ];
        for (const [from, to] of hatchStrokes(outline, 2)) {
          for (const spot of [from, to]) {
            expect(spot.x).toBeGreaterThan(left - 1e-9);
            expect(spot.x).toBeLessThan(right + 1e-9);
            expect(spot.y).toBeGreaterThan(top - 1e-9);
            expect(spot.y).toBeLessThan(bottom + 1e-9);
          }
          expect(from.x + from.y).toBeCloseTo(to.x + to.y, 9);
          const line = ((from.x + from.y) * Math.SQRT1_2) / 2;
          expect(line).toBeCloseTo(Math.round(line), 9);
        }
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  test("their length makes up the area: spacing times length is near the area of an L", () => {
    const ell = [
      { x: 0, y: 0 },
      { x: 60, y: 0 },
      { x: 60, y: 20 },
      { x: 20, y: 20 },
      { x: 20, y: 60 },
      { x: 0, y: 60 },
    ];
    const length = hatchStrokes(ell, 0.05).reduce(
      (sum, [from, to]) => sum + Math.hypot(to.x - from.x, to.y - from.y),
      0,
    );
    // 60 × 20 + 20 × 40 = 2000.
    expect(length * 0.05).toBeGreaterThan(1990);
    expect(length * 0.05).toBeLessThan(2010);
  });

  test("a spacing of nothing is refused", () => {
    expect(() => hatchStrokes([], 0)).toThrow("hatchStrokes found a spacing of 0");
  });
});

describe("[F10] scenes at a scale", () => {
  test("marks and letters keep their size, bodies do not", () => {
    const shapes = scene(
      { kind: "circle", role: "fixed", centre: { x: 100, y: 0 }, radius: 50, fill: "none" },
      { kind: "mark", role: "ram", mark: "pin", at: { x: 0, y: 0 } },
    );
    const radii = (denominator: number) =>
      drawScene(shapes, { denominator, origin: { x: 0, y: 0 } }).flatMap((item) =>
        item.kind === "circle" ? [item.radius] : [],
      );
    expect(radii(5)).toEqual([10, 1.5]);
    expect(radii(10)).toEqual([5, 1.5]);
  });

  test("a name stands inside its body at a scale at which it fits, beside it otherwise", () => {
    const named = scene({
      kind: "text",
      role: "note",
      at: { x: 0, y: 0 },
      text: "pier",
      size: 3,
      anchor: "start",
      turn: 0,
      shift: { x: 0, y: -1 },
      inside: { left: 0, top: 0, right: 400, bottom: 400 },
    });
    const at = (denominator: number) => textOf(drawScene(named, { denominator, origin: { x: 0, y: 0 } }))?.at;
    expect(at(10)?.x).toBe(20);
    expect(at(100)).toEqual({ x: 0, y: -1 });
  });

  test("a scale of nothing is refused", () => {
    expect(() => drawScene(scene(), { denominator: 0, origin: { x: 0, y: 0 } })).toThrow("1 : 0");
  });
});
