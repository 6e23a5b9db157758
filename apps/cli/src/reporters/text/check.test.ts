import { type Finding, findingSummary, notChecked, readJob } from "@pintle/job";
import { expect, test } from "vitest";
import { sampleJob } from "../../in-a-shell/sample-job.ts";
import { checkText } from "./check.ts";
import { createStyle } from "./style.ts";

const judged = (
  id: string,
  state: Finding["state"],
  value: number,
  limit: number,
  text: string,
): Finding => ({
  rule: "G10",
  id,
  state,
  leaf: "yard",
  value,
  limit,
  slack: Math.round((value - limit) * 10) / 10,
  unit: "mm",
  atDeg: 90,
  source: "job",
  path: "leaves[0].need",
  text,
});

// Clearance and lever of the first check value of the placement rules.
test("[I15] what fails comes first and in words, then every limit as a bar, then what nobody looked at", () => {
  const read = readJob(sampleJob());
  if (!read.ok) throw new Error("the sample job is at fault");
  const findings = [
    judged("lever", "pass", 140.5, 120, "Lever arm: 140.5 mm, 120 mm needed; 20.5 mm to spare"),
    notChecked({ rule: "G10", id: "force", leaf: "yard", path: "", text: "Force: not checked; no loads" }),
    judged("clearance.leaf", "fail", 32.3, 50, "Clearance to the leaf: 32.3 mm; 17.7 mm short"),
  ];
  const page = { style: createStyle(false), columns: 80, plan: false };
  const summary = findingSummary(findings);
  expect(`\n${checkText(read.job, { findings, summary }, page).join("\n")}`).toMatchInlineSnapshot(`
    "
    Windle Farm, yard gate (invented)

    Leaf yard
    FAILS: Clearance to the leaf: 32.3 mm; 17.7 mm short

    clearance to the leaf   32.3 mm  at least 50 mm      17.7 mm short  at 90°  BROKEN
    lever arm              140.5 mm  at least 120 mm  20.5 mm to spare  at 90°  ████

    Force: not checked; no loads

    1 fails, 1 holds, 1 not checked"
  `);
});
