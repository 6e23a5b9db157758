import { readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Job } from "@pintle/job";

const folder = fileURLToPath(new URL("../../../../examples", import.meta.url));

/** Path of an example job. */
export const example = (name: string): string => join(folder, `${name}.json`);

/** An example job as it is read, free to be changed. */
export function exampleJob(name: string): Job {
  return JSON.parse(readFileSync(example(name), "utf8"));
}
