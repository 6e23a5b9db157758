import { expect, test } from "vitest";
import type { Job } from "../schema/job.ts";
import { withPatch } from "./with-patch.ts";

const job = {
  format: "pintle-job",
  version: 1,
  leaves: [
    { id: "yard", lengthMm: 3600, reach: { postPin: { outMm: [80, 320] } } },
    { id: "lane", lengthMm: 3000 },
  ],
} as unknown as Job;

const set = (path: string, value: unknown) => ({ op: "add", path, value }) as const;

test("[G16] a patch sets keys that are there and keys that are not, in order, and spares the rest", () => {
  const before = JSON.parse(JSON.stringify(job));
  const changed = withPatch(job, [
    set("/leaves/0/reach/postPin/outMm", [80, 380]),
    set("/leaves/1/need", { clearanceMm: 40 }),
    set("/leaves/1/need/clearanceMm", 35),
  ]);
  expect(changed.leaves).toEqual([
    { id: "yard", lengthMm: 3600, reach: { postPin: { outMm: [80, 380] } } },
    { id: "lane", lengthMm: 3000, need: { clearanceMm: 35 } },
  ]);
  expect(job).toEqual(before);
});

// The order of the two replacements is the worked case of RFC 6901, section 4: "~01" is "~1", not "/".
test("[G16] escapes in a path name the key that they stand for", () => {
  const changed = withPatch(job, [set("/a~1b", 1), set("/~01", 2)]);
  expect(changed).toMatchObject({ "a/b": 1, "~1": 2 });
});

test.each([
  "/leaves/2/lengthMm",
  "/leaves/-/lengthMm",
  "/leaves/0/reach/postPin/outMm/1",
  "/rams/0/strokeMm",
])("[G16] a path that leads nowhere in this job is refused: %s", (path) => {
  expect(() => withPatch(job, [set(path, 1)])).toThrow(path);
});
