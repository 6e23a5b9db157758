import { type Job, jsonText, writeJob } from "@pintle/job";
import { strToU8, type Zippable, zipSync } from "fflate";
import type { JobEntry } from "../storage/job-storage.ts";
import { archiveFormat, archiveVersion, contentsName, jobsFolder } from "./archive-format.ts";
import { jobFileName } from "./file-name.ts";

/** A job with what the list knows of it. */
export interface ListedJob {
  readonly entry: JobEntry;
  readonly job: Job;
}

/** The earliest time that a zip can hold, in its own local time: the same bytes from the same jobs, whenever and wherever. */
const fixedTime = new Date(1980, 0, 1);

/**
 * All jobs as one zip archive: each as a job file in the folder `jobs`, and `contents.json` with what the list
 * knows of it. The same jobs in the same order give the same bytes.
 *
 * ### Example
 *   const leaf = { id: "east", hingeSide: "left" as const, swing: "toward" as const, openAngleDeg: 90, lengthMm: 3600, heelMm: 30, thicknessMm: 50, faceMm: 25 };
 *   const job = { format: "pintle-job" as const, version: 1 as const, title: "East gate", leaves: [leaf] };
 *   const bytes = writeArchive([{ entry: { jobId: "a", title: "East gate", updatedAtMs: 5, archived: true }, job }]);
 *   expect(readArchive(bytes)).toEqual({ ok: true, jobs: [{ file: "jobs/east-gate.json", job, archived: true }], faulty: [] });
 */
export function writeArchive(jobs: readonly ListedJob[]): Uint8Array {
  const taken = new Set<string>();
  const named = jobs.map(({ entry, job }) => ({
    file: `${jobsFolder}${jobFileName(entry.title, taken)}`,
    entry,
    job,
  }));
  const contents = {
    format: archiveFormat,
    version: archiveVersion,
    jobs: named.map(({ file, entry: { title, updatedAtMs, archived } }) => ({
      file,
      title,
      updatedAtMs,
      archived,
    })),
  };
  const files: Zippable = { [contentsName]: strToU8(jsonText(contents)) };
  for (const { file, job } of named) files[file] = strToU8(writeJob(job));
  return zipSync(files, { mtime: fixedTime });
}
