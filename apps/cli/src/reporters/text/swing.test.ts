import { readJob } from "@pintle/job";
import { expect, test } from "vitest";
import { sampleJob } from "../../in-a-shell/sample-job.ts";
import { createStyle } from "./style.ts";
import { swingText } from "./swing.ts";

// Ends of the travel from the first check value of the placement rules; the row between is made up.
test("[I15] the swing is a table with a unit in every cell, and its extremes in words", () => {
  const read = readJob(sampleJob());
  if (!read.ok) throw new Error("the sample job is at fault");
  const leaf = {
    id: "yard",
    thetaDeg: [0, 45, 90],
    pinToPinMm: [1059.2, 930, 760],
    leverMm: [140.5, 190, 150],
    clearanceMm: [60, null, 32.3],
    lengthClosedMm: 1059.2,
    lengthOpenMm: 760,
    lengthMinMm: 760,
    lengthMaxMm: 1059.2,
    leverMinMm: 140.5,
    leverMinAtDeg: 0,
    clearanceMinMm: 32.3,
    clearanceMinAtDeg: 90,
    monotonic: true,
  };
  const page = { style: createStyle(false), columns: 80, plan: false };
  expect(`\n${swingText(read.job, { leaves: [leaf] }, page).join("\n")}`).toMatchInlineSnapshot(`
    "
    Windle Farm, yard gate (invented)

    Leaf yard
    angle  pin to pin  lever arm  clearance
       0°   1059.2 mm   140.5 mm      60 mm
      45°      930 mm     190 mm          -
      90°      760 mm     150 mm    32.3 mm

    pin to pin  1059.2 mm closed, 760 mm open; 760 mm to 1059.2 mm over the travel
    lever arm   least 140.5 mm at 0°
    clearance   least 32.3 mm at 90°"
  `);
  const turning = swingText(read.job, { leaves: [{ ...leaf, monotonic: false }] }, page);
  expect(turning.at(-1)).toContain("passes dead centre");
});
