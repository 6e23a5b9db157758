import { expect, test } from "vitest";
import type { Job } from "../schema/job.ts";
import { joinedMap, mapLeaf } from "./map-leaf.ts";
import { placeJob } from "./place-job.ts";

// The third check value of the placement rules.
const job: Job = {
  format: "pintle-job",
  version: 1,
  leaves: [
    {
      id: "east",
      hingeSide: "left",
      swing: "toward",
      openAngleDeg: 90,
      lengthMm: 3600,
      heelMm: 30,
      thicknessMm: 50,
      faceMm: 25,
      ram: "r",
      need: { leverMm: 120 },
      reach: {
        postPin: { alongMm: [-260, -60], outMm: [80, 320] },
        leafPin: { alongMm: [850, 1150], offMm: [85, 145] },
      },
    },
  ],
  rams: [
    {
      id: "r",
      retractedMm: 760,
      strokeMm: 400,
      tube: [{ fromMm: -60, toMm: 560, halfWidthMm: 45 }],
      rodHalfWidthMm: 12,
    },
  ],
};

test("[G14] a map made in parts is the map made whole", () => {
  const size = { columns: 6, rows: 7 };
  const whole = placeJob(job, { best: 1, map: size }).leaves[0]?.map;
  const parts = [
    { fromRow: 0, toRow: 3 },
    { fromRow: 3, toRow: 4 },
    { fromRow: 4, toRow: 7 },
  ].map((rows) => mapLeaf(job, 0, size, rows));
  expect(whole?.reserveMm.some((value) => (value ?? -1) > 0)).toBe(true);
  expect(joinedMap(parts)).toEqual(whole);
});

test("[G14] nothing to join", () => {
  expect(joinedMap([null, null])).toBe(null);
});
