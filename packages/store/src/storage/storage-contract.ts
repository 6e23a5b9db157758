import type { JobEntry, JobStorage, NewJob } from "./job-storage.ts";

/** One thing that every job storage must do. `run` throws where it does not. */
export interface StorageClause {
  readonly name: string;
  /** Works on a storage that is empty. */
  readonly run: (storage: JobStorage) => Promise<void>;
}

const entry = (jobId: string, updatedAtMs = 0): JobEntry => ({
  jobId,
  title: `Gate ${jobId}`,
  updatedAtMs,
  archived: false,
});
const newJob = (jobId: string, ...bytes: number[]): NewJob => ({
  entry: entry(jobId),
  update: bytesOf(...bytes),
});
const bytesOf = (...bytes: number[]) => new Uint8Array(bytes);
const joined = (updates: readonly Uint8Array[]) => bytesOf(...updates.flatMap((update) => [...update]));

/** Compares by JSON with bytes as lists: it must run in any page, without a test library. */
function expectSame(found: unknown, expected: unknown, what: string): void {
  const text = (value: unknown) =>
    JSON.stringify(value, (_, held) => (ArrayBuffer.isView(held) ? [...(held as Uint8Array)] : held));
  if (text(found) !== text(expected))
    throw new Error(`${what}: found ${text(found)}, expected ${text(expected)}`);
}

/**
 * What every `JobStorage` must do, to be run on each implementation: under Node on the one in memory, in a real
 * browser on the one that lives there.
 */
