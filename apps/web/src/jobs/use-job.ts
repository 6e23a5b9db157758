import type { Job } from "@pintle/job";
import type { KeptJob } from "@pintle/store";
import { useCallback, useEffect, useRef, useState, useSyncExternalStore } from "react";
import type { ChangeJob } from "../stages/placement/bench.ts";
import { english } from "../strings/english.ts";
import { text } from "../strings/text.ts";
import { demoId, demoJob } from "./demo.ts";
import type { Device } from "./device.ts";

export type Opening =
  | { readonly state: "opening" }
  | { readonly state: "open"; readonly kept: KeptJob }
  | { readonly state: "failed"; readonly message: string };

/** Opens a job of this device and closes it again; the demo is started where it is not there yet. */
export function useOpenJob(device: Device, jobId: string): Opening {
  const [opening, setOpening] = useState<Opening>({ state: "opening" });
  useEffect(() => {
    let isWanted = true;
    let opened: KeptJob | null = null;
    const open = jobId === demoId ? device.start(demoJob(), demoId) : device.open(jobId);
    void open.then((result) => {
      if (result.ok && !isWanted) return result.kept.close();
      if (!isWanted) return;
      if (result.ok) opened = result.kept;
      setOpening(
        result.ok ? { state: "open", kept: result.kept } : { state: "failed", message: result.message },
      );
    });
    return () => {
      isWanted = false;
      setOpening({ state: "opening" });
      void opened?.close();
    };
  }, [device, jobId]);
  return opening;
}

/** Presses of a key further apart than this are steps of their own [ms]. */
const runEnds = 900;

/** The job as it is, and how it is changed. The last state that could be judged is kept while a merge breaks it. */
export function useLiveJob(kept: KeptJob): {
  readonly job: Job;
  readonly change: ChangeJob;
  readonly fault: string | null;
} {
  const { live } = kept;
  const judged = useSyncExternalStore(live.subscribe, live.getJudged);
  const lastGood = useRef<Job | null>(null);
  if (judged.ok) lastGood.current = judged.job;
  const run = useRef<{ name: string; end: ReturnType<typeof setTimeout> } | null>(null);
  const change = useCallback<ChangeJob>(
    (changes, label, name) => {
      if (run.current !== null) clearTimeout(run.current.end);
      if (run.current !== null && run.current.name !== name) live.endGesture();
      const isNew = run.current?.name !== name;
      if (name !== undefined && isNew) live.beginGesture(label);
      run.current =
        name === undefined
          ? null
          : {
              name,
              end: setTimeout(() => {
                live.endGesture();
                run.current = null;
              }, runEnds),
            };
      live.editTogether(label, () => {
        for (const { path, value } of changes) {
          const done = value === undefined ? live.remove(path, label) : live.setValue(path, value, label);
          if (!done.ok) return done;
        }
        return { ok: true };
      });
    },
    [live],
  );
  const fault = judged.ok ? null : `${judged.faults[0]?.path}: ${judged.faults[0]?.found}`;
  return { job: lastGood.current ?? (live.getJob() as Job), change, fault };
}

/** How far the job is kept, in words. */
export function useKeeping(kept: KeptJob) {
  const keeping = useSyncExternalStore(kept.subscribe, kept.getKeeping);
  const isLost = keeping.state === "full" || keeping.state === "failed";
  return {
    isLost,
    words: isLost
      ? text("app.full", { message: keeping.message })
      : text(keeping.state === "saving" ? "app.saving" : "app.kept"),
    retry: () => void kept.retry(),
  };
}

export const titleOf = (title: string | undefined): string => title || english["jobs.untitled"];
