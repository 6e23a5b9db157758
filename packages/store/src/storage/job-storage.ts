/** What a list of jobs shows of one, kept beside the job so that the list need not load it. */
export interface JobEntry {
  readonly jobId: string;
  readonly title: string;
  /** Time of the last edit, ms since 1970. */
  readonly updatedAtMs: number;
  readonly archived: boolean;
}

/** Why something was not kept. `full`: the device has no room left; `failed`: anything else, in `message`. */
export interface NotKept {
  readonly ok: false;
  readonly reason: "full" | "failed";
  readonly message: string;
}

export type Kept = { readonly ok: true } | NotKept;

/**
 * Where jobs are kept on the device: for each job a log of updates, and its entry in the list. Every method
 * is all or nothing. What the device refuses is returned, never thrown. Implementations must pass `storageContract`.
 */
export interface JobStorage {
  /** Keeps a new job. `created` is false, and nothing is written, where there is one with this id already. */
  create(
    entry: JobEntry,
    update: Uint8Array,
  ): Promise<{ readonly ok: true; readonly created: boolean } | NotKept>;
  /** The updates of a job in the order that they were kept; none when there is no such job. */
  load(jobId: string): Promise<{ readonly ok: true; readonly updates: readonly Uint8Array[] } | NotKept>;
  /** Adds an update, and renews title and time in the list. A job that was removed meanwhile is kept anew. */
  append(jobId: string, update: Uint8Array, title: string, updatedAtMs: number): Promise<Kept>;
  /** Replaces the log of a job by one update that says the same. `merge` is called with the log as it then is. */
  compact(jobId: string, merge: (updates: readonly Uint8Array[]) => Uint8Array): Promise<Kept>;
  /** Every entry, the last edited first. */
  list(): Promise<{ readonly ok: true; readonly entries: readonly JobEntry[] } | NotKept>;
  setArchived(jobId: string, archived: boolean): Promise<Kept>;
  remove(jobId: string): Promise<Kept>;
}
