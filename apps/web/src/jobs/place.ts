import { useSyncExternalStore } from "react";

/** Where in the workbench the reader is, as the address says after its #. */
export type Place =
  | { readonly at: "job"; readonly jobId: string }
  | { readonly at: "jobs" }
  | { readonly at: "new" }
  | { readonly at: "start" };

const readHash = () => location.hash;

function listenToHash(listener: () => void): () => void {
  addEventListener("hashchange", listener);
  return () => removeEventListener("hashchange", listener);
}

export function usePlace(): Place {
  const hash = useSyncExternalStore(listenToHash, readHash);
  const [, at, jobId] = hash.split("/");
  if (at === "job" && jobId) return { at, jobId: decodeURIComponent(jobId) };
  return at === "jobs" || at === "new" ? { at } : { at: "start" };
}

export const jobAddress = (jobId: string): string => `#/job/${encodeURIComponent(jobId)}`;

export function go(address: string): void {
  location.hash = address;
}
