import type { LimitDocument } from "@pintle/job";
import { expect, test } from "vitest";
import { plainPage } from "../../testing/plain-page.ts";
import { slackBars } from "./slack-bars.ts";

const plain = plainPage({ columns: 100 });

const limits: readonly LimitDocument[] = [
  { id: "lever", state: "pass", unit: "mm", value: 140.5, limit: 120, slack: 20.5, atDeg: 0 },
  { id: "stroke.extended", state: "pass", unit: "mm", value: 1059.2, limit: 1150, slack: 90.8, atDeg: 0 },
  { id: "clearance.leaf", state: "fail", unit: "mm", value: 32.3, limit: 50, slack: -17.7, atDeg: 90 },
  { id: "deadCentre", state: "pass", unit: "deg", value: 23.4, limit: 5, slack: 18.4, atDeg: 0 },
  { id: "force", state: "not-checked", unit: "ratio", value: null, limit: null, slack: null, atDeg: null },
];

// Numbers from the first check value of the placement rules; the layout is what is under test.
test("[I2] limits stand tightest first, as bars with value, limit and angle; what is not checked is said", () => {
  expect(slackBars(limits, "metric", plain).join("\n")).toMatchInlineSnapshot(`
    "                                  is  needs      to spare   at
    clearance to the leaf        32.3 mm  ≥ 50 mm    -17.7 mm  90°  BROKEN
    lever arm                   140.5 mm  ≥ 120 mm    20.5 mm   0°  │███▉
    angle to dead centre           23.4°  ≥ 5°          18.4°   0°  │███████████▋
    longest pin-to-pin length  1059.2 mm  ≤ 1150 mm   90.8 mm   0°  │█████████████████▎
    Not checked: force."
  `);
});

test("[I2] in US units the same limits read in inches", () => {
  expect(slackBars(limits.slice(0, 1), "us", plain).join("\n")).toMatchInlineSnapshot(
    `
    "                is  needs     to spare  at
    lever arm  5 9/16"  ≥ 4 3/4"    13/16"  0°  │███▉"
  `,
  );
});
