// What examples/ claims, run against the packages: the files are read, written back, and solved.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import {
  bestPlacement,
  estimateAsBuilt,
  leastChanges,
  limitsOf,
  reserveOf,
  smallestMend,
} from "../packages/core/src/index.ts";
import {
  fromSi,
  type Job,
  type JobLeaf,
  parseQuantity,
  ramFor,
  readJob,
  toPlacement,
  toPostFaces,
  toReach,
  toReadings,
  toSituation,
  valueOrigins,
  writeJob,
} from "../packages/job/src/index.ts";
import { root } from "./places.mjs";

const folder = join(root, "examples");
const names = readdirSync(folder).filter((name) => name.endsWith(".json"));
const textOf = (name: string) => readFileSync(join(folder, name), "utf8");

function jobOf(name: string): Job {
  const read = readJob(textOf(name));
  if (!read.ok) throw new Error(`${name}: ${read.faults.length} faults, none expected`);
  return read.job;
}

function leafOf(name: string): { readonly job: Job; readonly leaf: JobLeaf } {
  const job = jobOf(name);
  return { job, leaf: job.leaves[0] as JobLeaf };
}

function problemOf(job: Job, leaf: JobLeaf) {
  const ram = ramFor(job, leaf);
  const reach = toReach(leaf);
  if (ram === null || !reach.ok) throw new Error(`leaf ${leaf.id}: a ram and a reach expected`);
  return { situation: toSituation(leaf, ram), reach: reach.reach };
}

test("the folder holds the six jobs", () => {
  expect(names.sort()).toEqual([
    "as-built-wrong.json",
    "deep-pier.json",
    "harrow-farm.json",
    "indexing-bracket.json",
    "swing-away.json",
    "us-units.json",
  ]);
});

describe.each(names)("%s", (name) => {
  test("reads without faults or unknown keys, and says that it is invented", () => {
    const read = readJob(textOf(name));
    expect(read).toMatchObject({ ok: true, unknownKeys: [] });
    expect(read.ok && read.job.note).toMatch(/^Everything here is invented: /);
  });

  test("is written as the job package writes it", () => {
    expect(writeJob(jobOf(name))).toBe(textOf(name));
  });

  test("says of every number where it comes from", () => {
    const unsaid = valueOrigins(jobOf(name)).filter(({ standing }) => standing === "notStated");
    expect(unsaid.map(({ path }) => path)).toEqual([]);
  });
});

/** The coarsest rounding is to 1/16 in, so no pin moves by more than half of that, nor its reserve [m]. */
const lostByRounding = 0.0254 / 32;

const solved = ["harrow-farm.json", "swing-away.json", "indexing-bracket.json", "us-units.json"].flatMap(
  (name) => jobOf(name).leaves.map((leaf) => ({ name, id: leaf.id, leaf, job: jobOf(name) })),
);

test.each(solved)(
  "[G11][G12] $name, leaf $id: the placement keeps every limit and is the search's best",
  ({ job, leaf }) => {
    const { situation, reach } = problemOf(job, leaf);
    const placement = toPlacement(leaf.placement);
    if (placement === null) throw new Error("a placement expected");
    expect(limitsOf(situation, placement).filter(({ state }) => state === "fail")).toEqual([]);
    const found = bestPlacement(situation, reach);
    if (found.status !== "found") throw new Error(`a placement expected, ${found.status} found`);
    const { reserve } = reserveOf(situation, placement);
    expect(reserve).toBeGreaterThan(found.reserve - lostByRounding);
    // Rounding may carry a pin past the edge of its reach, so by as much it may also gain.
    expect(reserve).toBeLessThan(found.ceiling + lostByRounding);
  },
);

test("[G2] swing-away.json: the post pin stands in the gateway and the ram pushes", () => {
  const { leaf } = leafOf("swing-away.json");
  expect(leaf.swing).toBe("away");
  expect(leaf.placement?.postPin.alongMm).toBeGreaterThan(0);
});

