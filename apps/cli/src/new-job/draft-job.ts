import { type Display, type Fault, type Job, jobFormat, jobVersion, readJob, writeJob } from "@pintle/job";
import type { Said } from "./ask-missing.ts";
import { leafValues } from "./leaf-values.ts";

export type Draft =
  | { readonly ok: true; readonly job: Job; readonly assumed: readonly string[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * A complete job file from what was said: one leaf, its values as typed, the rest assumed and marked so.
 *
 * Errors (returned): every value that cannot be read, by its option; then whatever the job file itself refuses.
 */
export function draftJob(said: Said, display: Display): Draft {
  const faults: Fault[] = [];
  const leaf: Record<string, unknown> = { id: "leaf-1" };
  const origin: Record<string, { readonly how: "assumed" }> = {};
  for (const { key, option, about, read, assumed } of leafValues) {
    const text = said.values[key];
    if (text === undefined) {
      if (assumed === null) faults.push({ path: option, found: "nothing", expected: about });
      leaf[key] = assumed;
      origin[key] = { how: "assumed" };
      continue;
    }
    const value = read(text, display);
    if (value.ok) leaf[key] = value.value;
    else faults.push({ path: option, found: value.found, expected: value.expected });
  }
  if (faults.length > 0) return { ok: false, faults };
  const assumed = Object.keys(origin);
  const document = {
    format: jobFormat,
    version: jobVersion,
    ...(said.title === undefined || said.title === "" ? {} : { title: said.title }),
    display,
    leaves: [assumed.length > 0 ? { ...leaf, origin } : leaf],
    rams: [],
  };
  // Through the reader, so that a new file is one that every other command accepts.
  const judged = readJob(writeJob(document as unknown as Job));
  return judged.ok ? { ok: true, job: judged.job, assumed } : { ok: false, faults: judged.faults };
}
