import type { Job } from "@pintle/job";
import { describe, expect, test } from "vitest";
import { changed, changesOf } from "./change.ts";
import { originPath, withTypedOrigin } from "./typed-origin.ts";

const leaf = {
  id: "east",
  hingeSide: "left",
  swing: "toward",
  openAngleDeg: 90,
  lengthMm: 3600,
  heelMm: 30,
  thicknessMm: 50,
  faceMm: 25,
  reach: { leafPin: { alongMm: [600, 1400], offMm: [85, 145] } },
} as const;
const job = { format: "pintle-job", version: 1, leaves: [leaf] } as unknown as Job;

describe("changes of a job", () => {
  test("[I9] put a value in its place, share what stays, and leave the job itself alone", () => {
    const next = changed(job, [{ path: ["leaves", 0, "lengthMm"], value: 3000 }]);
    expect(next.leaves[0]?.lengthMm).toBe(3000);
    expect(job.leaves[0]?.lengthMm).toBe(3600);
    expect(next.leaves[0]?.reach).toBe(job.leaves[0]?.reach);
    expect(Object.keys(next.leaves[0] ?? {})).toEqual(Object.keys(leaf));
  });

  test("[I9] a value of undefined takes its key away", () => {
    const next = changed(job, [{ path: ["leaves", 0, "reach"], value: undefined }]);
    expect("reach" in (next.leaves[0] ?? {})).toBe(false);
  });

  test("[G16] a remedy's step into a list replaces the number there and adds none", () => {
    const steps = [{ op: "add" as const, path: "/leaves/0/reach/leafPin/offMm/1", value: 160 }];
    const next = changed(job, changesOf(steps));
    expect(next.leaves[0]?.reach?.leafPin?.offMm).toEqual([85, 160]);
  });

  test("[I9] a number typed anew counts as assumed until it is said how it was found; pins are a plan", () => {
    const path = ["leaves", 0, "lengthMm"];
    expect(withTypedOrigin([{ path, value: 3000 }], "3 m")[1]).toEqual({
      path: ["leaves", 0, "origin", "lengthMm"],
      value: { how: "assumed", typed: "3 m" },
    });
    expect(originPath(["leaves", 0, "fixed", 1, "outlineMm", 2, 0])).toEqual([
      "leaves",
      0,
      "fixed",
      1,
      "origin",
      "outlineMm",
    ]);
    const pins = { path: ["leaves", 0, "placement", "postPin", "outMm"], value: 190 };
    expect(withTypedOrigin([pins])).toEqual([pins]);
  });
});
