// Runs in the page: the store on the browser's own database, with the little that the trial asks of it.
import { type Job, readJob } from "@pintle/job";
import {
  isJobMessage,
  type JobMessage,
  type KeptJob,
  openKeptJob,
  startKeptJob,
  storageContract,
} from "@pintle/store";
import { openIndexedDbStorage, openTabChannel } from "@pintle/store/indexeddb";

const leaf =
  '{"id":"east","hingeSide":"left","swing":"toward","openAngleDeg":90,"lengthMm":3600,"heelMm":30,"thicknessMm":50,"faceMm":25}';
const text = `{"format":"pintle-job","version":1,"title":"Harrow farm, trial gate","note":"","leaves":[${leaf}]}`;

let kept: KeptJob | null = null;

async function storageNamed(name: string) {
  const opened = await openIndexedDbStorage(name, indexedDB);
  if (!opened.ok) throw new Error(opened.message);
  return opened.storage;
}

function trialJob(): Job {
  const read = readJob(text);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.job;
}

function opened(): KeptJob {
  if (kept === null) throw new Error("no job is open; open one first");
  return kept;
}

const trial = {
  /** Each clause on a database of its own: what went wrong, null for nothing. */
  async contract() {
    const found: { name: string; wrong: string | null }[] = [];
    for (const [index, { name, run }] of storageContract.entries()) {
      const wrong = await storageNamed(`clause ${index}`)
        .then(run)
        .then(
          () => null,
          (error: unknown) => String(error),
        );
      found.push({ name, wrong });
    }
    return found;
  },
  async open(start: boolean) {
    const parts = {
      storage: await storageNamed("trial"),
      channel: openTabChannel<JobMessage>("trial job", isJobMessage),
      replicaId: crypto.getRandomValues(new Uint32Array(1))[0] || 1,
      nowMs: () => Date.now(),
    };
    const answer = await (start ? startKeptJob("job", trialJob(), parts) : openKeptJob("job", parts));
    if (!answer.ok) throw new Error(answer.message);
    kept = answer.kept;
    return trial.read();
  },
  read: () => opened().live.getJob() as (Job & { note?: string }) | undefined,
  set: (key: string, value: string | number) => opened().live.setValue([key], value, key),
  keeping: () => opened().getKeeping(),
  retry: () => opened().retry(),
};

Object.assign(globalThis, { trial });