export const storageContract: readonly StorageClause[] = [
  {
    name: "an empty storage lists nothing and loads nothing",
    run: async (storage) => {
      expectSame(await storage.list(), { ok: true, entries: [] }, "list");
      expectSame(await storage.load("a"), { ok: true, updates: [] }, "load");
    },
  },
  {
    name: "a job that was created is listed and loaded",
    run: async (storage) => {
      expectSame(await storage.create([newJob("a", 1, 2)]), { ok: true, created: true }, "create");
      expectSame(await storage.list(), { ok: true, entries: [entry("a")] }, "list");
      expectSame(await storage.load("a"), { ok: true, updates: [bytesOf(1, 2)] }, "load");
    },
  },
  {
    name: "several jobs are created together or not at all",
    run: async (storage) => {
      await storage.create([newJob("a", 1)]);
      const refused = await storage.create([newJob("b", 2), newJob("a", 3)]);
      expectSame(refused, { ok: true, created: false }, "create over a taken id");
      expectSame(await storage.list(), { ok: true, entries: [entry("a")] }, "list");
      expectSame(await storage.load("a"), { ok: true, updates: [bytesOf(1)] }, "the job that was there");
      expectSame(await storage.load("b"), { ok: true, updates: [] }, "the job that was refused");
      await storage.create([newJob("b", 2), newJob("c", 3)]);
      expectSame(await storage.load("c"), { ok: true, updates: [bytesOf(3)] }, "the second of two");
    },
  },
  {
    name: "updates are kept in order, each job its own, and renew title and time",
    run: async (storage) => {
      await storage.create([newJob("a", 1), newJob("b", 9)]);
      for (let byte = 2; byte < 40; byte += 1) {
        const appended = await storage.append("a", bytesOf(byte), `title ${byte}`, byte);
        expectSame(appended, { ok: true, wasThere: true }, "append");
      }
      const bytes = Array.from({ length: 39 }, (_, index) => bytesOf(index + 1));
      expectSame(await storage.load("a"), { ok: true, updates: bytes }, "load");
      expectSame(await storage.load("b"), { ok: true, updates: [bytesOf(9)] }, "the other job");
      const renewed = { ...entry("a", 39), title: "title 39" };
      expectSame(await storage.list(), { ok: true, entries: [renewed, entry("b")] }, "list");
    },
  },
  {
    name: "updates that are appended at once are all kept",
    run: async (storage) => {
      await storage.create([newJob("a", 0)]);
      const bytes = Array.from({ length: 30 }, (_, index) => index + 1);
      await Promise.all(bytes.map((byte) => storage.append("a", bytesOf(byte), "", byte)));
      const loaded = await storage.load("a");
      const found = loaded.ok ? [...joined(loaded.updates)].sort((a, b) => a - b) : loaded;
      expectSame(found, [0, ...bytes], "load");
    },
  },
  {
    name: "an update to a job that is not there writes nothing and says so",
    run: async (storage) => {
      expectSame(await storage.append("a", bytesOf(1), "x", 1), { ok: true, wasThere: false }, "append");
      expectSame(await storage.list(), { ok: true, entries: [] }, "list");
      expectSame(await storage.load("a"), { ok: true, updates: [] }, "load");
    },
  },
  {
    name: "compaction puts one update in the place of the log, and what follows comes after it",
    run: async (storage) => {
      await storage.create([newJob("a", 1), newJob("b", 9)]);
      await storage.append("a", bytesOf(2), "x", 1);
      expectSame(await storage.compact("a", joined), { ok: true }, "compact");
      await storage.append("a", bytesOf(3), "x", 2);
      expectSame(await storage.load("a"), { ok: true, updates: [bytesOf(1, 2), bytesOf(3)] }, "load");
      expectSame(await storage.load("b"), { ok: true, updates: [bytesOf(9)] }, "the other job");
    },
  },
  {
    name: "compaction beside updates that are appended loses none",
    run: async (storage) => {
      await storage.create([newJob("a", 0)]);
      const bytes = Array.from({ length: 20 }, (_, index) => index + 1);
      await Promise.all(
        bytes.flatMap((byte): Promise<unknown>[] => [
          storage.append("a", bytesOf(byte), "", byte),
          storage.compact("a", joined),
        ]),
      );
      const loaded = await storage.load("a");
      const found = loaded.ok ? [...joined(loaded.updates)].sort((a, b) => a - b) : loaded;
      expectSame(found, [0, ...bytes], "load");
    },
  },
  {
    name: "a merge that fails leaves the log as it was",
    run: async (storage) => {
      await storage.create([newJob("a", 1)]);
      await storage.append("a", bytesOf(2), "x", 1);
      const fail = () => {
        throw new RangeError("a merge that fails");
      };
      const compacted = await storage.compact("a", fail).catch(() => ({ ok: false, reason: "thrown" }));
      expectSame(
        compacted.ok ? compacted : { reason: (compacted as { reason: string }).reason },
        { reason: "failed" },
        "compact",
      );
      expectSame(await storage.load("a"), { ok: true, updates: [bytesOf(1), bytesOf(2)] }, "load");
    },
  },
  {
    name: "a job is archived and brought back without losing anything",
    run: async (storage) => {
      await storage.create([newJob("a", 1)]);
      expectSame(await storage.setArchived("a", true), { ok: true }, "archive");
      await storage.append("a", bytesOf(2), "x", 5);
      const archived = { jobId: "a", title: "x", updatedAtMs: 5, archived: true };
      expectSame(await storage.list(), { ok: true, entries: [archived] }, "list");
      await storage.setArchived("a", false);
      expectSame(await storage.list(), { ok: true, entries: [{ ...archived, archived: false }] }, "list");
      expectSame(await storage.load("a"), { ok: true, updates: [bytesOf(1), bytesOf(2)] }, "load");
    },
  },
  {
    name: "a job that was removed is gone with all its updates, and its id is free",
    run: async (storage) => {
      await storage.create([newJob("a", 1), newJob("b", 9)]);
      expectSame(await storage.remove("a"), { ok: true }, "remove");
      expectSame(await storage.remove("a"), { ok: true }, "remove again");
      expectSame(await storage.list(), { ok: true, entries: [entry("b")] }, "list");
      expectSame(await storage.load("a"), { ok: true, updates: [] }, "load");
      expectSame(await storage.create([newJob("a", 7)]), { ok: true, created: true }, "create");
      expectSame(await storage.load("a"), { ok: true, updates: [bytesOf(7)] }, "load");
    },
  },
  {
    name: "what was handed over is not tied to what is kept",
    run: async (storage) => {
      const bytes = bytesOf(1, 2);
      await storage.create([{ entry: entry("a"), update: bytes }]);
      bytes[0] = 99;
      const loaded = await storage.load("a");
      if (loaded.ok && loaded.updates[0] !== undefined) loaded.updates[0][0] = 98;
      expectSame(await storage.load("a"), { ok: true, updates: [bytesOf(1, 2)] }, "load");
    },
  },
];
