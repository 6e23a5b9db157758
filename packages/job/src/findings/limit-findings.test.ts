import type { Limit } from "@pintle/core";
import { describe, expect, test } from "vitest";
import type { Job } from "../schema/job.ts";
import { quarryLane } from "../testing/quarry-lane.ts";
import { findingSummary, notChecked } from "./finding.ts";
import { limitFindings } from "./limit-findings.ts";
import { limitText } from "./limit-wording.ts";

const radians = (degrees: number) => (degrees * Math.PI) / 180;

function limit(
  id: string,
  value: number,
  bound: number,
  slack: number,
  atDeg: number,
  unit: Limit["unit"] = "m",
): Limit {
  return {
    id,
    state: slack >= 0 ? "pass" : "fail",
    unit,
    value,
    limit: bound,
    slack,
    atAngle: radians(atDeg),
    where: null,
  };
}

const unknown: Limit = {
  id: "force",
  state: "not-checked",
  unit: "ratio",
  value: null,
  limit: null,
  slack: null,
  atAngle: null,
  where: null,
};

describe("[G10] findings from limits", () => {
  test("numbers in mm and degrees, path and source of what decides", () => {
    const job = quarryLane() as Job;
    const [clearance, pier, deadCentre, force] = limitFindings(job, 0, [
      limit("clearance.leaf", 0.075, 0.05, 0.025, 0),
      limit("clearance.pier", 0.01, 0.015, -0.005, 92),
      limit("deadCentre", radians(41), radians(5), radians(36), 90, "rad"),
      unknown,
    ]);
    expect(clearance).toEqual({
      rule: "G10",
      id: "clearance.leaf",
      state: "pass",
      leaf: "east",
      value: 75,
      limit: 50,
      slack: 25,
      unit: "mm",
      atDeg: 0,
      source: "job",
      path: "leaves[0].need.clearanceMm",
      text: "Clearance to the leaf: 75 mm, 50 mm needed, least at 0°; 25 mm to spare",
    });
    expect(pier).toMatchObject({
      state: "fail",
      path: "leaves[0].fixed[0]",
      source: "job",
      slack: -5,
      atDeg: 92,
    });
    expect(deadCentre).toMatchObject({
      unit: "deg",
      value: 41,
      limit: 5,
      source: "common practice, no source",
    });
    expect(force).toMatchObject({
      state: "not-checked",
      value: null,
      limit: null,
      slack: null,
      atDeg: null,
      unit: "ratio",
    });
    expect(force?.text).toBe("Force: not checked; the loads on the leaf are not known yet");
  });

  test("a need left out is common practice; a need of nothing is geometry", () => {
    const job = quarryLane() as Job;
    delete (job.leaves[0] as { need?: unknown }).need;
    const limits = [
      "clearance.leaf",
      "clearance.pier",
      "lever",
      "sweep.pier",
      "rod.contact",
      "stroke.retracted",
    ];
    const sources = limitFindings(
      job,
      0,
      limits.map((id) => limit(id, 0.2, 0, 0.2, 0)),
    ).map((finding) => finding.source);
    const practice = "common practice, no source";
    expect(sources).toEqual([practice, practice, "geometry", "geometry", "geometry", "job"]);
  });

  test("a leaf that is not there is the caller's mistake", () => {
    expect(() => limitFindings(quarryLane() as Job, 3, [])).toThrow("found leaf 3");
  });
});

describe("[G10] what a limit says", () => {
  test.each<[Limit, string]>([
    [
      limit("clearance.leaf", 0.0323, 0.05, -0.0177, 90),
      "Clearance to the leaf: 32.3 mm, 50 mm needed, least at 90°; 17.7 mm short",
    ],
    [
      limit("clearance.pier", -0.012, 0.015, -0.027, 30),
      "Clearance to pier: overlaps by 12 mm at 30°, where 15 mm is needed; 27 mm short",
    ],
    [
      limit("clearance.leaf", 0.04999, 0.05, -0.00001, 90),
      "Clearance to the leaf: 50 mm, 50 mm needed, least at 90°; less than 0.1 mm short",
    ],
    [
      limit("stroke.retracted", 0.76, 0.77, -0.01, 90),
      "Shortest pin-to-pin length: 760 mm at 90°, and the ram with its margin goes down to 770 mm; 10 mm short",
    ],
    [
      limit("stroke.extended", 1.0592, 1.15, 0.0908, 0),
      "Longest pin-to-pin length: 1059.2 mm at 0°, and the ram with its margin goes up to 1150 mm; 90.8 mm to spare",
    ],
    [limit("lever", 0.1462, 0, 0.1462, 0), "Lever arm: 146.2 mm, least at 0°"],
    [
      limit("rod.contact", -0.003, 0, -0.003, 12),
      "Clearance of the rod: overlaps by 3 mm at 12°, where 0 mm is needed; 3 mm short",
    ],
    [limit("sweep.pier", 0.04, 0, 0.04, 12), "Clearance of the swinging leaf to pier: 40 mm, least at 12°"],
    [
      limit("deadCentre", radians(3), radians(5), radians(-2), 90, "rad"),
      "Angle to dead centre: 3°, 5° needed, least at 90°; 2° short",
    ],
    [
      { ...unknown, id: "rod.contact", state: "not-applicable" },
      "Clearance of the rod: does not apply; there is nothing to compare",
    ],
  ])("%#", (one, text) => {
    expect(limitText(one, "metric")).toBe(text);
  });

  test("in US units", () => {
    expect(limitText(limit("clearance.leaf", 0.0762, 0.0508, 0.0254, 0), "us")).toBe(
      `Clearance to the leaf: 3", 2" needed, least at 0°; 1" to spare`,
    );
  });
});

test("findings are counted by state, and one for what is missing is not checked", () => {
  const missing = notChecked({
    rule: "G10",
    id: "placement",
    leaf: "east",
    path: "leaves[0].ram",
    text: "no ram",
  });
  const findings = [missing, ...limitFindings(quarryLane() as Job, 0, [limit("lever", 0.1, 0.12, -0.02, 0)])];
  expect(findingSummary(findings)).toEqual({ pass: 0, fail: 1, notChecked: 1, notApplicable: 0 });
});
