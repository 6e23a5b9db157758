import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Job, PlaceDocument } from "@pintle/job";
import { expect, test } from "vitest";
import { example, exampleJob } from "../testing/examples.ts";
import { sampleJob } from "../testing/sample-job.ts";
import { freshFolder, pintle } from "./run-pintle.ts";

/** The third check value of the placement rules: its reach, its need, a best reserve of 25.0 ± 0.5 mm. */
const withReach = sampleJob((job, leaf) => {
  leaf.reach = {
    postPin: { alongMm: [-260, -60], outMm: [80, 320] },
    leafPin: { alongMm: [850, 1150], offMm: [85, 145] },
  };
  leaf.need = { clearanceMm: 50, leverMm: 120 };
  (job.rams as { retractedMm: number }[])[0]!.retractedMm = 760;
});

function placed(text: string, words: readonly string[] = []) {
  const run = pintle(["place", "-", "--json", ...words], { folder: freshFolder(), input: text });
  return { ...run, document: JSON.parse(run.out) as PlaceDocument };
}

test("[I15] place prints one document, its keys as promised, and nothing else; exit 0", () => {
  const { code, err, document } = placed(withReach);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  expect(Object.keys(document)).toEqual(["leaves"]);
  const [leaf] = document.leaves;
  expect(Object.keys(leaf ?? {})).toEqual(["id", "placements", "nothingFits"]);
  expect(leaf?.nothingFits).toBe(null);
  const [best] = leaf?.placements ?? [];
  expect(Object.keys(best ?? {})).toEqual(
    expect.arrayContaining(["postPin", "leafPin", "reserveMm", "firstToBreak", "limits"]),
  );
  expect(Object.keys(best?.postPin ?? {})).toEqual(["alongMm", "outMm"]);
  expect(Object.keys(best?.leafPin ?? {})).toEqual(["alongMm", "offMm"]);
  expect(Object.keys(best?.limits[0] ?? {}).sort()).toEqual(
    ["atDeg", "id", "limit", "slack", "state", "unit", "value"].sort(),
  );
  expect(Math.abs((best?.reserveMm ?? 0) - 25)).toBeLessThanOrEqual(0.5);
});

test("[I15] --best limits the list, --map and --every-ram add to it, --ram takes another ram of the job", () => {
  const farm = JSON.stringify(exampleJob("harrow-farm"));
  const { code, document } = placed(farm, ["--best", "1", "--map", "5x3", "--ram", "fieldhand-500"]);
  // The short leaf has no room for the long ram.
  expect(code).toBe(1);
  const [long, short] = document.leaves;
  expect(long?.placements.map(({ ram }) => ram)).toEqual(["fieldhand-500"]);
  expect(short?.nothingFits?.changes).toBeInstanceOf(Array);
  expect(long?.map).toMatchObject({
    alongMm: { length: 5 },
    outMm: { length: 3 },
    reserveMm: { length: 15 },
  });
});

test("[G15] a catalogue ranked by workers is the one ranked without them", () => {
  const words = ["place", example("harrow-farm"), "--every-ram", "--json", "--workers"];
  const [alone, shared] = ["1", "2"].map((workers) => pintle([...words, workers], { folder: freshFolder() }));
  expect(shared).toEqual(alone);
  const { leaves }: PlaceDocument = JSON.parse(alone?.out ?? "");
  for (const { rams = [] } of leaves) {
    const reserves = rams.map(({ reserveMm }) => reserveMm ?? Number.NEGATIVE_INFINITY);
    expect(reserves).toHaveLength(12);
    expect(reserves).toEqual([...reserves].sort((a, b) => b - a));
  }
});

type Change = NonNullable<PlaceDocument["leaves"][number]["nothingFits"]>["changes"][number];

/** Each change made by hand on the deep pier's job: what its words say, not what its patch says. */
const byHand: Record<Change["kind"], (job: Job, by: number) => void> = {
  stroke: (job, by) => (job.rams![0]!.strokeMm += by),
  retractedLength: (job, by) => (job.rams![0]!.retractedMm += by),
  openAngle: (job, by) => (job.leaves[0]!.openAngleDeg += by),
  clearance: (job, by) => (job.leaves[0]!.need!.clearanceMm! += by),
  leafPinOff: (job, by) => (job.leaves[0]!.reach!.leafPin!.offMm[1] += by),
  postPinOut: (job, by) => (job.leaves[0]!.reach!.postPin!.outMm[1] += by),
  postPocket: (job, by) => {
    job.leaves[0]!.reach!.postPin!.outMm[0] -= by;
    for (const corner of job.leaves[0]!.fixed![0]!.outlineMm) if (corner[1] === 200) corner[1] -= by;
  },
};

