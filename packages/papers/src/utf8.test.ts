import fc from "fast-check";
import { expect, test } from "vitest";
import { jobMark } from "./sheets/job-mark.ts";
import { utf8 } from "./utf8.ts";

test("the bytes are those of the platform's own encoder", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 40 }), (text) => {
      expect([...utf8(text)]).toEqual([...Buffer.from(text, "utf8")]);
    }),
    { seed: 1, numRuns: 500 },
  );
  expect([...utf8("\ud83d!")]).toEqual([...Buffer.from("\ud83d!", "utf8")]);
});

// Test vectors of the 32-bit FNV-1a hash as its authors publish them (remembered: "", "a", "foobar").
test.each([
  ["", "811c9dc5"],
  ["a", "e40c292c"],
  ["foobar", "bf9cf968"],
])("the mark of %j is %s", (text, mark) => {
  expect(jobMark(text)).toBe(mark);
});
