import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { root } from "../places.mjs";
import { findExamples } from "./find-examples.mjs";
import { indexExports } from "./index-exports.mjs";
import { sourceFiles } from "./write-example-tests.mjs";

/** Fewer than this means that the search for examples broke, not that they were taken away. */
const fewestExamples = 12;

const packages = readdirSync(join(root, "packages"));

test("examples are found in the docstrings of the packages", () => {
  const sources = packages.flatMap(sourceFiles).map((file) => readFileSync(join(root, file), "utf8"));
  expect(sources.flatMap(findExamples).length).toBeGreaterThanOrEqual(fewestExamples);
});

test("an example is the indented lines under its heading, named after what it stands before", () => {
  const source = `/**\n * What.\n *\n * ### Example\n *   expect(one()).toBe(1);\n *\n * @returns 1\n */\nexport function one() {}\n`;
  expect(findExamples(source)).toEqual([{ name: "one", line: 4, code: "  expect(one()).toBe(1);\n\n" }]);
});

test.each(packages)("every function that %s offers has a docstring with an example", (name) => {
  const functions = indexExports(join(root, "packages", name, "src", "index.ts")).filter(
    (one) => one.isFunction,
  );
  const lacking = functions.flatMap(({ name: called, docstring }) => {
    if (docstring === "") return [`${called}: no docstring`];
    return docstring.includes("### Example") ? [] : [`${called}: no example`];
  });
  expect(lacking).toEqual([]);
  expect(functions.length).toBeGreaterThan(0);
});
