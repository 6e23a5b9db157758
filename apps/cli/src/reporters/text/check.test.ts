import { readJob } from "@pintle/job";
import { expect, test } from "vitest";
import type { FindingDocument } from "../../documents.ts";
import { sampleJob } from "../../in-a-shell/sample-job.ts";
import { checkText } from "./check.ts";
import { createStyle } from "./style.ts";

const finding = (rule: string, state: FindingDocument["state"], text: string): FindingDocument => ({
  rule,
  state,
  leaf: "yard",
  value: null,
  limit: null,
  unit: null,
  source: "",
  text,
});

test("[I15] what fails comes first, what nobody looked at second, each in words", () => {
  const read = readJob(sampleJob());
  if (!read.ok) throw new Error("the sample job is at fault");
  const findings = [
    finding("lever", "pass", "Lever arm at least 140.5 mm."),
    finding("force", "not-checked", "Loads are not known."),
    finding("clearance.leaf", "fail", "Ram and leaf come within 32.3 mm at 90°."),
  ];
  const page = { style: createStyle(false), columns: 80, plan: false };
  expect(`\n${checkText(read.job, { findings, summary: {} }, page).join("\n")}`).toMatchInlineSnapshot(`
    "
    Windle Farm, yard gate (invented)

    Leaf yard
      FAILS           Ram and leaf come within 32.3 mm at 90°. [clearance.leaf]
      not checked     Loads are not known. [force]
      holds           Lever arm at least 140.5 mm. [lever]

    1 fails, 1 holds, 1 not checked"
  `);
});
