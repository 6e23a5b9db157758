import fc from "fast-check";
import { expect, test } from "vitest";
import { unhurried } from "../testing/unhurried.ts";
import { jobFileName } from "./file-name.ts";

test.each([
  ["CON", "job-con.json"],
  ["  ", "job.json"],
  ["C:\\gates\\..\\north", "c-gates-north.json"],
  ["gate\u202Egpj.exe", "gate-gpj-exe.json"],
  ["Puerta «Año 7»", "puerta-año-7.json"],
  ["日本の門", "日本の門.json"],
])("[T8] the title %j becomes the file %s", (title, file) => {
  expect(jobFileName(title, new Set())).toBe(file);
});

test(
  "[T8] any titles become names that are safe on every common file system, each different",
  () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: "binary", maxLength: 80 }), { maxLength: 6 }), (titles) => {
        const taken = new Set<string>();
        const names = titles.map((title) => jobFileName(title, taken));
        expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(titles.length);
        for (const name of names) {
          expect(name).toMatch(/^[\p{L}\p{M}\p{N}-]+\.json$/u);
          expect(name).not.toMatch(/^(con|prn|aux|nul|com\d|lpt\d)\./i);
          expect(new TextEncoder().encode(name).length).toBeLessThanOrEqual(255);
        }
      }),
      { seed: 20_417, numRuns: 200 },
    );
  },
  unhurried,
);
