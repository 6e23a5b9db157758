import { type Job, readJob, writeJob } from "@pintle/job";
import fc from "fast-check";
import { strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { createMemoryChannels } from "./channel.ts";
import { JobList, type ListMessage } from "./job-list.ts";
import type { JobStorage } from "./storage/job-storage.ts";
import { createMemoryStorage } from "./storage/memory-storage.ts";
import { demoJob } from "./testing/demo-job.ts";
import { jsonValue } from "./testing/random-edits.ts";
import { unhurried } from "./testing/unhurried.ts";

let count = 0;
function listOn(storage: JobStorage, channel = createMemoryChannels<ListMessage>()("list")): JobList {
  const next = () => {
    count += 1;
    return count;
  };
  return new JobList({ storage, channel, newJobId: () => `job-${next()}`, newReplicaId: next, nowMs: next });
}

const entriesOf = async (list: JobList) => {
  await list.refresh();
  const listing = list.getListing();
  return listing.state === "read" ? listing.entries : [];
};
const added = async (list: JobList, job: Job) => {
  const answer = await list.add(job);
  if (!answer.ok) throw new Error(answer.message);
  return answer.jobId;
};
const exported = async (list: JobList) => {
  const answer = await list.exportAll();
  if (!answer.ok) throw new Error(answer.message);
  return answer.bytes;
};

describe("the list of jobs", () => {
  test("lists what was added, duplicated, archived and removed; tells subscribers and other tabs", async () => {
    const storage = createMemoryStorage();
    const channels = createMemoryChannels<ListMessage>();
    const list = listOn(storage, channels("list"));
    const other = listOn(storage, channels("list"));
    let told = 0;
    other.subscribe(() => {
      told += 1;
    });
    const first = await added(list, demoJob());
    const copy = await list.duplicate(first, "West gate");
    if (!copy.ok) throw new Error(copy.message);
    expect((await entriesOf(list)).map(({ title }) => title)).toEqual([
      "West gate",
      "Quarry lane, east gate",
    ]);
    const text = await list.exportJob(copy.jobId);
    expect(text.ok && readJob(text.text)).toMatchObject({
      ok: true,
      job: { ...demoJob(), title: "West gate" },
    });
    await list.setArchived(first, true);
    await list.remove(copy.jobId);
    expect(await entriesOf(list)).toMatchObject([{ jobId: first, archived: true }]);
    expect(other.getListing()).toEqual(list.getListing());
    expect(told).toBeGreaterThanOrEqual(4);
    const before = list.getListing();
    await list.refresh();
    expect(list.getListing()).toBe(before);
    expect(await list.exportJob(copy.jobId)).toMatchObject({ ok: false, reason: "absent" });
    expect(await list.duplicate(copy.jobId, "x")).toMatchObject({ ok: false, reason: "absent" });
  });

  test(
    "[T1] export and import give every job back to the letter, unknown keys and archive marks included",
    async () => {
      const job = fc
        .record({
          title: fc.string({ maxLength: 20 }),
          note: fc.option(fc.string({ maxLength: 9 })),
          extra: jsonValue,
          archived: fc.boolean(),
        })
        .map(({ title, note, extra, archived }) => {
          const drawn = { extraKey: extra, ...demoJob(), title, ...(note === null ? {} : { note }) };
          return { job: JSON.parse(JSON.stringify(drawn)) as Job, archived };
        });
      await fc.assert(
        fc.asyncProperty(fc.array(job, { minLength: 1, maxLength: 4 }), async (drawn) => {
          const from = listOn(createMemoryStorage());
          for (const { job: one, archived } of drawn)
            await from.setArchived(await added(from, one), archived);
          const to = listOn(createMemoryStorage());
          const imported = await to.importFiles([{ name: "all.zip", bytes: await exported(from) }]);
          if (!imported.ok) throw new Error(JSON.stringify(imported));
          expect(imported.jobIds.length).toBe(drawn.length);
          const texts: string[] = [];
          for (const { jobId, archived } of await entriesOf(to)) {
            const text = await to.exportJob(jobId);
            if (text.ok) texts.push(`${archived} ${text.text}`);
          }
          expect(texts.sort()).toEqual(drawn.map((one) => `${one.archived} ${writeJob(one.job)}`).sort());
        }),
        { seed: 20_417, numRuns: 30 },
      );
    },
    unhurried,
  );

  test("the same jobs make the same archive, byte for byte", async () => {
    const list = listOn(createMemoryStorage());
    await added(list, demoJob());
    expect(await exported(list)).toEqual(await exported(list));
  });

  test("[T8] one faulty file and nothing is imported, with every fault; told to leave it out, the rest is", async () => {
    const storage = createMemoryStorage();
    const list = listOn(storage);
    const broken = writeJob({ ...demoJob(), leaves: [] });
    const archive = zipSync({
      "contents.json": strToU8('{"format":"pintle-archive","version":1,"jobs":[]}'),
      "jobs/good.json": strToU8(writeJob(demoJob())),
      "jobs/broken.json": strToU8(broken),
      "../outside.json": strToU8(broken),
    });
    const files = [
      { name: "all.zip", bytes: archive },
      { name: "one.json", bytes: strToU8("not json") },
    ];
    const refused = await list.importFiles(files);
    expect(refused).toMatchObject({
      ok: false,
      reason: "faults",
      good: 1,
      faulty: [{ file: "all.zip/jobs/broken.json", faults: [{ path: "leaves" }] }, { file: "one.json" }],
    });
    expect(await entriesOf(list)).toEqual([]);
    const imported = await list.importFiles(files, true);
    expect(imported).toMatchObject({ ok: true, jobIds: [expect.any(String)], leftOut: [{}, {}] });
    expect(await entriesOf(list)).toHaveLength(1);
  });

  test(
    "[T8] bytes that are no job and no archive are refused with a fault, never thrown at",
    async () => {
      const list = listOn(createMemoryStorage());
      const whole = zipSync({ "contents.json": strToU8("{}") });
      const cases = [new Uint8Array(), whole, whole.slice(0, 30), zipSync({ "jobs/a.json": strToU8("{}") })];
      for (const bytes of cases) {
        expect(await list.importFiles([{ name: "x", bytes }])).toMatchObject({
          ok: false,
          reason: "faults",
          good: 0,
        });
      }
      await fc.assert(
        fc.asyncProperty(fc.uint8Array({ maxLength: 60 }), fc.nat(whole.length), async (junk, at) => {
          const bytes = new Uint8Array([...whole.slice(0, at), ...junk]);
          expect((await list.importFiles([{ name: "x", bytes }])).ok).toBe(false);
        }),
        { seed: 20_417, numRuns: 80 },
      );
    },
    unhurried,
  );

  test("[T1] a full device imports nothing rather than half", async () => {
    const from = listOn(createMemoryStorage());
    for (const title of ["one", "two", "three"]) await added(from, { ...demoJob(), title });
    const to = listOn(createMemoryStorage(() => 3000));
    expect(await to.importFiles([{ name: "all.zip", bytes: await exported(from) }])).toMatchObject({
      ok: false,
      reason: "full",
    });
    expect(await entriesOf(to)).toEqual([]);
  });

  test("a job that has faults is exported as it is, so that nothing typed is lost", async () => {
    const list = listOn(createMemoryStorage());
    const jobId = await added(list, { ...demoJob(), title: "half typed", leaves: [] });
    expect(await list.exportJob(jobId)).toMatchObject({
      ok: true,
      text: expect.stringContaining("half typed"),
    });
  });
});
