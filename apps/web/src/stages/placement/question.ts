import type { Job } from "@pintle/job";
import { useEffect, useMemo, useRef } from "react";

/**
 * What a search of one leaf depends on, as text: two jobs with the same question have the same answer. The pins
 * are the answer and not part of the question; notes and origins never are.
 */
function questionOf(job: Job, leafIndex: number, ofAllRams: boolean): string {
  const {
    placement,
    asBuilt: _,
    note: __,
    origin: ___,
    ...leaf
  } = job.leaves[leafIndex] as Job["leaves"][number];
  const rams = ofAllRams ? job.rams : job.rams?.filter((ram) => ram.id === leaf.ram);
  return JSON.stringify([{ ...leaf, riseMm: placement?.riseMm ?? 0 }, rams, job.display]);
}

/** How long a question must stay the same before it is asked: a drag asks once, at its end [ms]. */
const settles = 350;

/** Calls `ask` when the question has changed and settled. */
export function useWhenSettled(question: string, isWanted: boolean, ask: () => void): void {
  const asked = useRef<string | null>(null);
  const latest = useRef(ask);
  latest.current = ask;
  useEffect(() => {
    if (!isWanted || asked.current === question) return;
    const wait = setTimeout(
      () => {
        asked.current = question;
        latest.current();
      },
      asked.current === null ? 0 : settles,
    );
    return () => clearTimeout(wait);
  }, [question, isWanted]);
}

export function useQuestion(job: Job, leafIndex: number, ofAllRams: boolean): string {
  return useMemo(() => questionOf(job, leafIndex, ofAllRams), [job, leafIndex, ofAllRams]);
}
