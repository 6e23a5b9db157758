import { expect, test } from "vitest";
import { wrapped } from "./wrapped.ts";

test("[I15] a text is broken between words, and set in as far as what opens it", () => {
  expect(wrapped("one two three four", 12, "- ")).toEqual(["- one two", "  three four"]);
});

test("[I15] a word wider than the page stands alone and whole", () => {
  expect(wrapped("a unbreakableword b", 6)).toEqual(["a", "unbreakableword", "b"]);
});

test("[I15] a no-break space keeps its words together", () => {
  expect(wrapped("aa bb\u00a0cc", 6)).toEqual(["aa", "bb\u00a0cc"]);
});
