import { type Job, type JobRam, type ValueOrigin, valueOrigins } from "@pintle/job";

/** The values that concern one leaf: its own, its ram's, the site's; not those of other leaves and rams. */
export function leafValues(job: Job, leafIndex: number, ram: JobRam | null): ValueOrigin[] {
  const ramIndex = (job.rams ?? []).findIndex((one) => one.id === ram?.id);
  const [leafAt, ramAt] = [`leaves[${leafIndex}]`, `rams[${ramIndex}]`];
  return valueOrigins(job).filter(
    ({ path }) =>
      (!path.startsWith("leaves[") && !path.startsWith("rams[")) ||
      path.startsWith(leafAt) ||
      path.startsWith(ramAt),
  );
}
