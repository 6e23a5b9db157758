import { readFileSync } from "node:fs";
import type { CheckDocument, SwingDocument } from "@pintle/job";
import { expect, test } from "vitest";
import { example } from "../testing/examples.ts";
import { sampleJob } from "../testing/sample-job.ts";
import { freshFolder, pintle } from "./run-pintle.ts";

// The sample job is the first check value of the placement rules.
const checkValue = sampleJob();

function checked(words: readonly string[], input = "") {
  const run = pintle(["check", "--json", ...words], { folder: freshFolder(), input });
  return { ...run, document: JSON.parse(run.out) as CheckDocument };
}

test("[I15] check prints one document, its keys as promised, and nothing else; a limit fails: exit 1", () => {
  const { code, err, document } = checked(["-"], checkValue);
  expect({ code, err }).toEqual({ code: 1, err: "" });
  expect(Object.keys(document)).toEqual(["findings", "summary"]);
  for (const finding of document.findings) {
    expect(Object.keys(finding)).toEqual(
      expect.arrayContaining(["rule", "state", "leaf", "value", "limit", "unit", "source", "text"]),
    );
    expect(["pass", "fail", "not-checked", "not-applicable"]).toContain(finding.state);
  }
  expect(document.summary).toMatchObject({ fail: expect.any(Number), notChecked: expect.any(Number) });
  // The reserve of this placement is its clearance's shortfall: −17.7 mm.
  const reserve = document.findings.find(({ id }) => id === "reserve");
  expect(reserve?.value).toBeCloseTo(-17.7, 1);
});

test("[I15] nothing fails: exit 0, and the text counts what nobody checked", () => {
  const { code, out } = pintle(["check", example("harrow-farm")], { folder: freshFolder() });
  expect(code).toBe(0);
  expect(out).toMatch(/^Nothing fails; \d+ hold, \d+ not checked\.$/m);
  expect(out).toContain("- Protection of people: this version places pins only");
  expect(out).toContain("What stands here is a prediction, not a proof");
  expect(out).toMatch(/^\d+ values are only assumed, not measured$/m);
});

test("[I15] not checked is no failure: a job without pins is exit 0 and says so", () => {
  const { code, document } = checked(
    ["-"],
    sampleJob((_job, leaf) => delete leaf.placement),
  );
  expect(code).toBe(0);
  expect(document.findings.map(({ state }) => state)).not.toContain("pass");
});

test("[I15] standard input and a file give the same document", () => {
  const file = example("swing-away");
  expect(checked(["-"], readFileSync(file, "utf8")).document).toEqual(checked([file]).document);
});

test("[G5] swing's numbers are check's numbers, and both are the published check values", () => {
  const { code, out, err } = pintle(["swing", "-", "--json", "--step-deg", "30"], {
    folder: freshFolder(),
    input: checkValue,
  });
  expect({ code, err }).toEqual({ code: 0, err: "" });
  const { leaves }: SwingDocument = JSON.parse(out);
  const [leaf] = leaves;
  // Ram 740 + 400 here; lengths, lever arm and clearance depend on the pins and the tube alone.
  expect(leaf?.lengthClosedMm).toBeCloseTo(1059.2, 1);
  expect(leaf?.lengthOpenMm).toBeCloseTo(760, 1);
  expect(leaf?.leverMinMm).toBeCloseTo(140.5, 1);
  expect(leaf?.leverMinAtDeg).toBe(0);
  expect(leaf?.clearanceMinMm).toBeCloseTo(32.3, 1);
  expect(leaf?.clearanceMinAtDeg).toBe(90);
  expect(leaf?.monotonic).toBe(true);
  expect(leaf?.thetaDeg).toEqual([0, 30, 60, 90]);
  for (const key of ["pinToPinMm", "leverMm", "clearanceMm"] as const) expect(leaf?.[key]).toHaveLength(4);
  const { findings } = checked(["-"], checkValue).document;
  const value = (id: string) => findings.find((one) => one.id === id)?.value;
  expect(value("stroke.extended")).toBeCloseTo(leaf?.lengthMaxMm ?? Number.NaN, 5);
  expect(value("stroke.retracted")).toBeCloseTo(leaf?.lengthMinMm ?? Number.NaN, 5);
  expect(value("lever")).toBeCloseTo(leaf?.leverMinMm ?? Number.NaN, 5);
  expect(value("clearance.leaf")).toBeCloseTo(leaf?.clearanceMinMm ?? Number.NaN, 5);
});

test("[I15] a job without pins to follow or readings to judge: said in words, exit 2", () => {
  const without = sampleJob((_job, leaf) => delete leaf.placement);
  const swung = pintle(["swing", "-"], { folder: freshFolder(), input: without });
  expect(swung.code).toBe(2);
  expect(swung.out).toContain("Not followed: this leaf has no pins yet.");
  const built = pintle(["asbuilt", "-"], { folder: freshFolder(), input: without });
  expect(built.code).toBe(2);
  expect(built.out).toContain("No tape readings are recorded for this leaf.");
});

test("[G18] as built: keys as promised, the misread reading named, exit 1 for a gate that fails", () => {
  const { code, out } = pintle(["asbuilt", example("as-built-wrong"), "--json"], { folder: freshFolder() });
  expect(code).toBe(1);
  const [leaf] = JSON.parse(out).leaves;
  expect(Object.keys(leaf)).toEqual(
    expect.arrayContaining([
      "id",
      "lines",
      "pins",
      "standardErrorsMm",
      "residuals",
      "misread",
      "limits",
      "mends",
    ]),
  );
  expect(leaf.misread).toHaveLength(1);
});

test("[I15] colours only where they are wanted, and the words are the same with them", () => {
  const run = (env: Record<string, string>) =>
    pintle(["check", "-", "--plan"], { folder: freshFolder(), input: checkValue, env }).out;
  const [plain, coloured] = [run({}), run({ FORCE_COLOR: "1" })];
  expect(plain).not.toContain("\u001b");
  // A build machine is not a terminal either.
  expect(run({ CI: "true" })).toBe(plain);
  expect(coloured).toContain("\u001b[");
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the colour codes are what is taken away
  expect(coloured.replace(/\u001b\[\d+m/g, "")).toBe(plain);
});

test("[I15] no line is wider than the page, metric or US", () => {
  const runs = [
    ["check", "us-units"],
    ["check", "as-built-wrong"],
    ["asbuilt", "as-built-wrong"],
    ["swing", "us-units"],
    ["place", "us-units"],
    ["place", "deep-pier"],
  ] as const;
  for (const [command, name] of runs) {
    const { out } = pintle([command, example(name)], { folder: freshFolder(), env: { COLUMNS: "80" } });
    const long = out.split("\n").filter((line) => line.length > 80 && !line.startsWith("  pintle "));
    expect({ name, command, isThere: out.length > 500, long }).toEqual({
      name,
      command,
      isThere: true,
      long: [],
    });
  }
});
