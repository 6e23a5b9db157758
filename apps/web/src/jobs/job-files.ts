import { faultLines, type Job, readJob, writeJob } from "@pintle/job";

/** Hands the job file to the reader, as the command line writes it. */
export function exportJob(job: Job): void {
  const address = URL.createObjectURL(new Blob([writeJob(job)], { type: "application/json" }));
  const link = document.createElement("a");
  link.href = address;
  link.download = `${fileName(job.title)}.json`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

const fileName = (title: string | undefined): string =>
  (title ?? "")
    .normalize("NFKD")
    .replace(/[^\w -]+/g, "")
    .trim()
    .replace(/\s+/g, "-")
    .toLowerCase()
    .slice(0, 60) || "gate-job";

export type TakenIn =
  | { readonly ok: true; readonly job: Job }
  | { readonly ok: false; readonly lines: readonly string[] };

/** A job from a file that somebody chose: the job, or every fault in lines. */
export async function takeIn(file: File): Promise<TakenIn> {
  const read = readJob(await file.text());
  return read.ok ? { ok: true, job: read.job } : { ok: false, lines: faultLines(read.faults, 20) };
}
