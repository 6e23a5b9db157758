import { type Job, readJob } from "@pintle/job";
import demoText from "../../../../examples/harrow-farm.json?raw";

/** Id of the made-up farm's job: one on each device, so that two tabs that open first get the same. */
export const demoId = "harrow-farm";

/** The made-up farm, as the example file holds it. */
export function demoJob(): Job {
  const read = readJob(demoText);
  if (!read.ok) throw new Error("demoJob found faults in the example that the page was built with");
  return read.job;
}
