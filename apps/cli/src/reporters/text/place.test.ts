import { type Job, readJob } from "@pintle/job";
import { expect, test } from "vitest";
import type { PlaceDocument } from "../../documents.ts";
import { sampleJob } from "../../in-a-shell/sample-job.ts";
import { placeText } from "./place.ts";
import { createStyle } from "./style.ts";

const page = { style: createStyle(false), columns: 80, plan: false };

function job(change?: Parameters<typeof sampleJob>[0]): Job {
  const read = readJob(sampleJob(change));
  if (!read.ok) throw new Error(`the sample job is at fault: ${JSON.stringify(read.faults)}`);
  return read.job;
}

// Pins and reserve of the third check value of the placement rules; slacks made up to fill the page.
const found: PlaceDocument = {
  leaves: [
    {
      id: "yard",
      placements: [
        {
          postPin: { alongMm: -154, outMm: 145 },
          leafPin: { alongMm: 955, offMm: 145 },
          reserveMm: 25,
          reserveText: "every pin may be 25 mm off and this still works",
          firstToBreak: "stroke.retracted",
          limits: [
            { id: "lever", state: "pass", unit: "mm", value: 145, limit: 120, slack: 25, atDeg: 0 },
            {
              id: "stroke.retracted",
              state: "pass",
              unit: "mm",
              value: 810,
              limit: 760,
              slack: 50,
              atDeg: 90,
            },
          ],
        },
        {
          postPin: { alongMm: -180, outMm: 160 },
          leafPin: { alongMm: 940, offMm: 140 },
          reserveMm: 18.2,
          reserveText: "every pin may be 18.2 mm off and this still works",
          firstToBreak: "lever",
          limits: [],
          tradeOffs: ["opens in 21 s instead of 24 s"],
        },
      ],
      nothingFits: null,
    },
  ],
};

test("[I2] the reserve is one sentence, the limits are bars, the others take a line each", () => {
  expect(`\n${placeText(job(), found, page).join("\n")}`).toMatchInlineSnapshot(`
    "
    Windle Farm, yard gate (invented)

    Leaf yard
    Every pin may be 25 mm off and this still works.

    post pin  along -154 mm, out 145 mm
    leaf pin  along 955 mm, off 145 mm

    lever arm                   145 mm  at least 120 mm  25 mm to spare   at 0°  █████
    shortest pin-to-pin length  810 mm  at least 760 mm  50 mm to spare  at 90°  ██████████

    Others that differ:
      reserve 18.2 mm: post -180 mm, 160 mm; leaf 940 mm, 140 mm; opens in 21 s instead of 24 s"
  `);
});

test("[G16] when nothing fits, what stands in the way and what would mend it are said", () => {
  const nothingFits = {
    binding: ["stroke.extended", "clearance.leaf"],
    changes: [{ kind: "stroke", by: 38, unit: "mm", text: "a ram with 38 mm more stroke" }],
  };
  const text = placeText(job(), { leaves: [{ id: "yard", placements: [], nothingFits }] }, page);
  expect(text.slice(2)).toEqual([
    "Leaf yard",
    "Nothing within reach fits.",
    "What stands in the way: longest pin-to-pin length, clearance to the leaf.",
    "Any one of these would make it fit:",
    "  a ram with 38 mm more stroke",
  ]);
});

test("[I15] escapes in a title do not reach the page", () => {
  const hostile = job((one) => (one.title = "\u001b]0;owned\u0007\u001b[31mWindle\u001b[0m\nFarm"));
  expect(placeText(hostile, { leaves: [] }, page)).toEqual(["Windle Farm"]);
});
