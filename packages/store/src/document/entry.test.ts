import fc from "fast-check";
import { expect, test } from "vitest";
import { unhurried } from "../testing/unhurried.ts";
import { readEntry } from "./entry.ts";
import { JobTree, jsonOf } from "./job-tree.ts";

test("[T8] what another program put into the document is read as an entry or passed over", () => {
  const strange = [
    undefined,
    [],
    {},
    new Uint8Array(2),
    Number.NaN,
    { list: 1 },
    { value: {} },
    { value: [] },
    { at: 1 },
  ];
  expect(strange.map(readEntry)).toEqual(strange.map(() => undefined));
  expect(readEntry({ keys: ["a", 1], at: "x" })).toEqual({ keys: ["a"] });
  expect(readEntry({ value: 3, at: Number.NaN })).toEqual({ value: 3, at: 0 });
});

test(
  "[T8] any keys with any entries end in JSON, never in an error",
  () => {
    const segment = fc.constantFrom(".a", ".b", "@x", "@y", "a", ".__proto__", "");
    const key = fc.oneof(
      fc.array(segment, { maxLength: 4 }).map((all) => all.join("/")),
      fc.constant("/.a".repeat(5000)),
    );
    const raw = fc.oneof(
      fc.constantFrom({ keys: ["a"] }, { list: true }, { list: true, at: 1 }),
      fc.jsonValue(),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(key, raw), { maxLength: 20 }), (stored) => {
        const tree = new JobTree();
        tree.takeStored("", { keys: [] });
        for (const [where, what] of stored) tree.takeStored(where, what);
        expect(() => JSON.stringify(jsonOf(tree.root))).not.toThrow();
      }),
      { seed: 20_417, numRuns: 200 },
    );
  },
  unhurried,
);
