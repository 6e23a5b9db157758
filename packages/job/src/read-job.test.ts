import { describe, expect, test } from "vitest";
import { faultInWords } from "./fault.ts";
import { longestText } from "./json-text.ts";
import { judgeDocument, readJob } from "./read-job.ts";
import { quarryLane, quarryLaneText } from "./testing/quarry-lane.ts";

// biome-ignore lint/suspicious/noExplicitAny: the changes put wrong values in on purpose
function faultsAfter(change: (job: any) => void): string[] {
  const job = quarryLane();
  change(job);
  const read = readJob(JSON.stringify(job));
  return read.ok ? [] : read.faults.map(faultInWords);
}

describe("readJob on a good job", () => {
  test("gives the document exactly as written", () => {
    const read = readJob(quarryLaneText);
    expect(read).toEqual({ ok: true, job: JSON.parse(quarryLaneText), unknownKeys: [] });
  });

  test("keeps unknown keys and reports their paths", () => {
    const job = quarryLane();
    job.crew = { van: 3 };
    job.leaves[0].fixed[0].colour = "red";
    job.leaves[0].reach.postPin["odd key"] = [1];
    const read = readJob(JSON.stringify(job));
    expect(read).toEqual({
      ok: true,
      job,
      unknownKeys: ['leaves[0].reach.postPin["odd key"]', "leaves[0].fixed[0].colour", "crew"],
    });
  });

  test("needs no ram, placement, reach, need, site or display", () => {
    const job = quarryLane();
    for (const key of ["site", "display", "title", "rams"]) delete job[key];
    for (const key of ["ram", "placement", "reach", "need", "fixed", "heightMm", "groundGapMm"])
      delete job.leaves[0][key];
    expect(readJob(JSON.stringify(job))).toEqual({ ok: true, job, unknownKeys: [] });
  });

  test("skips a byte-order mark", () => {
    expect(readJob(`\uFEFF${quarryLaneText}`).ok).toBe(true);
  });
});

