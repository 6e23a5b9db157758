import { copyFileSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { example } from "../testing/examples.ts";
import { sampleJob } from "../testing/sample-job.ts";
import { freshFolder, pintle } from "./run-pintle.ts";

/** Enough files that several workers share them. */
const many = Array.from({ length: 60 }, (_, index) => `${String(index).padStart(2, "0")}.json`);

test("[I15] a folder of jobs: judged by workers, reported in order of name, the gravest exit code", () => {
  const folder = freshFolder();
  mkdirSync(join(folder, "jobs"));
  for (const name of many) writeFileSync(join(folder, "jobs", name), `{ "format": "${name}" }`);
  writeFileSync(join(folder, "jobs", "notes.txt"), "not a job");
  const { code, out, err } = pintle(["check", "jobs", "--json"], { folder });
  expect(code).toBe(2);
  const { jobs, summary } = JSON.parse(out);
  expect(jobs.map(({ file }: { file: string }) => file)).toEqual(many.map((name) => `jobs/${name}`));
  expect(jobs[42].faults[0]).toMatchObject({ path: "format", found: 'the text "42.json"' });
  expect(summary).toEqual({ jobs: 60, nothingFails: 0, limitFails: 0, badInput: 60 });
  expect(err.split("\n")[0]).toMatch(/^jobs\/00\.json: format: found /);
});

test("[I15] a folder of the examples and a broken job: a line each, the sum, and the same findings as alone", () => {
  const folder = freshFolder({ "broken.json": "{}" });
  for (const name of ["harrow-farm", "swing-away"]) copyFileSync(example(name), join(folder, `${name}.json`));
  writeFileSync(join(folder, "fails.json"), sampleJob());
  const text = pintle(["check", "."], { folder });
  expect(text.code).toBe(2);
  expect(text.err).toMatch(/^broken\.json: format: found nothing, expected /);
  expect(text.out).toContain(
    "4 jobs: 2 with nothing that fails, 1 with a limit that fails, 1 that cannot be read",
  );
  expect(text.out).toMatch(/^fails\.json +FAILS 2 +\d+ not checked {2}Windle Farm/m);
  const { jobs } = JSON.parse(pintle(["check", ".", "--json", "--workers", "2"], { folder }).out);
  const alone = JSON.parse(pintle(["check", "harrow-farm.json", "--json"], { folder }).out);
  expect(jobs.map(({ file }: { file: string }) => file)).toEqual([
    "broken.json",
    "fails.json",
    "harrow-farm.json",
    "swing-away.json",
  ]);
  expect(jobs[2]).toEqual({ file: "harrow-farm.json", ...alone });
});

test("[I15] one worker and several give the same report", () => {
  const folder = freshFolder(Object.fromEntries(many.map((name) => [name, `{ "format": "${name}" }`])));
  const report = (workers: string) => pintle(["check", ...many, "--workers", workers, "--json"], { folder });
  expect(report("2")).toEqual(report("1"));
});

test("[I15] standard input stands alone, and a folder without jobs is misuse", () => {
  const folder = freshFolder({ "a.json": "{}" });
  mkdirSync(join(folder, "empty"));
  expect(pintle(["check", "a.json", "-"], { folder, input: "{}" })).toMatchObject({ code: 2, out: "" });
  expect(pintle(["check", "empty"], { folder })).toEqual({
    code: 2,
    out: "",
    err: "empty: found no .json file, expected at least one job\n",
  });
});
