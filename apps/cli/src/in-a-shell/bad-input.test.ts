import { chmodSync, mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { sampleJob } from "../testing/sample-job.ts";
import { freshFolder, pintle } from "./run-pintle.ts";

test("[I16] every fault has its line: file, path, found, expected; exit 2", () => {
  const folder = freshFolder({
    "a.json": sampleJob((job, leaf) => {
      job.display = "imperial";
      leaf.lengthMm = "long";
      leaf.swing = "up";
    }),
  });
  const { code, out, err } = pintle(["convert", "a.json"], { folder });
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err.trimEnd().split("\n").sort()).toMatchInlineSnapshot(`
    [
      "a.json: display: found the text "imperial", expected the units to show: "metric" or "us"",
      "a.json: leaves[0].lengthMm: found the text "long", expected a number in mm, above 0 and at most 20000: hinge axis to the latch end of the leaf",
      "a.json: leaves[0].swing: found the text "up", expected the swing: "toward" or "away"",
    ]
  `);
});

test("[I16] with --json the faults are a document too", () => {
  const folder = freshFolder({ "a.json": sampleJob((job) => (job.format = "other")) });
  const { code, out } = pintle(["check", "a.json", "--json"], { folder });
  expect(code).toBe(2);
  expect(JSON.parse(out)).toEqual({
    faults: [{ file: "a.json", path: "format", found: 'the text "other"', expected: '"pintle-job"' }],
  });
});

test("[I16] a job cut off in the middle", () => {
  const whole = sampleJob();
  const folder = freshFolder({ "a.json": whole.slice(0, whole.length / 2) });
  const { code, out, err } = pintle(["place", "a.json"], { folder });
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toMatch(/^a\.json: found .*at line \d+, column \d+, expected .+\n$/);
});

test.each([
  ["a file that is not there", "none.json", "no such file or folder"],
  ["bytes that are no text", "bytes.json", "bytes that are not UTF-8 text"],
])("[I16] %s", (_name, file, found) => {
  const folder = freshFolder();
  if (file === "bytes.json") writeFileSync(join(folder, file), Buffer.from([0x7b, 0xff, 0xfe, 0x7d]));
  const { code, err } = pintle(["place", file], { folder });
  expect({ code, err: err.includes(found) }).toEqual({ code: 2, err: true });
});

test("[I16] ten megabytes of nonsense end in one short line", () => {
  const { code, out, err } = pintle(["place", "-"], {
    folder: freshFolder(),
    input: "[{\u001b".repeat(3_500_000),
  });
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toMatch(/^standard input: found [^\n]{1,300}\n$/);
  expect(err).not.toContain("\u001b");
});

test("[I16] a text in a fault cannot steer the terminal", () => {
  const folder = freshFolder({ "a.json": sampleJob((_job, leaf) => (leaf.swing = "\u001b[2Jup\u0007")) });
  const { code, err } = pintle(["place", "a.json"], { folder });
  expect(code).toBe(2);
  // biome-ignore lint/suspicious/noControlCharactersInRegex: it is what must not be there
  expect(err).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
});

test("[I16] a folder without rights: said in words, nothing left behind", () => {
  const folder = freshFolder({ "a.json": sampleJob() });
  const closed = join(folder, "closed");
  mkdirSync(closed);
  chmodSync(closed, 0o555);
  const run = pintle(["convert", "a.json", "--out", "closed/b.json"], { folder, unprivileged: true });
  expect(run).toEqual({ code: 2, out: "", err: "closed/b.json: not written: no permission\n" });
  expect(readdirSync(closed)).toEqual([]);
});

test("[I16] a file that may not be read: said in words", () => {
  const folder = freshFolder({ "a.json": sampleJob() });
  chmodSync(join(folder, "a.json"), 0o000);
  const { code, err } = pintle(["convert", "a.json"], { folder, unprivileged: true });
  expect({ code, err }).toEqual({
    code: 2,
    err: "a.json: found no permission, expected a job file that can be read\n",
  });
});
