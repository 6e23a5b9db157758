import { expect, test } from "vitest";
import { quarryLane } from "./testing/quarry-lane.ts";
import { jsonText, writeJob } from "./write-job.ts";

test("two spaces a level, numbers of a list on one line, key order kept, one line break at the end", () => {
  const text = writeJob(quarryLane());
  expect(
    text.startsWith('{\n  "format": "pintle-job",\n  "version": 1,\n  "title": "Quarry lane, east gate",\n'),
  ).toBe(true);
  expect(text).toContain('          "outlineMm": [[-440, -215], [-40, -215], [-40, 70], [-440, 70]]\n');
  expect(text).toContain('          "alongMm": [-260, -60],\n');
  expect(text.endsWith("}\n")).toBe(true);
  expect(text.endsWith("\n\n")).toBe(false);
});

test("a list of numbers that is too wide for a line is broken", () => {
  const text = jsonText({ levels: Array.from({ length: 60 }, (_, i) => i * 1000) });
  expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(110);
  expect(text.split("\n").length).toBeGreaterThan(60);
});

test("keys without a value are left out, as JSON does", () => {
  expect(jsonText({ a: undefined, b: {}, c: [], d: null })).toBe(
    '{\n  "b": {},\n  "c": [],\n  "d": null\n}\n',
  );
});

test("values that JSON cannot hold are the caller's mistake", () => {
  expect(() => jsonText({ a: Number.NaN })).toThrow("found NaN; it expects finite numbers");
  expect(() => jsonText([() => 1])).toThrow("found a function");
});
