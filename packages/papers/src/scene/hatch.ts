import type { Spot } from "./scene.ts";

/**
 * Lines at 45° inside a simple outline, `spacing` apart, on a grid that is fixed to the page so that pieces of
 * one body hatch as one (even-odd rule).
 *
 * ### Example
 *   const square = [{ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 10, y: 10 }, { x: 0, y: 10 }];
 *   expect(hatchStrokes(square, 8)).toHaveLength(1);
 *   expect(hatchStrokes(square, 2)).toHaveLength(7);
 */
export function hatchStrokes(outline: readonly Spot[], spacing: number): [Spot, Spot][] {
  if (!(spacing > 0))
    throw new RangeError(`hatchStrokes found a spacing of ${spacing}; it expects more than 0`);
  // In axes turned by 45°: u along the hatch lines, v across them.
  const turned = outline.map(({ x, y }) => ({ u: (x - y) * Math.SQRT1_2, v: (x + y) * Math.SQRT1_2 }));
  const vs = turned.map((corner) => corner.v);
  const first = Math.floor(Math.min(...vs) / spacing) + 1;
  const last = Math.ceil(Math.max(...vs) / spacing) - 1;
  const strokes: [Spot, Spot][] = [];
  for (let step = first; step <= last; step++) {
    const v = step * spacing;
    const cuts = crossings(turned, v);
    for (let i = 0; i + 1 < cuts.length; i += 2) {
      strokes.push([back(cuts[i] as number, v), back(cuts[i + 1] as number, v)]);
    }
  }
  return strokes;
}

const back = (u: number, v: number): Spot => ({ x: (u + v) * Math.SQRT1_2, y: (v - u) * Math.SQRT1_2 });

function crossings(corners: readonly { readonly u: number; readonly v: number }[], v: number): number[] {
  const found: number[] = [];
  corners.forEach((from, index) => {
    const to = corners[(index + 1) % corners.length];
    // Half open, so that a line through a corner is counted once.
    if (to === undefined || from.v <= v === to.v <= v) return;
    found.push(from.u + ((v - from.v) / (to.v - from.v)) * (to.u - from.u));
  });
  return found.sort((a, b) => a - b);
}
