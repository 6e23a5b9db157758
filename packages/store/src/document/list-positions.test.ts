import fc from "fast-check";
import { expect, test } from "vitest";
import { unhurried } from "../testing/unhurried.ts";
import { positionsInOrder } from "./list-positions.ts";

test("an item put between two others gets a position between theirs, and they keep theirs", () => {
  expect(positionsInOrder([1, null, 2])).toEqual([1, 1.5, 2]);
  expect(positionsInOrder([null, 1, 2, null, null])).toEqual([0, 1, 2, 3, 4]);
});

test("an item that moved gets a new position, the others keep theirs", () => {
  expect(positionsInOrder([1, 4, 2, 3])).toEqual([1, 1.5, 2, 3]);
});

test("without room between two positions the list is numbered anew", () => {
  expect(positionsInOrder([1, null, 1 + Number.EPSILON])).toEqual([1, 2, 3]);
});

test("of two items that two people put at one position the later keeps it", () => {
  expect(positionsInOrder([5, null, 5])).toEqual([3, 4, 5]);
});

test(
  "positions always rise, and none changes that rose already",
  () => {
    const position = fc.option(fc.integer({ min: 0, max: 20 }), { nil: null });
    fc.assert(
      fc.property(fc.array(position, { maxLength: 12 }), (old) => {
        const found = positionsInOrder(old);
        expect(found.length).toBe(old.length);
        expect(found.every((at, index) => index === 0 || (found[index - 1] as number) < at)).toBe(true);
        const there = old.filter((at) => at !== null);
        const rises = there.every((at, index) => index === 0 || (there[index - 1] as number) < at);
        if (rises) expect(old.every((at, index) => at === null || at === found[index])).toBe(true);
      }),
      { seed: 20_417, numRuns: 400 },
    );
  },
  unhurried,
);

test("two hundred items put in at one spot, more than doubles have room for, stay in order", () => {
  let list: number[] = [1, 2];
  for (let step = 0; step < 200; step += 1)
    list = positionsInOrder([list[0] as number, null, ...list.slice(1)]);
  expect(list.every((at, index) => index === 0 || (list[index - 1] as number) < at)).toBe(true);
  expect(list.length).toBe(202);
});
