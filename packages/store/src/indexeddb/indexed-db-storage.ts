import { byLastEdit, type JobEntry, type JobStorage, type NotKept } from "../storage/job-storage.ts";
import { answerOf, committed } from "./requests.ts";

/**
 * Layout of the database. `jobs`: one entry a job. `updates`: { jobId, update } under rising numbers, so that an
 * index on `jobId` gives each log in order.
 */
const layoutVersion = 1;
const stores = ["jobs", "updates"] as const;

interface UpdateRow {
  readonly jobId: string;
  readonly update: Uint8Array;
}

interface Tables {
  readonly jobs: IDBObjectStore;
  readonly updates: IDBObjectStore;
}

export type OpenedStorage = { readonly ok: true; readonly storage: JobStorage } | NotKept;

/**
 * Jobs kept in the browser's IndexedDB, in the database of the given name. Each write is a transaction of its own
 * with strict durability: it answers when the data are on the disk, so that power may fail the moment after.
 *
 * Errors (returned): `failed` where the browser offers no such storage (some private windows).
 */
export async function openIndexedDbStorage(name: string, factory: IDBFactory): Promise<OpenedStorage> {
  const connect = () => connected(name, factory);
  try {
    return { ok: true, storage: new IndexedDbStorage(await connect(), connect) };
  } catch (error) {
    return refusal(error);
  }
}

function connected(name: string, factory: IDBFactory): Promise<IDBDatabase> {
  const opening = factory.open(name, layoutVersion);
  opening.onupgradeneeded = () => {
    opening.result.createObjectStore("jobs", { keyPath: "jobId" });
    const updates = opening.result.createObjectStore("updates", { autoIncrement: true });
    updates.createIndex("jobId", "jobId");
  };
  return answerOf(opening);
}

class IndexedDbStorage implements JobStorage {
  readonly #connect: () => Promise<IDBDatabase>;
  #database: IDBDatabase | null;

  constructor(database: IDBDatabase, connect: () => Promise<IDBDatabase>) {
    this.#connect = connect;
    this.#database = this.#watched(database);
  }

  /** The browser may cut the connection at any time (site data cleared, memory short): the next call makes a new one. */
  #watched(database: IDBDatabase): IDBDatabase {
    database.onclose = () => {
      this.#database = null;
    };
    // A newer page that waits to change the layout must not be held up by this one.
    database.onversionchange = () => {
      database.close();
      this.#database = null;
    };
    return database;
  }

  async #connection(): Promise<IDBDatabase> {
    this.#database ??= this.#watched(await this.#connect());
    return this.#database;
  }

  create(fresh: Parameters<JobStorage["create"]>[0]) {
    return this.#write(async ({ jobs, updates }) => {
      for (const { entry } of fresh) {
        if ((await answerOf(jobs.getKey(entry.jobId))) !== undefined) return { ok: true, created: false };
      }
      for (const { entry, update } of fresh) {
        jobs.put(entry);
        updates.add(row(entry.jobId, update));
      }
      return { ok: true, created: true };
    });
  }

  async load(jobId: string) {
    try {
      const transaction = (await this.#connection()).transaction("updates");
      const rows = transaction.objectStore("updates").index("jobId").getAll(jobId);
      const updates = ((await answerOf(rows)) as UpdateRow[]).map(({ update }) => update);
      return { ok: true, updates } as const;
    } catch (error) {
      return refusal(error);
    }
  }

  append(jobId: string, update: Uint8Array, title: string, updatedAtMs: number) {
    return this.#write(async ({ jobs, updates }) => {
      const entry: JobEntry | undefined = await answerOf(jobs.get(jobId));
      if (entry === undefined) return { ok: true, wasThere: false };
      jobs.put({ ...entry, title, updatedAtMs });
      updates.add(row(jobId, update));
      return { ok: true, wasThere: true };
    });
  }

  compact(jobId: string, merge: (updates: readonly Uint8Array[]) => Uint8Array) {
    return this.#write(async ({ updates }) => {
      const index = updates.index("jobId");
      const keys = index.getAllKeys(jobId);
      const rows: UpdateRow[] = await answerOf(index.getAll(jobId));
      if (rows.length > 0) {
        const merged = merge(rows.map(({ update }) => update));
        for (const key of keys.result) updates.delete(key);
        updates.add(row(jobId, merged));
      }
      return { ok: true };
    });
  }

  async list() {
    try {
      const transaction = (await this.#connection()).transaction("jobs");
      const entries: JobEntry[] = await answerOf(transaction.objectStore("jobs").getAll());
      return { ok: true, entries: entries.sort(byLastEdit) } as const;
    } catch (error) {
      return refusal(error);
    }
  }

  setArchived(jobId: string, archived: boolean) {
    return this.#write(async ({ jobs }) => {
      const entry: JobEntry | undefined = await answerOf(jobs.get(jobId));
      if (entry !== undefined) jobs.put({ ...entry, archived });
      return { ok: true };
    });
  }

  remove(jobId: string) {
    return this.#write(async ({ jobs, updates }) => {
      jobs.delete(jobId);
      for (const key of await answerOf(updates.index("jobId").getAllKeys(jobId))) updates.delete(key);
      return { ok: true };
    });
  }

  /** Runs one write as one transaction; `work` may wait for nothing but requests of that transaction. */
  async #write<Answer extends { readonly ok: true }>(
    work: (tables: Tables) => Promise<Answer>,
  ): Promise<Answer | NotKept> {
    let transaction: IDBTransaction | null = null;
    try {
      transaction = (await this.#connection()).transaction(stores, "readwrite", { durability: "strict" });
      const end = committed(transaction);
      // Awaited below; until then its failure must not count as unhandled.
      end.catch(() => {});
      const tables = { jobs: transaction.objectStore("jobs"), updates: transaction.objectStore("updates") };
      const answer = await work(tables);
      await end;
      return answer;
    } catch (error) {
      return refusal(abandoned(transaction) ?? error);
    }
  }
}

/** Ends a transaction whose work failed, so that nothing of it is kept; its own error says more than what followed from it. */
function abandoned(transaction: IDBTransaction | null): DOMException | null {
  try {
    transaction?.abort();
    return null;
  } catch {
    return transaction?.error ?? null;
  }
}

/** Of its own length: a view on a larger buffer would be kept with all of that buffer. */
function row(jobId: string, update: Uint8Array): UpdateRow {
  return { jobId, update: update.slice() };
}

function refusal(error: unknown): NotKept {
  const name = error instanceof Error || error instanceof DOMException ? error.name : "";
  if (name === "QuotaExceededError") {
    return { ok: false, reason: "full", message: "this device gives the page no more room" };
  }
  return { ok: false, reason: "failed", message: String(error) };
}
