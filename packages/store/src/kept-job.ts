import type { Job } from "@pintle/job";
import * as Y from "yjs";
import type { Channel, JobMessage } from "./channel.ts";
import { LiveJob } from "./live-job.ts";
import type { JobStorage, NotKept } from "./storage/job-storage.ts";

/** How far what was typed is kept on the device. Nothing is lost from memory in any of these states. */
export type Keeping =
  /** `atMs` is the time of the last edit kept, ms since 1970; null when nothing was edited since the job was opened. */
  | { readonly state: "saved"; readonly atMs: number | null }
  | { readonly state: "saving" }
  | { readonly state: "full" | "failed"; readonly message: string };

/** What a kept job is built on. `replicaId`: fresh and random, see `LiveJob`. `nowMs`: ms since 1970. */
export interface KeptJobParts {
  readonly storage: JobStorage;
  /** To the same job in other tabs; null where there can be none. */
  readonly channel: Channel<JobMessage> | null;
  readonly replicaId: number;
  readonly nowMs: () => number;
}

export type Opened =
  | { readonly ok: true; readonly kept: KeptJob }
  | { readonly ok: false; readonly reason: NotKept["reason"] | "absent"; readonly message: string };

/** Longer logs than this are merged into one update when a job is opened, and each time that many more were kept. */
const longestLog = 200;

const fromChannel = { from: "channel" };

/**
 * A live job that is kept on the device while it is edited, each edit at once, and that exchanges edits with the
 * same job in other tabs.
 *
 * What the storage refuses waits in memory and is tried again with the next edit and by `retry`; the state says so.
 */
export class KeptJob {
  readonly jobId: string;
  readonly live: LiveJob;
  readonly #parts: KeptJobParts;
  readonly #listeners = new Set<() => void>();
  readonly #ends: (() => void)[];
  #waiting: Uint8Array[];
  #writing: Promise<void> | null = null;
  #keeping: Keeping = { state: "saved", atMs: null };
  #logLength: number;
  #isClosing = false;

  /** `logLength`: how many updates the storage holds of the job; `waiting`: what it does not hold yet. */
  constructor(
    jobId: string,
    live: LiveJob,
    parts: KeptJobParts,
    logLength: number,
    waiting: Uint8Array[] = [],
  ) {
    this.#waiting = waiting;
    this.jobId = jobId;
    this.live = live;
    this.#parts = parts;
    this.#logLength = logLength;
    this.#ends = [
      live.onUpdate((update, origin) => {
        if (origin !== fromChannel) parts.channel?.post({ kind: "update", update });
        // What another tab made is kept here too: that tab may be killed before it has.
        this.#waiting.push(update);
        void this.#keep();
      }),
      parts.channel?.listen((message) => this.#hear(message)) ?? (() => {}),
    ];
    parts.channel?.post({ kind: "have", stateVector: live.encodeStateVector() });
    if (logLength > longestLog) void this.#compact();
  }

  /** The same object until it changes. */
  getKeeping = (): Keeping => this.#keeping;

  /** Calls `listener` after each change of `getKeeping`; returns the end of it. */
  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Tries again to keep what waits, after somebody made room. Settles when it was kept or refused. */
  async retry(): Promise<Keeping> {
    await this.#keep();
    return this.#keeping;
  }

