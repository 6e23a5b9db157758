import { expect, test } from "vitest";
import * as Y from "yjs";
import { DocumentWriter } from "./document-writer.ts";
import { JobTree, jsonOf } from "./job-tree.ts";

function documentOf(value: unknown) {
  const entries = new Y.Doc().getMap("job");
  const tree = new JobTree();
  let id = 0;
  const writer = new DocumentWriter(entries, tree, () => {
    id += 1;
    return `i${id}`;
  });
  writer.write(tree.root, value);
  return { entries, write: (next: unknown) => writer.write(tree.root, next), json: () => jsonOf(tree.root) };
}

test("each value stands under a key of its own, list items under an id, short lists of numbers by place", () => {
  const { entries } = documentOf({ title: "x", rams: [{ id: "r" }], offMm: [85, 145], "a/b~": null });
  expect(Object.fromEntries(entries.entries())).toEqual({
    "": { keys: ["title", "rams", "offMm", "a/b~"] },
    ".title": "x",
    ".rams": { list: true },
    ".rams/@i1": { keys: ["id"], at: 1 },
    ".rams/@i1/.id": "r",
    ".offMm": { list: true },
    ".offMm/@0": { value: 85, at: 1 },
    ".offMm/@1": { value: 145, at: 2 },
    ".a~1b~0": null,
  });
});

test("nothing is left of a value that another one replaced", () => {
  const { entries, write, json } = documentOf({ a: { b: [1, { c: 2 }] }, d: [[1], { e: 1 }] });
  for (const value of [{ a: [{ b: 1 }], d: { e: [1] } }, { a: 1, d: [] }, {}]) {
    write(value);
    expect(json()).toEqual(value);
    const other = documentOf(value);
    expect(entries.size).toBe(other.entries.size);
  }
});

test("only what differs is written", () => {
  const { entries, write } = documentOf({
    a: 1,
    list: [
      { id: "x", w: 1 },
      { id: "y", w: 1 },
    ],
    same: { deep: [1, 2] },
  });
  const written: string[] = [];
  entries.observe(({ keysChanged }) => written.push(...(keysChanged as Set<string>)));
  write({
    a: 1,
    list: [
      { id: "y", w: 2 },
      { id: "x", w: 1 },
    ],
    same: { deep: [1, 2] },
  });
  expect(written.sort()).toEqual([".list/@i2", ".list/@i2/.w"]);
});