test("[G16] deep pier: each change makes it fit, 5 % less does not, and --apply does the same as by hand", () => {
  const nothing = placed(JSON.stringify(exampleJob("deep-pier")));
  expect(nothing.code).toBe(1);
  const { binding, changes } = nothing.document.leaves[0]?.nothingFits ?? { binding: [], changes: [] };
  expect(binding).not.toEqual([]);
  expect(changes.map(({ kind }) => kind)).toEqual(
    expect.arrayContaining(["stroke", "postPocket", "openAngle"]),
  );
  for (const { kind, by, unit, text } of changes) {
    expect({ kind, isWorded: text.length > 0, unit }).toEqual({
      kind,
      isWorded: true,
      unit: kind === "openAngle" ? "deg" : "mm",
    });
    const changed = (amount: number) => {
      const job = exampleJob("deep-pier");
      byHand[kind](job, amount);
      return placed(JSON.stringify(job));
    };
    const [whole, less] = [changed(by), changed(0.95 * by)];
    expect({ kind, code: whole.code }).toEqual({ kind, code: 0 });
    expect({ kind, code: less.code }).toEqual({ kind, code: 1 });
    expect(less.document.leaves[0]?.nothingFits).not.toBe(null);
    const applied = pintle(["place", example("deep-pier"), "--apply", kind, "--json"], {
      folder: freshFolder(),
    });
    expect({ kind, code: applied.code, err: applied.err }).toEqual({ kind, code: 0, err: "" });
    const document: PlaceDocument & { applied: readonly Change[] } = JSON.parse(applied.out);
    expect(document.applied.map((one) => [one.kind, one.by])).toEqual([[kind, by]]);
    expect(document.leaves).toEqual(whole.document.leaves);
  }
});

test("[I15] the job that place writes passes check; a file that is there is kept without --force", () => {
  const folder = freshFolder();
  for (const words of [
    ["place", example("harrow-farm"), "--out", "a.json"],
    ["place", example("deep-pier"), "--apply", "stroke", "--out", "b.json"],
    ["place", example("indexing-bracket"), "--out", "c.json"],
  ]) {
    const file = words.at(-1) ?? "";
    expect({ file, code: pintle(words, { folder }).code }).toEqual({ file, code: 0 });
    const checked = pintle(["check", file, "--json"], { folder });
    expect({ file, code: checked.code }).toEqual({ file, code: 0 });
    const reserves = JSON.parse(checked.out).findings.filter(({ id }: { id: string }) => id === "reserve");
    expect(reserves.every(({ value }: { value: number }) => value >= 0)).toBe(true);
  }
  const written: Job = JSON.parse(readFileSync(join(folder, "b.json"), "utf8"));
  expect(written.rams?.[0]?.strokeMm).toBeGreaterThan(400);
  expect(written.leaves[0]?.origin?.placement?.how).toBe("assumed");
  const again = pintle(["place", "a.json", "--out", "b.json"], { folder });
  expect(again).toEqual({
    code: 2,
    out: "",
    err: "b.json: a file of that name is there already; --force replaces it\n",
  });
  expect(readdirSync(folder).sort()).toEqual(["a.json", "b.json", "c.json"]);
});

test("[I15] --out - gives the placed job to the next command", () => {
  const { code, out } = pintle(["place", "-", "--out", "-"], { folder: freshFolder(), input: withReach });
  expect(code).toBe(0);
  const checked = pintle(["check", "-", "--json"], { folder: freshFolder(), input: out });
  expect({ code: checked.code, err: checked.err }).toEqual({ code: 0, err: "" });
});

test("[I15] without a reach there is nothing to search: said in words, exit 2; one leaf of two is enough for 0", () => {
  const alone = pintle(["place", "-"], { folder: freshFolder(), input: sampleJob() });
  expect(alone.code).toBe(2);
  expect(alone.out).toContain("Not searched: where the post pin and the leaf pin may go is not given");
  const two: Job = JSON.parse(withReach);
  const { reach: _, ...second } = two.leaves[0]!;
  const both = placed(JSON.stringify({ ...two, leaves: [two.leaves[0], { ...second, id: "lane" }] }));
  expect(both.code).toBe(0);
  expect(both.document.leaves[1]?.notSearched).toContain("is not given");
});

test("[I16] a ram that is not in the job, a change of no known kind, a map too small: exit 2", () => {
  const run = (...words: string[]) =>
    pintle(["place", "-", ...words], { folder: freshFolder(), input: withReach });
  expect(run("--ram", "none")).toEqual({
    code: 2,
    out: "",
    err: "--ram: found none, expected one of the job's rams: ram-a\n",
  });
  expect(run("--apply", "luck")).toMatchObject({ code: 2, out: "" });
  expect(run("--map", "1x9")).toMatchObject({ code: 2, out: "" });
});

test("[G16] a change that does not help is named with those that do; exit 1", () => {
  const folder = freshFolder();
  const run = pintle(["place", example("deep-pier"), "--apply", "clearance", "--out", "a.json"], {
    folder,
  });
  expect(run.code).toBe(1);
  expect(run.err).toMatch(
    /^leaf stackyard: clearance alone does not make a placement fit; these do: .*stroke/,
  );
  expect(run.err).toContain("a.json: not written: no placement was found");
  expect(existsSync(join(folder, "a.json"))).toBe(false);
});

test("[I15] escapes in a title, a leaf's id and a thing's name do not reach the terminal", () => {
  const job: Job = JSON.parse(withReach);
  const hostile = {
    ...job,
    title: "\u001b]0;owned\u0007\u001b[31mWindle\u001b[0m\r\nFarm\u202e",
    leaves: [
      { ...job.leaves[0], id: "ya\u009b2Jrd\u202e", fixed: [{ name: "p\u0085ier\u2066", outlineMm: pier }] },
    ],
  };
  const folder = freshFolder();
  writeFileSync(join(folder, "a.json"), JSON.stringify(hostile));
  for (const command of ["place", "check", "swing"]) {
    const { out, err } = pintle([command, "a.json"], { folder });
    expect(out).toContain("Windle Farm");
    // biome-ignore lint/suspicious/noControlCharactersInRegex: it is what must not be there
    expect(out + err).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/);
  }
});

const pier = [
  [-440, -215],
  [-40, -215],
  [-40, 70],
  [-440, 70],
];
