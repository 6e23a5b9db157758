import { type Finding, findingSummary, notChecked, readJob } from "@pintle/job";
import { expect, test } from "vitest";
import { plainPage } from "../../testing/plain-page.ts";
import { sampleJob } from "../../testing/sample-job.ts";
import { checkText } from "./check.ts";

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
  const page = plainPage();
  const summary = { ...findingSummary(findings), assumed: [] };
  expect(`\n${checkText(read.job, { findings, summary }, page).join("\n")}`).toMatchInlineSnapshot(`
    "
    Windle Farm, yard gate (invented)

    ── Leaf yard ───────────────────────────────────────────────────────────────────
    3600 mm long; hinged on the left as seen from the ram's side; opens 90° toward
    the ram; ram ram-a

    FAILS: Clearance to the leaf: 32.3 mm; 17.7 mm short

                                 is  needs     to spare   at
    clearance to the leaf   32.3 mm  ≥ 50 mm   -17.7 mm  90°  BROKEN
    lever arm              140.5 mm  ≥ 120 mm   20.5 mm  90°  │███▉

    Not checked
    - Force: no loads

    1 limit fails; 1 holds, 1 not checked.

    5 values are only assumed, not measured
    - leaf yard: placement, need
    - rams: retractedMarginMm, extendedMarginMm
    A moving gate can crush a hand, a child, an animal; its wiring can shock.
    Isolate it before you work on it.
    What stands here is a prediction, not a proof: measure the finished gate. Local
    code decides, and the licensed electrician or engineer it calls for."
  `);
});