  /**
   * Lets go of the job once all is kept. What the storage refuses is held on to, and handed to whoever opens the
   * job next in this browser through the channel; the state that is answered says which of the two it is.
   */
  async close(): Promise<Keeping> {
    this.#isClosing = true;
    await this.#keep();
    if (this.#waiting.length === 0) this.#letGo();
    return this.#keeping;
  }

  /** One write at a time; edits made during it are merged into the next. */
  async #keep(): Promise<void> {
    if (this.#waiting.length > 0) this.#writing ??= this.#keepAll();
    await this.#writing;
  }

  async #keepAll(): Promise<void> {
    while (this.#waiting.length > 0) {
      const batch = Y.mergeUpdates(this.#waiting);
      this.#waiting = [];
      if (this.#keeping.state === "saved") this.#become({ state: "saving" });
      const atMs = this.#parts.nowMs();
      const refused = await this.#write(batch, atMs);
      if (refused !== null) {
        this.#waiting.unshift(batch);
        // Before anybody is told: who hears of it and makes room may try again at once.
        this.#writing = null;
        this.#become({ state: refused.reason, message: refused.message });
        return;
      }
      this.#logLength += 1;
      if (this.#waiting.length === 0) this.#become({ state: "saved", atMs });
      if (this.#logLength > longestLog) await this.#compact();
    }
    // In the same step as the last look at what waits, so that no edit slips in between.
    this.#writing = null;
    if (this.#isClosing) this.#letGo();
  }

  #letGo(): void {
    for (const end of this.#ends.splice(0)) end();
    this.#parts.channel?.close();
    this.#listeners.clear();
    this.live.destroy();
  }

  async #write(batch: Uint8Array, atMs: number): Promise<NotKept | null> {
    const { storage } = this.#parts;
    const title = this.#title();
    let appended = await storage.append(this.jobId, batch, title, atMs);
    if (!appended.ok && appended.reason === "full" && this.#logLength > 1 && (await this.#compact())) {
      appended = await storage.append(this.jobId, batch, title, atMs);
    }
    if (!appended.ok) return appended;
    if (appended.wasThere) return null;
    // Removed in another tab while this one went on editing: what was typed last is kept, whole.
    const entry = { jobId: this.jobId, title, updatedAtMs: atMs, archived: false };
    const created = await storage.create([{ entry, update: this.live.encodeState() }]);
    return created.ok ? null : created;
  }

  async #compact(): Promise<boolean> {
    const compacted = await this.#parts.storage.compact(this.jobId, compactUpdates);
    if (compacted.ok) this.#logLength = 1;
    return compacted.ok;
  }

  #title(): string {
    const title: unknown = this.live.getJob()?.title;
    return typeof title === "string" ? title : "";
  }

  #hear(message: JobMessage): void {
    if (message.kind === "update") {
      this.live.applyUpdate(message.update, fromChannel);
      return;
    }
    const { channel } = this.#parts;
    channel?.post({ kind: "update", update: this.live.encodeState(message.stateVector) });
    if (knowsMore(message.stateVector, this.live.encodeStateVector())) {
      channel?.post({ kind: "have", stateVector: this.live.encodeStateVector() });
    }
  }

  #become(keeping: Keeping): void {
    this.#keeping = keeping;
    for (const listener of [...this.#listeners]) listener();
  }
}

/** Whether a replica with the first state vector has seen an edit that one with the second has not. */
function knowsMore(theirs: Uint8Array, ours: Uint8Array): boolean {
  const known = Y.decodeStateVector(ours);
  return [...Y.decodeStateVector(theirs)].some(([client, clock]) => clock > (known.get(client) ?? 0));
}

/** One update that says what all of these say, without the values that were overwritten. */
export function compactUpdates(updates: readonly Uint8Array[]): Uint8Array {
  const doc = new Y.Doc();
  for (const update of updates) Y.applyUpdate(doc, update);
  return Y.encodeStateAsUpdate(doc);
}

/**
 * Opens a job that the storage holds.
 *
 * Errors (returned): `absent` when there is none with this id, or why it could not be read.
 *
 * ### Example
 *   const parts = { storage: createMemoryStorage(), channel: null, replicaId: 7, nowMs: () => 1000 };
 *   expect(await openKeptJob("a", parts)).toEqual({ ok: false, reason: "absent", message: "there is no such job on this device" });
 */
export async function openKeptJob(jobId: string, parts: KeptJobParts): Promise<Opened> {
  const loaded = await parts.storage.load(jobId);
  if (!loaded.ok) return loaded;
  const live = new LiveJob(parts.replicaId);
  try {
    for (const update of loaded.updates) live.applyUpdate(update);
  } catch (error) {
    return { ok: false, reason: "failed", message: `the kept job cannot be read: ${String(error)}` };
  }
  if (live.getJob() === undefined) {
    return { ok: false, reason: "absent", message: "there is no such job on this device" };
  }
  return { ok: true, kept: new KeptJob(jobId, live, parts, loaded.updates.length) };
}

/**
 * Starts a new job and keeps it. Where an id is taken (two tabs that open the same demo at once) the job that is
 * there is opened instead. Where the storage refuses, the job opens all the same and its state says so.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const parts = { storage: createMemoryStorage(), channel: null, replicaId: 7, nowMs: () => 1000 };
 *   const opened = await startKeptJob("a", { format: "pintle-job", version: 1, title: "East gate", leaves: [leaf] }, parts);
 *   if (!opened.ok) throw new Error(opened.message);
 *   opened.kept.live.setValue(["title"], "West gate", "Title");
 *   await opened.kept.close();
 *   expect(opened.kept.getKeeping()).toEqual({ state: "saved", atMs: 1000 });
 *   const again = await openKeptJob("a", { ...parts, replicaId: 8 });
 *   expect(again.ok && again.kept.live.getJob()?.title).toBe("West gate");
 */
export async function startKeptJob(jobId: string, job: Job, parts: KeptJobParts): Promise<Opened> {
  const live = new LiveJob(parts.replicaId);
  live.fill(job);
  const entry = { jobId, title: job.title ?? "", updatedAtMs: parts.nowMs(), archived: false };
  const created = await parts.storage.create([{ entry, update: live.encodeState() }]);
  if (created.ok && !created.created) return openKeptJob(jobId, parts);
  if (created.ok) return { ok: true, kept: new KeptJob(jobId, live, parts, 1) };
  const kept = new KeptJob(jobId, live, parts, 0, [live.encodeState()]);
  await kept.retry();
  return { ok: true, kept };
}
