import type { JobEntry, JobStorage, NotKept } from "./job-storage.ts";

/**
 * Jobs kept in memory: for tests, and where a device offers no storage. With `roomBytes` it is full like a
 * device, once the logs would outgrow that.
 *
 * ### Example
 *   const storage = createMemoryStorage();
 *   const entry = { jobId: "a", title: "East gate", updatedAtMs: 0, archived: false };
 *   expect(await storage.create(entry, new Uint8Array([0, 0]))).toEqual({ ok: true, created: true });
 *   expect(await storage.list()).toEqual({ ok: true, entries: [entry] });
 */
export function createMemoryStorage(roomBytes = Number.POSITIVE_INFINITY): JobStorage {
  const jobs = new Map<string, { entry: JobEntry; updates: Uint8Array[] }>();
  const taken = () =>
    [...jobs.values()].flatMap(({ updates }) => updates).reduce((sum, update) => sum + update.length, 0);
  const full: NotKept = { ok: false, reason: "full", message: "the memory set aside is full" };
  const change = (jobId: string, what: (entry: JobEntry) => Partial<JobEntry>) => {
    const job = jobs.get(jobId);
    if (job !== undefined) job.entry = { ...job.entry, ...what(job.entry) };
  };
  return {
    async create(entry, update) {
      if (jobs.has(entry.jobId)) return { ok: true, created: false };
      if (taken() + update.length > roomBytes) return full;
      jobs.set(entry.jobId, { entry: { ...entry }, updates: [update.slice()] });
      return { ok: true, created: true };
    },
    async load(jobId) {
      return { ok: true, updates: (jobs.get(jobId)?.updates ?? []).map((update) => update.slice()) };
    },
    async append(jobId, update, title, updatedAtMs) {
      if (taken() + update.length > roomBytes) return full;
      const job = jobs.get(jobId) ?? { entry: { jobId, title, updatedAtMs, archived: false }, updates: [] };
      job.updates.push(update.slice());
      jobs.set(jobId, job);
      change(jobId, () => ({ title, updatedAtMs }));
      return { ok: true };
    },
    async compact(jobId, merge) {
      const job = jobs.get(jobId);
      if (job !== undefined && job.updates.length > 1) job.updates = [merge(job.updates)];
      return { ok: true };
    },
    async list() {
      const entries = [...jobs.values()].map(({ entry }) => entry);
      return { ok: true, entries: entries.sort((a, b) => b.updatedAtMs - a.updatedAtMs) };
    },
    async setArchived(jobId, archived) {
      change(jobId, () => ({ archived }));
      return { ok: true };
    },
    async remove(jobId) {
      jobs.delete(jobId);
      return { ok: true };
    },
  };
}
