import { describe, expect, test } from "vitest";
import { locatePoint } from "./locate-point.ts";

const from = (x: number, y: number, distance: number) => ({ from: { x, y }, distance });

describe("a point from tape lengths", () => {
  test("[G18] two lengths cross twice: the crossing nearer to where it should be is taken, the other told", () => {
    // 3-4-5 triangles by hand.
    const two = [from(0, 0, 5), from(6, 0, 5)];
    const up = locatePoint(two, { x: 3, y: 1 });
    const down = locatePoint(two, { x: 3, y: -1 });
    expect(up.ok && up.value.point.y).toBeCloseTo(4, 9);
    expect(up.ok && up.value.other?.y).toBeCloseTo(-4, 9);
    expect(down.ok && down.value.point.y).toBeCloseTo(-4, 9);
  });

  test("[G18] a third length settles the side", () => {
    const located = locatePoint([from(0, 0, 5), from(6, 0, 5), from(3, 6, 2)]);
    expect(located.ok && located.value.point.y).toBeCloseTo(4, 9);
    expect(located.ok && located.value.other).toBeNull();
  });

  test("[G18] fewer than two lengths, or all from one place, do not settle it", () => {
    expect(locatePoint([])).toEqual({ ok: false, reason: "notSettled" });
    expect(locatePoint([from(0, 0, 5)])).toEqual({ ok: false, reason: "notSettled" });
    expect(locatePoint([from(0, 0, 5), from(0, 0, 5.001)])).toEqual({ ok: false, reason: "notSettled" });
  });

  test("[G18] a length that is no length is refused by its place in the list", () => {
    expect(() => locatePoint([from(0, 0, 5), from(6, 0, 0)])).toThrow(/distances\[1\]\.distance 0 found/);
  });
});
