import { readJob } from "@pintle/job";
import { expect, test } from "vitest";
import { plainPage } from "../../testing/plain-page.ts";
import { sampleJob } from "../../testing/sample-job.ts";
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
    fixedClearanceMm: [null, null, null],
    toeSpeedMmS: [461.2, 341.1, 432],
    lengthClosedMm: 1059.2,
    lengthOpenMm: 760,
    lengthMinMm: 760,
    lengthMaxMm: 1059.2,
    leverMinMm: 140.5,
    leverMinAtDeg: 0,
    clearanceMinMm: 32.3,
    clearanceMinAtDeg: 90,
    monotonic: true,
    postBracketTurn: { fromDeg: -3.5, toDeg: 78.7, throughDeg: 82.2 },
    leafBracketTurn: { fromDeg: 176.5, toDeg: 184.3, throughDeg: 7.8 },
  };
  const page = plainPage();
  expect(
    `\n${swingText(read.job, { leaves: [leaf], notSwung: [{ id: "lane", why: "this leaf has no pins yet" }] }, page).join("\n")}`,
  ).toMatchInlineSnapshot(`
    "
    Windle Farm, yard gate (invented)

    ── Leaf yard ───────────────────────────────────────────────────────────────────
    3600 mm long; hinged on the left as seen from the ram's side; opens 90° toward
    the ram; ram ram-a

    pin to pin     ███████████▅▅▅▅▅▅▅▅▅▅▅▅▅▅▅▅▅▅▅▅▅▁▁▁▁▁▁▁▁▁▁▁  760 mm to 1059.2 mm
    lever arm      ▁▁▁▁▁▁▁▁▁▁▁█████████████████████▂▂▂▂▂▂▂▂▂▂▂  140.5 mm to 190 mm
    clear of leaf  ███████████                     ▁▁▁▁▁▁▁▁▁▁▁  32.3 mm to 60 mm
    toe speed      ███████████▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▇▇▇▇▇▇▇▇▇▇▇  0.34 m/s to 0.46 m/s
                   closed 0°                          open 90°

    Pin to pin: 1059.2 mm closed, 760 mm open; 760 mm to 1059.2 mm over the travel.
    Lever arm: least 140.5 mm at 0°.
    Clearance to the leaf: least 32.3 mm at 90°.
    The ram turns through 82.2° in its post bracket, 7.8° in its leaf bracket.

    angle  pin to pin  lever arm  clear of leaf  toe speed
       0°   1059.2 mm   140.5 mm          60 mm   0.46 m/s
      45°      930 mm     190 mm              -   0.34 m/s
      90°      760 mm     150 mm        32.3 mm   0.43 m/s

    ── Leaf lane ───────────────────────────────────────────────────────────────────
    Not followed: this leaf has no pins yet."
  `);
  const turning = swingText(read.job, { leaves: [{ ...leaf, monotonic: false }], notSwung: [] }, page);
  expect(turning.join("\n")).toContain("passes dead centre");
});
