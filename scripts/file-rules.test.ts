import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { root } from "./places.mjs";

const longest = 400;

/** Files of the checkout, new ones too, that people read and write; what git ignores is left out. */
const files = execFileSync("git", ["ls-files", "--cached", "--others", "--exclude-standard"], {
  cwd: root,
  encoding: "utf8",
})
  .split("\n")
  .filter((name) => name !== "" && name !== "package-lock.json" && existsSync(join(root, name)));
const sources = files.filter((name) => /\.(ts|tsx|mjs|js|css)$/.test(name));
const read = (name: string) => readFileSync(join(root, name), "utf8");

test("the rules look at the whole house", () => {
  expect(sources.length).toBeGreaterThan(30);
});

test(`no source file is longer than ${longest} lines`, () => {
  const long = sources.map((name) => ({ name, lines: read(name).split("\n").length - 1 }));
  expect(long.filter(({ lines }) => lines > longest)).toEqual([]);
});

test("every file is named after what it does", () => {
  const vague = /(^|[/.-])(utils?|helpers?|common|misc|managers?)([/.-]|$)/i;
  expect(files.filter((name) => vague.test(name))).toEqual([]);
});

test("no word stands for work left undone, and no sheet claims to comply", () => {
  // Put together here, so that this file does not find itself.
  const unwanted = new RegExp(
    `\\b(${["to" + "do", "fix" + "me", "lo" + "rem", "compl" + "iant"].join("|")})\\b`,
    "i",
  );
  const hits = files.flatMap((name) =>
    read(name)
      .split("\n")
      .flatMap((line, index) => (unwanted.test(line) ? [`${name}:${index + 1} ${line.trim()}`] : [])),
  );
  expect(hits).toEqual([]);
});
