import { type Fault, type Job, readJob, writeJob } from "@pintle/job";
import { strFromU8 } from "fflate";
import { type FaultyFile, isArchive, type ReadFile, readArchive } from "./archive/read-archive.ts";
import { type ListedJob, writeArchive } from "./archive/write-archive.ts";
import type { Channel } from "./channel.ts";
import { LiveJob } from "./live-job.ts";
import type { JobEntry, JobStorage, Kept, NotKept } from "./storage/job-storage.ts";

/** Tells the lists in other tabs to look again. */
export type ListMessage = { readonly kind: "listChanged" };

/**
 * Whether data from another tab are a message between lists.
 *
 * ### Example
 *   expect(isListMessage({ kind: "listChanged" })).toBe(true);
 */
export function isListMessage(data: unknown): data is ListMessage {
  return typeof data === "object" && data !== null && (data as { kind?: unknown }).kind === "listChanged";
}

/** What the list is built on. `newJobId` and `newReplicaId` give fresh random values; `nowMs`: ms since 1970. */
export interface JobListParts {
  readonly storage: JobStorage;
  readonly channel: Channel<ListMessage> | null;
  readonly newJobId: () => string;
  /** See `LiveJob`. */
  readonly newReplicaId: () => number;
  readonly nowMs: () => number;
}

/** The list as it was last read. */
export type Listing =
  | { readonly state: "reading" }
  | { readonly state: "read"; readonly entries: readonly JobEntry[] }
  | { readonly state: "failed"; readonly message: string };

export type Added = { readonly ok: true; readonly jobId: string } | NoSuchJob | NotKept;

export interface NoSuchJob {
  readonly ok: false;
  readonly reason: "absent";
  readonly message: string;
}

export type Imported =
  | { readonly ok: true; readonly jobIds: readonly string[]; readonly leftOut: readonly FaultyFile[] }
  /** Nothing was imported: these files have faults. `good` says how many have none. */
  | {
      readonly ok: false;
      readonly reason: "faults";
      readonly faulty: readonly FaultyFile[];
      readonly good: number;
    }
  | NotKept;

/** A file that somebody chose to import: a job file or an archive, told apart by its bytes. */
export interface ChosenFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** The jobs on this device: listed, copied, archived, removed, exported and imported. */
export class JobList {
  readonly #parts: JobListParts;
  readonly #listeners = new Set<() => void>();
  readonly #endOfListening: () => void;
  #listing: Listing = { state: "reading" };

  constructor(parts: JobListParts) {
    this.#parts = parts;
    this.#endOfListening = parts.channel?.listen(() => void this.refresh()) ?? (() => {});
  }

  /** The same object until the list is read anew and is different. */
  getListing = (): Listing => this.#listing;

