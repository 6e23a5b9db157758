import fc from "fast-check";
import { expect, test } from "vitest";
import { readJob } from "./read-job.ts";
import { quarryLane, quarryLaneText } from "./testing/quarry-lane.ts";
import { jsonText, writeJob } from "./write-job.ts";

const mm = (from: number, to: number) =>
  fc.integer({ min: from * 100, max: to * 100 }).map((hundredths) => hundredths / 100);
const range = (from: number, to: number) =>
  fc.tuple(mm(from, to), mm(from, to)).map(([a, b]) => [Math.min(a, b), Math.max(a, b)]);
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });

const leaf = fc.record(
  {
    id: fc.constantFrom("a", "north leaf", "日本"),
    hingeSide: fc.constantFrom("left", "right"),
    swing: fc.constantFrom("toward", "away"),
    openAngleDeg: fc.double({ min: 1, max: 179, noNaN: true }),
    lengthMm: mm(1000, 6000),
    heelMm: mm(0, 200),
    thicknessMm: mm(20, 200),
    faceMm: mm(-100, 100),
    ram: fc.constant("r"),
    placement: fc.record({
      postPin: fc.record({ alongMm: mm(-500, 0), outMm: mm(0, 500) }),
      leafPin: fc.record({ alongMm: mm(100, 3000), offMm: mm(0, 300) }),
    }),
    reach: fc.record({
      postPin: fc.record({ alongMm: range(-500, 0), outMm: range(0, 500) }),
      leafPin: fc.record({ alongMm: range(100, 3000), offMm: range(0, 300) }),
    }),
    somebodyElses: fc.jsonValue({ maxDepth: 5 }),
  },
  {
    requiredKeys: ["id", "hingeSide", "swing", "openAngleDeg", "lengthMm", "heelMm", "thicknessMm", "faceMm"],
  },
);

const job = fc
  .record({ leaf, title: maybe(fc.string()), extra: fc.dictionary(fc.string(), fc.jsonValue()) })
  .map(({ leaf: one, title, extra }) => ({
    ...extra,
    ...(title === undefined ? {} : { title }),
    format: "pintle-job",
    version: 1,
    leaves: [one],
    rams: [{ ...quarryLane().rams[0], id: "r" }],
    display: "us",
    // Keys that the schema knows would be judged; these must stay as drawn above.
    ...Object.fromEntries(
      ["site", "note", "origin", "gateway"].flatMap((key) => (key in extra ? [[key, undefined]] : [])),
    ),
  }));

const seed = { seed: 1912, numRuns: 300 };

test("read(write(job)) equals the job, unknown keys and key order included", () => {
  fc.assert(
    fc.property(job, (drawn) => {
      const given = JSON.parse(JSON.stringify(drawn));
      const text = writeJob(given);
      const read = readJob(text);
      if (!read.ok) throw new Error(JSON.stringify(read.faults));
      expect(read.job).toEqual(given);
      expect(JSON.stringify(read.job)).toBe(JSON.stringify(given));
      expect(writeJob(read.job)).toBe(text);
      if (given.leaves[0].somebodyElses !== undefined)
        expect(read.unknownKeys).toContain("leaves[0].somebodyElses");
    }),
    seed,
  );
});

test("jsonText writes any JSON value so that JSON.parse gives it back", () => {
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      expect(JSON.parse(jsonText(value))).toEqual(value);
    }),
    { ...seed, numRuns: 1000 },
  );
});

test("any text is answered, never thrown at", () => {
  fc.assert(
    fc.property(
      fc.oneof(fc.string({ unit: "binary" }), fc.json(), fc.stringMatching(/^[\][{}",:0-9a-z\\/ ]*$/)),
      (text) => {
        const read = readJob(text);
        expect(read.ok ? 0 : read.faults.length).toBeGreaterThan(0);
      },
    ),
    { ...seed, numRuns: 2000 },
  );
});

test("a good job cut or changed anywhere is answered, never thrown at", () => {
  const place = fc.integer({ min: 0, max: quarryLaneText.length });
  const junk = fc.constantFrom(
    "",
    "-",
    "null",
    "[",
    "}",
    '"',
    "1e999",
    "{}",
    "\u0000",
    "\\",
    '"__proto__":3,',
  );
  fc.assert(
    fc.property(place, place, junk, (a, b, middle) => {
      const text = quarryLaneText.slice(0, Math.min(a, b)) + middle + quarryLaneText.slice(Math.max(a, b));
      const read = readJob(text);
      if (!read.ok) {
        expect(read.faults.length).toBeGreaterThan(0);
        for (const fault of read.faults) expect(fault.found !== "" && fault.expected !== "").toBe(true);
      }
    }),
    { ...seed, numRuns: 2000 },
  );
});

test("any value put in place of a value of a good job is answered with faults on paths that exist or are missing", () => {
  const spots = spotsOf(quarryLane());
  fc.assert(
    fc.property(fc.constantFrom(...spots), fc.jsonValue(), (spot, value) => {
      const changed = quarryLane();
      const holder = spot.slice(0, -1).reduce((part, key) => part[key], changed);
      holder[spot.at(-1) as string] = value;
      const read = readJob(JSON.stringify(changed));
      if (read.ok) expect(read.job).toEqual(JSON.parse(JSON.stringify(changed)));
      else expect(read.faults.every((fault) => !fault.expected.startsWith("Invalid"))).toBe(true);
    }),
    { ...seed, numRuns: 2000 },
  );
});

function spotsOf(value: unknown, path: string[] = []): string[][] {
  if (typeof value !== "object" || value === null) return [path];
  const below = Object.entries(value).flatMap(([key, held]) => spotsOf(held, [...path, key]));
  return path.length === 0 ? below : [path, ...below];
}
