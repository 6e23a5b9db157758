import { Polygon } from "@flatten-js/core";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { outlineFault, withoutClosingCorner } from "./simple-outline.ts";

type Corner = [number, number];
const square: Corner[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];

describe("outlineFault", () => {
  test("a square and an L are simple, closed or not", () => {
    expect(outlineFault(square)).toBe(null);
    expect(outlineFault([...square, [0, 0]])).toBe(null);
    expect(
      outlineFault([
        [0, 0],
        [20, 0],
        [20, 10],
        [10, 10],
        [10, 20],
        [0, 20],
      ]),
    ).toBe(null);
  });

  test.each<[string, Corner[], string]>([
    [
      "a bow tie crosses itself",
      [
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ],
      "the edge after corner 0 meets the edge after corner 2",
    ],
    [
      "corners on one line enclose nothing",
      [
        [0, 0],
        [10, 0],
        [5, 0],
      ],
      "the edge after corner 0 meets the edge after corner 1",
    ],
    [
      "a corner twice in a row",
      [
        [0, 0],
        [0, 0],
        [10, 0],
        [10, 10],
      ],
      "corner 1 repeats corner 0",
    ],
    [
      "two corners and the first again",
      [
        [0, 0],
        [10, 0],
        [0, 0],
      ],
      "2 different corners",
    ],
    [
      "a corner that touches another edge",
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [5, 0],
        [0, 10],
      ],
      "the edge after corner 0 meets the edge after corner 2",
    ],
  ])("%s", (_name, outline, found) => {
    expect(outlineFault(outline)?.found).toBe(found);
  });

  test("withoutClosingCorner drops only a last corner that repeats the first", () => {
    expect(withoutClosingCorner([...square, [0, 0]])).toEqual(square);
    expect(withoutClosingCorner(square)).toBe(square);
  });

  test("agrees with an independent polygon library (@flatten-js/core) on random outlines in general position", () => {
    // Three corners in a line or two alike are left to the cases above.
    const coordinate = fc.integer({ min: -500, max: 500 });
    const corner = fc.tuple(coordinate, coordinate);
    let simple = 0;
    fc.assert(
      fc.property(fc.array(corner, { minLength: 3, maxLength: 6 }), (outline) => {
        fc.pre(inGeneralPosition(outline));
        const theirs = new Polygon(outline.map(([x, y]) => [x, y] as [number, number])).isValid();
        if (theirs) simple += 1;
        expect(outlineFault(outline) === null).toBe(theirs);
      }),
      { seed: 7, numRuns: 1000, unbiased: true },
    );
    expect(simple).toBeGreaterThan(100);
  });
});

/** No three corners within a millimetre of one line, no two within a millimetre: the library works with a tolerance. */
function inGeneralPosition(outline: readonly (readonly [number, number])[]): boolean {
  return outline.every((a, i) =>
    outline.every((b, j) => {
      if (j <= i) return true;
      const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
      return (
        length > 1 &&
        outline.every((c, k) => {
          const area = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
          return k === i || k === j || Math.abs(area) / length > 1;
        })
      );
    }),
  );
}
