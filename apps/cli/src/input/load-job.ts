import { type Fault, type Job, readJob } from "@pintle/job";
import { readInput } from "./read-input.ts";

export type LoadedJob =
  | {
      readonly ok: true;
      readonly name: string;
      readonly job: Job;
      /** Things that a person should hear of though they are no faults. */
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly name: string; readonly faults: readonly Fault[] };

/** Reads and judges a job file, or standard input for `-`. */
export async function loadJob(path: string): Promise<LoadedJob> {
  const input = await readInput(path);
  if (!input.ok) {
    const { name, found, expected } = input;
    return { ok: false, name, faults: [{ path: "", found, expected }] };
  }
  const read = readJob(input.text);
  if (!read.ok) return { ok: false, name: input.name, faults: read.faults };
  const { job, unknownKeys, migratedFrom } = read;
  const notes = unknownKeys.map((key) => `${key}: a key that this version does not know; kept`);
  if (migratedFrom !== undefined) notes.unshift(`read from version ${migratedFrom} of the job file`);
  return { ok: true, name: input.name, job, notes };
}
