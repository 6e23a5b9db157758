import { expect, test } from "vitest";
import { faultLines, foundInWords, pathInWords } from "./fault.ts";

test.each([
  [undefined, "nothing"],
  [null, "null"],
  [3.5, "3.5"],
  [Number.POSITIVE_INFINITY, "a number too large to hold"],
  [true, "true"],
  ["a\nb", 'the text "a\\nb"'],
  ["x".repeat(60), `the text "${"x".repeat(48)}…"`],
  [[], "an empty list"],
  [[1, 2], "[1, 2]"],
  [[1, 2, 3, 4, 5], "a list of 5"],
  [["a"], "a list of 1"],
  [{}, "an object"],
])("%j is named as %s", (value, words) => {
  expect(foundInWords(value)).toBe(words);
});

test("paths quote keys that are no plain names", () => {
  expect(pathInWords([])).toBe("");
  expect(pathInWords(["leaves", 0, "a b", "c"])).toBe('leaves[0]["a b"].c');
});

test("very many faults are capped, and the rest counted", () => {
  const faults = Array.from({ length: 120 }, (_, i) => ({
    path: `rams[${i}].id`,
    found: "3",
    expected: "text",
  }));
  const lines = faultLines(faults);
  expect(lines).toHaveLength(51);
  expect(lines[50]).toBe("and 70 more faults");
  expect(faultLines(faults.slice(0, 2))).toHaveLength(2);
});
