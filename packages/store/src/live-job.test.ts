import { readJob } from "@pintle/job";
import { describe, expect, test } from "vitest";
import { createLiveJob, LiveJob } from "./live-job.ts";
import { demoJob } from "./testing/demo-job.ts";

const at = (...path: (string | number)[]) => path;

describe("a live job", () => {
  test("holds the job that it was made from, key for key in the same order", () => {
    const job = demoJob();
    const live = createLiveJob(job, 1);
    expect(JSON.stringify(live.getJob())).toBe(JSON.stringify(job));
    expect(live.getJudged()).toMatchObject({ ok: true, unknownKeys: ["leaves[0].painter"] });
    expect(live.getUndoState()).toEqual({ undo: null, redo: null });
  });

  test("keeps the identity of what an edit does not touch", () => {
    const live = createLiveJob(demoJob(), 1);
    const before = live.getJob();
    expect(live.getJob()).toBe(before);
    live.setValue(at("leaves", 0, "placement", "postPin", "alongMm"), -140, "Drag");
    const after = live.getJob();
    expect(after).not.toBe(before);
    expect(after?.leaves[0]?.placement?.postPin).not.toBe(before?.leaves[0]?.placement?.postPin);
    expect(after?.leaves[0]?.placement?.leafPin).toBe(before?.leaves[0]?.placement?.leafPin);
    expect(after?.rams).toBe(before?.rams);
  });

  test("[I9] undo takes back each edit by its label, redo brings it again", () => {
    const live = createLiveJob(demoJob(), 1);
    const start = live.getJob();
    live.setValue(at("title"), "West gate", "Title");
    live.remove(at("leaves", 0, "fixed", 0), "Remove pier");
    live.insert(at("rams", 1), { ...demoJob().rams?.[0], id: "second" }, "Add ram");
    const end = live.getJob();
    expect(live.getUndoState()).toEqual({ undo: "Add ram", redo: null });
    for (const redo of ["Add ram", "Remove pier", "Title"]) {
      expect(live.undo()).toBe(true);
      expect(live.getUndoState().redo).toBe(redo);
    }
    expect(JSON.stringify(live.getJob())).toBe(JSON.stringify(start));
    expect(live.undo()).toBe(false);
    for (const undo of ["Title", "Remove pier", "Add ram"]) {
      expect(live.redo()).toBe(true);
      expect(live.getUndoState().undo).toBe(undo);
    }
    expect(JSON.stringify(live.getJob())).toBe(JSON.stringify(end));
  });

  test("[I9] a gesture is one step, and an abandoned one leaves none", () => {
    const live = createLiveJob(demoJob(), 1);
    const out = at("leaves", 0, "placement", "postPin", "outMm");
    live.setValue(out, 151, "Before");
    live.beginGesture("Drag post pin");
    for (const outMm of [152, 153, 154]) live.setValue(out, outMm, "ignored");
    live.endGesture();
    live.setValue(out, 155, "After");
    live.undo();
    expect(live.getUndoState()).toEqual({ undo: "Drag post pin", redo: "After" });
    live.undo();
    expect(live.getJob()?.leaves[0]?.placement?.postPin.outMm).toBe(151);
    live.redo();
    live.beginGesture("Second drag");
    live.setValue(out, 170, "ignored");
    live.abandonGesture();
    expect(live.getJob()?.leaves[0]?.placement?.postPin.outMm).toBe(154);
    expect(live.getUndoState().undo).toBe("Drag post pin");
  });

  test("[T3] what two people add apart to an object and a list that neither had is kept of both", () => {
    const one = createLiveJob(demoJob(), 1);
    const two = new LiveJob(2);
    two.applyUpdate(one.encodeState());
    one.remove(at("leaves", 0, "need"), "Remove");
    one.remove(at("leaves", 0, "fixed"), "Remove");
    two.applyUpdate(one.encodeState());
    const pier = (name: string) => ({
      name,
      outlineMm: [
        [0, 100],
        [50, 100],
        [50, 200],
      ],
    });
    one.setValue(at("leaves", 0, "need", "clearanceMm"), 60, "Clearance");
    one.setValue(at("leaves", 0, "fixed"), [pier("wall")], "Wall");
    two.setValue(at("leaves", 0, "need", "leverMm"), 130, "Lever");
    two.setValue(at("leaves", 0, "fixed"), [pier("pier")], "Pier");
    one.applyUpdate(two.encodeState());
    two.applyUpdate(one.encodeState());
    expect(two.getJob()).toEqual(one.getJob());
    expect(one.getJob()?.leaves[0]?.need).toEqual({ clearanceMm: 60, leverMm: 130 });
    expect(
      one
        .getJob()
        ?.leaves[0]?.fixed?.map(({ name }) => name)
        .sort(),
    ).toEqual(["pier", "wall"]);
  });

  test("an edit of what is no longer there says so and changes nothing", () => {
    const live = createLiveJob(demoJob(), 1);
    const before = live.getJob();
    for (const edited of [
      live.setValue(at("leaves", 3, "lengthMm"), 1, "x"),
      live.setValue(at("title", "deeper"), 1, "x"),
      live.insert(at("rams", 9), {}, "x"),
      live.remove(at("leaves", 0, "asBuilt"), "x"),
    ]) {
      expect(edited).toMatchObject({ ok: false, fault: { found: "nothing" } });
    }
    expect(live.getJob()).toBe(before);
    expect(live.getUndoState().undo).toBeNull();
  });

  test("tells subscribers of each edit, and not of an edit that changes nothing", () => {
    const live = createLiveJob(demoJob(), 1);
    let told = 0;
    const end = live.subscribe(() => {
      told += 1;
    });
    live.setValue(at("title"), "North gate", "Title");
    expect(told).toBe(1);
    live.setValue(at("title"), "North gate", "Title");
    expect(told).toBe(1);
    live.undo();
    expect(told).toBe(2);
    end();
    live.redo();
    expect(told).toBe(2);
  });

  test("judges what a merge or an edit made of the job", () => {
    const live = createLiveJob(demoJob(), 1);
    live.setValue(at("leaves", 0, "lengthMm"), -3, "Length");
    expect(live.getJudged()).toMatchObject({ ok: false, faults: [{ path: "leaves[0].lengthMm" }] });
    live.undo();
    expect(live.getJudged()).toEqual(readJob(JSON.stringify(demoJob())));
  });
});