describe("[I16] readJob on bad input names path, found and expected", () => {
  test("every fault at once, in the order of the schema", () => {
    const faults = faultsAfter((job) => {
      job.leaves[0].lengthMm = -1;
      job.leaves[0].swing = "out";
      delete job.leaves[0].thicknessMm;
      job.leaves[0].reach.postPin.alongMm = [-60, -260];
      job.rams[0].tube[0].toMm = 800;
      job.display = "imperial";
    });
    expect(faults).toEqual([
      'display: found the text "imperial", expected the units to show: "metric" or "us"',
      'leaves[0].swing: found the text "out", expected the swing: "toward" or "away"',
      "leaves[0].lengthMm: found -1, expected a number in mm, above 0 and at most 20000: hinge axis to the latch end of the leaf",
      "leaves[0].thicknessMm: found nothing, expected a number in mm, above 0 and at most 1000: thickness of the leaf",
      "leaves[0].reach.postPin.alongMm: found [-60, -260], expected two numbers [from, to] in mm, from not larger than to: post pin along",
      "rams[0].tube[0].toMm: found 800, expected a tube that ends within the retracted length, 760 mm",
    ]);
  });

  // biome-ignore lint/suspicious/noExplicitAny: the changes put wrong values in on purpose
  test.each<[string, (job: any) => void, string]>([
    ["0°", (job) => (job.leaves[0].openAngleDeg = 0), "leaves[0].openAngleDeg: found 0"],
    ["180°", (job) => (job.leaves[0].openAngleDeg = 180), "leaves[0].openAngleDeg: found 180"],
    ["a leaf of 126 m", (job) => (job.leaves[0].lengthMm = 126_000), "leaves[0].lengthMm: found 126000"],
    [
      "text for a number",
      (job) => (job.leaves[0].lengthMm = "3600"),
      'leaves[0].lengthMm: found the text "3600"',
    ],
    ["null", (job) => (job.leaves[0].heelMm = null), "leaves[0].heelMm: found null"],
    ["a heel beyond the toe", (job) => (job.leaves[0].heelMm = 3600), "leaves[0].heelMm: found 3600"],
    ["no leaf", (job) => (job.leaves = []), "leaves: found an empty list"],
    ["leaves missing", (job) => delete job.leaves, "leaves: found nothing"],
    ["an object for a list", (job) => (job.leaves = {}), "leaves: found an object"],
    [
      "a ram that is not there",
      (job) => (job.leaves[0].ram = "x"),
      'leaves[0].ram: found the text "x", expected the id of a ram in rams (demo-ram-400)',
    ],
    [
      "a ram longer than the leaf",
      (job) => (job.rams[0].retractedMm = 3600),
      "rams[0].retractedMm: found 3600, expected a ram shorter than the leaf",
    ],
    ["margins that eat the stroke", (job) => (job.rams[0].strokeMm = 20), "rams[0].strokeMm: found 20"],
    [
      "a tube that ends before it starts",
      (job) => (job.rams[0].tube[0].fromMm = 560),
      "rams[0].tube[0]: found an object, expected a stretch whose fromMm is smaller",
    ],
    [
      "two rams of one id",
      (job) => job.rams.push(job.rams[0]),
      'rams[1].id: found the text "demo-ram-400", expected an id that no earlier one has',
    ],
    ["two leaves of one id", (job) => job.leaves.push(job.leaves[0]), 'leaves[1].id: found the text "east"'],
    [
      "two fixed things of one name",
      (job) => job.leaves[0].fixed.push(job.leaves[0].fixed[0]),
      'leaves[0].fixed[1].name: found the text "pier"',
    ],
    [
      "a fixed thing named leaf",
      (job) => (job.leaves[0].fixed[0].name = "leaf"),
      'leaves[0].fixed[0].name: found the text "leaf"',
    ],
    [
      "an outline of two corners",
      (job) => job.leaves[0].fixed[0].outlineMm.splice(2),
      "leaves[0].fixed[0].outlineMm: found a list of 2",
    ],
    [
      "an outline that crosses itself",
      (job) => job.leaves[0].fixed[0].outlineMm.reverse().push([-300, 200], [-40, -300]),
      "leaves[0].fixed[0].outlineMm: found the edge after corner",
    ],
    [
      "a range of one number",
      (job) => (job.leaves[0].reach.leafPin.offMm = [85]),
      "leaves[0].reach.leafPin.offMm: found [85]",
    ],
    [
      "an unknown bracket",
      (job) => (job.leaves[0].brackets = { post: [{ kind: "glued" }] }),
      'leaves[0].brackets.post[0].kind: found the text "glued"',
    ],
    [
      "readings off faces that are not given",
      (job) => (job.leaves[0].asBuilt = { readings: [{ kind: "postPinFromRamFace", valueMm: 80 }] }),
      "leaves[0].post: found nothing",
    ],
    [
      "pin to pin without where the leaf stood",
      (job) => (job.leaves[0].asBuilt = { readings: [{ kind: "pinToPin", valueMm: 900 }] }),
      "leaves[0].asBuilt.readings[0].leafAt: found nothing",
    ],
    [
      "an origin without how",
      (job) => (job.leaves[0].origin = { lengthMm: { who: "Ada" } }),
      "leaves[0].origin.lengthMm.how: found nothing",
    ],
  ])("%s", (_name, change, start) => {
    const faults = faultsAfter(change);
    expect(faults).toHaveLength(1);
    expect(faults[0]?.slice(0, start.length)).toBe(start);
  });

  test("brackets on a face need the faces of the post", () => {
    const plate = {
      kind: "plate",
      id: "P",
      face: "ramSide",
      positionMm: [-300, -100],
      stepMm: 10,
      standOffMm: [60, 90],
    };
    const faults = faultsAfter((job) => {
      job.leaves[0].brackets = { post: [plate] };
    });
    expect(faults).toEqual([
      "leaves[0].post: found nothing, expected the faces of the hinge post {gatewayFaceAlongMm, ramFaceOutMm}, because brackets are bolted to them",
    ]);
  });

  test("a number that JSON can write but no machine can hold", () => {
    const read = readJob(quarryLaneText.replace('"lengthMm": 3600', '"lengthMm": 1e999'));
    expect(read.ok || read.faults[0]?.found).toBe("a number too large to hold");
  });
});

