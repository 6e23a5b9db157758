import type { Job } from "@pintle/job";
import {
  type Channel,
  createMemoryStorage,
  type JobMessage,
  type JobStorage,
  type KeptJobParts,
  type Opened,
  openKeptJob,
  startKeptJob,
} from "@pintle/store";

/** What this device offers the jobs: where they are kept, a clock, and ids that no other device makes. */
export interface Device {
  readonly storage: JobStorage;
  open(jobId: string): Promise<Opened>;
  start(job: Job, jobId?: string): Promise<Opened>;
}

export function openDevice(): Device {
  const storage = createMemoryStorage();
  const parts = (jobId: string): KeptJobParts => ({
    storage,
    channel: channelTo(jobId),
    replicaId: crypto.getRandomValues(new Uint32Array(1))[0] || 1,
    nowMs: () => Date.now(),
  });
  return {
    storage,
    open: (jobId) => openKeptJob(jobId, parts(jobId)),
    start: (job, jobId = newId()) => startKeptJob(jobId, job, parts(jobId)),
  };
}

function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(9));
  return Array.from(bytes, (byte) => byte.toString(36).padStart(2, "0")).join("");
}

/** To the same job in other tabs. */
function channelTo(jobId: string): Channel<JobMessage> | null {
  if (typeof BroadcastChannel === "undefined") return null;
  const channel = new BroadcastChannel(`pintle-job-${jobId}`);
  return {
    post: (message) => channel.postMessage(message),
    listen: (listener) => {
      const hear = (event: MessageEvent<JobMessage>) => listener(event.data);
      channel.addEventListener("message", hear);
      return () => channel.removeEventListener("message", hear);
    },
    close: () => channel.close(),
  };
}