test("[G13] indexing-bracket.json: the pins are where the brackets put them", () => {
  const { job, leaf } = leafOf("indexing-bracket.json");
  const { situation, reach } = problemOf(job, leaf);
  const found = bestPlacement(situation, reach);
  if (found.status !== "found") throw new Error(`a placement expected, ${found.status} found`);
  expect(found.cell.postBracket).toBe("arm, locked at 135°");
  // Bolt 30 mm off a face 60 mm out, arm of 110 mm at 135°: by hand, out = 60 + 30 + 110·sin 135° = 167.78 mm.
  expect(found.placement.postPin.out * 1000).toBeCloseTo(167.78, 2);
  const members = leaf.brackets?.leaf?.[0]?.membersMm ?? [];
  const along = leaf.placement?.leafPin.alongMm ?? Number.NaN;
  expect(members.some(([from, to]) => from <= along && along <= to)).toBe(true);
});

test("[G16] deep-pier.json: nothing fits, and three single changes would each mend it", () => {
  const { job, leaf } = leafOf("deep-pier.json");
  expect(leaf.placement).toBeUndefined();
  const problem = problemOf(job, leaf);
  const { changes, undecided, binding } = leastChanges(problem);
  expect(changes.map(({ kind }) => kind)).toEqual(["stroke", "postPocket", "openAngle"]);
  expect(undecided).toEqual([]);
  expect(binding.length).toBeGreaterThan(1);
});

describe("[G18] as-built-wrong.json", () => {
  const { job, leaf } = leafOf("as-built-wrong.json");
  const { situation } = problemOf(job, leaf);
  const plan = toPlacement(leaf.placement);
  if (plan === null) throw new Error("a plan expected");
  const estimate = (without: string | null) => {
    const outcome = estimateAsBuilt({
      leaf: situation.leaf,
      postFaces: toPostFaces(leaf),
      plan,
      readings: toReadings(leaf).filter(({ id }) => id !== without),
      estimateOpenAngle: false,
    });
    if (!outcome.ok) throw new Error(`an estimate expected, ${outcome.reason} found`);
    return outcome.value;
  };
  const misread = "asBuilt.readings[4]";

  test("the plan itself keeps every limit", () => {
    expect(reserveOf(situation, plan).feasible).toBe(true);
  });

  test("points at the reading whose digits were swapped: 1061 for 1016", () => {
    const found = estimate(null);
    expect(found.readingsAgree).toBe(false);
    if (found.misread?.kind !== "reading") throw new Error("one suspect expected");
    expect(found.misread.suspect.id).toBe(misread);
    expect(found.misread.suspect.slips[0]).toEqual({ kind: "digitsSwapped", intended: 1.016 });
  });

  test("without it the readings agree, the pier is too near, and moving the post pin less than 10 mm mends it", () => {
    const found = estimate(misread);
    expect(found.readingsAgree).toBe(true);
    const failing = limitsOf(situation, found.placement).filter(({ state }) => state === "fail");
    expect(failing.map(({ id }) => id)).toEqual(["clearance.pier"]);
    const mend = smallestMend(situation, found.placement, limitsOf, { radius: 0.02 });
    if (mend.kind !== "needed" || mend.postPin.kind !== "move") throw new Error("a move expected");
    expect(mend.postPin.distance).toBeLessThan(0.01);
    expect(limitsOf(situation, mend.postPin.placement).some(({ state }) => state === "fail")).toBe(false);
  });
});

test("us-units.json: what was typed gives the millimetres in the file", () => {
  const { job } = leafOf("us-units.json");
  const typed = valueOrigins(job).flatMap(({ path, value, origin }) =>
    origin?.typed !== undefined && typeof value === "number" && path.endsWith("Mm")
      ? [{ path, value, typed: origin.typed }]
      : [],
  );
  const single = typed.filter(({ path }) => /^leaves\[0\]\.\w+$/.test(path));
  expect(single.length).toBeGreaterThanOrEqual(6);
  for (const { value, typed: text } of single) {
    const parsed = parseQuantity("length", text, "in");
    expect(parsed.ok && fromSi(parsed.si, "mm")).toBe(value);
  }
});
