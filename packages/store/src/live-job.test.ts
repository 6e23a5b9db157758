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

  test("[T3] two people who set the same range apart get one of the two numbers, not a longer list", () => {
    const one = createLiveJob(demoJob(), 1);
    one.remove(at("leaves", 0, "reach"), "Remove");
    const two = new LiveJob(2);
    two.applyUpdate(one.encodeState());
    const reach = (outMm: [number, number]) => ({
      postPin: { alongMm: [-260, -60], outMm },
      leafPin: { alongMm: [600, 1400], offMm: [85, 145] },
    });
    one.setValue(at("leaves", 0, "reach"), reach([80, 300]), "Reach");
    two.setValue(at("leaves", 0, "reach"), reach([90, 320]), "Reach");
    two.applyUpdate(one.encodeState());
    one.applyUpdate(two.encodeState());
    one.setValue(at("leaves", 0, "reach", "postPin", "alongMm", 0), -250, "Reach");
    two.setValue(at("leaves", 0, "reach", "postPin", "alongMm"), [-240, -70], "Reach");
    two.applyUpdate(one.encodeState());
    one.applyUpdate(two.encodeState());
    expect(two.getJob()).toEqual(one.getJob());
    const { alongMm, outMm } = one.getJob()?.leaves[0]?.reach?.postPin ?? {};
    expect([
      [80, 300],
      [90, 320],
      [80, 320],
      [90, 300],
    ]).toContainEqual(outMm);
    expect([
      [-250, -70],
      [-240, -70],
    ]).toContainEqual(alongMm);
    expect(one.getJudged().ok).toBe(true);
  });

  test("[T3] a corner put into an outline here and one dragged there are both kept", () => {
    const one = createLiveJob(demoJob(), 1);
    const two = new LiveJob(2);
    two.applyUpdate(one.encodeState());
    const outline = at("leaves", 0, "fixed", 0, "outlineMm");
    one.insert([...outline, 2], [-30, -70], "Corner");
    two.setValue([...outline, 3], [-450, 90], "Drag");
    two.applyUpdate(one.encodeState());
    one.applyUpdate(two.encodeState());
    expect(two.getJob()).toEqual(one.getJob());
    expect(one.getJob()?.leaves[0]?.fixed?.[0]?.outlineMm).toEqual([
      [-440, -215],
      [-40, -215],
      [-30, -70],
      [-40, 70],
      [-450, 90],
    ]);
  });

  test("[T3] a thing that is removed here and edited there is gone on both sides, with nothing of it left", () => {
    const one = createLiveJob(demoJob(), 1);
    const two = new LiveJob(2);
    two.applyUpdate(one.encodeState());
    one.remove(at("leaves", 0, "placement"), "Remove");
    two.setValue(at("leaves", 0, "placement", "postPin", "outMm"), 160, "Drag");
    two.applyUpdate(one.encodeState());
    one.applyUpdate(two.encodeState());
    expect(two.getJob()).toEqual(one.getJob());
    expect(one.getJob()?.leaves[0]).not.toHaveProperty("placement");
    const fresh = { postPin: { alongMm: -1, outMm: 2 }, leafPin: { alongMm: 3, offMm: 4 } };
    one.setValue(at("leaves", 0, "placement"), fresh, "Place");
    expect(one.getJob()?.leaves[0]?.placement).toEqual(fresh);
  });

  test("[I9] an edit that is undone under a later one from elsewhere leaves that one, and hands its label on", () => {
    const one = createLiveJob(demoJob(), 1);
    const two = new LiveJob(2);
    one.setValue(at("note"), "mine", "Note");
    one.setValue(at("title"), "mine", "Title");
    two.applyUpdate(one.encodeState());
    two.setValue(at("title"), "theirs", "Title");
    one.applyUpdate(two.encodeState());
    one.undo();
    expect(one.getJob()?.title).toBe("theirs");
    expect(one.getUndoState()).toEqual({ undo: null, redo: "Note" });
  });

  test("[I9] several edits together are one step under one label, told once", () => {
    const live = createLiveJob(demoJob(), 1);
    let told = 0;
    const end = live.subscribe(() => {
      told += 1;
      expect(live.getUndoState().undo).toBe("Rename");
    });
    live.editTogether("Rename", () => {
      live.setValue(at("title"), "x", "inner");
      return live.setValue(at("leaves", 0, "id"), "y", "inner");
    });
    expect(told).toBe(1);
    end();
    live.undo();
    expect(live.getJob()).toEqual(demoJob());
  });

  test("misuse is named", () => {
    const live = createLiveJob(demoJob(), 1);
    expect(() => live.setValue(at("title"), Number.NaN, "x")).toThrow(
      "setValue found NaN; it expects finite numbers",
    );
    expect(() => live.setValue(at("title"), () => 1, "x")).toThrow(
      "setValue found a function; it expects JSON values",
    );
    expect(() => live.remove([], "x")).toThrow("an empty path");
    expect(() => live.insert(at("rams"), {}, "x")).toThrow("a path that ends in no position");
    expect(() => new LiveJob(0)).toThrow("replica id 0");
  });

  test("text with half a surrogate pair is mended at once, not only after it was kept", () => {
    const live = createLiveJob(demoJob(), 1);
    live.setValue(at("note"), "half \ud83d pair", "Note");
    expect(live.getJob()?.note).toBe("half \ufffd pair");
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
