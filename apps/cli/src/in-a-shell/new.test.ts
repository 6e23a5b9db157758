import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { freshFolder, pintle } from "./run-pintle.ts";

test("[I15] a new job from typed quantities; what nobody said is marked as assumed", () => {
  const folder = freshFolder();
  const words = [
    "new",
    "--title",
    "Windle Farm",
    "--units",
    "us",
    "--length",
    "10' 6 1/2\"",
    "--open-angle",
    "95",
  ];
  const { code, out, err } = pintle([...words, "--out", "a.json"], { folder });
  expect({ code, out }).toEqual({ code: 0, out: "" });
  expect(err).toBe("assumed, to be measured: thicknessMm, hingeSide, swing, heelMm, faceMm\n");
  const job = JSON.parse(readFileSync(join(folder, "a.json"), "utf8"));
  // 10 ft 6.5 in = 126.5 × 25.4 mm.
  expect(job).toMatchObject({ format: "pintle-job", version: 1, title: "Windle Farm", display: "us" });
  expect(job.leaves[0]).toMatchObject({ lengthMm: 3213.1, openAngleDeg: 95, heelMm: 30 });
  expect(job.leaves[0].origin).toMatchObject({ heelMm: { how: "assumed" } });
  expect(job.leaves[0].origin.lengthMm).toBeUndefined();
  expect(pintle(["convert", "a.json"], { folder }).code).toBe(0);
});

test("[I16] what cannot be read is told all at once, and nothing is written", () => {
  const folder = freshFolder();
  const { code, out, err } = pintle(["new", "--swing", "up", "--heel", "3 kg", "--out", "a.json"], {
    folder,
  });
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err.trimEnd().split("\n")).toMatchInlineSnapshot(`
    [
      "new: --length: found nothing, expected hinge axis to the latch end of the leaf",
      "new: --swing: found "up", expected toward or away",
      "new: --heel: found "3 kg", expected a unit of length (mm, cm, m, in, ft, ga) instead of "kg"",
    ]
  `);
  expect(pintle(["convert", "a.json"], { folder }).err).toContain("no such file");
});

test("[I16] a value that the job file refuses is told by its path", () => {
  const { code, err } = pintle(["new", "--length", "99 m"], { folder: freshFolder() });
  expect(code).toBe(2);
  expect(err).toContain("new: leaves[0].lengthMm: found 99000, expected");
});
