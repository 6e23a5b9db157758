import { type Job, writeJob } from "@pintle/job";
import { jobFileName } from "@pintle/store";

/** Hands the job file to the reader, as the command line writes it. */
export function exportJob(job: Job): void {
  handOver(new Blob([writeJob(job)], { type: "application/json" }), jobFileName(job.title ?? "", new Set()));
}

/** Hands a file to the reader to keep. */
export function handOver(content: Blob, name: string): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
