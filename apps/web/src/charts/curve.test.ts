import { describe, expect, test } from "vitest";
import { type Curve, extremes, pieces, valueAt } from "./curve.ts";

const curve = (values: number[]): Curve => ({
  id: "lever",
  name: "Lever arm",
  what: "length",
  theta: Float64Array.from(values, (_, i) => i * 0.5),
  values: Float64Array.from(values),
  limit: null,
});

describe("a series over the leaf's angle", () => {
  test("[I3] is read between its samples and at both ends", () => {
    expect(valueAt(curve([1, 3, 2]), 0.25)).toBe(2);
    expect(valueAt(curve([1, 3, 2]), 0)).toBe(1);
    expect(valueAt(curve([1, 3, 2]), 9)).toBe(2);
    expect(valueAt(curve([1, Number.NaN, 2]), 0.4)).toBe(null);
  });

  test("[I3] has its extremes with their angles, and none without a number", () => {
    expect(extremes(curve([2, 1, 5]))).toEqual({ least: 1, leastAt: 0.5, greatest: 5, greatestAt: 1 });
    expect(extremes(curve([Number.NaN]))).toBe(null);
  });

  test("[I3] is drawn broken where there is no number", () => {
    const frame = { left: 0, right: 100, top: 0, bottom: 50 };
    expect(pieces(curve([1, 2, Number.NaN, 2, 1]), frame).map((piece) => piece.length)).toEqual([2, 2]);
  });
});