describe("readJob on text that is no job", () => {
  const only = (text: string) => {
    const read = readJob(text);
    if (read.ok) throw new Error("was read");
    expect(read.faults).toHaveLength(1);
    return faultInWords(read.faults[0] as (typeof read.faults)[0]);
  };

  test("a truncated text, by line and column", () => {
    const lines = quarryLaneText.split("\n");
    const cut = lines.slice(0, 5).join("\n");
    expect(only(cut)).toBe(
      `found the end of the text at line 5, column ${(lines[4]?.length ?? 0) + 1}, expected a key in double quotes; the text breaks off`,
    );
  });

  test("NaN, comments and stray text", () => {
    expect(only('{\n  "a": NaN }')).toContain("at line 2, column 8");
    expect(only('{ "a": 1 /* one */ }')).toContain("at line 1, column 10");
    expect(only("{} {}")).toContain("at line 1, column 4");
    expect(only("gate")).toContain("at line 1, column 1");
    expect(only("")).toBe("found an empty text, expected a job as JSON");
  });

  test("a list or a number", () => {
    expect(only("[]")).toBe("found an empty list, expected a job, which is an object");
    expect(only("3")).toBe("found 3, expected a job, which is an object");
  });

  test("another format is refused for that alone", () => {
    expect(only('{ "format": "shed-job", "version": 1 }')).toBe(
      'format: found the text "shed-job", expected "pintle-job"',
    );
  });

  test("an unknown version is refused with the versions that can be read", () => {
    const newer = quarryLaneText.replace('"version": 1', '"version": 7');
    expect(only(newer)).toBe("version: found 7, expected a version that can be read: 1");
    expect(only(newer.replace("7", '"1"'))).toContain('version: found the text "1"');
  });

  test("more than 5 MB", () => {
    expect(only(" ".repeat(longestText + 1))).toContain("a job of at most 5242880 characters (5 MB)");
  });

  test("nesting that would overflow the stack", () => {
    expect(only("[".repeat(100_000))).toContain("nesting deeper than 100 levels at line 1, column 101");
  });

  test("a key that an object holds twice, since one of the two values would be lost", () => {
    const twice = quarryLaneText.replace('"heelMm": 30', '"heelMm": 30, "lengthMm": 3500');
    expect(only(twice)).toBe(
      "leaves[0].lengthMm: found the key a second time at line 6, column 37, expected each key once",
    );
  });

  test("colons and quotes within texts do not hide a repeated key, nor make one up", () => {
    const withTitle = (title: string) => quarryLaneText.replace('"format"', `${title}, "format"`);
    expect(readJob(withTitle('"note": "a \\": {\\\\"')).ok).toBe(true);
    expect(only(withTitle('"note": "\\":", "note": "b"'))).toMatch(/^note: found the key a second time/);
  });

  test("a job without format and version still gets all its other faults", () => {
    const read = readJob('{ "leaves": 3 }');
    expect(read.ok || read.faults.map((fault) => fault.path)).toEqual(["format", "version", "leaves"]);
  });
});

describe("migrated jobs", () => {
  const fromZero = {
    from: 0,
    what: "metres become millimetres",
    // biome-ignore lint/suspicious/noExplicitAny: an older document has no type
    lift: (old: any) => {
      for (const leaf of old.leaves) {
        leaf.lengthMm = leaf.length * 1000;
        delete leaf.length;
      }
      return old;
    },
  };

  test("are lifted, say from where, and leave the given document alone", () => {
    const old = quarryLane();
    old.version = 0;
    old.leaves[0].length = 3.6;
    delete old.leaves[0].lengthMm;
    const before = structuredCloneOf(old);
    const read = judgeDocument(old, [fromZero]);
    expect(old).toEqual(before);
    expect(read).toEqual({ ok: true, job: quarryLane(), unknownKeys: [], migratedFrom: 0 });
  });

  test("name every version that can be read when they cannot be lifted", () => {
    const read = judgeDocument({ format: "pintle-job", version: 9 }, [fromZero]);
    expect(read.ok || read.faults[0]?.expected).toBe("a version that can be read: 0, 1");
  });
});

function structuredCloneOf(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value));
}
