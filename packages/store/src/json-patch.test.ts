import { describe, expect, test } from "vitest";
import { type PatchStep, patchedValue } from "./json-patch.ts";
import { createLiveJob } from "./live-job.ts";
import { demoJob } from "./testing/demo-job.ts";

// Source: RFC 6902 (IETF, April 2013), appendix A: documents, patches and results as printed there.
const published: { section: string; document: unknown; patch: PatchStep[]; result: unknown }[] = [
  {
    section: "A.1 adding an object member",
    document: { foo: "bar" },
    patch: [{ op: "add", path: "/baz", value: "qux" }],
    result: { baz: "qux", foo: "bar" },
  },
  {
    section: "A.2 adding an array element",
    document: { foo: ["bar", "baz"] },
    patch: [{ op: "add", path: "/foo/1", value: "qux" }],
    result: { foo: ["bar", "qux", "baz"] },
  },
  {
    section: "A.3 removing an object member",
    document: { baz: "qux", foo: "bar" },
    patch: [{ op: "remove", path: "/baz" }],
    result: { foo: "bar" },
  },
  {
    section: "A.4 removing an array element",
    document: { foo: ["bar", "qux", "baz"] },
    patch: [{ op: "remove", path: "/foo/1" }],
    result: { foo: ["bar", "baz"] },
  },
  {
    section: "A.5 replacing a value",
    document: { baz: "qux", foo: "bar" },
    patch: [{ op: "replace", path: "/baz", value: "boo" }],
    result: { baz: "boo", foo: "bar" },
  },
  {
    section: "A.10 adding a nested member object",
    document: { foo: "bar" },
    patch: [{ op: "add", path: "/child", value: { grandchild: {} } }],
    result: { foo: "bar", child: { grandchild: {} } },
  },
  {
    section: "A.16 adding an array value",
    document: { foo: ["bar"] },
    patch: [{ op: "add", path: "/foo/-", value: ["abc", "def"] }],
    result: { foo: ["bar", ["abc", "def"]] },
  },
];

describe("a JSON Patch", () => {
  test.each(published)("does what RFC 6902 $section shows", ({ document, patch, result }) => {
    expect(patchedValue(document, patch)).toEqual({ ok: true, value: result });
  });

  test("RFC 6902 A.12: adding to a target that does not exist is refused", () => {
    const patch: PatchStep[] = [{ op: "add", path: "/baz/bat", value: "qux" }];
    expect(patchedValue({ foo: "bar" }, patch)).toMatchObject({ ok: false, fault: { path: "/baz/bat" } });
  });

  // Source: RFC 6901 (IETF, April 2013), section 3: "~1" stands for "/" and "~0" for "~"; section 4: an index has no leading zero.
  test("reads pointers as RFC 6901 says", () => {
    const steps: PatchStep[] = [{ op: "replace", path: "/a~1b/m~0n", value: 1 }];
    expect(patchedValue({ "a/b": { "m~n": 0 } }, steps)).toEqual({
      ok: true,
      value: { "a/b": { "m~n": 1 } },
    });
    for (const path of ["/list/01", "/list/2", "/list/-", "/list/x", "list", "/none/0"]) {
      expect(patchedValue({ list: [1, 2] }, [{ op: "replace", path, value: 0 }]).ok).toBe(false);
    }
    expect(patchedValue({ list: [1] }, [{ op: "replace", path: "", value: 0 }])).toEqual({
      ok: true,
      value: 0,
    });
  });

  test("[I2] a remedy is applied whole as one step, and undone by one", () => {
    const live = createLiveJob(demoJob(), 1);
    const start = live.getJob();
    const remedy: PatchStep[] = [
      { op: "add", path: "/rams/0/strokeMm", value: 422 },
      { op: "add", path: "/leaves/0/need/clearanceMm", value: 45 },
    ];
    expect(live.applyPatch(remedy, "Longer stroke")).toEqual({ ok: true });
    expect(live.getJob()?.rams?.[0]?.strokeMm).toBe(422);
    expect(live.getJob()?.leaves[0]?.need?.clearanceMm).toBe(45);
    live.undo();
    expect(live.getJob()).toEqual(start);
  });

  test("a patch whose second step has no place changes nothing", () => {
    const live = createLiveJob(demoJob(), 1);
    const start = live.getJob();
    const broken: PatchStep[] = [
      { op: "add", path: "/title", value: "West" },
      { op: "add", path: "/leaves/7/lengthMm", value: 1 },
    ];
    expect(live.applyPatch(broken, "x")).toMatchObject({ ok: false, fault: { path: "/leaves/7/lengthMm" } });
    expect(live.getJob()).toBe(start);
  });
});
