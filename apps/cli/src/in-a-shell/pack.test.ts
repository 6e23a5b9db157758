import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test, vi } from "vitest";
import { sampleJob } from "../testing/sample-job.ts";
import { freshFolder, pintle } from "./run-pintle.ts";

// Six PDFs in processes of their own; how long they take on a busy machine is not what is tested.
vi.setConfig({ testTimeout: 120_000 });

const stem = "windle-farm-yard-gate-invented";
const names = [`${stem}-papers.pdf`, `${stem}-plan-1-yard.dxf`, `${stem}-plan-1-yard.svg`];

test("[I15] pack writes the papers, and again only when told to replace them", () => {
  const folder = freshFolder({ "job.json": sampleJob() });
  const words = ["pack", "job.json", "--out", "papers", "--date", "2026-03-02"];
  const first = pintle([...words, "--json"], { folder });
  expect(first.err).toBe("");
  expect(
    JSON.parse(first.out)
      .files.map((path: string) => path.replace("papers/", ""))
      .sort(),
  ).toEqual(names);
  expect(readdirSync(join(folder, "papers")).sort()).toEqual(names);
  const bytes = readFileSync(join(folder, "papers", names[0] ?? ""));
  expect(bytes.subarray(0, 5).toString("latin1")).toBe("%PDF-");
  const second = pintle(words, { folder });
  expect(second.code).toBe(2);
  expect(second.err).toContain("--force replaces it");
  pintle([...words, "--force"], { folder });
  // The same job and day: the same bytes.
  expect(readFileSync(join(folder, "papers", names[0] ?? "")).equals(bytes)).toBe(true);
});

// The sample's clearance to the leaf is 32.3 mm (check values of the placement rules); 50 mm is asked for unless
// the job says otherwise.
test.each([
  [undefined, 1],
  [{ clearanceMm: 30 }, 0],
])("[I15] pack for a job that needs %j ends with %i", (need, code) => {
  const job = sampleJob((_job, leaf) => {
    if (need !== undefined) leaf.need = need;
  });
  const folder = freshFolder({ "job.json": job });
  expect(pintle(["pack", "job.json", "--out", "papers"], { folder }).code).toBe(code);
});

test.each([
  [["--paper", "a3"], "Allowed choices are a4, letter"],
  [["--date", "2026-02-30"], "expected a date such as 2026-03-14"],
  [["--side", "left"], "Allowed choices are ram, other"],
])("[I16] pack refuses %j and writes nothing", (words, said) => {
  const folder = freshFolder({ "job.json": sampleJob() });
  const { code, err } = pintle(["pack", "job.json", "--out", "papers", ...words], { folder });
  expect(code).toBe(2);
  expect(err).toContain(said);
  expect(readdirSync(folder)).toEqual(["job.json"]);
});

test("[I16] pack tells the faults of a job and writes nothing", () => {
  const folder = freshFolder({ "job.json": sampleJob((_job, leaf) => (leaf.lengthMm = -1)) });
  const { code, err } = pintle(["pack", "job.json", "--out", "papers"], { folder });
  expect(code).toBe(2);
  expect(err).toContain("lengthMm");
  expect(readdirSync(folder)).toEqual(["job.json"]);
});
