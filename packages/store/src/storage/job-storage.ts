/** What a list of jobs shows of one, kept beside the job so that the list need not load it. */
export interface JobEntry {
  readonly jobId: string;
  /** Empty when the job has none. */
  readonly title: string;
  /** Time of the last edit, ms since 1970. */
  readonly updatedAtMs: number;
  readonly archived: boolean;
}

/** A job as it enters the storage: its entry and an update that holds all of it. */
export interface NewJob {
  readonly entry: JobEntry;
  readonly update: Uint8Array;
}

/** Why something was not kept. `full`: the device has no room left; `failed`: anything else, in `message`. */
export interface NotKept {
  readonly ok: false;
  readonly reason: "full" | "failed";
  readonly message: string;
}

export type Kept = { readonly ok: true } | NotKept;

export type Created = { readonly ok: true; readonly created: boolean } | NotKept;

export type Appended = { readonly ok: true; readonly wasThere: boolean } | NotKept;

export type Loaded = { readonly ok: true; readonly updates: readonly Uint8Array[] } | NotKept;

export type Listed = { readonly ok: true; readonly entries: readonly JobEntry[] } | NotKept;

/**
 * Where jobs are kept on the device: for each job a log of updates, and its entry in the list. Every method
 * is all or nothing, also when power fails in it; once it answers `ok`, it is kept. What the device refuses is
 * returned, never thrown. Implementations must pass `storageContract`.
 */
export interface JobStorage {
  /** Keeps new jobs. `created` is false, and nothing is written, where one of the ids is taken. */
  create(jobs: readonly NewJob[]): Promise<Created>;
  /** The updates of a job in the order that they were kept; none when there is no such job. */
  load(jobId: string): Promise<Loaded>;
  /**
   * Adds an update, and renews title and time in the list. `wasThere` is false, and nothing is written, where the job was
   * removed: the update alone could not bring it back.
   */
  append(jobId: string, update: Uint8Array, title: string, updatedAtMs: number): Promise<Appended>;
  /** Replaces the log of a job by one update that says the same. `merge` is called with the log as it then is. */
  compact(jobId: string, merge: (updates: readonly Uint8Array[]) => Uint8Array): Promise<Kept>;
  /** Every entry, the last edited first; of two edited at once, by id. */
  list(): Promise<Listed>;
  setArchived(jobId: string, archived: boolean): Promise<Kept>;
  remove(jobId: string): Promise<Kept>;
}

/** The order of `JobStorage.list`. */
export function byLastEdit(a: JobEntry, b: JobEntry): number {
  return b.updatedAtMs - a.updatedAtMs || (a.jobId < b.jobId ? -1 : 1);
}
