import { byLastEdit, type JobEntry, type JobStorage, type NotKept } from "./job-storage.ts";

const full: NotKept = { ok: false, reason: "full", message: "the memory set aside for jobs is full" };

/**
 * Jobs kept in memory: for tests, and where a device offers no storage. It is full, like a device, once the logs
 * would outgrow what `roomBytes` then says.
 *
 * ### Example
 *   const storage = createMemoryStorage();
 *   const entry = { jobId: "a", title: "East gate", updatedAtMs: 0, archived: false };
 *   expect(await storage.create([{ entry, update: new Uint8Array([0, 0]) }])).toEqual({ ok: true, created: true });
 *   expect(await storage.list()).toEqual({ ok: true, entries: [entry] });
 */
export function createMemoryStorage(roomBytes: () => number = () => Number.POSITIVE_INFINITY): JobStorage {
  const jobs = new Map<string, { entry: JobEntry; updates: Uint8Array[] }>();
  const hasRoomFor = (more: readonly Uint8Array[]) => {
    const logs = [...jobs.values()].flatMap(({ updates }) => updates);
    return [...logs, ...more].reduce((sum, update) => sum + update.length, 0) <= roomBytes();
  };
  return {
    async create(fresh) {
      if (fresh.some(({ entry }) => jobs.has(entry.jobId))) return { ok: true, created: false };
      if (!hasRoomFor(fresh.map(({ update }) => update))) return full;
      for (const { entry, update } of fresh)
        jobs.set(entry.jobId, { entry: { ...entry }, updates: [update.slice()] });
      return { ok: true, created: true };
    },
    async load(jobId) {
      return { ok: true, updates: (jobs.get(jobId)?.updates ?? []).map((update) => update.slice()) };
    },
    async append(jobId, update, title, updatedAtMs) {
      const job = jobs.get(jobId);
      if (job === undefined) return { ok: true, wasThere: false };
      if (!hasRoomFor([update])) return full;
      job.updates.push(update.slice());
      job.entry = { ...job.entry, title, updatedAtMs };
      return { ok: true, wasThere: true };
    },
    async compact(jobId, merge) {
      const job = jobs.get(jobId);
      try {
        if (job !== undefined) job.updates = [merge(job.updates)];
        return { ok: true };
      } catch (error) {
        return { ok: false, reason: "failed", message: String(error) };
      }
    },
    async list() {
      return { ok: true, entries: [...jobs.values()].map(({ entry }) => entry).sort(byLastEdit) };
    },
    async setArchived(jobId, archived) {
      const job = jobs.get(jobId);
      if (job !== undefined) job.entry = { ...job.entry, archived };
      return { ok: true };
    },
    async remove(jobId) {
      jobs.delete(jobId);
      return { ok: true };
    },
  };
}
