import { expect, test } from "vitest";
import type { Job } from "../schema/job.ts";
import type { PlaceDocument } from "./documents.ts";
import { withPlacements } from "./with-placements.ts";

const pins = (alongMm: number) => ({
  postPin: { alongMm, outMm: 150 },
  leafPin: { alongMm: 900, offMm: 90 },
});

const job = {
  format: "pintle-job",
  version: 1,
  leaves: [
    {
      id: "yard",
      ram: "a",
      placement: { ...pins(-100), nickname: "old", origin: { postPin: { how: "tape" } } },
      origin: { lengthMm: { how: "tape" }, placement: { how: "tape", who: "Ada" } },
    },
    { id: "lane", ram: "b" },
  ],
} as unknown as Job;

const found = {
  leaves: [
    {
      id: "yard",
      placements: [
        { ...pins(-120), riseMm: 5, ram: "a" },
        { ...pins(-140), riseMm: 5, ram: "a" },
      ],
    },
    { id: "lane", placements: [] },
  ],
} as unknown as PlaceDocument;

test("[G12] the best pins take the old ones' place, marked as assumed; a key of the old ones is kept", () => {
  const before = JSON.parse(JSON.stringify(job));
  const [yard] = withPlacements(job, found).leaves;
  expect(yard?.placement).toEqual({ ...pins(-120), riseMm: 5, nickname: "old" });
  expect(yard?.origin).toMatchObject({ lengthMm: { how: "tape" }, placement: { how: "assumed" } });
  expect(yard?.origin?.placement).not.toHaveProperty("who");
  expect(job).toEqual(before);
});

test("[G12] a leaf for which nothing was found stays as it is", () => {
  expect(withPlacements(job, found).leaves[1]).toEqual(job.leaves[1]);
});