  /** Calls `listener` after each change of `getListing`; returns the end of it. */
  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Reads the list anew. Needed at the start, and after a job was edited: other changes do it themselves. */
  async refresh(): Promise<void> {
    const listed = await this.#parts.storage.list();
    const next: Listing = listed.ok
      ? { state: "read", entries: listed.entries }
      : { state: "failed", message: listed.message };
    if (JSON.stringify(next) === JSON.stringify(this.#listing)) return;
    this.#listing = next;
    for (const listener of [...this.#listeners]) listener();
  }

  /** Adds a job that was read. */
  async add(job: Job): Promise<Added> {
    const added = await this.#addAll([{ job, archived: false }]);
    return added.ok ? { ok: true, jobId: added.jobIds[0] as string } : added;
  }

  /** A copy of a job under a new id, with the given title. Its undo steps are not copied. */
  async duplicate(jobId: string, title: string): Promise<Added> {
    const loaded = await this.#load(jobId);
    return loaded.ok ? this.add({ ...loaded.job, title }) : loaded;
  }

  setArchived(jobId: string, archived: boolean): Promise<Kept> {
    return this.#changed(this.#parts.storage.setArchived(jobId, archived));
  }

  /** Removes a job for good. */
  remove(jobId: string): Promise<Kept> {
    return this.#changed(this.#parts.storage.remove(jobId));
  }

  /** A job as the text of a job file. */
  async exportJob(
    jobId: string,
  ): Promise<{ readonly ok: true; readonly text: string } | NoSuchJob | NotKept> {
    const loaded = await this.#load(jobId);
    return loaded.ok ? { ok: true, text: writeJob(loaded.job) } : loaded;
  }

  /** Every job, archived ones too, as one archive. See `writeArchive`. */
  async exportAll(): Promise<{ readonly ok: true; readonly bytes: Uint8Array } | NoSuchJob | NotKept> {
    const listed = await this.#parts.storage.list();
    if (!listed.ok) return listed;
    const jobs: ListedJob[] = [];
    for (const entry of listed.entries) {
      const loaded = await this.#load(entry.jobId);
      if (loaded.ok) jobs.push({ entry, job: loaded.job });
      // Removed in another tab meanwhile: not part of "all" any more.
      else if (loaded.reason !== "absent") return loaded;
    }
    return { ok: true, bytes: writeArchive(jobs) };
  }

  /**
   * Imports job files and archives as new jobs: all of them, or none when one has a fault. With `leaveOutFaulty`,
   * for after the faults were shown, those without a fault are imported, still all or none of them.
   */
  async importFiles(files: readonly ChosenFile[], leaveOutFaulty = false): Promise<Imported> {
    const read = files.map(readChosen);
    const good = read.flatMap(({ jobs }) => jobs);
    const faulty = read.flatMap(({ faulty: some }) => some);
    if (faulty.length > 0 && !(leaveOutFaulty && good.length > 0)) {
      return { ok: false, reason: "faults", faulty, good: good.length };
    }
    const added = await this.#addAll(good);
    return added.ok ? { ok: true, jobIds: added.jobIds, leftOut: faulty } : added;
  }

  close(): void {
    this.#endOfListening();
    this.#parts.channel?.close();
    this.#listeners.clear();
  }

  async #load(jobId: string): Promise<{ readonly ok: true; readonly job: Job } | NoSuchJob | NotKept> {
    const loaded = await this.#parts.storage.load(jobId);
    if (!loaded.ok) return loaded;
    const live = new LiveJob(this.#parts.newReplicaId());
    try {
      for (const update of loaded.updates) live.applyUpdate(update);
    } catch (error) {
      return { ok: false, reason: "failed", message: `the kept job cannot be read: ${String(error)}` };
    }
    const job = live.getJob();
    live.destroy();
    if (job !== undefined) return { ok: true, job };
    return { ok: false, reason: "absent", message: "there is no such job on this device" };
  }

  async #addAll(
    jobs: readonly { readonly job: Job; readonly archived: boolean }[],
  ): Promise<{ readonly ok: true; readonly jobIds: readonly string[] } | NotKept> {
    const fresh = jobs.map(({ job, archived }) => {
      const live = new LiveJob(this.#parts.newReplicaId());
      live.fill(job);
      const update = live.encodeState();
      live.destroy();
      const entry = {
        jobId: this.#parts.newJobId(),
        title: job.title ?? "",
        updatedAtMs: this.#parts.nowMs(),
        archived,
      };
      return { entry, update };
    });
    const created = await this.#changed(this.#parts.storage.create(fresh));
    if (!created.ok) return created;
    if (!created.created)
      throw new Error("JobList found the id of a new job taken; it expects fresh random ids");
    return { ok: true, jobIds: fresh.map(({ entry }) => entry.jobId) };
  }

  async #changed<Answer extends Kept>(change: Promise<Answer>): Promise<Answer> {
    const answer = await change;
    if (answer.ok) {
      this.#parts.channel?.post({ kind: "listChanged" });
      await this.refresh();
    }
    return answer;
  }
}

function readChosen({ name, bytes }: ChosenFile): {
  jobs: readonly ReadFile[];
  faulty: readonly FaultyFile[];
} {
  const faultyWhole = (faults: readonly Fault[]) => ({ jobs: [], faulty: [{ file: name, faults }] });
  if (!isArchive(bytes)) {
    const read = readJob(strFromU8(bytes));
    return read.ok
      ? { jobs: [{ file: name, job: read.job, archived: false }], faulty: [] }
      : faultyWhole(read.faults);
  }
  const read = readArchive(bytes);
  if (!read.ok) return faultyWhole(read.faults);
  const inArchive = <File extends { readonly file: string }>(one: File) => ({
    ...one,
    file: `${name}/${one.file}`,
  });
  return { jobs: read.jobs.map(inArchive), faulty: read.faulty.map(inArchive) };
}
