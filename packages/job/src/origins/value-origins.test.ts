import { describe, expect, test } from "vitest";
import type { Job } from "../schema/job.ts";
import { quarryLane } from "../testing/quarry-lane.ts";
import { assumedValues, valueOrigins } from "./value-origins.ts";

function standingAt(job: Job, path: string): string | undefined {
  return valueOrigins(job).find((value) => value.path === path)?.standing;
}

describe("where values come from", () => {
  test("a value says who, when, how; one without an origin is not stated", () => {
    const job = quarryLane();
    job.leaves[0].origin = { lengthMm: { how: "tape", who: "Ada", when: "2026-03-14", typed: "3.6 m" } };
    const values = valueOrigins(job);
    expect(values.find((value) => value.path === "leaves[0].lengthMm")).toEqual({
      path: "leaves[0].lengthMm",
      value: 3600,
      standing: "measured",
      isDefault: false,
      origin: { how: "tape", who: "Ada", when: "2026-03-14", typed: "3.6 m" },
    });
    expect(standingAt(job, "leaves[0].heelMm")).toBe("notStated");
    expect(values.some((value) => value.path === "version")).toBe(false);
  });

  test("an origin of a part speaks for all within, unless a nearer one says otherwise", () => {
    const job = quarryLane();
    job.leaves[0].origin = { placement: { how: "assumed" }, fixed: { how: "tape" } };
    job.leaves[0].placement.postPin.origin = { outMm: { how: "tape" } };
    job.origin = { rams: { how: "makersSheet" } };
    expect(standingAt(job, "leaves[0].placement.leafPin.offMm")).toBe("assumed");
    expect(standingAt(job, "leaves[0].placement.postPin.outMm")).toBe("measured");
    expect(standingAt(job, "leaves[0].fixed[0].outlineMm")).toBe("measured");
    expect(standingAt(job, "rams[0].tube[0].halfWidthMm")).toBe("makersSheet");
  });

  test("assumed are the values marked so, and every default put in", () => {
    const job = quarryLane();
    delete job.leaves[0].need;
    delete job.leaves[0].placement.riseMm;
    delete job.rams[0].extendedMarginMm;
    job.leaves[0].origin = { groundGapMm: { how: "assumed" }, faceMm: { how: "tape" } };
    job.leaves[0].asBuilt = { readings: [{ kind: "hingeToPostPin", valueMm: 212 }] };
    expect(assumedValues(job).map((value) => [value.path, value.value, value.isDefault])).toEqual([
      ["leaves[0].groundGapMm", 90, false],
      ["leaves[0].placement.riseMm", 0, true],
      ["leaves[0].reach.riseMm", 0, true],
      ["leaves[0].need.clearanceMm", 50, true],
      ["leaves[0].need.fixedClearanceMm", 15, true],
      ["leaves[0].need.deadCentreDeg", 5, true],
      ["leaves[0].asBuilt.readings[0].standardErrorMm", 2, true],
      ["rams[0].extendedMarginMm", 0, true],
    ]);
  });

  test("every number of the job is listed once", () => {
    const job = quarryLane();
    const paths = valueOrigins(job).map((value) => value.path);
    expect(new Set(paths).size).toBe(paths.length);
    for (const path of [
      "site.operatingWindMs",
      "leaves[0].openAngleDeg",
      "leaves[0].reach.leafPin.offMm",
      "rams[0].thrustN",
    ]) {
      expect(paths).toContain(path);
    }
  });
});
