// Turns every docstring example of the packages into a test file of its own, so that the examples run and are type-checked.
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join, relative, sep } from "node:path";
import { root } from "../places.mjs";
import { findExamples } from "./find-examples.mjs";
import { indexExports } from "./index-exports.mjs";

/** Git-ignored, inside the checkout so that package names resolve. */
export const exampleTestsFolder = ".cache/examples";

/** @param {string} packageName @returns {string[]} source files, tests left out, relative to the root */
export function sourceFiles(packageName) {
  const folder = join(root, "packages", packageName, "src");
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts") && !name.endsWith(".test.ts"))
    .map((name) => relative(root, join(folder, name)).split(sep).join("/"))
    .sort();
}

/** Writes the test files anew. */
export async function writeExampleTests() {
  for (const packageName of readdirSync(join(root, "packages"))) {
    const target = join(root, exampleTestsFolder, packageName);
    const offered = indexExports(join(root, "packages", packageName, "src", "index.ts"));
    /** @type {Set<string>} */
    const written = new Set();
    for (const file of sourceFiles(packageName)) {
      const examples = findExamples(readFileSync(join(root, file), "utf8"));
      if (examples.length === 0) continue;
      const path = join(target, file.replace(/^packages\/[^/]+\/src\//, "").replace(/\.ts$/, ".test.ts"));
      writeIfChanged(path, testFile(packageName, file, examples, offered));
      written.add(path);
    }
    removeOthers(target, written);
  }
}

/** @param {string} packageName @param {string} file @param {import("./find-examples.mjs").Example[]} examples @param {import("./index-exports.mjs").Export[]} offered */
function testFile(packageName, file, examples, offered) {
  const code = examples.map((example) => example.code).join("\n");
  const used = offered.filter(({ name }) => new RegExp(`(?<![.\\w$])${name}(?![\\w$])`).test(code));
  const imports = used.map(({ name, kind }) => (kind === "type" ? `type ${name}` : name)).sort();
  const tests = examples.map(
    ({ name, line, code: body }) =>
      `// ${file}:${line}\ntest(${JSON.stringify(`example of ${file} ${name}`)}, async () => {\n  expect.hasAssertions();\n${body.trimEnd()}\n});\n`,
  );
  return [
    'import { expect, test } from "vitest";',
    ...(imports.length > 0 ? [`import { ${imports.join(", ")} } from "@pintle/${packageName}";`] : []),
    "",
    ...tests,
  ].join("\n");
}

/** @param {string} path @param {string} text */
function writeIfChanged(path, text) {
  if (existsSync(path) && readFileSync(path, "utf8") === text) return;
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
}

/** An example that was taken away must not go on being tested. @param {string} folder @param {Set<string>} kept */
function removeOthers(folder, kept) {
  if (!existsSync(folder)) return;
  for (const name of readdirSync(folder, { recursive: true, encoding: "utf8" })) {
    const path = join(folder, name);
    if (path.endsWith(".test.ts") && !kept.has(path)) rmSync(path);
  }
}
