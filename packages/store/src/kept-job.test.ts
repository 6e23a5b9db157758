import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createMemoryChannels, type JobMessage } from "./channel.ts";
import { type KeptJob, type KeptJobParts, openKeptJob, startKeptJob } from "./kept-job.ts";
import type { JobStorage } from "./storage/job-storage.ts";
import { createMemoryStorage } from "./storage/memory-storage.ts";
import { demoJob } from "./testing/demo-job.ts";
import { unhurried } from "./testing/unhurried.ts";

let replicas = 100;
function partsOf(storage: JobStorage, more: Partial<KeptJobParts> = {}): KeptJobParts {
  replicas += 1;
  return { storage, channel: null, replicaId: replicas, nowMs: () => 1000, ...more };
}

async function opened(opening: ReturnType<typeof openKeptJob>): Promise<KeptJob> {
  const answer = await opening;
  if (!answer.ok) throw new Error(answer.message);
  return answer.kept;
}

/** Waits until everything that can be kept is. */
const settled = (kept: KeptJob) => kept.retry();

const outMm = (kept: KeptJob) => kept.live.getJob()?.leaves[0]?.placement?.postPin.outMm;
const out = ["leaves", 0, "placement", "postPin", "outMm"];

describe("a kept job", () => {
  test("[T1] is there again after the page was closed, and says when it was kept", async () => {
    const storage = createMemoryStorage();
    let nowMs = 5000;
    const kept = await opened(startKeptJob("a", demoJob(), partsOf(storage, { nowMs: () => nowMs })));
    expect(kept.getKeeping()).toEqual({ state: "saved", atMs: null });
    const states: string[] = [];
    kept.subscribe(() => states.push(kept.getKeeping().state));
    nowMs = 6000;
    kept.live.setValue(["title"], "West gate", "Title");
    expect(kept.getKeeping()).toEqual({ state: "saving" });
    await settled(kept);
    expect(kept.getKeeping()).toEqual({ state: "saved", atMs: 6000 });
    expect(states).toEqual(["saving", "saved"]);
    expect(await storage.list()).toMatchObject({ entries: [{ title: "West gate", updatedAtMs: 6000 }] });
    const again = await opened(openKeptJob("a", partsOf(storage)));
    expect(JSON.stringify(again.live.getJob())).toBe(JSON.stringify(kept.live.getJob()));
  });

  test("[T1] a full device is said plainly; nothing typed is lost, and all is kept once there is room", async () => {
    let room = Number.POSITIVE_INFINITY;
    const storage = createMemoryStorage(() => room);
    const kept = await opened(startKeptJob("a", demoJob(), partsOf(storage)));
    room = 0;
    kept.live.setValue(out, 151, "Drag");
    kept.live.setValue(out, 152, "Drag");
    expect(await settled(kept)).toEqual({ state: "full", message: "the memory set aside for jobs is full" });
    kept.live.setValue(["title"], "typed while full", "Title");
    expect(await settled(kept)).toMatchObject({ state: "full" });
    expect(outMm(kept)).toBe(152);
    room = Number.POSITIVE_INFINITY;
    expect(await kept.retry()).toEqual({ state: "saved", atMs: 1000 });
    const again = await opened(openKeptJob("a", partsOf(storage)));
    expect(again.live.getJob()).toEqual(kept.live.getJob());
    expect(again.live.getJob()?.title).toBe("typed while full");
  });

  test("[T1] a job begun on a full device opens all the same, and is kept once there is room", async () => {
    let room = 0;
    const storage = createMemoryStorage(() => room);
    const kept = await opened(startKeptJob("a", demoJob(), partsOf(storage)));
    expect(kept.getKeeping().state).toBe("full");
    kept.live.setValue(out, 170, "Drag");
    expect((await settled(kept)).state).toBe("full");
    room = Number.POSITIVE_INFINITY;
    expect((await kept.retry()).state).toBe("saved");
    expect(outMm(await opened(openKeptJob("a", partsOf(storage))))).toBe(170);
  });

  test("[T1] a device that is full of overwritten values is made room on before anything is refused", async () => {
    let room = Number.POSITIVE_INFINITY;
    const storage = createMemoryStorage(() => room);
    const kept = await opened(startKeptJob("a", demoJob(), partsOf(storage)));
    for (let step = 0; step < 100; step += 1) {
      kept.live.setValue(out, 100 + step, "Drag");
      await settled(kept);
    }
    const loaded = await storage.load("a");
    room = loaded.ok ? loaded.updates.reduce((sum, update) => sum + update.length, 0) : 0;
    kept.live.setValue(out, 300, "Drag");
    expect((await settled(kept)).state).toBe("saved");
    expect(outMm(await opened(openKeptJob("a", partsOf(storage))))).toBe(300);
  });

  test("[T9] a thousand edits leave a short log", async () => {
    const storage = createMemoryStorage();
    const kept = await opened(startKeptJob("a", demoJob(), partsOf(storage)));
    for (let step = 0; step < 1000; step += 1) {
      kept.live.setValue(out, step, "Drag");
      await settled(kept);
    }
    const loaded = await storage.load("a");
    expect(loaded.ok && loaded.updates.length).toBeLessThanOrEqual(201);
    expect(outMm(await opened(openKeptJob("a", partsOf(storage))))).toBe(999);
  });

  test("[T1] two tabs see each other's edits at once, and both keep them", async () => {
    const storage = createMemoryStorage();
    const channels = createMemoryChannels<JobMessage>();
    const one = await opened(startKeptJob("a", demoJob(), partsOf(storage, { channel: channels("a") })));
    const two = await opened(openKeptJob("a", partsOf(storage, { channel: channels("a") })));
    one.live.setValue(out, 160, "Drag");
    two.live.setValue(["title"], "from the second tab", "Title");
    expect(two.live.getJob()).toEqual(one.live.getJob());
    expect([outMm(two), one.live.getJob()?.title]).toEqual([160, "from the second tab"]);
    two.live.undo();
    expect([outMm(one), one.live.getJob()?.title]).toEqual([160, demoJob().title]);
    await Promise.all([settled(one), settled(two)]);
    const third = await opened(openKeptJob("a", partsOf(storage)));
    expect(third.live.getJob()).toEqual(one.live.getJob());
  });

  test("[T1] a second tab brings along, and gets, what the device refused to keep", async () => {
    let room = Number.POSITIVE_INFINITY;
    const storage = createMemoryStorage(() => room);
    const channels = createMemoryChannels<JobMessage>();
    const one = await opened(startKeptJob("a", demoJob(), partsOf(storage, { channel: channels("a") })));
    const apart = await opened(openKeptJob("a", partsOf(storage)));
    room = 0;
    one.live.setValue(out, 170, "Drag");
    await settled(one);
    const two = await opened(openKeptJob("a", partsOf(storage, { channel: channels("a") })));
    expect(outMm(two)).toBe(170);
    apart.live.setValue(["title"], "made apart", "Title");
    two.live.applyUpdate(apart.live.encodeState());
    expect(one.live.getJob()?.title).toBe("made apart");
    expect([(await settled(one)).state, (await settled(two)).state]).toEqual(["full", "full"]);
  });

  test("[T1] a job that is closed on a full device is opened again with all that was typed", async () => {
    let room = Number.POSITIVE_INFINITY;
    const storage = createMemoryStorage(() => room);
    const channels = createMemoryChannels<JobMessage>();
    const one = await opened(startKeptJob("a", demoJob(), partsOf(storage, { channel: channels("a") })));
    room = 0;
    one.live.setValue(out, 175, "Drag");
    expect((await one.close()).state).toBe("full");
    const two = await opened(openKeptJob("a", partsOf(storage, { channel: channels("a") })));
    expect(outMm(two)).toBe(175);
    room = Number.POSITIVE_INFINITY;
    expect((await two.retry()).state).toBe("saved");
    // The first one has nothing to hold on to any more once it hears of room; then it is gone.
    two.live.setValue(out, 176, "Drag");
    expect((await two.close()).state).toBe("saved");
    expect(await one.retry()).toMatchObject({ state: "saved" });
    expect(outMm(await opened(openKeptJob("a", partsOf(storage))))).toBe(176);
  });

  test("[T1] a tab that opens a job with more in it than an open one knows tells that one", async () => {
    const storage = createMemoryStorage();
    const channels = createMemoryChannels<JobMessage>();
    const one = await opened(startKeptJob("a", demoJob(), partsOf(storage, { channel: channels("a") })));
    const unheard = await opened(openKeptJob("a", partsOf(storage)));
    unheard.live.setValue(out, 190, "Drag");
    await settled(unheard);
    expect(outMm(one)).toBe(150);
    await opened(openKeptJob("a", partsOf(storage, { channel: channels("a") })));
    expect(outMm(one)).toBe(190);
  });

  test("[T9] an edit of a tab that is killed before it was kept is kept by the tab that saw it", async () => {
    const storage = createMemoryStorage();
    const channels = createMemoryChannels<JobMessage>();
    await opened(startKeptJob("a", demoJob(), partsOf(storage)));
    const killed: JobStorage = { ...storage, append: () => new Promise(() => {}) };
    const one = await opened(openKeptJob("a", partsOf(killed, { channel: channels("a") })));
    const two = await opened(openKeptJob("a", partsOf(storage, { channel: channels("a") })));
    one.live.setValue(out, 165, "Drag");
    expect((await settled(two)).state).toBe("saved");
    expect(outMm(await opened(openKeptJob("a", partsOf(storage))))).toBe(165);
  });

  test("[T1] two tabs that start the same job at once hold one job, not two in one", async () => {
    const storage = createMemoryStorage();
    const channels = createMemoryChannels<JobMessage>();
    const [one, two] = await Promise.all(
      [1, 2].map(() =>
        opened(startKeptJob("demo", demoJob(), partsOf(storage, { channel: channels("demo") }))),
      ),
    );
    expect(one?.live.getJob()).toEqual(demoJob());
    expect(two?.live.getJob()).toEqual(demoJob());
  });

  test("[T1] a job that another tab removes while it is edited here is kept whole again", async () => {
    const storage = createMemoryStorage();
    const kept = await opened(startKeptJob("a", demoJob(), partsOf(storage)));
    await storage.remove("a");
    kept.live.setValue(out, 180, "Drag");
    expect((await settled(kept)).state).toBe("saved");
    const again = await opened(openKeptJob("a", partsOf(storage)));
    expect(again.live.getJob()).toEqual(kept.live.getJob());
  });

  test("what cannot be read is said, not thrown", async () => {
    const storage = createMemoryStorage();
    const entry = { jobId: "a", title: "", updatedAtMs: 0, archived: false };
    await storage.create([{ entry, update: new Uint8Array([9, 9, 9]) }]);
    expect(await openKeptJob("a", partsOf(storage))).toMatchObject({ ok: false, reason: "failed" });
    expect(await openKeptJob("b", partsOf(storage))).toMatchObject({ ok: false, reason: "absent" });
  });

  test(
    "[T9] whatever the storage refuses and whenever the page is killed, what was said to be kept is there",
    async () => {
      const step = fc.record({
        outMm: fc.integer({ min: 0, max: 500 }),
        refuse: fc.boolean(),
        kill: fc.boolean(),
        wait: fc.boolean(),
      });
      await fc.assert(
        fc.asyncProperty(fc.array(step, { maxLength: 30 }), async (steps) => {
          let room = Number.POSITIVE_INFINITY;
          const storage = createMemoryStorage(() => room);
          let kept = await opened(startKeptJob("a", demoJob(), partsOf(storage)));
          // What may be found after the page was killed: the last that was said to be kept, or anything typed since.
          let possible = [outMm(kept)];
          for (const { outMm: typed, refuse, kill, wait } of steps) {
            room = refuse ? 0 : Number.POSITIVE_INFINITY;
            kept.live.setValue(out, typed, "Drag");
            expect(outMm(kept)).toBe(typed);
            possible.push(typed);
            if (wait && (await settled(kept)).state === "saved") possible = [typed];
            if (!kill) continue;
            // The old page is not closed: it just ends. What it was writing may still land.
            kept = await opened(openKeptJob("a", partsOf(storage)));
            expect(possible).toContain(outMm(kept));
          }
        }),
        { seed: 20_417, numRuns: 80 },
      );
    },
    unhurried,
  );
});
