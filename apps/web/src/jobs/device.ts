import type { Job } from "@pintle/job";
import {
  createMemoryStorage,
  isJobMessage,
  isListMessage,
  JobList,
  type JobStorage,
  type KeptJobParts,
  type Opened,
  openKeptJob,
  startKeptJob,
} from "@pintle/store";
import { openIndexedDbStorage, openTabChannel } from "@pintle/store/indexeddb";

/** What this device offers the jobs: where they are kept, a clock, and ids that no other device makes. */
export interface Device {
  readonly list: JobList;
  /** Why nothing is kept beyond this visit; null where jobs are kept. */
  readonly keepsNothing: string | null;
  open(jobId: string): Promise<Opened>;
  start(job: Job, jobId: string): Promise<Opened>;
}

export async function openDevice(): Promise<Device> {
  const opened = await openIndexedDbStorage("pintle", indexedDB);
  const storage: JobStorage = opened.ok ? opened.storage : createMemoryStorage();
  const nowMs = () => Date.now();
  const parts = (jobId: string): KeptJobParts => ({
    storage,
    channel: openTabChannel(`pintle-job-${jobId}`, isJobMessage),
    replicaId: newReplicaId(),
    nowMs,
  });
  return {
    list: new JobList({
      storage,
      channel: openTabChannel("pintle-jobs", isListMessage),
      newJobId,
      newReplicaId,
      nowMs,
    }),
    keepsNothing: opened.ok ? null : opened.message,
    open: (jobId) => openKeptJob(jobId, parts(jobId)),
    start: (job, jobId) => startKeptJob(jobId, job, parts(jobId)),
  };
}

const newReplicaId = (): number => crypto.getRandomValues(new Uint32Array(1))[0] || 1;

function newJobId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
