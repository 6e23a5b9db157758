// What the README shows is what happens: its output blocks are held to real runs, its library example is run.
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test, vi } from "vitest";
import { root } from "./places.mjs";

const readme = readFileSync(join(root, "README.md"), "utf8");

/** Blocks of output, each under a comment with the command that prints it. */
const shown = [...readme.matchAll(/<!-- output of: pintle (.+?) -->\n```text\n([\s\S]*?)```/g)].map(
  ([, command = "", text = ""]) => ({ command, lines: text.trimEnd().split("\n") }),
);

test("the README shows real output", () => {
  expect(shown.length).toBeGreaterThanOrEqual(2);
});

test.each(shown)("[I15] the README's output of pintle $command", ({ command, lines }) => {
  const run = spawnSync(process.execPath, [join(root, "dist", "pintle.mjs"), ...command.split(" ")], {
    cwd: root,
    encoding: "utf8",
  });
  const printed = run.stdout.split("\n").map((line) => line.trimEnd());
  // "..." stands for lines left out; the others follow each other in this order.
  let from = 0;
  for (const line of lines.filter((one) => one.trim() !== "..." && one.trim() !== "")) {
    const at = printed.indexOf(line.trimEnd(), from);
    expect(at, `line of the README that pintle does not print here: ${line}`).toBeGreaterThanOrEqual(0);
    from = at + 1;
  }
});

test("[I17] the README's library example runs and prints what it says", async () => {
  const code = /```ts\n([\s\S]*?)```/.exec(readme)?.[1] ?? "";
  const expected = [...code.matchAll(/^\/\/ prints: (.*)$/gm)].map(([, text]) => text);
  expect(expected.length).toBeGreaterThan(0);
  // Inside the checkout, so that the package names lead to the packages.
  const folder = join(root, ".cache", "readme");
  mkdirSync(folder, { recursive: true });
  const file = join(folder, "library-example.ts");
  writeFileSync(file, code);
  const log = vi.spyOn(console, "log").mockImplementation(() => {});
  const before = process.cwd();
  try {
    process.chdir(root);
    await import(pathToFileURL(file).href);
    expect(log.mock.calls.map((words) => words.join(" "))).toEqual(expected);
  } finally {
    process.chdir(before);
    log.mockRestore();
  }
});
