import { expect, test } from "vitest";
import { alignLists } from "./align-lists.ts";

test.each([
  {
    what: "a dragged corner stays the same corner",
    old: [
      [0, 0],
      [1, 0],
      [1, 1],
    ],
    next: [
      [0, 0],
      [2, 0],
      [1, 1],
    ],
    aligned: [0, 1, 2],
  },
  {
    what: "a corner put in leaves the others",
    old: [
      [0, 0],
      [1, 1],
    ],
    next: [
      [0, 0],
      [1, 0],
      [1, 1],
    ],
    aligned: [0, null, 1],
  },
  {
    what: "a corner taken out leaves the others",
    old: [
      [0, 0],
      [1, 0],
      [1, 1],
    ],
    next: [
      [0, 0],
      [1, 1],
    ],
    aligned: [0, 2],
  },
  {
    what: "things with an id are followed wherever they moved",
    old: [{ id: "a" }, { id: "b" }],
    next: [{ id: "b", w: 1 }, { id: "a" }],
    aligned: [1, 0],
  },
  {
    what: "another id is another thing, in the same place too",
    old: [{ id: "a", w: 1 }],
    next: [{ id: "b", w: 1 }],
    aligned: [null],
  },
  {
    what: "ids that occur twice are matched in order",
    old: [{ id: "a" }, { id: "a", w: 1 }],
    next: [{ id: "a", w: 1 }],
    aligned: [1],
  },
  {
    what: "a name does where there is no id",
    old: [{ name: "wall" }, { name: "pier" }],
    next: [{ name: "pier", w: 2 }],
    aligned: [1],
  },
  { what: "an object does not become a list", old: [{ w: 1 }], next: [[1]], aligned: [null] },
])("$what", ({ old, next, aligned }) => {
  expect(alignLists(old, next)).toEqual(aligned);
});
