import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Span } from "../placement/reach.ts";
import { type Cell, cellsOf, halves, longestSide, nearestPossible } from "./cell.ts";

const anywhere = (from: number, to: number): Span => ({ from, to, step: null });
const steps = (from: number, to: number, step: number): Span => ({ from, to, step });

function cellOf(spans: readonly [Span, Span, Span, Span]): Cell {
  const [along, out, d, off] = spans;
  const [cell] = cellsOf({
    postPin: [{ bracket: "post", along, out }],
    leafPin: [{ bracket: "leaf", along: d, off }],
    rise: 0,
  });
  if (cell === undefined) throw new Error("a cell expected, none found");
  return cell;
}

/** Every possible value of coordinate 0 in a cell, by counting from its origin. */
function possible(cell: Cell): number[] {
  const [low, high, origin, step] = [cell.low[0], cell.high[0], cell.origin[0], cell.step[0]].map(
    (v) => v ?? Number.NaN,
  ) as [number, number, number, number];
  return Array.from({ length: 2000 }, (_, i) => origin + i * step).filter(
    (value) => value > low - 1e-8 && value < high + 1e-8,
  );
}

describe("[G13] boxes of placements", () => {
  test("a span that ends between steps ends at the last step", () => {
    const cell = cellOf([steps(0, 0.107, 0.01), anywhere(0.1, 0.2), anywhere(0.8, 1), anywhere(0.1, 0.1)]);
    expect(cell.high[0]).toBeCloseTo(0.1, 12);
    expect(nearestPossible(cell, 0, 5)).toBeCloseTo(0.1, 12);
    expect(nearestPossible(cell, 0, 0.0549)).toBeCloseTo(0.05, 12);
    expect(nearestPossible(cell, 0, -5)).toBe(0);
    expect(nearestPossible(cell, 1, 0.1234)).toBe(0.1234);
  });

  test("rounding loses no last step", () => {
    // 0.3 is not 3 × 0.1 in binary.
    expect(
      possible(cellOf([steps(0, 0.3, 0.1), anywhere(0, 1), anywhere(0, 1), anywhere(0, 1)])),
    ).toHaveLength(4);
  });

  test("misuse is named", () => {
    const rest = [anywhere(0.1, 0.2), anywhere(0.8, 1), anywhere(0.1, 0.1)] as const;
    expect(() => cellOf([anywhere(0.2, 0.1), ...rest])).toThrow(/from 0.2 to 0.1: expected from ≤ to/);
    expect(() => cellOf([steps(0, 1, 0), ...rest])).toThrow(/step 0: expected a positive step/);
    expect(() => cellOf([anywhere(Number.NaN, 1), ...rest])).toThrow(/expected from ≤ to/);
  });

  test("halving parts the steps: none lost, none twice", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: -400, max: 400 }),
        (count, stepMm, fromMm) => {
          const [from, step] = [fromMm / 1000, stepMm / 1000];
          const all = [
            cellOf([
              steps(from, from + count * step, step),
              anywhere(0, 1e-6),
              anywhere(0, 1e-6),
              anywhere(0, 1e-6),
            ]),
          ];
          const done: Cell[] = [];
          for (let cell = all.pop(); cell !== undefined; cell = all.pop()) {
            if ((cell.high[0] ?? 0) - (cell.low[0] ?? 0) < 1e-9) done.push(cell);
            else all.push(...halves(cell, 0));
          }
          expect(done).toHaveLength(count + 1);
          const values = done
            .map((cell) => Math.round(((cell.low[0] ?? 0) - from) / step))
            .sort((a, b) => a - b);
          expect(values).toEqual(Array.from({ length: count + 1 }, (_, i) => i));
        },
      ),
      { numRuns: 200, seed: 61 },
    );
  });

  test("halving a range leaves no gap", () => {
    const cell = cellOf([anywhere(-0.3, -0.1), anywhere(0.1, 0.2), anywhere(0.8, 1.4), anywhere(0.1, 0.1)]);
    expect(longestSide(cell)).toEqual({ j: 2, length: expect.closeTo(0.6, 12) });
    const [lower, upper] = halves(cell, 2);
    expect(lower?.low[2]).toBe(0.8);
    expect(lower?.high[2]).toBe(upper?.low[2]);
    expect(upper?.high[2]).toBe(1.4);
    expect(lower?.low[0]).toBe(cell.low[0]);
  });
});
